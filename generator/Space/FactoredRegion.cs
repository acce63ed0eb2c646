using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;

namespace Swapwright.Space;

/// <summary>
/// The intersection of many regions, kept in parts that have no variable in common but the shared ones (the entities).
/// As one diagram such an intersection grows with the product of what each entity pair does to each choice; in parts it
/// grows with the sum, because for fixed entities the parts have nothing to do with each other. Questions about a
/// region need only the parts that it touches and, of the others, where they leave something possible at all.
/// </summary>
public sealed class FactoredRegion
{
    private readonly RegionStore _store;
    private readonly int _shared;
    private readonly ImmutableArray<Part> _parts;
    private readonly ImmutableArray<int> _own;

    /// <param name="factors">The regions whose intersection this is.</param>
    /// <param name="shared">Number of shared variables; they are the first ones of the store.</param>
    public FactoredRegion(RegionStore store, IEnumerable<Region> factors, int shared)
    {
        _store = store;
        _shared = shared;
        _own = [.. Enumerable.Range(shared, store.Variables.Length - shared)];
        _parts = [.. Group(factors).Select(MakePart)];
        Possible = store.AndAll(_parts.Select(part => part.Possible));
    }

    /// <summary>The values of the shared variables that leave something possible, as a region.</summary>
    public Region Possible { get; }

    /// <summary>The sets of variables, without the shared ones, that the factors tie together.</summary>
    public IEnumerable<ImmutableArray<int>> Groups => _parts.Select(part => part.Variables);

    /// <summary>
    /// What the intersection says about the shared variables, the given ones and those tied to them: exactly its
    /// projection. A region on these variables meets the result if and only if it meets the whole intersection.
    /// </summary>
    public Region Near(IEnumerable<int> variables)
    {
        var asked = variables.ToHashSet();
        return _store.And(Possible, _store.AndAll(_parts.Where(part => part.Variables.Any(asked.Contains)).Select(part => part.Region)));
    }

    /// <summary>The intersection as far as a region can tell; see <see cref="Near(IEnumerable{int})"/>.</summary>
    public Region Near(Region region) => Near(_store.Support(region));

    public bool Intersects(Region region) => _store.Intersects(region, Near(region));

    /// <summary>Whether everything in the intersection lies within the region.</summary>
    public bool Implies(Region region) => _store.Implies(Near(region), region);

    /// <summary>The intersection for fixed values of all shared variables; it does not depend on them.</summary>
    public Region At(params ReadOnlySpan<int> values)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(values.Length, _shared, nameof(values));
        var held = values.ToArray().Select((value, variable) => (variable, value)).ToList();
        return _store.AndAll(_parts.Select(part => _store.Slice(part.Region, held)));
    }

    /// <summary>The intersection as one diagram; it may be far larger than the parts.</summary>
    public Region ToRegion() => _store.AndAll(_parts.Select(part => part.Region));

    /// <summary>The smallest assignment that lies in the region and the intersection.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public int[] Witness(Region region)
    {
        var near = _store.And(region, Near(region));
        int[] entities = [.. _store.Witness(_store.Project(near, _own)).Take(_shared)];
        var held = entities.Select((value, variable) => (variable, value)).ToList();
        var rest = _store.Witness(_store.And(At(entities), _store.Slice(region, held)));
        return [.. entities, .. rest.Skip(_shared)];
    }

    /// <summary>
    /// Exact number of assignments that lie in the region and the intersection: the sum over classes of shared values of
    /// the product of what each part counts there.
    /// </summary>
    public BigInteger Count(Region region)
    {
        var touched = _store.Support(region).ToHashSet();
        var apart = _parts.ToLookup(part => part.Variables.Any(touched.Contains));
        var joined = MakePart([.. apart[true].Select(part => part.Region), region, Possible]);
        List<Part> parts = [joined, .. apart[false]];
        var free = _own.Except(parts.SelectMany(part => part.Variables)).ToList();
        return _store.SizeOf(free) * Sum(0, [.. parts.Select(part => part.Region)], [.. parts.Select(Others)], []);

        BigInteger Others(Part part) => _store.SizeOf(_own.Except(part.Variables));
    }

    private BigInteger Sum(int level, Region[] parts, BigInteger[] others, Dictionary<string, BigInteger> known)
    {
        if (parts.Any(part => part.IsNone))
        {
            return BigInteger.Zero;
        }

        if (level == _shared)
        {
            return parts.Select((part, i) => _store.CountFrom(_shared, part) / others[i]).Aggregate(BigInteger.Multiply);
        }

        var key = string.Create(CultureInfo.InvariantCulture, $"{level}:{string.Join(',', parts.Select(part => part.Id))}");
        if (!known.TryGetValue(key, out var sum))
        {
            sum = _store.Classes(level, parts).Aggregate(
                BigInteger.Zero,
                (total, cell) => total + (cell.Values * Sum(level + 1, cell.Children, others, known)));
            known[key] = sum;
        }

        return sum;
    }

    private Part MakePart(IReadOnlyCollection<Region> factors)
    {
        var region = _store.AndAll(factors);
        return new Part(region, [.. _store.Support(region).Where(variable => variable >= _shared)], _store.Project(region, _own));
    }

    /// <summary>Factors that are tied to each other by variables that are not shared, each group once.</summary>
    private List<List<Region>> Group(IEnumerable<Region> factors)
    {
        var groups = new List<(HashSet<int> Variables, List<Region> Factors)>();
        foreach (var factor in factors.Distinct())
        {
            var variables = _store.Support(factor).Where(variable => variable >= _shared).ToHashSet();
            var factorsOfGroup = new List<Region> { factor };
            foreach (var group in groups.Where(group => group.Variables.Overlaps(variables) || (variables.Count == 0 && group.Variables.Count == 0)).ToList())
            {
                variables.UnionWith(group.Variables);
                factorsOfGroup.InsertRange(0, group.Factors);
                groups.Remove(group);
            }

            groups.Add((variables, factorsOfGroup));
        }

        return [.. groups.Select(group => group.Factors)];
    }

    /// <param name="Region">The intersection of the factors of the part.</param>
    /// <param name="Variables">What it depends on besides shared variables.</param>
    /// <param name="Possible">Its projection on the shared variables.</param>
    private sealed record Part(Region Region, ImmutableArray<int> Variables, Region Possible);
}
