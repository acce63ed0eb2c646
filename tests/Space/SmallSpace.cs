using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>A space small enough to list, and random regions of it built twice: as a diagram and as plain lists.</summary>
internal sealed class SmallSpace
{
    private readonly Random _random;

    public SmallSpace(int seed)
    {
        _random = new Random(seed);
        var sizes = Enumerable.Range(0, _random.Next(1, 6)).Select(_ => _random.Next(8) == 0 ? 70 : _random.Next(1, 5)).ToList();

        // One wide domain at most: it takes masks of two words, two would make lists of thousands.
        for (var i = 0; i < sizes.Count; i++)
        {
            sizes[i] = sizes.IndexOf(70) is var wide && wide >= 0 && i > wide ? Math.Min(sizes[i], 3) : sizes[i];
        }

        Store = new RegionStore([.. sizes.Select((size, index) => Variable(string.Create(CultureInfo.InvariantCulture, $"v{index}"), size))]);
        Assignments = [.. List(sizes)];
    }

    public RegionStore Store { get; }

    public List<int[]> Assignments { get; }

    public static Variable Variable(string name, int size)
        => new(name, [.. Enumerable.Range(0, size).Select(value => string.Create(CultureInfo.InvariantCulture, $"{name}-{value}"))]);

    public int Next(int bound) => _random.Next(bound);

    public int[] NextAssignment() => Assignments[Next(Assignments.Count)];

    public ValueSet NextValues(int variable)
    {
        var share = Next(4) + 1;
        return ValueSet.Where(Store.Variables[variable].Size, _ => Next(5) < share);
    }

    /// <summary>A random region and, for each assignment in order, whether it belongs to it.</summary>
    public (Region Region, bool[] Truth) NextRegion(int depth = 3)
    {
        if (depth == 0 || Next(6) == 0)
        {
            var variable = Next(Store.Variables.Length);
            var values = NextValues(variable);
            return (Store.Where(variable, values), Truth(assignment => values.Contains(assignment[variable])));
        }

        var (a, truthA) = NextRegion(depth - 1);
        var (b, truthB) = NextRegion(depth - 1);
        return Next(4) switch
        {
            0 => (Store.And(a, b), Zip((x, y) => x && y)),
            1 => (Store.Or(a, b), Zip((x, y) => x || y)),
            2 => (Store.Minus(a, b), Zip((x, y) => x && !y)),
            _ => (Store.Not(a), [.. truthA.Select(x => !x)]),
        };

        bool[] Zip(Func<bool, bool, bool> combine) => [.. truthA.Zip(truthB, combine)];
    }

    public bool[] Truth(Func<int[], bool> holds) => [.. Assignments.Select(holds)];

    public bool[] TruthOf(Region region) => Truth(assignment => Store.Contains(region, assignment));

    public List<int[]> Members(bool[] truth) => [.. Assignments.Where((_, index) => truth[index])];

    /// <summary>All assignments in lexicographic order.</summary>
    private static IEnumerable<int[]> List(List<int> sizes)
    {
        IEnumerable<ImmutableArray<int>> lists = [[]];
        foreach (var size in sizes)
        {
            lists = lists.SelectMany(list => Enumerable.Range(0, size).Select(list.Add)).ToList();
        }

        return lists.Select(list => list.ToArray());
    }
}
