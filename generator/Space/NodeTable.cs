using System.Globalization;
using System.Runtime.InteropServices;

namespace Swapwright.Space;

/// <summary>
/// The nodes of all diagrams of a store in flat arrays. A node is a level and a row of edges; an edge is a child and
/// a mask of the values that lead to it. The masks of a node part its domain, no two edges share a child, edges stand
/// in the order of their lowest value, and a node that would have one edge is that edge's child. Equal nodes are made
/// once, so equal sets have equal numbers. Spans are made by their constructors: those need no generic method to be compiled
/// when the program starts.
/// </summary>
internal sealed class NodeTable
{
    public const int None = 0;
    public const int All = 1;

    /// <summary>Two node numbers and an operation share one 64-bit key in <see cref="OperationCache"/>.</summary>
    public const int HardLimit = 1 << 30;

    private readonly int _limit;
    private int[] _level = new int[64];
    private int[] _firstEdge = new int[64];
    private int[] _firstWord = new int[64];
    private int[] _next = new int[64];
    private int[] _buckets = new int[128];
    private int[] _child = new int[256];
    private ulong[] _mask = new ulong[256];

    // The variables below each node, itself included, a bit each: many questions only ask what a diagram depends on.
    private readonly int _supportWords;
    private ulong[] _support;

    // Edges of nodes under construction: recursion opens a draft above the drafts of its callers.
    private int[] _draftChild = new int[64];
    private ulong[] _draftMask = new ulong[256];
    private Draft _top;

    public NodeTable(IReadOnlyList<int> sizes, int limit)
    {
        Sizes = [.. sizes];
        Words = [.. sizes.Select(ValueSet.WordsFor)];
        _limit = limit;
        _supportWords = ValueSet.WordsFor(sizes.Count);
        _support = new ulong[64 * _supportWords];
        _level[None] = _level[All] = sizes.Count;
        Count = 2;
        Array.Fill(_buckets, -1);
    }

    /// <summary>A table with the same nodes under the same numbers, which grows by itself from here on.</summary>
    public NodeTable(NodeTable other)
    {
        Sizes = other.Sizes;
        Words = other.Words;
        _limit = other._limit;
        _level = [.. other._level];
        _firstEdge = [.. other._firstEdge];
        _firstWord = [.. other._firstWord];
        _next = [.. other._next];
        _buckets = [.. other._buckets];
        _child = [.. other._child];
        _mask = [.. other._mask];
        _supportWords = other._supportWords;
        _support = [.. other._support];
        Count = other.Count;
    }

    public int[] Sizes { get; }

    /// <summary>By level, how many words a set of the variable's values takes.</summary>
    public int[] Words { get; }

    public int Count { get; private set; }

    public int Level(int node) => _level[node];

    public int Edges(int node) => _firstEdge[node + 1] - _firstEdge[node];

    public int Child(int node, int edge) => _child[_firstEdge[node] + edge];

    public ReadOnlySpan<ulong> Mask(int node, int edge)
    {
        var words = Words[_level[node]];
        return new ReadOnlySpan<ulong>(_mask, _firstWord[node] + (edge * words), words);
    }

    /// <summary>The variables that a diagram depends on, a bit each.</summary>
    public ReadOnlySpan<ulong> Support(int node) => new(_support, node * _supportWords, _supportWords);

    /// <summary>The child that a value of the node's own variable leads to.</summary>
    public int ChildOf(int node, int value)
    {
        var edge = 0;
        while (!ValueSet.HasBit(Mask(node, edge), value))
        {
            edge++;
        }

        return Child(node, edge);
    }

    public Draft Begin() => _top;

    /// <summary>Adds the values of <paramref name="mask"/> that are also in <paramref name="within"/> to the edge to a child.</summary>
    public void Add(int level, Draft draft, int child, ReadOnlySpan<ulong> mask, ReadOnlySpan<ulong> within)
    {
        var words = Words[level];
        var target = DraftMask(level, draft, DraftEdge(level, draft, child));
        for (var i = 0; i < words; i++)
        {
            target[i] |= mask[i] & within[i];
        }
    }

    public void Add(int level, Draft draft, int child, ReadOnlySpan<ulong> mask) => Add(level, draft, child, mask, mask);

    public void Add(int level, Draft draft, int child, int value)
        => DraftMask(level, draft, DraftEdge(level, draft, child))[value / 64] |= 1UL << (value % 64);

    /// <summary>Closes a draft: the one node with these edges.</summary>
    public int Finish(int level, Draft draft)
    {
        var edges = _top.Edges - draft.Edges;
        if (edges > 1)
        {
            Sort(level, draft, edges);
        }

        var node = edges == 1 ? _draftChild[draft.Edges] : FindOrAdd(level, draft, edges);
        _top = draft;
        return node;
    }

    private Span<ulong> DraftMask(int level, Draft draft, int edge)
        => new(_draftMask, draft.Words + (edge * Words[level]), Words[level]);

    private int DraftEdge(int level, Draft draft, int child)
    {
        var edges = _top.Edges - draft.Edges;
        var found = new ReadOnlySpan<int>(_draftChild, draft.Edges, edges).IndexOf(child);
        if (found >= 0)
        {
            return found;
        }

        var words = Words[level];
        if (_top.Edges == _draftChild.Length)
        {
            Array.Resize(ref _draftChild, _top.Edges * 2);
        }

        if (_top.Words + words > _draftMask.Length)
        {
            Array.Resize(ref _draftMask, Math.Max(_draftMask.Length * 2, _top.Words + words));
        }

        _draftChild[_top.Edges] = child;
        Array.Clear(_draftMask, _top.Words, words);
        _top = new Draft(_top.Edges + 1, _top.Words + words);
        return edges;
    }

    private void Sort(int level, Draft draft, int edges)
    {
        for (var i = 1; i < edges; i++)
        {
            for (var j = i; j > 0 && Lowest(j) < Lowest(j - 1); j--)
            {
                (_draftChild[draft.Edges + j], _draftChild[draft.Edges + j - 1]) = (_draftChild[draft.Edges + j - 1], _draftChild[draft.Edges + j]);
                var upper = DraftMask(level, draft, j);
                var lower = DraftMask(level, draft, j - 1);
                for (var word = 0; word < upper.Length; word++)
                {
                    (upper[word], lower[word]) = (lower[word], upper[word]);
                }
            }
        }

        int Lowest(int edge) => ValueSet.LowestOf(DraftMask(level, draft, edge));
    }

    private int FindOrAdd(int level, Draft draft, int edges)
    {
        var children = new ReadOnlySpan<int>(_draftChild, draft.Edges, edges);
        var masks = new ReadOnlySpan<ulong>(_draftMask, draft.Words, edges * Words[level]);
        var hash = Hash(level, children, masks);
        for (var node = _buckets[hash & (uint)(_buckets.Length - 1)]; node >= 0; node = _next[node])
        {
            if (_level[node] == level && Children(node).SequenceEqual(children) && Masks(node).SequenceEqual(masks))
            {
                return node;
            }
        }

        return Append(level, children, masks, hash);
    }

    private int Append(int level, ReadOnlySpan<int> children, ReadOnlySpan<ulong> masks, uint hash)
    {
        if (Count >= _limit)
        {
            _top = default;
            throw new SpaceLimitException(string.Create(
                CultureInfo.InvariantCulture,
                $"the conditions need more than {_limit} diagram nodes; simplify or split the rules that tie the most variables together"));
        }

        if (Count + 1 >= _level.Length)
        {
            Grow();
        }

        var node = Count++;
        var edge = _firstEdge[node];
        var word = _firstWord[node];
        Reserve(ref _child, edge + children.Length);
        Reserve(ref _mask, word + masks.Length);
        children.CopyTo(new Span<int>(_child, edge, children.Length));
        masks.CopyTo(new Span<ulong>(_mask, word, masks.Length));
        _level[node] = level;
        _firstEdge[node + 1] = edge + children.Length;
        _firstWord[node + 1] = word + masks.Length;
        ref var bucket = ref _buckets[hash & (uint)(_buckets.Length - 1)];
        _next[node] = bucket;
        bucket = node;
        Depend(node, level, children);
        return node;
    }

    private void Depend(int node, int level, ReadOnlySpan<int> children)
    {
        var support = new Span<ulong>(_support, node * _supportWords, _supportWords);
        support[level / 64] |= 1UL << (level % 64);
        foreach (var child in children)
        {
            var below = Support(child);
            for (var word = 0; word < support.Length; word++)
            {
                support[word] |= below[word];
            }
        }
    }

    private void Grow()
    {
        var size = _level.Length * 2;
        Array.Resize(ref _level, size);
        Array.Resize(ref _firstEdge, size);
        Array.Resize(ref _firstWord, size);
        Array.Resize(ref _next, size);
        Array.Resize(ref _support, size * _supportWords);
        _buckets = new int[size * 2];
        Array.Fill(_buckets, -1);
        for (var node = 2; node < Count; node++)
        {
            ref var bucket = ref _buckets[Hash(_level[node], Children(node), Masks(node)) & (uint)(_buckets.Length - 1)];
            _next[node] = bucket;
            bucket = node;
        }
    }

    private ReadOnlySpan<int> Children(int node) => new(_child, _firstEdge[node], Edges(node));

    private ReadOnlySpan<ulong> Masks(int node) => new(_mask, _firstWord[node], _firstWord[node + 1] - _firstWord[node]);

    private static void Reserve<T>(ref T[] array, int length)
    {
        if (length > array.Length)
        {
            Array.Resize(ref array, Math.Max(array.Length * 2, length));
        }
    }

    private static uint Hash(int level, ReadOnlySpan<int> children, ReadOnlySpan<ulong> masks)
    {
        const ulong Prime = 0x9E3779B97F4A7C15;
        var hash = (ulong)level * Prime;
        foreach (var child in children)
        {
            hash = (ulong.RotateLeft(hash, 27) ^ (uint)child) * Prime;
        }

        foreach (var mask in masks)
        {
            hash = (ulong.RotateLeft(hash, 27) ^ mask) * Prime;
        }

        return (uint)(hash >> 32);
    }

    /// <summary>Where a node under construction begins.</summary>
    [StructLayout(LayoutKind.Auto)]
    internal readonly record struct Draft(int Edges, int Words);
}
