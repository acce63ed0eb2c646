using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Knowledge;

/// <summary>What the base <c>workshop</c> writes arrives in the entities, value by value.</summary>
public sealed class BindingTests
{
    private static readonly KnowledgeBase s_workshop = Proof.Of(KnowledgeBaseCase.GoodFolder("workshop")).Base;

    [Fact]
    public void Settings_Written_Arrive()
    {
        var settings = s_workshop.Settings;

        Assert.Equal(("Belts and wiring", "An invented scenario.", "en", "EUR"), (settings.Title, settings.Label, settings.Language, settings.Currency));
        Assert.Equal(("2026-01-15", "2026-03-01", 48), (settings.PriceDate, settings.AsOf, settings.StaleAfterMonths));
        Assert.Equal(("https://swaps.example/", "engine-harness"), (settings.BaseAddress, settings.HarnessPosition));
        Assert.Equal(new BeltSettings(140, 100, 60, 1, 0.5m, 1), settings.Belt);
        Assert.Equal(new WiringSettings(1.2m, 60, 40), settings.Wiring);
        Assert.Equal(("electric", "Disconnect the battery first."), (Assert.Single(settings.Cautions).About, settings.Cautions[0].Text));
    }

    [Fact]
    public void Settings_LeftOut_HaveTheUsualValues()
    {
        var settings = Proof.Of(KnowledgeBaseCase.GoodFolder("small")).Base.Settings;

        Assert.Equal(48, settings.StaleAfterMonths);
        Assert.Equal(new BeltSettings(140, 120, 60, 1, 0.5m, 1), settings.Belt);
        Assert.Null(settings.BaseAddress);
    }

    [Fact]
    public void Vocabulary_Written_Arrives()
    {
        var power = s_workshop.Vocabulary.Fact("donor", "power")!;
        Assert.Equal((FactType.Number, "kW", 20m, 400m), (power.Type, power.Unit.Symbol, power.Min, power.Max));
        Assert.Equal((true, "It stands on the plate."), (power.Observable, power.HowToTell));

        var lamp = s_workshop.Vocabulary.Signals["charge-lamp"];
        Assert.Equal(("Charge lamp", "switch", 0.2m, 0.75m, "BU", false), (lamp.Title, lamp.Kind, lamp.CurrentA, lamp.SizeMm2, lamp.Colour, lamp.Shared));
        Assert.True(s_workshop.Vocabulary.Signals["battery-feed"].Shared);
        Assert.True(s_workshop.Vocabulary.Signals.Has(SignalDeclaration.Unused));
        Assert.Equal(("Alternator", "alternator", "charging"), (s_workshop.Vocabulary.Devices["alternator"].Title, s_workshop.Vocabulary.Devices["alternator"].Position, s_workshop.Vocabulary.Devices["alternator"].System));
    }

    [Fact]
    public void Positions_Written_ArriveInTheOrderOfTheirSystems()
    {
        Assert.Equal(["charging", "control"], s_workshop.Systems.Select(system => system.Id));
        Assert.Equal(["alternator", "water-pump", "engine-harness"], s_workshop.PositionOrder.Select(position => position.Id));
        Assert.Equal(("electric", "The three-way plug is at its back."), (s_workshop.Positions["alternator"].Safety, s_workshop.Positions["alternator"].About));
    }

    [Fact]
    public void Source_Written_Arrives()
    {
        var bench = s_workshop.Sources["bench"];
        Assert.Equal(("Bench measurements", "measurement", "2025-05-01", "R. Halden", true, "Two afternoons."), (bench.Title, bench.Kind, bench.Date, bench.By, bench.Invented, bench.About));
    }

    [Fact]
    public void Chassis_Written_Arrives()
    {
        var chassis = s_workshop.Chassis["quillet"];

        Assert.Equal(("Quillet", "Orrin", "quillet", "base", new YearSpan(1984, 1987)), (chassis.Title, chassis.Maker, chassis.Family, chassis.Trim, chassis.Years));
        Assert.Equal(["charge-lamp"], chassis.Needs.ToArray());
        var alternator = chassis.AccessoryAt("alternator")!;
        Assert.Equal(new PulleyEntry(60, 5, 0, 2, -1), alternator.Pulley);
        Assert.Equal((4.5m, 55m), (alternator.MassKg, alternator.OutputA));
        var device = chassis.Device("alternator")!;
        Assert.Equal(("two-way", new BayPoint(180, 220, 60)), (device.Connector, device.Location));
        Assert.Equal(["1 battery-feed RD 16", "2 charge-lamp BU 0.75"], device.Pins.Select(Pin));
        Assert.Equal("four-way", chassis.Body!.Connector);
        Assert.Equal(4, chassis.Body.Pins.Length);
    }

    [Fact]
    public void Donor_Written_Arrives()
    {
        var donor = s_workshop.Donors["marn"];

        Assert.Equal(66m, donor.Fact("power")?.Number);
        var drive = Assert.Single(donor.BeltDrives);
        Assert.Equal(("accessory", "Accessory belt", "PK", 3.56m), (drive.Id, drive.Title, drive.Profile, drive.RibPitchMm));
        Assert.Equal(["crank", "alternator", "water-pump"], drive.Stations.Select(station => station.Id));
        var station = drive.Stations[1];
        Assert.Equal(("alternator", 200m, 240m, false, 58m, 5, "alternator", false), (station.Position, station.X, station.Y, station.OnBack, station.DiameterMm, station.Ribs, station.Role, station.CanBeLeftOut));
        Assert.True(drive.Stations[2].CanBeLeftOut);
        var adjuster = drive.Adjuster!;
        Assert.Equal(("alternator", "slide", 1m, 0.2m, -20m, 25m), (adjuster.Station, adjuster.Kind, adjuster.X, adjuster.Y, adjuster.From, adjuster.To));
        var harness = donor.Harness!;
        Assert.Equal((new BayPoint(-100, 300, 300), new BayPoint(-250, 320, 480)), (harness.Trunk, harness.EcuPlace));
        Assert.Equal(["alternator", "coolant-sender"], harness.Plugs.Select(plug => plug.Key));
        Assert.Equal(["1 battery-feed RD 16", "2 charge-lamp BU/WH 0.75"], harness.Plugs[0].Value.Pins.Select(Pin));
        Assert.Equal("four-way", harness.Body!.Connector);
    }

    [Fact]
    public void Connector_Written_Arrives()
    {
        var connector = s_workshop.Connectors["four-way"];

        Assert.Equal(["1", "2", "3", "4"], connector.Cavities);
        Assert.Equal(2, connector.Rows.Length);
        Assert.Equal(("blade-28", false, "One rib on the left."), (connector.Terminal, connector.Sealed, connector.Keying));
        Assert.Equal((0.5m, 16m, 60m, new Range3(8, 9, 12)), (connector.WireFromMm2, connector.WireToMm2, connector.MaxCurrentA, connector.Price));
        Assert.Equal(Range3.Exactly(6), s_workshop.Connectors["two-way"].Price);
    }

    [Fact]
    public void Part_Written_Arrives()
    {
        var belt = s_workshop.Parts["belt"];

        Assert.Equal(("Ribbed belt", "belt", "parts-shop", Range3.Exactly(14)), (belt.Title, belt.Category, belt.From, belt.Price));
        Assert.Equal("PK", belt.Belt!.Profile);
        Assert.Equal([4, 5, 6], belt.Belt.Ribs.ToArray());
        Assert.Equal([950, 975, 1000, 1025, 1050, 1075, 1100], belt.Belt.LengthsMm.ToArray());
    }

    [Fact]
    public void Choice_Written_Arrives()
    {
        var choice = s_workshop.Choices["alternator"];

        Assert.Equal(("Alternator", "Which alternator charges?", "Both fit the bracket.", 1), (choice.Title, choice.Question, choice.About, choice.Order));
        Assert.Equal(["keep", "donor"], choice.Options.Select(option => option.Id));
        Assert.Equal("It gives 55 A.", choice.Option("keep")!.About);
        Assert.Equal(("donor", "It is on the engine already."), (Assert.Single(choice.Recommendations).Option, choice.Recommendations[0].Because));
    }

    [Fact]
    public void Rule_Written_Arrives()
    {
        var rule = s_workshop.Rules["alternator-own"];
        var answer = Assert.Single(rule.Answers);

        Assert.Equal(("alternator", "chassis", "move", null, "belts", "The bolt holes agree."), (answer.Position, answer.Source, answer.Treatment, answer.Part, answer.Article, answer.Notes));
        Assert.Equal(["belt"], answer.Also.ToArray());
        Assert.Equal(["Bolt it to the bracket."], answer.Steps.ToArray());
        Assert.Equal(["Tightening before the belt is on."], answer.Mistakes.ToArray());
        Assert.Equal(["fit-belt"], rule.Tasks.ToArray());
        Assert.Equal(["Forgetting the ground strap."], rule.Mistakes.ToArray());
        Assert.Equal("alternator=donor", Assert.Single(rule.Advises).Option);
        Assert.Equal(("The bracket takes both.", "built", "2025-06-01"), (rule.Because, rule.Standing, rule.Checked));
        Assert.Equal(["bench"], rule.Sources.ToArray());
        Assert.Equal("electric", Assert.Single(s_workshop.Rules["alternator-donor"].Cautions).About);
    }

    [Fact]
    public void Task_Written_Arrives()
    {
        var task = s_workshop.Tasks["fit-belt"];

        Assert.Equal(("fit", "careful", 1, Range3.Exactly(0.5m), true, "It is within reach."), (task.Phase, task.Skill, task.People, task.Hours, task.Refresh, task.WhyNow));
        Assert.Equal("fit-engine", Assert.Single(task.After).Id);
        Assert.Equal("alternator", Assert.Single(task.Needs).Id);
        Assert.Equal("Spanner 13", Assert.Single(task.Tools).Title);
        Assert.Equal("Cloth", Assert.Single(task.Consumables));
        Assert.Equal(["Lay it round the pulleys.", "Tighten it."], task.Steps.ToArray());
        Assert.Null(task.When);
        Assert.NotNull(s_workshop.Tasks["fit-engine"].When);
    }

    [Fact]
    public void Article_Written_Arrives()
    {
        var article = s_workshop.Articles["belts"];

        Assert.Equal(("Belts", "How a belt is laid and tightened.", 1, 11), (article.Title, article.Summary, article.Order, article.BodyLine));
        Assert.StartsWith("Lay the belt round the crankshaft first.", article.Body, StringComparison.Ordinal);
        Assert.Equal("alternator", Assert.Single(article.Positions).Id);
        Assert.Equal("fit-belt", Assert.Single(article.Tasks).Id);
    }

    /// <summary>A cavity that gives the cabin a signal has to have one.</summary>
    [Fact]
    public void Device_ToCabinAtACavityWithoutASignal_IsToldAtItsPlace()
    {
        var proof = ChangedBase.Prove("workshop", ("engines/marn.yaml", "  coolant-sender:\n    connector: two-way\n    location: [60, 180, 250]\n", "  coolant-sender:\n    connector: two-way\n    location: [60, 180, 250]\n    to-cabin: [\"1\", \"3\"]\n"));

        var finding = Assert.Single(proof.Findings, finding => finding.Message.Contains("to-cabin", StringComparison.Ordinal));
        Assert.Equal(("reference", "the device `coolant-sender` has no signal at cavity `3`, which `to-cabin` names", "engines/marn.yaml:26:21"), (finding.Id, finding.Message, finding.Place.ToString()));
        Assert.Equal(["1", "3"], proof.Base.Donors["marn"].Device("coolant-sender")!.ToCabin.ToArray());
    }

    /// <summary>A lead that comes with its device can bring wires of that device's cavities alone.</summary>
    [Fact]
    public void Part_BringsAWireOfACavityThatItsDeviceLacks_IsToldAtItsPlace()
    {
        var proof = ChangedBase.Prove("workshop", ("parts/belt.yaml", "from: parts-shop\n", "from: parts-shop\ndevices: {coolant-sender: {connector: two-way, pins: {1: switched-feed}}}\nbrings: {coolant-sender: {cavities: [\"1\", \"4\"], plug: true}}\n"));

        var finding = Assert.Single(proof.Findings, finding => finding.Message.Contains("`brings`", StringComparison.Ordinal));
        Assert.Equal(("reference", "the device `coolant-sender` has no signal at cavity `4`, which `brings` names", "parts/belt.yaml:7:43"), (finding.Id, finding.Message, finding.Place.ToString()));
        var wires = Assert.Single(proof.Base.Parts["belt"].Brings);
        Assert.Equal(("coolant-sender", "1,4", true, false), (wires.Role, string.Join(',', wires.Cavities), wires.HasPlug, wires.HasFarEnds));
    }

    private static string Pin(PinEntry pin) => FormattableString.Invariant($"{pin.Cavity} {pin.Signal} {pin.Colour} {pin.SizeMm2}");
}
