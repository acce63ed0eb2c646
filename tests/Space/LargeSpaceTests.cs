using System.Collections.Immutable;
using System.Numerics;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>A space far too large to list: 60 chassis, 200 donors and 24 choices of 2 to 7 options.</summary>
public class LargeSpaceTests
{
    private const int Chassis = 60;
    private const int Donors = 200;

    // Four times each size from 2 to 7, so (7!)^4 = 645,241,282,560,000 ways to choose.
    private static readonly int[] ChoiceSizes = [.. Enumerable.Range(0, 24).Select(choice => 2 + (choice % 6))];
    private static readonly BigInteger Ways = BigInteger.Pow(5040, 4);

    private readonly RegionStore _store = new(Variables());

    [Fact]
    public void Size_WholeSpace_EqualsHandProduct()
    {
        Assert.Equal(BigInteger.Parse("7742895390720000000", System.Globalization.CultureInfo.InvariantCulture), _store.Size);
        Assert.Equal(Chassis * Donors * Ways, _store.Count(Region.All));
    }

    [Fact]
    public void Count_OneChassisLessOneDonor_EqualsHandArithmetic()
    {
        var region = _store.Minus(_store.Where(0, ValueSet.Of(Chassis, 7)), _store.Where(1, ValueSet.Of(Donors, 199)));
        Assert.Equal(199 * Ways, _store.Count(region));
        Assert.Equal(199, _store.CountWithin(region, [1]));
        Assert.Equal(199 * 2 * 3, _store.CountWithin(region, [0, 1, 2, 3]));
    }

    [Fact]
    public void Count_NoChoiceAtFirstOption_EqualsHandProduct()
    {
        var region = _store.AndAll(ChoiceSizes.Select((size, choice) => _store.Not(_store.Where(choice + 2, ValueSet.Of(size, 0)))));

        // Each size less one: four times 1 to 6, so (6!)^4.
        Assert.Equal(Chassis * Donors * BigInteger.Pow(720, 4), _store.Count(region));
    }

    [Fact]
    public void Count_DonorAboveChassis_EqualsTriangle()
    {
        var region = _store.OrAll(Enumerable.Range(0, Chassis).Select(chassis => _store.And(
            _store.Where(0, ValueSet.Of(Chassis, chassis)),
            _store.Where(1, ValueSet.Range(Donors, chassis + 1, Donors - 1)))));

        // Sum over c of 0..59 of (199 - c) = 60 x 199 - 59 x 60 / 2 = 10,170.
        Assert.Equal(10170 * Ways, _store.Count(region));
        Assert.Equal(10170, _store.CountWithin(region, [0, 1]));
    }

    [Fact]
    public void Algebra_ThousandsOfRules_StaysSmall()
    {
        var random = new Random(11);
        for (var position = 0; position < 100; position++)
        {
            var choice = random.Next(ChoiceSizes.Length - 2);
            var rules = Enumerable.Range(0, 50).Select(_ => Rule(random, choice)).ToList();
            var covered = _store.OrAll(rules);
            var gap = _store.Not(covered);
            Assert.Equal(_store.Size, _store.Count(gap) + _store.Count(covered));
            Assert.All(rules, rule => Assert.True(_store.Implies(rule, covered)));
            Assert.False(_store.Intersects(gap, rules[0]));
            if (!gap.IsNone)
            {
                Assert.True(_store.Contains(gap, _store.Witness(gap)));
            }
        }

        Assert.InRange(_store.NodeCount, 5000, 400_000);
    }

    [Fact]
    public void NodeLimit_TangledRegion_SaysSo()
    {
        // Equality of far apart variables doubles the nodes with every pair.
        var store = new RegionStore([.. Enumerable.Range(0, 32).Select(i => SmallSpace.Variable("v", 4))], nodeLimit: 5000);
        var error = Assert.Throws<SpaceLimitException>(() => store.AndAll(Enumerable.Range(0, 16).Select(pair => store.OrAll(
            Enumerable.Range(0, 4).Select(value => store.And(
                store.Where(pair, ValueSet.Of(4, value)),
                store.Where(pair + 16, ValueSet.Of(4, value))))))));
        Assert.Contains("5000", error.Message, StringComparison.Ordinal);

        // What was built before still answers.
        Assert.Equal(store.Size / 4, store.Count(store.Where(0, ValueSet.Of(4, 0))));
    }

    /// <summary>As rules are: a fact or two of the entities (here steps and ranges of values) and one or two of the position's three choices.</summary>
    private Region Rule(Random random, int firstChoice)
    {
        var constraints = new List<Constraint>();
        if (random.Next(3) > 0)
        {
            var (step, from) = (3 + random.Next(3), 10 * random.Next(4));
            constraints.Add(new Constraint(0, ValueSet.Where(Chassis, value => value % step == 0 || value < from)));
        }

        if (random.Next(3) > 0)
        {
            var (step, from) = (3 + random.Next(5), 20 * random.Next(8));
            constraints.Add(new Constraint(1, ValueSet.Where(Donors, value => value % step == 1 && value > from)));
        }

        foreach (var choice in new[] { random.Next(3), random.Next(3) }.Distinct().Select(offset => firstChoice + offset))
        {
            constraints.Add(new Constraint(choice + 2, ValueSet.Of(ChoiceSizes[choice], random.Next(ChoiceSizes[choice]))));
        }

        return _store.Product(constraints);
    }

    private static ImmutableArray<Variable> Variables() =>
    [
        SmallSpace.Variable("chassis", Chassis),
        SmallSpace.Variable("donor", Donors),
        .. ChoiceSizes.Select(size => SmallSpace.Variable("choice", size)),
    ];
}
