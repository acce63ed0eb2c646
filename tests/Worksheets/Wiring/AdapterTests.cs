using Swapwright.Site.Pages;
using Swapwright.Tests.Reports;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class AdapterTests
{
    private static readonly Ecu Old = Bench.Ecu("old", "ecu-8", "1:power-ground", "2:power-ground", "3:coolant", "4:purge", "5:knock");

    private static (string? From, string? To, AdapterAction Action)[] Rows(AdapterHarness? adapter) =>
        [.. adapter!.Rows.Select(row => (row.From, row.To, row.Action))];

    [Fact]
    public void Compute_PinOutsDiffer_JoinsBySignalAndCapsTheRest()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(Old, Bench.Ecu("new", "ecu-10", "10:coolant", "9:knock", "8:power-ground", "7:power-ground")));

        Assert.Equal(
            [
                ("a1", "a7", AdapterAction.Join),
                ("a2", "a8", AdapterAction.Join),
                ("a3", "a10", AdapterAction.Join),
                ("a4", null, AdapterAction.Cap),
                ("a5", "a9", AdapterAction.Join),
            ],
            Rows(sheet.EcuAdapter));
        Assert.True(sheet.EcuAdapter!.Rows[4].Shielded);
        Assert.Equal([new CountLine("ecu-10", 1)], sheet.Bill.Housings.AsEnumerable());
        Assert.Equal([new CountLine("ecu-8", 1)], sheet.Bill.Counterparts.AsEnumerable());
        Assert.Equal([new TerminalLine("ecu-10", "pin-1.0", 4, 4)], sheet.Bill.Terminals.AsEnumerable());
        Assert.Equal(6, sheet.Bill.BlankingPlugs);
        Assert.Equal(1200, sheet.Bill.TotalLengthMm);
        Assert.Equal(0, sheet.Bill.Splices);
    }

    [Fact]
    public void Compute_OneGroundTooManyOnEitherSide_JoinsTheLastPair()
    {
        var fewer = WiringWorksheet.Compute(Empty.WithEcus(Old, Bench.Ecu("new", "ecu-10", "6:power-ground")));
        var more = WiringWorksheet.Compute(Empty.WithEcus(
            Bench.Ecu("old", "ecu-8", "1:power-ground"), Bench.Ecu("new", "ecu-10", "6:power-ground", "7:power-ground")));

        Assert.Equal([("a1", "a6", AdapterAction.Join), ("a2", "a6", AdapterAction.Join)], Rows(fewer.EcuAdapter).Take(2));
        Assert.Equal("joins the wire of a6", fewer.EcuAdapter!.Rows[1].Note);
        Assert.Equal((1, 1), (fewer.Bill.Splices, fewer.Bill.Terminals.Single().Count));
        Assert.Equal([("a1", "a6", AdapterAction.Join), ("a1", "a7", AdapterAction.Join)], Rows(more.EcuAdapter));
        Assert.Equal((1, 2), (more.Bill.Splices, more.Bill.Terminals.Single().Count));
    }

    [Fact]
    public void Compute_SignalOnTheEcuInUseOnly_RunsToTheDeviceThatCarriesIt()
    {
        // The harness plug has the throttle's wire, its ECU side has not: 1.2 × (500 + 1000) + 60 = 1860 mm, spliced at the plug.
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("throttle", "oval-2", new(300, 400, 0), "1:throttle"))
            .WithPlug("throttle", Plug("oval-2", new(300, 400, 0), "1:throttle"))
            .WithEcus(Old, Bench.Ecu("new", "ecu-10", "1:throttle")));

        var row = sheet.EcuAdapter!.Rows.Single(row => row.To == "a1");
        Assert.Equal(AdapterAction.AddWire, row.Action);
        var run = Assert.Single(sheet.Runs);
        Assert.Equal((row.Run, 1860d, 1), (run.Label, run.LengthMm, run.Splices));
        Assert.Equal("throttle", run.To.Place);
    }

    [Fact]
    public void Compute_DeviceHasItsOwnNewWire_TheAdapterDoesNotAddAnother()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("throttle", "oval-2", Origin, "1:throttle"))
            .WithEcus(Old, Bench.Ecu("new", "ecu-10", "1:throttle")));

        var run = Assert.Single(sheet.Runs);
        Assert.Equal(WirePurpose.Device, run.Purpose);
        Assert.Equal(run.Label, sheet.EcuAdapter!.Rows.Single(row => row.To == "a1").Run);
    }

    [Fact]
    public void Compute_NothingCarriesTheSignal_MissingIsOptionalForASensorOnly()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(null, Bench.Ecu("new", "ecu-10", "1:throttle", "2:feed")));

        Assert.Equal([true, false], sheet.EcuAdapter!.Rows.Select(row => row.Optional));
        Assert.All(sheet.EcuAdapter.Rows, row => Assert.Equal(AdapterAction.Missing, row.Action));
        Assert.Equal((WiringProblemKind.SignalNowhere, "feed"), (sheet.Problems.Single().Kind, sheet.Problems.Single().Signal));
    }

    [Fact]
    public void Compute_SensorGroundAgainstPowerGround_StaysApart()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(
            Bench.Ecu("old", "ecu-8", "1:power-ground"), Bench.Ecu("new", "ecu-10", "1:sensor-ground")));

        Assert.Equal([("a1", null, AdapterAction.Cap), (null, "a1", AdapterAction.Missing)], Rows(sheet.EcuAdapter));
        Assert.Empty(sheet.Runs);
    }

    [Fact]
    public void Compute_HarnessWithoutEcuSide_EverySignalGetsAWire()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("injector", "oval-2", Origin, "1:injector-1", "2:feed"), Device("sensor", "oval-2", Origin, "1:coolant", "2:sensor-ground"))
            .WithPlug("starter", Plug("oval-2", Origin, "1:feed"))
            .WithEcus(null, Bench.Ecu("new", "ecu-10", "1:injector-1", "2:coolant", "3:sensor-ground", "4:feed")));

        Assert.All(sheet.EcuAdapter!.Rows, row => Assert.Equal(AdapterAction.AddWire, row.Action));
        Assert.Equal(4, sheet.EcuAdapter.Rows.Length);
        Assert.Empty(sheet.EcuAdapter.From.Plugs);
        Assert.Equal(4, sheet.Bill.Terminals.Single(line => line.Connector == "ecu-10").Count);
    }

    [Fact]
    public void Compute_SamePlacesInMatingPlugs_MakesNoAdapter()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(
            Bench.Ecu("old", "ecu-8", "1:coolant", "2:purge"), Bench.Ecu("new", "ecu-8", "1:coolant")));

        Assert.True(sheet.EcuAdapter!.PlugsTogether);
        Assert.Empty(sheet.Runs);
        Assert.Empty(sheet.Bill.Housings);
    }

    [Fact]
    public void Compute_TwoPlugs_NamesCavitiesByPlug()
    {
        var two = new Ecu("new", "new", [new("b", "ecu-8", Pins("12:coolant", "2:knock")), new("a", "ecu-10", Pins("3:power-ground"))]);
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(Old, two));

        Assert.Contains(("a1", "a3", AdapterAction.Join), Rows(sheet.EcuAdapter));
        Assert.Contains(("a5", "b2", AdapterAction.Join), Rows(sheet.EcuAdapter));
        Assert.Equal((WiringProblemKind.UnknownCavity, "12"), (sheet.Problems.Single().Kind, sheet.Problems.Single().Cavity));
    }

    [Fact]
    public void Compute_BodiesOfOneFamily_RePinInPlace()
    {
        var same = WiringWorksheet.Compute(Empty.WithBodies(
            Plug("bulkhead-6", Origin, "1:feed", "2:tach"), Plug("bulkhead-6", Origin, "1:feed", "2:tach")));
        var moved = WiringWorksheet.Compute(Empty.WithBodies(
            Plug("bulkhead-6", Origin, "1:feed", "2:tach"), Plug("bulkhead-6", Origin, "1:feed", "5:tach")));

        Assert.Null(same.BodyAdapter);
        Assert.True(moved.BodyAdapter!.PlugsTogether);
        Assert.Equal("move from 2 to 5", moved.BodyAdapter.Rows[1].Note);
        Assert.Empty(moved.Bill.Cuts);
    }

    [Fact]
    public void Compute_MatingBodiesWithGroundsThatFaceEachOther_MoveNothing()
    {
        // Cavity 3 faces cavity 3; 1 moves to 5, although 1 comes first in order.
        var moved = WiringWorksheet.Compute(Empty.WithBodies(
            Plug("bulkhead-6", Origin, "1:power-ground", "3:power-ground"), Plug("bulkhead-6", Origin, "3:power-ground", "5:power-ground")));
        var surplus = WiringWorksheet.Compute(Empty.WithBodies(
            Plug("bulkhead-6", Origin, "3:power-ground"), Plug("bulkhead-6", Origin, "3:power-ground", "5:power-ground")));

        Assert.Equal(["move from 1 to 5", "same cavity on both sides"], moved.BodyAdapter!.Rows.Select(row => row.Note));
        Assert.Equal(["same cavity on both sides", "joins the wire of 3"], surplus.BodyAdapter!.Rows.Select(row => row.Note));
        Assert.Equal((1, 1, 0), (surplus.Bill.Splices, surplus.Bill.Terminals.Single().Count, surplus.Bill.Housings.Length));
    }

    [Fact]
    public void Compute_BodiesFarApart_TheAdapterReaches()
    {
        // 1.2 × 400 + 60 = 540 mm, more than the 300 mm between plugs that lie side by side.
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(
            Plug("bulkhead-4", Origin, "1:feed"), Plug("bulkhead-6", new(400, 0, 0), "6:feed")));

        Assert.Equal([("1", "6", AdapterAction.Join)], Rows(sheet.BodyAdapter));
        Assert.Equal(540, Assert.Single(sheet.Runs).LengthMm);
    }

    [Fact]
    public void Compute_Needs_AreTracedToWhoGivesThem()
    {
        var sheet = WiringWorksheet.Compute((Empty with { Needs = ["gauge", "tach", "oil-lamp", "coolant"] })
            .With(Device("sender", "oval-2", Origin, "1:gauge"), Device("oil-switch", "oval-2", Origin, "2:oil-lamp"))
            .WithPlug("sender", Plug("oval-2", Origin, "1:gauge"))
            .WithPlug("oil-switch", Plug("oval-2", Origin, "2:oil-lamp"))
            .WithEcus(null, Bench.Ecu("new", "ecu-10", "1:tach"))
            .WithBodies(Plug("bulkhead-4", Origin, "3:oil-lamp"), Plug("bulkhead-6", Origin, "1:gauge", "2:tach", "3:oil-lamp", "4:coolant")));

        Assert.Equal(
            [
                new NeedTrace("coolant", NeedSupply.Unsupplied, null, null, null),
                new NeedTrace("gauge", NeedSupply.Device, "sender", "1", null),
                new NeedTrace("oil-lamp", NeedSupply.HarnessBody, "harness body", "3", "oil-switch"),
                new NeedTrace("tach", NeedSupply.Ecu, "new", "a1", null),
            ],
            sheet.Needs.AsEnumerable());
        Assert.Contains(sheet.Problems, problem => problem.Kind == WiringProblemKind.NeedUnsupplied && problem.Signal == "coolant");

        // One wire joins ECU and cabin, and both adapters name it: 1.2 × 1000 + 60 mm.
        var tach = Assert.Single(sheet.Runs, run => run.Signal == "tach");
        Assert.Equal(1260, tach.LengthMm);
        Assert.Equal(tach.Label, sheet.EcuAdapter!.Rows.Single().Run);
        Assert.Equal("new wire to the cabin's bulkhead plug, 2", sheet.EcuAdapter.Rows.Single().Note);
        Assert.Equal(tach.Label, sheet.BodyAdapter!.Rows.Single(row => row.Signal == "tach").Run);
        Assert.Equal("new wire to new, a1", sheet.BodyAdapter.Rows.Single(row => row.Signal == "tach").Note);
        Assert.Equal("new wire to sender, 1, spliced", sheet.BodyAdapter.Rows.Single(row => row.Signal == "gauge").Note);
        Assert.Equal("Harness, bulkhead plug", sheet.BodyAdapter.From.Title);
    }

    /// <summary>An ECU listens to a sensor, a switch and a feed, and drives a lamp or a relay; a control unit on the data line listens as well. Common practice, no source.</summary>
    [Theory]
    [InlineData("tach", "sender")]
    [InlineData("gauge", "sender")]
    [InlineData("battery", "sender")]
    [InlineData("purge", "ecu")]
    [InlineData("pulses", "ecu")]
    public void Compute_NeedThatDeviceAndEcuHave_IsFedByTheOneThatGivesIt(string signal, string giver)
    {
        var input = (Empty with { Needs = [signal], Signals = WithPulses })
            .With(Device("control-unit", "flat-3", Origin, $"1:{signal}", "2:bus"), Device("sender", "oval-2", Origin, $"1:{signal}"))
            .WithEcus(Bench.Ecu("ecu", "ecu-8", $"1:{signal}"), Bench.Ecu("ecu", "ecu-8", $"1:{signal}"))
            .WithBodies(Plug("bulkhead-4", Origin, $"3:{signal}"), Plug("bulkhead-6", Origin, $"3:{signal}"));

        Assert.Equal(new NeedTrace(signal, NeedSupply.HarnessBody, "harness body", "3", giver), WiringWorksheet.Compute(input).Needs.Single());
    }

    private static System.Collections.Immutable.ImmutableDictionary<string, Signal> WithPulses => Signals
        .Add("pulses", new("pulses", "Logic pulses", SignalKind.Logic, null, 0.5, "BU", Shared: false, Shielded: false))
        .Add("bus", new("bus", "Data line", SignalKind.Data, null, 0.5, "GY", Shared: false, Shielded: false));

    /// <summary>Who makes the adapter by the table cuts the wire of the cut list: the row's colour is that wire's, and not the one found on the other side.</summary>
    [Fact]
    public void Compute_ColoursDifferOnTheTwoSides_TheRowHasTheOneThatIsCut()
    {
        var sheet = WiringWorksheet.Compute(TwoColours);

        Assert.Equal(["YE", "BN", "GN"], sheet.EcuAdapter!.Rows.Select(row => row.Colour));
        Assert.All(sheet.EcuAdapter.Rows.Where(row => row.Run is not null), row => Assert.Equal(sheet.Runs.Single(run => run.Label == row.Run).Colour, row.Colour));
    }

    [Fact]
    public void Bench_RowOfAnAdapter_NamesItsPieceOfTheCutListInTheSameColour()
    {
        var sheet = SmallBase.Sheet("hazel-90", "alder-14") with { Wiring = WiringWorksheet.Compute(TwoColours) };
        var bench = GuideWirings.Bench(new SiteKnowledge(SmallBase.Proof), sheet)!;
        var cuts = bench.Cuts.ToDictionary(cut => cut.Number, cut => cut.Colour.Code, StringComparer.Ordinal);

        Assert.Equal(3, bench.Adapter!.Rows.Count);
        Assert.Equal(["", "BN"], bench.Adapter.Rows.Where(row => row.Action.StartsWith("cap", StringComparison.Ordinal)).SelectMany(row => new[] { row.Number, row.Colour!.Code }));
        Assert.All(bench.Adapter.Rows.Where(row => !row.Action.StartsWith("cap", StringComparison.Ordinal)), row => Assert.Equal(cuts[row.Number], row.Colour!.Code));
    }

    /// <summary>The feed is red at the harness and yellow at the ECU; the sensor's wire runs anew; the valve has no cavity any more.</summary>
    private static WiringInput TwoColours => Empty
        .With(Device("sensor", "oval-2", Origin, "1:coolant"))
        .WithPlug("sensor", Plug("oval-2", Origin, "1:coolant"))
        .WithPlug("valve", Plug("oval-2", Origin, "1:purge", "2:feed"))
        .WithEcus(
            new Ecu("old", "old", [new EcuPlug("a", "ecu-8", [new Pin("1", "feed", "RD", 1.5), new Pin("2", "purge", "BN", 0.75)])]),
            new Ecu("new", "new", [new EcuPlug("a", "ecu-10", [new Pin("7", "feed", "YE", 1.5), new Pin("8", "coolant", "GY", 0.5)])]));

    [Fact]
    public void Compute_NeedThatNothingFeeds_IsReported()
    {
        var sheet = WiringWorksheet.Compute((Empty with { Needs = ["tach"] }).WithBodies(
            Plug("bulkhead-4", Origin, "1:tach"), Plug("bulkhead-4", Origin, "1:tach")));

        Assert.Equal(NeedSupply.HarnessBody, sheet.Needs.Single().Supply);
        Assert.Equal(WiringProblemKind.NeedUnfed, sheet.Problems.Single().Kind);
    }
}
