using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>Laws of sets, held as equality of regions (which is equality of diagrams).</summary>
public class RegionLawTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1000, 60)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Laws_RandomRegions_Hold(int seed)
    {
        var space = new SmallSpace(seed);
        var s = space.Store;
        var (a, b, c) = (space.NextRegion().Region, space.NextRegion().Region, space.NextRegion().Region);
        Assert.Equal(s.Not(s.And(a, b)), s.Or(s.Not(a), s.Not(b)));
        Assert.Equal(s.Not(s.Or(a, b)), s.And(s.Not(a), s.Not(b)));
        Assert.Equal(a, s.Not(s.Not(a)));
        Assert.Equal(a, s.And(a, a));
        Assert.Equal(a, s.Or(a, a));
        Assert.Equal(a, s.Or(a, s.And(a, b)));
        Assert.Equal(a, s.And(a, s.Or(a, b)));
        Assert.Equal(s.And(a, s.Or(b, c)), s.Or(s.And(a, b), s.And(a, c)));
        Assert.Equal(s.Or(a, s.And(b, c)), s.And(s.Or(a, b), s.Or(a, c)));
        Assert.Equal(s.And(s.And(a, b), c), s.And(a, s.And(b, c)));
        Assert.Equal(s.Minus(a, b), s.And(a, s.Not(b)));
        Assert.Equal(Region.None, s.And(a, s.Not(a)));
        Assert.Equal(Region.All, s.Or(a, s.Not(a)));
        Assert.Equal(s.Count(a) + s.Count(b), s.Count(s.Or(a, b)) + s.Count(s.And(a, b)));
        Assert.Equal(s.Size, s.Count(a) + s.Count(s.Not(a)));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Expansion_OverOneVariable_GivesRegionBack(int seed)
    {
        var space = new SmallSpace(seed);
        var store = space.Store;
        var (region, _) = space.NextRegion();
        for (var variable = 0; variable < store.Variables.Length; variable++)
        {
            var size = store.Variables[variable].Size;
            var slices = Enumerable.Range(0, size).Select(value => store.Restrict(region, variable, value)).ToList();
            var parts = slices.Select((slice, value) => store.And(slice, store.Where(variable, ValueSet.Of(size, value))));
            Assert.Equal(region, store.OrAll(parts));
            Assert.Equal(store.Project(region, [variable]), store.OrAll(slices));
        }
    }

    [Fact]
    public void Folds_NoRegions_GiveNeutral()
    {
        var store = new RegionStore([SmallSpace.Variable("a", 2)]);
        Assert.Equal(Region.None, store.OrAll([]));
        Assert.Equal(Region.All, store.AndAll([]));
        Assert.Equal(Region.All, store.Product([]));
        Assert.Equal(Region.None, store.Where(0, ValueSet.Empty(2)));
        Assert.Equal(Region.All, store.Where(0, ValueSet.Full(2)));
    }

    [Fact]
    public void Where_ForeignValues_Refused()
    {
        var store = new RegionStore([SmallSpace.Variable("a", 2)]);
        Assert.Throws<ArgumentException>(() => store.Where(0, ValueSet.Full(3)));
        Assert.Throws<ArgumentOutOfRangeException>(() => store.Where(1, ValueSet.Full(2)));
    }

    [Fact]
    public void Construct_VariableWithoutValues_Refused()
        => Assert.Throws<ArgumentOutOfRangeException>(() => new RegionStore([new Variable("a", [])]));
}
