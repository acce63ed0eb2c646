using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Tests.Rules;

/// <summary>A region is told in the facts that its rule asks for, not in others that happen to part the same variants.</summary>
public sealed class RegionWordsTests
{
    private static readonly Resolution s_resolution = Resolver.Resolve(new MemoryBase
    {
        ["kb.yaml"] = "title: Words\nas-of: 2026-03-01\n",
        ["vocabulary.yaml"] = """
            facts:
              chassis:
                tyre: {title: Tyre, type: one-of, values: {radial: {title: radial}, cross-ply: {title: cross-ply}}}
                room: {title: Room, type: number, unit: mm}
                load: {title: Load, type: number, unit: kg}
                lid: {title: Lid, type: flag}

            """,
        ["positions.yaml"] = "systems: {body: {title: Body}}\npositions: {bonnet: {system: body, title: Bonnet}}\n",
        ["chassis/one.yaml"] = "title: One\nfamily: car\nyears: {from: 1990, to: 1990}\nfacts: {tyre: radial, room: 500, load: 700, lid: true}\n",
        ["chassis/two.yaml"] = "title: Two\nfamily: car\nyears: {from: 1990, to: 1990}\nfacts: {tyre: radial, room: 520, load: 710, lid: true}\n",
        ["chassis/three.yaml"] = "title: Three\nfamily: car\nyears: {from: 1990, to: 1990}\nfacts: {tyre: cross-ply, room: 600, load: 800, lid: false}\n",
        ["chassis/four.yaml"] = "title: Four\nfamily: car\nyears: {from: 1990, to: 1990}\nfacts: {tyre: cross-ply, room: 610, load: 810, lid: false}\n",
        ["engines/motor.yaml"] = "title: Motor\nyears: {from: 1990, to: 1990}\n",
        ["rules/body/low.yaml"] = "title: Low\nwhen: {chassis.room: {to: 520}}\nthen: {answers: {bonnet: {source: made, treatment: modify}}}\n",
        ["rules/body/high.yaml"] = "title: High\nwhen: {not: {chassis.room: {to: 520}}}\nthen: {answers: {bonnet: {source: chassis}}}\n",
    }.Bind());

    /// <summary>Tyre, room, load and lid part the same two cars from the others; without a rule the first word that is cheapest is taken.</summary>
    [Fact]
    public void Describe_WithoutARule_TakesTheCheapest() => Assert.Equal("chassis: lid: yes", new RegionWords(s_resolution).Describe(Low(), s_resolution.Domain));

    [Theory]
    [InlineData("low", "", "chassis: room 520 mm or less")]
    [InlineData("low", "lid", "chassis: room 520 mm or less")] // its own before its neighbours'
    [InlineData("", "lid", "chassis: lid: yes")] // its neighbours' before what others ask for
    [InlineData("", "", "chassis: room 520 mm or less")] // what some rule asks for before what none does
    public void Describe_FactsThatPartTheSame_TakesWhatIsAskedFor(string rule, string beside, string words)
    {
        var own = rule.Length == 0 ? Condition.Always : s_resolution.Space.Base.Rules[rule].When;
        ImmutableHashSet<FactName> asked = beside.Length == 0 ? [] : [new("chassis", beside)];

        Assert.Equal(words, new RegionWords(s_resolution).Describe(Low(), s_resolution.Domain, own, asked));
    }

    [Fact]
    public void Describe_OneValueBetweenOthers_IsNotTwoBounds()
    {
        var two = s_resolution.Space.WhereChassis(chassis => chassis.Id == "two");

        Assert.Equal("chassis: room 520 mm", new RegionWords(s_resolution).Describe(two, s_resolution.Domain, s_resolution.Space.Base.Rules["low"].When, ImmutableHashSet<FactName>.Empty));
    }

    [Fact]
    public void Describe_OneYearBetweenOthers_IsNotTwoBounds()
    {
        static string Car(string years) => $"title: Car\nfamily: car\nyears: {years}\n";
        var resolution = Resolver.Resolve(new MemoryBase
        {
            ["kb.yaml"] = "title: Years\nas-of: 2026-03-01\n",
            ["vocabulary.yaml"] = "{}\n",
            ["positions.yaml"] = "systems: {body: {title: Body}}\npositions: {bonnet: {system: body, title: Bonnet}}\n",
            ["chassis/early.yaml"] = Car("{from: 1986, to: 1989}"),
            ["chassis/middle.yaml"] = Car("{from: 1990, to: 1990}"),
            ["chassis/middle-again.yaml"] = Car("{from: 1990, to: 1990}"),
            ["chassis/late.yaml"] = Car("{from: 1991, to: 1994}"),
            ["engines/motor.yaml"] = "title: Motor\nyears: {from: 1990, to: 1990}\n",
        }.Bind());
        string Words(params string[] cars) => new RegionWords(resolution).Describe(resolution.Space.WhereChassis(car => cars.Contains(car.Id)), resolution.Domain);

        Assert.Equal("chassis of 1990", Words("middle", "middle-again"));
        Assert.Equal("chassis of 1990 or later", Words("middle", "middle-again", "late"));
    }

    [Fact]
    public void FactsAsked_BoundsAndNesting_AreAllThere()
    {
        Condition room = new FactTest("chassis", "room", new RangeTest(new Bound(null, new FactName("donor", "height"), Inclusive: true), null), default);
        Condition same = new FactTest("donor", "plug", new EqualsFactTest(new("chassis", "socket")), default);

        Assert.Equal(
            ["chassis.room", "donor.height", "donor.plug", "chassis.socket"],
            new AllOf([new NotOf(room, default), new AnyOf([same, new ChoiceTest("gearbox", ["keep"], default)], default)], default).FactsAsked().Select(fact => fact.ToString()));
    }

    private static Swapwright.Space.Region Low() => s_resolution.When(s_resolution.Space.Base.Rules["low"]);
}
