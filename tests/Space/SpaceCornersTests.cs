using System.Collections;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>Sets and regions at their edges: values outside the domain, regions that depend on nothing, assignments that are too short.</summary>
public class SpaceCornersTests
{
    private static readonly RegionStore s_store = new([SmallSpace.Variable("chassis", 3), SmallSpace.Variable("donor", 2), SmallSpace.Variable("choice", 70)]);

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, false)]
    [InlineData(1, true)]
    [InlineData(69, true)]
    [InlineData(70, false)]
    [InlineData(1000, false)]
    public void Contains_AnyNumber_IsOfTheSetOrNot(int value, bool contained) => Assert.Equal(contained, ValueSet.Of(70, 1, 69).Contains(value));

    [Fact]
    public void Equals_SetsOfOneDomain_GoByTheirValues()
    {
        var set = ValueSet.Of(70, 1, 69);

        Assert.True(set.Equals((object)ValueSet.Of(70, 69, 1)));
        Assert.False(set.Equals(ValueSet.Of(71, 1, 69)));
        Assert.False(set.Equals(ValueSet.Of(70, 1)));
        Assert.False(set.Equals(null));
        Assert.False(set.Equals((object)"{1,69}"));
        Assert.Equal("{1,69}", set.ToString());
        Assert.Equal([1, 69], ((IEnumerable)set).Cast<int>());
    }

    [Fact]
    public void Lowest_OfNothing_IsNone() => Assert.Equal(-1, ValueSet.Empty(70).Lowest);

    [Fact]
    public void Top_RegionThatDependsOnNothing_IsRefused()
    {
        Assert.Throws<ArgumentException>(() => s_store.Top(Region.All));
        Assert.Throws<ArgumentException>(() => s_store.Top(Region.None));
    }

    [Fact]
    public void Top_OtherRegion_PartsItsFirstVariable()
    {
        var region = s_store.Or(s_store.And(s_store.Where(1, ValueSet.Of(2, 1)), s_store.Where(2, ValueSet.Of(70, 7))), s_store.Where(1, ValueSet.Of(2, 0)));
        var (variable, edges) = s_store.Top(region);

        Assert.Equal(1, variable);
        Assert.Equal(region, s_store.OrAll(edges.Select(edge => s_store.And(s_store.Where(1, edge.Values), edge.Child))));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    public void Contains_AssignmentOfAnotherLength_IsRefused(int length) => Assert.Throws<ArgumentException>(() => s_store.Contains(Region.All, new int[length]));

    /// <summary>Three parts tied to the same two shared variables, counted over a region that goes on beyond them: as many as the whole has.</summary>
    [Fact]
    public void Count_PartsOverSharedVariables_IsThatOfTheWhole()
    {
        for (var seed = 0; seed < 40; seed++)
        {
            var random = new Random(seed);
            var store = new RegionStore([.. new[] { 4, 4, 4, 2, 2, 2, 2 }.Select((size, at) => SmallSpace.Variable(FormattableString.Invariant($"v{at}"), size))]);
            Region Tie(int own) => store.OrAll(Enumerable.Range(0, 5).Select(_ => store.Product([.. new[] { 0, 1, 2, own }.Select(level => new Constraint(level, ValueSet.Where(store.Variables[level].Size, _ => random.Next(3) > 0)))])));
            List<Region> factors = [Tie(3), Tie(4), Tie(5)];
            var parts = new FactoredRegion(store, factors, 3);
            var whole = store.AndAll(factors);
            var region = store.Or(Tie(6), store.Where(0, ValueSet.Of(4, random.Next(4))));

            Assert.Equal(store.Count(whole), parts.Size);
            Assert.Equal(store.Count(store.And(whole, region)), parts.Count(region));
            Assert.All(Enumerable.Range(0, 20).Select(_ => store.Variables.Select(variable => random.Next(variable.Size)).ToArray()), at => Assert.Equal(store.Contains(whole, at), parts.Contains(at)));
            Assert.Equal(store.CountWithin(whole, [0, 1, 2, 4]), parts.CountWithin([4]));
var without = Tie(4);
            Assert.Equal(store.Intersects(store.And(whole, region), store.Not(without)), parts.Intersects([region], [without]));
        }
    }
}
