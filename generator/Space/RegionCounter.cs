using System.Numerics;

namespace Swapwright.Space;

/// <summary>Exact counts: a node holds the sum over its edges of values times the count of the child, times the domains skipped between.</summary>
internal sealed class RegionCounter
{
    private readonly NodeTable _nodes;
    private readonly Dictionary<int, BigInteger> _counts = [];

    /// <summary>Assignments of all variables from a level on.</summary>
    private readonly BigInteger[] _from;

    public RegionCounter(NodeTable nodes)
    {
        _nodes = nodes;
        _from = new BigInteger[nodes.Sizes.Length + 1];
        _from[^1] = BigInteger.One;
        for (var level = nodes.Sizes.Length - 1; level >= 0; level--)
        {
            _from[level] = _from[level + 1] * nodes.Sizes[level];
        }
    }

    public BigInteger Count(int node) => CountFrom(0, node);

    /// <summary>Assignments of the variables from a level on, which must not lie below the node.</summary>
    public BigInteger CountFrom(int level, int node) => node switch
    {
        NodeTable.None => BigInteger.Zero,
        NodeTable.All => _from[level],
        _ => CountBelow(node) * (_from[level] / _from[_nodes.Level(node)]),
    };

    private BigInteger CountBelow(int node)
    {
        if (_counts.TryGetValue(node, out var known))
        {
            return known;
        }

        var level = _nodes.Level(node);
        var sum = BigInteger.Zero;
        for (var edge = 0; edge < _nodes.Edges(node); edge++)
        {
            var values = 0;
            foreach (var word in _nodes.Mask(node, edge))
            {
                values += BitOperations.PopCount(word);
            }

            sum += values * CountFrom(level + 1, _nodes.Child(node, edge));
        }

        _counts[node] = sum;
        return sum;
    }
}
