using System.Numerics;

namespace Swapwright.Space;

/// <summary>
/// Covers of a region by few large cubes. A seed is the path of what is left to cover with the fewest constraints; it is
/// grown to a prime (no constraint can be dropped or widened) inside the region and the part nobody cares about, then
/// taken off. Growing asks the diagram which values of a variable would be safe, all at once.
/// </summary>
internal sealed class CubeSearch(RegionStore store)
{
    public IEnumerable<Cube> Enumerate(Region region, Region care)
    {
        var rest = store.And(region, care);
        var outside = store.Minus(care, region);
        while (!rest.IsNone)
        {
            var cube = Grow(store.ShortestPath(rest), rest, outside);
            yield return cube;
            rest = store.Minus(rest, store.Product(cube));
        }
    }

    public CubeCover Cover(Region region, Region care, int maximum)
    {
        var cubes = Enumerate(region, care).Take(maximum).ToList();
        var wanted = store.And(region, care);

        // Late cubes were grown for small remains; they are the first that the others may make needless.
        var before = new List<Region> { Region.None };
        foreach (var cube in cubes)
        {
            before.Add(store.Or(before[^1], store.Product(cube)));
        }

        var complete = store.Implies(wanted, before[^1]);
        if (!complete)
        {
            return new CubeCover([.. cubes], IsComplete: false);
        }

        var after = Region.None;
        var kept = new List<Cube>();
        for (var i = cubes.Count - 1; i >= 0; i--)
        {
            if (!store.Implies(wanted, store.Or(before[i], after)))
            {
                kept.Add(cubes[i]);
                after = store.Or(after, store.Product(cubes[i]));
            }
        }

        kept.Reverse();
        return new CubeCover([.. kept], IsComplete: true);
    }

    /// <summary>Grows a seed from the last variable up and from the first down, and keeps the better of the two.</summary>
    private Cube Grow(Cube seed, Region rest, Region outside)
    {
        var variables = seed.Constraints.Select(constraint => constraint.Variable).ToList();
        var down = Grow(seed, variables, outside);
        variables.Reverse();
        var up = Grow(seed, variables, outside);
        var (sizeDown, sizeUp) = (down.Constraints.Length, up.Constraints.Length);
        if (sizeDown != sizeUp)
        {
            return sizeDown < sizeUp ? down : up;
        }

        return Gain(down) > Gain(up) ? down : up;

        BigInteger Gain(Cube cube) => store.Count(store.And(rest, store.Product(cube)));
    }

    private Cube Grow(Cube seed, IEnumerable<int> order, Region outside)
    {
        var held = new SortedDictionary<int, ValueSet>(seed.Constraints.ToDictionary(constraint => constraint.Variable, constraint => constraint.Values));
        var kept = new List<int>();
        foreach (var variable in order)
        {
            // First drop what can be dropped: a widened constraint elsewhere could stand in the way.
            if (!store.Intersects(Without(variable), outside))
            {
                held.Remove(variable);
            }
            else
            {
                kept.Add(variable);
            }
        }

        foreach (var variable in kept)
        {
            var unsafeValues = store.AllowedValues(store.And(Without(variable), outside), variable);
            held[variable] = unsafeValues.Not();
        }

        return new Cube([.. held.Select(pair => new Constraint(pair.Key, pair.Value))]);

        Region Without(int variable)
            => store.Product(held.Where(pair => pair.Key != variable).Select(pair => new Constraint(pair.Key, pair.Value)));
    }
}
