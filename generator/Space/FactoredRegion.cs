using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.InteropServices;

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
    private readonly Dictionary<int, bool> _met = [];
    private readonly Dictionary<string, SharedWeights> _weights = [];
    private BigInteger? _size;

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

    /// <summary>Exact number of assignments in the intersection.</summary>
    public BigInteger Size => _size ??= Count(Region.All);

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

    /// <summary>
    /// The part of a region that the parts which it touches leave possible: the region and <see cref="Near(Region)"/>,
    /// without ever building the latter. It is empty exactly where the region and the intersection do not meet. It may
    /// still hold assignments that other parts forbid, so what is taken away from it must be narrowed again.
    /// </summary>
    public Region Narrow(Region region)
    {
        var asked = region;
        region = _store.And(region, Possible);
        for (var part = 0; part < _parts.Length && !region.IsNone; part++)
        {
            if (Touches(part, [asked]))
            {
                region = _store.And(region, _parts[part].Region);
            }
        }

        return region;
    }

    public bool Intersects(Region region)
    {
        if (!_met.TryGetValue(region.Id, out var meets))
        {
            meets = Intersects([region], default(ReadOnlySpan<Region>));
            _met.Add(region.Id, meets);
        }

        return meets;
    }

    /// <summary>Whether something in the intersection lies in all of some regions and in none of others. No region is made of them.</summary>
    public bool Intersects(IEnumerable<Region> within, IEnumerable<Region> outside) => Intersects([.. within], [.. outside]);

    private bool Intersects(ReadOnlySpan<Region> within, ReadOnlySpan<Region> outside)
    {
        List<Region> all = [Possible];
        for (var part = 0; part < _parts.Length; part++)
        {
            if (Touches(part, within) || Touches(part, outside))
            {
                all.Add(_parts[part].Region);
            }
        }

        all.AddRange(within);
        return _store.Intersects(CollectionsMarshal.AsSpan(all), outside);
    }

    /// <summary>Whether everything in the intersection lies within the region.</summary>
    public bool Implies(Region region) => !Intersects(_store.Not(region));

    public bool Contains(ReadOnlySpan<int> assignment)
    {
        foreach (var part in _parts)
        {
            if (!_store.Contains(part.Region, assignment))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The intersection for fixed values of all shared variables; it does not depend on them.</summary>
    public Region At(params ReadOnlySpan<int> values)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(values.Length, _shared, nameof(values));
        return At(_store.Point(values.ToArray().Select((value, variable) => (variable, value))));
    }

    /// <summary>The same.</summary>
    /// <param name="point">See <see cref="RegionStore.Point"/>.</param>
    internal Region At(Region point) => _store.AndAll(_parts.Select(part => _store.Slice(part.Region, point)));

    /// <summary>The intersection as one diagram; it may be far larger than the parts.</summary>
    public Region ToRegion() => _store.AndAll(_parts.Select(part => part.Region));

    /// <summary>The smallest assignment that lies in the region and the intersection.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public int[] Witness(Region region)
    {
        var near = Narrow(region);
        int[] entities = [.. _store.Witness(_store.Project(near, _own)).Take(_shared)];
        var held = entities.Select((value, variable) => (variable, value)).ToList();
        var rest = _store.Witness(_store.And(At(entities), _store.Slice(region, held)));
        return [.. entities, .. rest.Skip(_shared)];
    }

    /// <summary>
    /// Exact number of assignments that lie in the region and the intersection: over the shared values, what the region
    /// and the parts it touches count there times what every other part does.
    /// </summary>
    public BigInteger Count(Region region)
    {
        var touched = _store.Support(region).ToHashSet();
        var apart = _parts.ToLookup(part => part.Variables.Any(touched.Contains));
        var joined = apart[true].Aggregate(region, (narrowed, part) => _store.And(narrowed, part.Region));
        var joinedOwn = Own(joined);
        List<Part> rest = [.. apart[false]];
        var key = string.Join(',', rest.Select(part => part.Region.Id));
        if (!_weights.TryGetValue(key, out var weights))
        {
            weights = new SharedWeights(_store, _shared, [.. rest.Select(part => part.Region)], [.. rest.Select(part => Free(part.Variables))]);
            _weights[key] = weights;
        }

        return Free(rest.SelectMany(part => part.Variables).Concat(joinedOwn)) * weights.Sum(joined, Free(joinedOwn));
    }

    /// <summary>The regions whose intersection this is, one for each group of variables that are tied together.</summary>
    public IEnumerable<Region> Factors => _parts.Select(part => part.Region);

    /// <summary>The assignments to the shared variables and the given ones that the intersection leaves possible: its projection.</summary>
    public Region Onto(IReadOnlyCollection<int> variables)
    {
        var seen = _parts.Where(part => part.Variables.Any(variables.Contains)).Select(part => _store.Project(part.Region, part.Variables.Except(variables)));
        return _store.And(Possible, _store.AndAll(seen));
    }

    /// <summary>
    /// The assignments to the shared variables and the given ones that some assignment in both the region and the
    /// intersection takes.
    /// </summary>
    public Region Onto(IReadOnlyCollection<int> variables, Region region) =>
        _store.And(_store.Project(Narrow(region), _own.Except(variables)), Onto(variables));

    /// <summary>The intersection once some variables, none of them shared, may take any value that it leaves them: its projection, in parts.</summary>
    public FactoredRegion Without(IReadOnlyCollection<int> variables) =>
        variables.Count == 0 ? this : new FactoredRegion(_store, _parts.Select(part => _store.Project(part.Region, variables)), _shared);

    /// <summary>Exact number of different assignments to the shared variables and the given ones that the intersection leaves possible.</summary>
    public BigInteger CountWithin(IReadOnlyCollection<int> variables) =>
        _store.CountWithin(Onto(variables), [.. Enumerable.Range(0, _shared).Union(variables)]);

    /// <summary>Whether one of the regions has a variable in common with a part; the shared variables do not count.</summary>
    private bool Touches(int part, ReadOnlySpan<Region> regions)
    {
        foreach (var region in regions)
        {
            if (_store.DependsOn(region, _parts[part].Own))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Number of assignments to the variables that are neither shared nor among those given.</summary>
    private BigInteger Free(IEnumerable<int> variables) => _store.SizeOf(_own.Except(variables));

    /// <summary>The variables that a region depends on besides the shared ones.</summary>
    private ImmutableArray<int> Own(Region region) => [.. _store.Support(region).Where(variable => variable >= _shared)];

    private Part MakePart(IReadOnlyCollection<Region> factors)
    {
        var region = _store.AndAll(factors);
        var own = Own(region);
        return new Part(region, own, ValueSet.Of(_store.Variables.Length, own.AsSpan()), _store.Project(region, _own));
    }

    /// <summary>Factors that are tied to each other by variables that are not shared, each group once.</summary>
    private List<List<Region>> Group(IEnumerable<Region> factors)
    {
        var groups = new List<(HashSet<int> Variables, List<Region> Factors)>();
        foreach (var factor in factors.Distinct())
        {
            var variables = Own(factor).ToHashSet();
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
    /// <param name="Own">The same variables as a set.</param>
    /// <param name="Possible">Its projection on the shared variables.</param>
    private sealed record Part(Region Region, ImmutableArray<int> Variables, ValueSet Own, Region Possible);
}
