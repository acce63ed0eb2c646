using Swapwright.Diagnostics;

namespace Swapwright.Tests.Findings;

/// <summary>Belts, hoses and wires that do not go together: what the words of the finding say of each way in which they may not.</summary>
public sealed class FittedFindingsTests
{
    private const string Marn = "engines/marn.yaml";
    private const string Adjuster = "    adjuster: {station: alternator, kind: slide, direction: [1, 0.2], from: -20, to: 25}\n";
    private const string Own = "rules/charging/alternator-own.yaml";
    private const string WaterPump = "rules/charging/water-pump.yaml";
    private const string Lengths = "lengths: [950, 975, 1000, 1025, 1050, 1075, 1100]";
    private const string Hose = "hose: {circuits: [fuel], bore: 8, class: R9, length: 2000}";

    /// <summary>Three pulleys on fixed centres: there is no travel to tell, and the nearest belts on either side are named.</summary>
    [Theory]
    [InlineData("lengths: [500]", "and the nearest stocked are of 500 mm")]
    [InlineData("lengths: [500, 2000]", "and the nearest stocked are of 500 mm and 2000 mm")]
    public void BeltLength_FixedCentres_TellsNoTravel(string lengths, string end)
    {
        var messages = ChangedBase.Prove("workshop", (Marn, Adjuster, ""), ("parts/belt.yaml", Lengths, lengths)).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.EndsWith(end, message, StringComparison.Ordinal));
        Assert.All(messages, message => Assert.DoesNotContain("over the travel", message, StringComparison.Ordinal));
    }

    /// <summary>An alternator that a pulley with a position of its own drives: that one left off, there is nothing that the belt could run round.</summary>
    [Fact]
    public void BeltLength_OnePulleyLeft_IsTooFew()
    {
        const string Stations = """
                  - {id: shaft, title: Shaft, position: water-pump, x: 0, y: 0, plane: 0, side: grooved, diameter: 100, ribs: 5, role: idler, when-left-out: skip}
                  - {id: alternator, title: Alternator, position: alternator, x: 400, y: 0, plane: 0, side: grooved, diameter: 58, ribs: 5, role: alternator}

            """;
        var messages = ChangedBase.Prove("workshop", (Marn, Written(), Stations), (WaterPump, "{source: donor, treatment: refresh}", "{source: none, treatment: as-is}")).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.EndsWith(": only 1 pulley is left", message, StringComparison.Ordinal));
    }

    /// <summary>What is wrong with an adjuster is named as its file names it.</summary>
    [Theory]
    [InlineData("kind: slide, direction: [0, 0], from: -20, to: 25", "direction")]
    [InlineData("kind: slide, direction: [1, 0.2], from: 25, to: -20", "from")]
    [InlineData("kind: swing, pivot: [200, 100], from: 5, to: 5", "from")]
    [InlineData("kind: spring, direction: [1, 0.2], from: -20, to: 25, nominal: 40", "nominal")]
    public void BeltLength_AdjusterThatCannotBe_NamesWhatIsWritten(string adjuster, string field)
    {
        var messages = ChangedBase.Prove("workshop", (Marn, "kind: slide, direction: [1, 0.2], from: -20, to: 25", adjuster)).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.EndsWith($": `{field}` of `alternator` is out of range", message, StringComparison.Ordinal));
    }

    /// <summary>Between two pulleys of 100 mm one of 160 mm that reaches 60 mm down, where the span runs at 50; and three rollers that the belt has all on its back.</summary>
    [Theory]
    [InlineData(20, 160, "grooved", "it runs over `roller`")]
    [InlineData(300, 60, "back", "it does not close into one simple turn")]
    public void BeltLength_PathThatCannotBe_IsTold(int y, int diameter, string side, string words)
    {
        var ribs = side == "back" ? 0 : 5;
        var stations = FormattableString.Invariant($$"""
                  - {id: crank, title: Crankshaft, x: 0, y: 0, plane: 0, side: {{side}}, diameter: 100, ribs: {{ribs}}, role: crank}
                  - {id: alternator, title: Alternator, x: 400, y: 0, plane: 0, side: {{side}}, diameter: 100, ribs: {{ribs}}, role: alternator}
                  - {id: roller, title: Roller, x: 200, y: {{y}}, plane: 0, side: {{side}}, diameter: {{diameter}}, ribs: {{ribs}}, role: idler}

            """);
        var messages = ChangedBase.Prove("workshop", (Marn, Written(), stations)).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.EndsWith(": " + words, message, StringComparison.Ordinal));
    }

    /// <summary>The smooth back of a belt wants a smooth roller, the ribs want grooves.</summary>
    [Theory]
    [InlineData("side: grooved, diameter: 120, ribs: 5", "side: back, diameter: 120, ribs: 5", "the smooth back of the belt `accessory` runs on `water-pump`, which has grooves")]
    [InlineData("diameter: 120, ribs: 5, role: other", "diameter: 120, ribs: 0, role: other", "the ribs of the belt `accessory` run on `water-pump`, which has no grooves")]
    public void BeltFace_PulleyWithTheOtherFace_IsTold(string old, string changed, string message)
    {
        var engine = "x: -20, y: 220, plane: 0, side: grooved, diameter: 120, ribs: 5, role: other";
        var outside = engine.Replace(old, changed, StringComparison.Ordinal).Replace("x: -20, y: 220", changed.StartsWith("side: back", StringComparison.Ordinal) ? "x: 150, y: 100" : "x: -20, y: 220", StringComparison.Ordinal);
        var messages = ChangedBase.Prove("workshop", (Marn, engine, outside), (Marn, "water-pump: {title: Water pump, pulley: {diameter: 120, ribs: 5}, mass: 1.2}", "water-pump: {title: Water pump, mass: 1.2}")).Messages(FindingKinds.BeltFace);

        Assert.Equal([message], messages.Distinct());
    }

    [Theory]
    [InlineData("hose: {circuits: [fuel], bore: 8, class: R7, length: 2000}", 3.0, "`fuel-hose-8` is of class R7, too low for `feed` at 3 bar")]
    [InlineData("hose: {circuits: [fuel], bore: 8, length: 2000}", 3.0, "`fuel-hose-8` does not say its class, and `feed` carries fuel at 3 bar")]
    [InlineData("hose: {circuits: [fuel], bore: 8, length: 2000}", null, "`fuel-hose-8` does not say its class, and `feed` carries fuel")]
    public void HoseSize_FuelHose_IsHeldAgainstThePressure(string hose, double? bar, string message)
    {
        var port = bar is null ? "location: [-100, 400, 200]}" : "location: [-100, 400, 200], pressure: 3}";

        Assert.Equal([message], ChangedBase.Prove("plumbing", ("parts/fuel-hose-8.yaml", Hose, hose), ("engines/small.yaml", "location: [-100, 400, 200], pressure: 3}", port)).Messages(FindingKinds.HoseSize));
    }

    /// <summary>A hose of which nothing is asked cannot be given a reducer by an answer: it has to be asked first.</summary>
    [Theory]
    [InlineData("from: manifold-booster, to: booster, position: booster-hose}", "Put a part with this `reducer` among the parts of the answer at `booster-hose`, or correct a size.")]
    [InlineData("from: manifold-booster, to: booster}", "Give the hose a `position`, and its answer a part with this `reducer`; or correct a size.")]
    public void HoseSize_EndsThatDiffer_SaysWhereTheReducerGoes(string hose, string mend)
    {
        var proof = ChangedBase.Prove("plumbing", ("vocabulary.yaml", "from: manifold-booster, to: booster, position: booster-hose}", hose), ("parts/booster-valve.yaml", "reducer: {from: 12, to: 10}\n", ""));

        Assert.Contains(mend, proof.Findings.Where(finding => finding.Kind == FindingKinds.HoseSize).Select(finding => finding.Mend));
    }

    /// <summary>Hose of 6 mm goes over neither end of 8 mm; where two engines have the same ports it is told once, with all that it touches.</summary>
    [Fact]
    public void HoseSize_BoreThatFitsNeitherEnd_IsToldOnceForAll()
    {
        var proof = ChangedBase.Prove("plumbing", ("parts/fuel-hose-8.yaml", "bore: 8", "bore: 6"), ("engines/large.yaml", "  manifold-booster: {size: 12}\n", "  manifold-booster: {size: 12}\n  rail-inlet: {size: 8, location: [-90, 400, 200], pressure: 3}\n"));
        var finding = Assert.Single(proof.Findings, finding => finding.Kind == FindingKinds.HoseSize);

        Assert.Equal("`fuel-hose-8` has a bore of 6 mm, and `feed` goes over 8 mm and 8 mm", finding.Message);
        Assert.Equal(16, finding.Touches);
    }

    /// <summary>By the table 7 A want 0.85 mm² and 21 A 5 mm²; beyond its end no size is named, though the plug is still held to what it carries.</summary>
    [Theory]
    [InlineData(7, "size: 0.85", null)]
    [InlineData(7.5, "size: 0.85", "the 7.5 A of `alternator` ask for at least 1.25 mm², and the wire has 0.85 mm²")]
    [InlineData(21, "size: 2", "the 21 A of `alternator` ask for at least 5 mm², and the wire has 2 mm²")]
    [InlineData(40, "size: 2", null)]
    public void WireSize_HarnessWireOfADevice_IsHeldAgainstWhatItDraws(double current, string size, string? message)
    {
        var proof = ChangedBase.Prove(
            "workshop",
            (Marn, "location: [200, 240, 60]\n    pins: {1: battery-feed, 2: charge-lamp}\n", FormattableString.Invariant($"location: [200, 240, 60]\n    current: {current}\n    pins: {{1: battery-feed, 2: charge-lamp}}\n")),
            (Marn, "pins: {1: battery-feed, 2: {signal: charge-lamp", $"pins: {{1: {{signal: battery-feed, {size}}}, 2: {{signal: charge-lamp"));

        Assert.Equal(message is null ? [] : [message], proof.Messages(FindingKinds.WireSize).Where(one => one.Contains("`alternator` ask for", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("wire: {from: 0.75}", "0.75 mm² and more")]
    [InlineData("wire: {to: 4}", "up to 4 mm²")]
    [InlineData("wire: {from: 0.75, to: 4}", "0.75 to 4 mm²")]
    public void WireSize_TerminalThatDoesNotTakeTheWire_SaysWhatItTakes(string wire, string range)
    {
        var messages = ChangedBase.Prove("workshop", ("connectors/four-way.yaml", "wire: {from: 0.5, to: 16}", wire)).Messages(FindingKinds.WireSize);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.Contains(range, message, StringComparison.Ordinal));
    }

    /// <summary>Two alternators, two loops: what is computed differs between them, and a stated number that is neither is told with both.</summary>
    [Fact]
    public void StatedValue_SeveralNumbers_AreToldAsARange()
    {
        var message = Assert.Single(Stated("belt.accessory.longest: {value: 700, tolerance: 1}"));

        Assert.Matches("^`water-pump` states 700 mm for `belt.accessory.longest`, but [0-9.,]+ mm to [0-9.,]+ mm are computed$", message);
    }

    /// <summary>Where the belt does not close there is no loop, and so no number.</summary>
    [Fact]
    public void StatedValue_NumberInSomeCombinationsAlone_SaysSo()
    {
        var message = Assert.Single(Stated("belt.accessory.longest: {value: 700, tolerance: 1}", (Own, "source: chassis\n      treatment: move", "source: none\n      treatment: as-is")));

        Assert.EndsWith(" is computed, and elsewhere there is no such number", message, StringComparison.Ordinal);
    }

    /// <summary>Stations and adjuster of the engine's belt, as its file has them.</summary>
    private static string Written()
    {
        var engine = File.ReadAllText(Path.Combine(KnowledgeBaseCase.GoodFolder("workshop"), Marn));
        return engine[engine.IndexOf("      - {id: crank", StringComparison.Ordinal)..(engine.IndexOf(Adjuster, StringComparison.Ordinal) + Adjuster.Length)];
    }

    private static string[] Stated(string value, params (string File, string Old, string New)[] besides) => ChangedBase.Prove(
        "workshop", [(WaterPump, "treatment: refresh}\n", $"treatment: refresh}}\n  values:\n    {value}\n"), .. besides]).Messages(FindingKinds.StatedValue);
}
