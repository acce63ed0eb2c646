using System.Globalization;
using System.Numerics;

namespace Swapwright.Space;

/// <summary>
/// For every value of the shared variables, in how many ways several parts can be completed: a diagram whose ends are
/// numbers. It is made once for a set of parts and then summed over any region, class by class.
/// </summary>
internal sealed class SharedWeights
{
    private readonly RegionStore _store;
    private readonly int _shared;
    private readonly BigInteger[] _others;
    private readonly Dictionary<string, Node> _known = [];
    private readonly Dictionary<BigInteger, Node> _ends = [];
    private readonly Node _root;

    /// <param name="parts">Regions that have no variable in common but the first <paramref name="shared"/> ones.</param>
    /// <param name="others">For each part, the number of assignments to the variables that are neither shared nor its own.</param>
    public SharedWeights(RegionStore store, int shared, Region[] parts, BigInteger[] others)
    {
        _store = store;
        _shared = shared;
        _others = others;
        _root = Build(0, parts);
    }

    /// <summary>The sum over the region, each of its assignments to shared variables counted with its completions and the weight.</summary>
    /// <param name="others">As for the parts, of the region.</param>
    public BigInteger Sum(Region region, BigInteger others) => new Query(_store, _shared, others).Sum(0, region, _root);

    private Node Build(int level, Region[] parts)
    {
        if (level == _shared || parts.Any(part => part.IsNone))
        {
            var weight = parts.Any(part => part.IsNone)
                ? BigInteger.Zero
                : parts.Select((part, i) => _store.CountFrom(_shared, part) / _others[i]).Aggregate(BigInteger.One, BigInteger.Multiply);
            return _ends.TryGetValue(weight, out var end) ? end : _ends[weight] = new Node(weight, []);
        }

        var key = string.Create(CultureInfo.InvariantCulture, $"{level}:{string.Join(',', parts.Select(part => part.Id))}");
        if (_known.TryGetValue(key, out var node))
        {
            return node;
        }

        var edges = _store.Classes(level, parts)
            .Select(cell => (cell.Values, Child: Build(level + 1, cell.Children)))
            .GroupBy(edge => edge.Child)
            .Select(same => (same.Select(edge => edge.Values).Aggregate((a, b) => a.Or(b)), same.Key))
            .ToArray();
        return _known[key] = new Node(BigInteger.Zero, edges);
    }

    /// <summary>An end with its weight, or a level with its edges; nothing possible is the end of weight 0 at any level.</summary>
    private sealed class Node(BigInteger weight, (ValueSet Values, Node Child)[] edges)
    {
        public BigInteger Weight { get; } = weight;

        public (ValueSet Values, Node Child)[] Edges { get; } = edges;
    }

    private sealed class Query(RegionStore store, int shared, BigInteger others)
    {
        private readonly Dictionary<(Region Region, Node Weights), BigInteger> _sums = [];

        public BigInteger Sum(int level, Region region, Node weights)
        {
            if (region.IsNone || (weights.Edges.Length == 0 && weights.Weight.IsZero))
            {
                return BigInteger.Zero;
            }

            if (level == shared)
            {
                return weights.Weight * Completions(region);
            }

            if (_sums.TryGetValue((region, weights), out var sum))
            {
                return sum;
            }

            foreach (var (values, children) in store.Classes(level, [region]))
            {
                if (!children[0].IsNone)
                {
                    sum += Sum(level, values, children[0], weights);
                }
            }

            return _sums[(region, weights)] = sum;
        }

        private BigInteger Sum(int level, ValueSet values, Region child, Node weights)
        {
            // On the last level the region's own completions are the same for all edges: multiplied once.
            var last = level == shared - 1;
            var sum = BigInteger.Zero;
            foreach (var (edge, next) in weights.Edges)
            {
                var both = ValueSet.CountBoth(values, edge);
                if (both > 0)
                {
                    sum += both * (last ? next.Weight : Sum(level + 1, child, next));
                }
            }

            return last ? sum * Completions(child) : sum;
        }

        private BigInteger Completions(Region region) => store.CountFrom(shared, region) / others;
    }
}
