using System.Numerics;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>An intersection in parts must answer as the same intersection in one piece does.</summary>
public class FactoredRegionTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(2000, 150)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Questions_RandomFactors_EqualWhole(int seed)
    {
        var space = new SmallSpace(seed);
        var store = space.Store;
        var shared = Math.Min(2, store.Variables.Length);
        var factors = Enumerable.Range(0, space.Next(6)).Select(_ => space.NextRegion(space.Next(2)).Region).ToList();
        var whole = store.AndAll(factors);
        var parts = new FactoredRegion(store, factors, shared);
        Assert.Equal(whole, parts.ToRegion());
        Assert.Equal(store.Project(whole, Enumerable.Range(shared, store.Variables.Length - shared)), parts.Possible);
        var own = parts.Groups.SelectMany(group => group).ToList();
        Assert.Equal(own.Count, own.Distinct().Count());
        for (var i = 0; i < 5; i++)
        {
            var (region, _) = space.NextRegion(2);
            Assert.Equal(store.Intersects(whole, region), parts.Intersects(region));
            Assert.Equal(store.Implies(whole, region), parts.Implies(region));
            Assert.Equal(store.Count(store.And(whole, region)), parts.Count(region));
            Assert.True(store.Implies(whole, parts.Near(region)));
            if (parts.Intersects(region))
            {
                Assert.Equal(store.Witness(store.And(whole, region)), parts.Witness(region));
            }

            int[] held = [.. space.NextAssignment().Take(shared)];
            Assert.Equal(store.Slice(whole, held.Select((value, variable) => (variable, value))), parts.At(held));
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Projections_RandomFactors_EqualThoseOfTheWhole(int seed)
    {
        var space = new SmallSpace(seed);
        var store = space.Store;
        var shared = Math.Min(2, store.Variables.Length);
        var factors = Enumerable.Range(0, space.Next(6)).Select(_ => space.NextRegion(space.Next(2)).Region).ToList();
        var whole = store.AndAll(factors);
        var parts = new FactoredRegion(store, factors, shared);
        int[] own = [.. Enumerable.Range(shared, store.Variables.Length - shared)];
        int[] some = [.. own.Where(_ => space.Next(2) == 0)];
        var (region, _) = space.NextRegion(2);
        Assert.Equal(whole, store.AndAll(parts.Factors));
        Assert.Equal(store.Project(whole, own.Except(some)), parts.Onto(some));
        Assert.Equal(store.Project(store.And(whole, region), own.Except(some)), parts.Onto(some, region));
        Assert.Equal(store.Project(whole, some), parts.Without(some).ToRegion());
    }

    [Fact]
    public void Near_VariablesOfOneGroup_IsProjectionOfWhole()
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var space = new SmallSpace(seed);
            var store = space.Store;
            var shared = Math.Min(1, store.Variables.Length);
            var factors = Enumerable.Range(0, 4).Select(_ => space.NextRegion(1).Region).ToList();
            var parts = new FactoredRegion(store, factors, shared);
            foreach (var group in parts.Groups)
            {
                var others = Enumerable.Range(shared, store.Variables.Length - shared).Except(group);
                Assert.Equal(store.Project(store.AndAll(factors), others), parts.Near(group));
            }
        }
    }

    [Fact]
    public void Count_ManyLooseParts_NeedsFewNodes()
    {
        // Every pair of entities bars one of seven options at each of twenty choices, each choice in its own pattern:
        // one diagram would part all 3,600 pairs over twenty levels.
        const int Entities = 60;
        var store = new RegionStore(
        [
            SmallSpace.Variable("chassis", Entities),
            SmallSpace.Variable("donor", Entities),
            .. Enumerable.Range(0, 20).Select(_ => SmallSpace.Variable("choice", 7)),
        ]);
        var factors = from choice in Enumerable.Range(0, 20)
                      from chassis in Enumerable.Range(0, Entities)
                      select store.Not(store.OrAll(Enumerable.Range(0, 7).Select(option => store.Product(
                      [
                          new Constraint(0, ValueSet.Of(Entities, chassis)),
                          new Constraint(1, ValueSet.Where(Entities, donor => ((donor * (choice + 1)) + (chassis * (choice + 3))) % 7 == option)),
                          new Constraint(choice + 2, ValueSet.Of(7, option)),
                      ]))));
        var parts = new FactoredRegion(store, factors, 2);
        Assert.Equal(Entities * Entities * BigInteger.Pow(6, 20), parts.Count(Region.All));
        Assert.InRange(store.NodeCount, 1, 100_000);
    }
}
