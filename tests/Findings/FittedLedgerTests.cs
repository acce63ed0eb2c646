using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Findings;

/// <summary>Numbers of worksheets that rules state, held over the whole space: what is fitted, bound, filled in and tightened decides them.</summary>
public sealed class FittedLedgerTests
{
    private const string Tyres = """
        facts:
          donor: {power: {title: Power, type: number, unit: kW}}
          chassis:
            width: {title: Tyre width, type: number, unit: mm, means: tyre-width}
            aspect: {title: Aspect ratio, type: number, unit: "%", means: tyre-aspect}
            rim: {title: Rim, type: number, unit: in, means: rim-diameter}
          part:
            width: {title: Tyre width, type: number, unit: mm, means: tyre-width, at: a, optional: true}
            aspect: {title: Aspect ratio, type: number, unit: "%", means: tyre-aspect, at: a, optional: true}
            rim: {title: Rim, type: number, unit: in, means: rim-diameter, at: a, optional: true}

        """;

    private static readonly (string Path, string Text)[] s_wheels =
    [
        ("vocabulary.yaml", Tyres),
        ("chassis/car.yaml", "title: Car\nyears: {from: 1990, to: 1993}\nfacts: {width: 175, aspect: 70, rim: 13}\n"),
        ("choices/wheels.yaml", "title: Wheels\nquestion: Which?\norder: 1\noptions: {own: {title: Own}, wide: {title: Wide}}\n"),
        ("choices/gearbox.yaml", "title: Gearbox\nquestion: Which?\norder: 2\noptions: {four: {title: Four, binds: {gearbox: four}}, five: {title: Five, binds: {gearbox: five}}}\n"),
        ("gearboxes/four.yaml", "title: Four\nratios: {first: 3.5, fourth: 1, final: 4}\n"),
        ("gearboxes/five.yaml", "title: Five\nratios: {first: 3.5, fourth: 1, fifth: 0.8, final: 4}\n"),
        ("parts/wide-wheels.yaml", "title: Wide wheels\nfacts: {width: 185, aspect: 60, rim: 14}\n"),
        ("rules/all/own.yaml", "title: Own\nwhen: {choice.wheels: own}\nthen: {answers: {a: {source: chassis, treatment: as-is}}}\n"),
        ("rules/all/wide.yaml", "title: Wide\nwhen: {choice.wheels: wide}\nthen: {answers: {a: {source: new, treatment: as-is, part: wide-wheels}}}\n"),
    ];

    /// <summary>U = 3.05 (d + 2 W A): 3.05 × (330.2 + 245) = 1,754.4 mm with 175/70 R 13, and 3.05 × (355.6 + 222) = 1,761.7 mm with 185/60 R 14, by hand.</summary>
    [Theory]
    [InlineData("1754.4", "1761.7 mm is computed", 4)]
    [InlineData("1761.7", "1754.4 mm is computed", 4)]
    [InlineData("1700", "1754.4 mm to 1761.7 mm are computed", 8)]
    public void StatedValue_TyreThatAPartBrings_IsHeldWhereItIsFitted(string stated, string words, int touches)
    {
        var finding = Assert.Single(States(s_wheels, $"gearing.rolling-circumference: {{value: {stated}, tolerance: 0.1}}").Findings, finding => finding.Kind == FindingKinds.StatedValue);

        Assert.EndsWith("but " + words, finding.Message.Replace(",", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(touches, finding.Touches);
    }

    /// <summary>60 rev/min × U ∕ (i i_f) with the gearbox that the choice binds: 26.3 km/h in the four-speed's highest, 26.3 ∕ 0.8 = 32.9 in the five-speed's.</summary>
    [Fact]
    public void StatedValue_GearboxThatAChoiceBinds_DecidesTheTopGear()
    {
        var finding = Assert.Single(
            States(s_wheels, "gearing.top-gear: {value: 26.3, tolerance: 0.2}").Findings, finding => finding.Kind == FindingKinds.StatedValue);

        Assert.Matches("but 32\\.9 km/h to 33(\\.0)? km/h are computed$", finding.Message);
        Assert.Equal(4, finding.Touches);
    }

    /// <summary>A tyre of which nothing is known has no circumference to hold a number against.</summary>
    [Fact]
    public void StatedValue_FigureThatNoLedgerHas_IsNoSuchNumber()
    {
        var finding = Assert.Single(States([], "gearing.top-gear: {value: 26.3}").Findings, finding => finding.Kind == FindingKinds.StatedValue);

        Assert.EndsWith("but no such number is there", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>3 litres in the engine, 1.5 in the radiator that stays or 2 in the one that is bought.</summary>
    [Theory]
    [InlineData("4.5", "5 L is computed")]
    [InlineData("5", "4.5 L is computed")]
    public void StatedValue_FillingThatAPartBrings_IsHeldWhereItIsFitted(string stated, string words)
    {
        (string, string)[] files =
        [
            ("chassis/car.yaml", "title: Car\nyears: {from: 1990, to: 1993}\nfluids: {coolant: {grade: Blue, amount: 1.5, at: a}}\n"),
            ("engines/large.yaml", "title: Large\nyears: {from: 1995, to: 1995}\nfacts: {power: 90}\nfluids: {coolant: {grade: Blue, amount: 3}}\n"),
            ("engines/small.yaml", "title: Small\nyears: {from: 1995, to: 1995}\nfacts: {power: 60}\nlike: large\n"),
            ("parts/radiator.yaml", "title: Radiator\nfluids: {coolant: {grade: Blue, amount: 2}}\n"),
            ("rules/all/own.yaml", "title: Own\nwhen: {donor.power: {below: 75}}\nthen: {answers: {a: {source: chassis, treatment: as-is}}}\n"),
            ("rules/all/new.yaml", "title: New\nwhen: {donor.power: {from: 75}}\nthen: {answers: {a: {source: new, treatment: as-is, part: radiator}}}\n"),
        ];
        var finding = Assert.Single(States(files, $"torques.fluid.coolant: {{value: {stated}, tolerance: 0.1}}").Findings, finding => finding.Kind == FindingKinds.StatedValue);

        Assert.EndsWith("but " + words, finding.Message, StringComparison.Ordinal);
        Assert.Equal(1, finding.Touches);
    }

    /// <summary>A bolt of a part is tightened where the part goes in, and under its own condition.</summary>
    [Theory]
    [InlineData("", 1)]
    [InlineData(", when: {donor.variant: large}", 1)]
    [InlineData(", when: {donor.variant: small}", 0)]
    public void StatedValue_BoltOfAPart_IsHeldWhereItIsTightened(string when, int computed)
    {
        var proof = States(Bolted(when), "torques.bolt.hub-bolt: {value: 60}");

        Assert.Equal(computed, proof.Messages(FindingKinds.StatedValue).Count(message => message.Contains("45 N·m is computed", StringComparison.Ordinal) || message.Contains("45 N m is computed", StringComparison.Ordinal)));
        Assert.Equal(computed == 0 ? ["`hub-bolt` of `hub` is tightened in no guide: its `when` never holds where `hub` appears"] : [], proof.Messages(FindingKinds.TaskOrder));
    }

    /// <summary>Thirteen choices that each bind a gearbox or another are 8,192 cases, more than are tried: it is said that the numbers are not held.</summary>
    [Fact]
    public void UnheldValue_MoreCasesThanAreTried_IsToldAndNotJudged()
    {
        var choices = Enumerable.Range(1, 13).Select(at => FormattableString.Invariant($"choice-{at:00}")).Select((id, at) => ($"choices/{id}.yaml", FormattableString.Invariant(
            $"title: {id}\nquestion: Which?\norder: {at + 1}\noptions: {{four: {{title: Four, binds: {{gearbox: four}}}}, five: {{title: Five, binds: {{gearbox: five}}}}}}\n")));
        var proof = States([.. s_wheels.Where(file => !file.Path.StartsWith("choices/g", StringComparison.Ordinal)), .. choices], "gearing.top-gear: {value: 1}", "torques.bolt.hub-bolt: {value: 1}");

        Assert.Equal(["gearing.top-gear", "torques.bolt.hub-bolt"], proof.Messages(FindingKinds.UnheldValue).Select(message => message.Split('`')[1]));
        Assert.Empty(proof.Messages(FindingKinds.StatedValue));
    }

    /// <summary>A part that a fact names is used, as is a wiring part where there is a harness to work on; without either nothing uses them.</summary>
    [Theory]
    [InlineData("facts: {kit: gasket}\n", new[] { "heat-shrink" })]
    [InlineData("", new[] { "gasket", "heat-shrink" })]
    public void PartUse_PartThatAFactNames_IsUsed(string facts, string[] unused)
    {
        var proof = Proof.Of(TinyBase.With(
            ("vocabulary.yaml", "facts: {donor: {power: {title: Power, type: number, unit: kW}}, chassis: {kit: {title: Kit, type: reference, to: part, optional: true}}}\n"),
            ("chassis/car.yaml", "title: Car\nyears: {from: 1990, to: 1993}\n" + facts),
            ("parts/gasket.yaml", "title: Gasket\n"),
            ("parts/heat-shrink.yaml", "title: Heat-shrink\nwiring: {goods: heat-shrink}\n")).Tree());

        Assert.Equal(unused, proof.Messages(FindingKinds.PartUse).Select(message => message.Split('`')[1]));
    }

    private static (string Path, string Text)[] Bolted(string when) =>
    [
        ("parts/hub.yaml", $"title: Hub\nfasteners:\n  hub-bolt: {{title: Hub bolt, thread: M10x1.25, stated: 45{when}}}\n"),
        ("rules/all/hub.yaml", "title: Hub\nwhen: {donor.variant: large}\nthen: {answers: {a: {source: new, treatment: as-is, part: hub}}}\n"),
        ("rules/all/none.yaml", "title: None\nwhen: {donor.variant: small}\nthen: {answers: {a: {source: none, treatment: as-is}}}\n"),
    ];

    /// <summary>The files with a rule that states numbers everywhere.</summary>
    private static Proof States((string Path, string Text)[] files, params string[] values) =>
        Proof.Of(TinyBase.With([.. files, ("rules/all/states.yaml", $"title: States\nthen:\n  answers: {{b: {{source: donor, treatment: as-is}}}}\n  values:\n{string.Concat(values.Select(value => $"    {value}\n"))}")]).Tree());
}
