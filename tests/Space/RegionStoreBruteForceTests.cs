using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>Every operation against the same operation on listed assignments, over seeded random spaces.</summary>
public class RegionStoreBruteForceTests
{
    private const int Spaces = 300;

    [Fact]
    public void Algebra_RandomRegions_EqualsLists() => ForEach(space =>
    {
        for (var i = 0; i < 4; i++)
        {
            var (region, truth) = space.NextRegion();
            Assert.Equal(truth, space.TruthOf(region));
        }
    });

    [Fact]
    public void Copy_RandomRegions_HoldTheSameInBothAndGrowApart() => ForEach(space =>
    {
        var (before, truth) = space.NextRegion();
        var copy = space.Store.Copy();
        var (after, _) = space.NextRegion();
        var nodes = space.Store.NodeCount;

        // What is made in one of them is made in no other.
        var inCopy = copy.Not(before);
        Assert.Equal(nodes, space.Store.NodeCount);

        Assert.Equal(truth, space.Truth(assignment => copy.Contains(before, assignment)));
        Assert.Equal([.. truth.Select(one => !one)], space.Truth(assignment => copy.Contains(inCopy, assignment)));
        Assert.Equal(space.Store.Count(space.Store.Or(before, after)), space.Store.Count(before) + space.Store.Count(space.Store.Minus(after, before)));
    });

    [Fact]
    public void Identity_EqualSets_EqualRegions() => ForEach(space =>
    {
        var store = space.Store;
        var (region, truth) = space.NextRegion();
        var built = store.OrAll(space.Members(truth).Select(member => store.Product(
            member.Select((value, variable) => new Constraint(variable, ValueSet.Of(store.Variables[variable].Size, value))))));
        Assert.Equal(region, built);
        var (other, otherTruth) = space.NextRegion();
        Assert.Equal(truth.SequenceEqual(otherTruth), region == other);
        Assert.Equal(truth.All(x => !x), region.IsNone);
        Assert.Equal(truth.All(x => x), region.IsAll);
    });

    [Fact]
    public void Comparison_RandomPairs_EqualsLists() => ForEach(space =>
    {
        var (a, truthA) = space.NextRegion();
        var (b, truthB) = space.NextRegion();
        var pairs = truthA.Zip(truthB).ToList();
        Assert.Equal(pairs.All(pair => !pair.First || pair.Second), space.Store.Implies(a, b));
        Assert.Equal(pairs.Any(pair => pair.First && pair.Second), space.Store.Intersects(a, b));
        Assert.Equal(space.Store.Minus(a, b).IsNone, space.Store.Implies(a, b));
        Assert.Equal(!space.Store.And(a, b).IsNone, space.Store.Intersects(a, b));
    });

    [Fact]
    public void Folds_RandomLists_EqualsLists() => ForEach(space =>
    {
        var parts = Enumerable.Range(0, space.Next(7)).Select(_ => space.NextRegion(2)).ToList();
        var any = Enumerable.Range(0, space.Assignments.Count).Select(i => parts.Any(part => part.Truth[i]));
        var all = Enumerable.Range(0, space.Assignments.Count).Select(i => parts.All(part => part.Truth[i]));
        Assert.Equal(any, space.TruthOf(space.Store.OrAll(parts.Select(part => part.Region))));
        Assert.Equal(all, space.TruthOf(space.Store.AndAll(parts.Select(part => part.Region))));
    });

    [Fact]
    public void Count_RandomRegions_EqualsLists() => ForEach(space =>
    {
        var (region, truth) = space.NextRegion();
        var kept = Enumerable.Range(0, space.Store.Variables.Length).Where(_ => space.Next(2) == 0).ToList();
        Assert.Equal(truth.Count(x => x), space.Store.Count(region));
        Assert.Equal(space.Assignments.Count, space.Store.Size);
        var distinct = space.Members(truth).Select(member => string.Join(',', kept.Select(variable => member[variable]))).Distinct().Count();
        Assert.Equal(distinct, space.Store.CountWithin(region, kept));
    });

    [Fact]
    public void Project_RandomVariables_EqualsLists() => ForEach(space =>
    {
        var (region, truth) = space.NextRegion();
        var removed = Enumerable.Range(0, space.Store.Variables.Length).Where(_ => space.Next(2) == 0).ToList();
        var shadows = space.Members(truth).Select(Shadow).ToHashSet();
        var projected = space.Store.Project(region, removed);
        Assert.Equal(space.Truth(assignment => shadows.Contains(Shadow(assignment))), space.TruthOf(projected));
        Assert.Empty(space.Store.Support(projected).Intersect(removed));

        string Shadow(int[] assignment) => string.Join(',', assignment.Where((_, variable) => !removed.Contains(variable)));
    });

    [Fact]
    public void Slice_RandomPoint_EqualsLists() => ForEach(space =>
    {
        var (region, truth) = space.NextRegion();
        var point = space.NextAssignment();
        var held = Enumerable.Range(0, point.Length).Where(_ => space.Next(2) == 0).ToList();
        var members = space.Members(truth).Select(Key).ToHashSet();
        var sliced = space.Store.Slice(region, held.Select(variable => (variable, point[variable])));
        Assert.Equal(space.Truth(assignment => members.Contains(Key(Held(assignment)))), space.TruthOf(sliced));
        Assert.Empty(space.Store.Support(sliced).Intersect(held));
        var single = held.Aggregate(region, (rest, variable) => space.Store.Restrict(rest, variable, point[variable]));
        Assert.Equal(sliced, single);

        int[] Held(int[] assignment) => [.. assignment.Select((value, variable) => held.Contains(variable) ? point[variable] : value)];
        static string Key(int[] assignment) => string.Join(',', assignment);
    });

    [Fact]
    public void Support_RandomRegions_NamesVariablesThatMatter() => ForEach(space =>
    {
        var (region, _) = space.NextRegion();
        var matters = Enumerable.Range(0, space.Store.Variables.Length).Where(variable => space.Store.Project(region, [variable]) != region);
        Assert.Equal(matters, space.Store.Support(region));
    });

    [Fact]
    public void AllowedValues_RandomRegions_EqualsLists() => ForEach(space =>
    {
        var (region, truth) = space.NextRegion();
        for (var variable = 0; variable < space.Store.Variables.Length; variable++)
        {
            var expected = space.Members(truth).Select(member => member[variable]).Distinct().Order();
            Assert.Equal(expected, space.Store.AllowedValues(region, variable));
        }
    });

    [Fact]
    public void Witness_RandomRegions_IsFirstMember() => ForEach(space =>
    {
        var (region, truth) = space.NextRegion();
        if (region.IsNone)
        {
            Assert.Throws<ArgumentException>(() => space.Store.Witness(region));
            return;
        }

        Assert.Equal(space.Members(truth)[0], space.Store.Witness(region));
    });

    [Fact]
    public void Nearest_RandomTargets_IsCheapestThenFirst() => ForEach(space =>
    {
        var (region, truth) = space.NextRegion();
        if (region.IsNone)
        {
            Assert.Throws<ArgumentException>(() => space.Store.Nearest(region, space.NextAssignment()));
            return;
        }

        var from = space.NextAssignment();
        int[] costs = [.. from.Select(_ => space.Next(4))];
        Assert.Equal(Best(_ => 1), space.Store.Nearest(region, from));
        Assert.Equal(Best(variable => costs[variable]), space.Store.Nearest(region, from, costs));

        int[] Best(Func<int, int> cost)
            => space.Members(truth).MinBy(member => member.Select((value, variable) => value == from[variable] ? 0 : cost(variable)).Sum())!;
    });

    [Fact]
    public void Cubes_RandomRegions_DenoteExactly() => ForEach(space =>
    {
        var store = space.Store;
        var (region, _) = space.NextRegion();
        var cubes = store.Cubes(region, int.MaxValue).ToList();
        Assert.Equal(region, store.OrAll(cubes.Select(store.Product)));
        var cover = store.Cover(region, int.MaxValue);
        Assert.True(cover.IsComplete);
        Assert.Equal(region, store.OrAll(cover.Cubes.Select(store.Product)));
        for (var i = 0; i < cover.Cubes.Length; i++)
        {
            Assert.NotEqual(region, store.OrAll(cover.Cubes.RemoveAt(i).Select(store.Product)));
            Assert.All(cover.Cubes[i].Constraints, constraint => AssertPrime(store, cover.Cubes[i], constraint, region));
        }
    });

    [Fact]
    public void Cover_WithCare_StaysBetweenBounds() => ForEach(space =>
    {
        var store = space.Store;
        var (region, _) = space.NextRegion();
        var (care, _) = space.NextRegion();
        var cover = store.Cover(region, int.MaxValue, care);
        var union = store.OrAll(cover.Cubes.Select(store.Product));
        Assert.True(store.Implies(store.And(region, care), union));
        Assert.True(store.Implies(union, store.Or(region, store.Not(care))));
    });

    [Fact]
    public void Cover_ShortMaximum_SaysSo() => ForEach(space =>
    {
        var (region, _) = space.NextRegion();
        var whole = space.Store.Cubes(region, int.MaxValue).Count();
        if (whole > 0)
        {
            var cut = space.Store.Cover(region, whole - 1);
            Assert.False(cut.IsComplete);
            Assert.Equal(whole - 1, cut.Cubes.Length);
        }
    });

    private static void AssertPrime(RegionStore store, Cube cube, Constraint constraint, Region region)
    {
        foreach (var value in constraint.Values.Not())
        {
            var wider = constraint with { Values = constraint.Values.Or(ValueSet.Of(constraint.Values.Size, value)) };
            var grown = store.Product(cube.Constraints.Replace(constraint, wider));
            Assert.False(store.Implies(grown, region));
        }
    }

    private static void ForEach(Action<SmallSpace> check)
    {
        for (var seed = 0; seed < Spaces; seed++)
        {
            check(new SmallSpace(seed));
        }
    }
}
