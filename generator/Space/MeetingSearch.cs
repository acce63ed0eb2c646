using System.Globalization;
using System.Runtime.CompilerServices;

namespace Swapwright.Space;

/// <summary>
/// Looks for one assignment that lies in several diagrams at once, and outside others, depth first. Nothing is added to the store:
/// what is tried in vain is remembered for this one search only. A diagram to stay outside of stands as the complement of its
/// number, so that its negation need not be made.
/// </summary>
internal sealed class MeetingSearch(NodeTable nodes, RegionAlgebra algebra)
{
    private HashSet<int[]>? _vain;

    /// <param name="roots">Nodes, and complements of nodes, in any order, some possibly twice.</param>
    public bool Meet(params ReadOnlySpan<int> roots)
    {
        Span<int> sorted = stackalloc int[roots.Length];
        roots.CopyTo(sorted);
        var count = Tidy(sorted);
        switch (count)
        {
            case < 0:
                return false;
            case <= 1:
                return true;
            case 2 when sorted[1] >= 0:
                return sorted[0] >= 0 ? algebra.Any(Operation.Meets, sorted[0], sorted[1]) : algebra.Any(Operation.Escapes, sorted[1], ~sorted[0]);
        }

        var open = sorted[..count].ToArray();
        if (_vain?.Contains(open) == true)
        {
            return false;
        }

        if (Descend(open))
        {
            return true;
        }

        (_vain ??= new HashSet<int[]>(new SameNumbers())).Add(open);
        return false;
    }

    /// <summary>Puts them in rising order, each once, without those that hold everything: their number, or -1 where one holds nothing.</summary>
    private static int Tidy(Span<int> roots)
    {
        roots.Sort();
        var count = 0;
        foreach (var node in roots)
        {
            if (node is NodeTable.None or ~NodeTable.All || (node > NodeTable.All && roots[..count].BinarySearch(~node) >= 0))
            {
                return -1;
            }

            if (node is not (NodeTable.All or ~NodeTable.None) && (count == 0 || roots[count - 1] != node))
            {
                roots[count++] = node;
            }
        }

        return count;
    }

    private static int NodeOf(int root) => root < 0 ? ~root : root;

    private bool Descend(int[] open)
    {
        var level = int.MaxValue;
        foreach (var root in open)
        {
            level = Math.Min(level, nodes.Level(NodeOf(root)));
        }

        Span<ulong> values = stackalloc ulong[ValueSet.WordsFor(nodes.Sizes[level])];
        values.Fill(ulong.MaxValue);
        return Choose(level, open, open.Length - 1, values, new int[open.Length]);
    }

    /// <summary>
    /// Takes an edge of one diagram after another, as long as some value leads along all of those taken. The complements come last:
    /// they leave the most values open.
    /// </summary>
    private bool Choose(int level, int[] open, int at, ReadOnlySpan<ulong> values, int[] children)
    {
        while (at >= 0 && nodes.Level(NodeOf(open[at])) != level)
        {
            children[at] = open[at];
            at--;
        }

        if (at < 0)
        {
            return Meet(children);
        }

        // As deep as there are diagrams: a base may hold more exceptions to one rule than a thread has room for.
        if (!RuntimeHelpers.TryEnsureSufficientExecutionStack())
        {
            throw new SpaceLimitException(string.Create(CultureInfo.InvariantCulture, $"{open.Length} conditions stand against each other at once; divide the rule that they are exceptions to"));
        }

        // An edge after which the diagram asks nothing more leads to the goal soonest.
        return Follow(level, open, at, values, children, free: true) || Follow(level, open, at, values, children, free: false);
    }

    private bool Follow(int level, int[] open, int at, ReadOnlySpan<ulong> values, int[] children, bool free)
    {
        var node = NodeOf(open[at]);
        var outside = open[at] < 0;
        Span<ulong> left = stackalloc ulong[values.Length];
        for (var edge = 0; edge < nodes.Edges(node); edge++)
        {
            var child = outside ? ~nodes.Child(node, edge) : nodes.Child(node, edge);
            var mask = nodes.Mask(node, edge);
            if (child is NodeTable.None or ~NodeTable.All || free != (child is NodeTable.All or ~NodeTable.None) || !ValueSet.Meet(values, mask))
            {
                continue;
            }

            for (var word = 0; word < left.Length; word++)
            {
                left[word] = values[word] & mask[word];
            }

            children[at] = child;
            if (Choose(level, open, at - 1, left, children))
            {
                return true;
            }
        }

        return false;
    }

    private sealed class SameNumbers : IEqualityComparer<int[]>
    {
        public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(int[] obj)
        {
            var hash = 17u;
            foreach (var number in obj)
            {
                hash = (uint.RotateLeft(hash, 5) ^ (uint)number) * 0x9E3779B1;
            }

            return (int)hash;
        }
    }
}
