namespace Swapwright.Space;

/// <summary>
/// Looks for one assignment that lies in several diagrams at once, depth first. Nothing is added to the store: what is
/// tried in vain is remembered for this one search only.
/// </summary>
internal sealed class MeetingSearch(NodeTable nodes, RegionAlgebra algebra)
{
    private readonly HashSet<int[]> _vain = new(new SameNumbers());

    /// <param name="roots">Nodes, in any order, some possibly twice.</param>
    public bool Meet(params ReadOnlySpan<int> roots)
    {
        var open = Tidy(roots);
        return open switch
        {
            null => false,
            [] => true,
            [_] => true,
            [var a, var b] => algebra.Any(Operation.Meets, a, b),
            _ => !_vain.Contains(open) && (Descend(open) || !_vain.Add(open)),
        };
    }

    /// <summary>Rising, each once, without those that hold everything; null where one holds nothing.</summary>
    private static int[]? Tidy(ReadOnlySpan<int> roots)
    {
        Span<int> sorted = stackalloc int[roots.Length];
        roots.CopyTo(sorted);
        sorted.Sort();
        var count = 0;
        foreach (var node in sorted)
        {
            if (node == NodeTable.None)
            {
                return null;
            }

            if (node != NodeTable.All && (count == 0 || sorted[count - 1] != node))
            {
                sorted[count++] = node;
            }
        }

        return sorted[..count].ToArray();
    }

    private bool Descend(int[] open)
    {
        var level = int.MaxValue;
        foreach (var node in open)
        {
            level = Math.Min(level, nodes.Level(node));
        }

        Span<ulong> values = stackalloc ulong[ValueSet.WordsFor(nodes.Sizes[level])];
        values.Fill(ulong.MaxValue);
        return Choose(level, open, 0, values, new int[open.Length]);
    }

    /// <summary>Takes an edge of one diagram after another, as long as some value leads along all of those taken.</summary>
    private bool Choose(int level, int[] open, int at, ReadOnlySpan<ulong> values, int[] children)
    {
        if (at == open.Length)
        {
            return Meet(children);
        }

        var node = open[at];
        if (nodes.Level(node) != level)
        {
            children[at] = node;
            return Choose(level, open, at + 1, values, children);
        }

        Span<ulong> left = stackalloc ulong[values.Length];
        for (var edge = 0; edge < nodes.Edges(node); edge++)
        {
            var child = nodes.Child(node, edge);
            if (child == NodeTable.None || !ValueSet.Meet(values, nodes.Mask(node, edge)))
            {
                continue;
            }

            var mask = nodes.Mask(node, edge);
            for (var word = 0; word < left.Length; word++)
            {
                left[word] = values[word] & mask[word];
            }

            children[at] = child;
            if (Choose(level, open, at + 1, left, children))
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
            var hash = default(HashCode);
            foreach (var number in obj)
            {
                hash.Add(number);
            }

            return hash.ToHashCode();
        }
    }
}
