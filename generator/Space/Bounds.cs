namespace Swapwright.Space;

/// <summary>
/// A box around a region: for each variable the values that it takes somewhere in it. Where the boxes of two regions have no value
/// of some variable in common the regions do not meet, which is seen without a walk through their diagrams.
/// </summary>
internal sealed class Bounds
{
    private readonly int[] _widths;
    private readonly ulong[] _words;

    private Bounds(int[] widths, ulong[] words) => (_widths, _words) = (widths, words);

    public static Bounds Of(NodeTable nodes, int root)
    {
        var bounds = new Bounds(nodes.Words, new ulong[nodes.Words.Sum()]);
        if (root == NodeTable.None)
        {
            return bounds;
        }

        bounds.Free(0, nodes.Level(root));
        var seen = new HashSet<int> { root };
        var open = new Stack<int>(seen);
        while (open.TryPop(out var node))
        {
            if (node == NodeTable.All)
            {
                continue;
            }

            var level = nodes.Level(node);
            for (var edge = 0; edge < nodes.Edges(node); edge++)
            {
                var child = nodes.Child(node, edge);
                if (child == NodeTable.None)
                {
                    continue;
                }

                bounds.Add(level, nodes.Mask(node, edge));
                bounds.Free(level + 1, nodes.Level(child));
                if (seen.Add(child))
                {
                    open.Push(child);
                }
            }
        }

        return bounds;
    }

    /// <summary>Whether the boxes meet. Where they do the regions may still not.</summary>
    public bool Meet(Bounds other)
    {
        var (own, others) = (_words, other._words);
        var at = 0;
        foreach (var width in _widths)
        {
            var shared = 0UL;
            for (var end = at + width; at < end; at++)
            {
                shared |= own[at] & others[at];
            }

            if (shared == 0)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether the variable takes the value somewhere in the box.</summary>
    public bool Has(int level, int value) => ValueSet.HasBit(Of(level), value);

    private void Add(int level, ReadOnlySpan<ulong> values)
    {
        var words = Of(level);
        for (var word = 0; word < words.Length; word++)
        {
            words[word] |= values[word];
        }
    }

    /// <summary>Variables that a path passes over may take any value.</summary>
    private void Free(int from, int to)
    {
        for (var level = from; level < to; level++)
        {
            Of(level).Fill(ulong.MaxValue);
        }
    }

    private Span<ulong> Of(int level)
    {
        var start = 0;
        for (var before = 0; before < level; before++)
        {
            start += _widths[before];
        }

        return _words.AsSpan(start, _widths[level]);
    }
}
