using System.Collections.Immutable;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Where new wires start. Common practice, no source.</summary>
public sealed class StartOfWiresTests
{
    private static readonly ImmutableDictionary<string, Signal> s_bus = Signals
        .Add("high", new Signal("high", "Bus high", SignalKind.Data, 0.1, 0.5, "OG", Shared: false, Shielded: false) { TwistedWith = "low" })
        .Add("low", new Signal("low", "Bus low", SignalKind.Data, 0.1, 0.5, "BN", Shared: false, Shielded: false));

    /// <summary>The resistor lies nearest to the ECU and is still the last of the line: module, scan plug, resistor.</summary>
    [Fact]
    public void Compute_BusWithATerminator_EndsThere()
    {
        var runs = WiringWorksheet.Compute((Empty with { Signals = s_bus }).WithEcus(null, Ecu("brain", "ecu-8", "1:high", "2:low")).With(
            Device("resistor", "oval-2", Origin, "1:high", "2:low"),
            Device("module", "flat-3", new(0, 200, 0), "1:high", "2:low", "3:battery"),
            Device("scan", "flat-3", new(0, 400, 0), "1:high", "2:low", "3:battery"))).Runs;

        Assert.Equal(["brain", "module", "scan"], new[] { "module", "scan", "resistor" }.Select(role => runs.Single(run => run.Role == role && run.Signal == "high").To.Place));
    }

    /// <summary>Coils at 0, 100 and 900 mm; feeds at 0 and 1,000 mm. Each for itself the third would start at 1,000; together 0 is nearer: 1,000 mm against 2,000 mm.</summary>
    [Fact]
    public void Compute_LikeDevicesOnOneFeed_StartAtOnePlace()
    {
        var sheet = WiringWorksheet.Compute(Coils(current: 1).WithPlug("left", Plug("oval-2", Origin, "1:feed")).WithPlug("right", Plug("oval-2", new(0, 1000, 0), "1:feed"))
            .With(Device("left", "oval-2", Origin, "1:feed"), Device("right", "oval-2", new(0, 1000, 0), "1:feed")));

        Assert.Equal(["left", "left", "left"], sheet.Runs.Where(run => run.Role.StartsWith("coil", StringComparison.Ordinal)).Select(run => run.To.Place));
    }

    /// <summary>0.75 mm² carries 5 A (table of one body-builder manual): three coils of 1.5 A, 4.5 A, may hang on the wire that nothing takes any more; three of 2 A, 6 A, may not.</summary>
    [Theory]
    [InlineData(1.5, "old-coil")]
    [InlineData(2.0, "left")]
    public void Compute_FeedThatNothingTakesAnyMore_ComesFirstWhereItCarriesAll(double current, string start)
    {
        var runs = WiringWorksheet.Compute(Coils(current).WithPlug("left", Plug("oval-2", Origin, "1:feed")).WithPlug("old-coil", Plug("oval-2", new(0, 1000, 0), "1:feed"))
            .With(Device("left", "oval-2", Origin, "1:feed"))).Runs;

        Assert.Equal(start == "left", runs.Any(run => run.Role.StartsWith("relay", StringComparison.Ordinal) || Places.IsAddedRelay(run.Role)));
        Assert.Contains(runs, run => run.To.Place == start);
        Assert.DoesNotContain(runs, run => run.To.Place is "left" or "old-coil" && run.To.Place != start);
    }

    /// <summary>Three coils of 2 A are too much for a wire of 5 A: the first is led to contact 87 of the relay, the others are joined there, and none starts at the old plug.</summary>
    [Fact]
    public void Compute_FeedOverAnAddedRelay_IsNoWireOfTheOldPlug()
    {
        var sheet = WiringWorksheet.Compute(Coils(2).WithPlug("old-coil", Plug("oval-2", new(0, 1000, 0), "1:feed")));

        Assert.Equal(
            [WireAction.Runs, WireAction.Joins, WireAction.Joins],
            sheet.Plugs.Where(plug => plug.Role.StartsWith("coil", StringComparison.Ordinal)).Select(plug => plug.Wires.Single(wire => wire.Signal == "feed").Action).Order());
        Assert.Equal([WireEndKind.Splice], sheet.Runs.Where(run => run.To.Place == "old-coil").Select(run => run.To.Kind));
    }

    /// <summary>The plug's own device leaves the feed over: its wire is cut out and led on, and no end is capped.</summary>
    [Fact]
    public void LooseEnds_WireLeftOverAtAFittedDevice_IsCutOutWhereItFeedsAnother()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithPlug("alternator", Plug("square-2", Origin, "1:oil-lamp", "2:feed"))
            .With(Device("alternator", "oval-2", Origin, "1:oil-lamp"), Device("valve", "oval-2", new(0, 100, 0), "1:feed") with { CurrentA = 1 }));
        var end = Assert.Single(LooseEnds.Of(sheet), end => end is { Place: "alternator", Cavity: "2" });

        Assert.Equal(LooseAction.CutOut, end.Action);
        Assert.Equal("the device has no use for it: the wire goes to valve, 1", end.Reason);
        Assert.Equal(0, sheet.Bill.Caps);
        Assert.True(Assert.Single(sheet.Runs).TakesOver);
    }

    /// <summary>An ECU has the input, the loom made for it has no such wire: the new one gets a terminal in the empty cavity.</summary>
    [Theory]
    [InlineData(false, WireEndKind.Terminal)]
    [InlineData(true, WireEndKind.Splice)]
    public void Compute_CavityOfTheEcu_IsFreeWhereTheHarnessLeadsNothingToIt(bool wired, WireEndKind end)
    {
        var ecu = Ecu("brain", "ecu-8", "1:knock", "2:coolant");
        var input = Empty.WithEcus(ecu, ecu).WithPlug("coolant-sensor", Plug("oval-2", Origin, "1:coolant")).With(Device("knock-sensor", "oval-2", Origin, "1:knock"));
        var run = Assert.Single(WiringWorksheet.Compute(wired ? input.WithPlug("elsewhere", Plug("flat-3", new(0, 300, 0), "1:knock")).With(Device("elsewhere", "flat-3", new(0, 300, 0), "1:knock")) : input).Runs);

        Assert.Equal((end, "brain", "a1"), (run.To.Kind, run.To.Place, run.To.Cavity));
    }

    /// <summary>The same with another ECU: no row joins a cavity behind which there is no wire.</summary>
    [Fact]
    public void Adapter_CavityWithoutAWireBehindIt_IsNoRow()
    {
        var adapter = WiringWorksheet.Compute(Empty.WithEcus(Ecu("old", "ecu-8", "1:knock", "2:coolant"), Ecu("new", "ecu-10", "5:knock", "6:coolant"))
            .WithPlug("coolant-sensor", Plug("oval-2", Origin, "1:coolant")).With(Device("knock-sensor", "oval-2", Origin, "1:knock"), Device("coolant-sensor", "oval-2", Origin, "1:coolant"))).EcuAdapter!;

        Assert.Equal([("a2", "a6", AdapterAction.Join), (null, "a5", AdapterAction.AddWire)], adapter.Rows.Select(row => (row.From, row.To, row.Action)));
    }

    /// <summary>The new relay takes the output over from the cabin's, unless the cabin needs it or the harness was made for both.</summary>
    [Theory]
    [InlineData(false, false, false, true)]
    [InlineData(true, false, false, false)]
    [InlineData(false, true, false, false)]
    [InlineData(false, false, true, false)]
    public void Adapter_OutputThatANewDeviceTakesOver_IsCappedAtTheCabin(bool needed, bool inCabin, bool ownPlug, bool capped)
    {
        var relay = Device("fan-relay", "oval-2", Origin, "1:purge") with { InCabin = inCabin };
        var input = (Empty with { Needs = needed ? ["purge"] : [] }).WithEcus(Ecu("brain", "ecu-8", "1:purge"), Ecu("brain", "ecu-8", "1:purge"))
            .WithBodies(Plug("bulkhead-6", new(0, 0, 500), "5:purge"), Plug("bulkhead-4", new(0, 0, 500), "4:purge")).With(relay);
        var rows = WiringWorksheet.Compute(ownPlug ? input.WithPlug("fan-relay", Plug("oval-2", Origin, "1:purge")) : input).BodyAdapter!.Rows;

        Assert.Equal(!capped, rows.Any(row => row.Action == AdapterAction.Join));
        Assert.Equal(capped ? ["cap it: fan-relay takes its place"] : [], rows.Where(row => row.From is null).Select(row => row.Note));
    }

    /// <summary>A coil with a driver in it: its electronics refer to the metal that its power ground goes to, by a ring at the engine's stud, though the harness has the signal at its ECU plug. 300 mm of way: 1.2 × 300 + 60.</summary>
    [Theory]
    [InlineData(false, true, WireEndKind.Ring, "stud", 420)]
    [InlineData(false, false, WireEndKind.Splice, "old", 1260)] // no stud is known
    [InlineData(true, true, WireEndKind.Ring, "body metal", 300)] // behind the dash: the body
    public void Compute_GroundOfElectronicsBesideAPowerGround_GoesToTheStud(bool inCabin, bool hasStud, WireEndKind end, string place, double length)
    {
        var signals = Signals.SetItem("power-ground", Signals["power-ground"] with { CurrentA = 5 })
            .Add("logic-ground", new Signal("logic-ground", "Logic ground", SignalKind.Ground, 1, 0.75, "BN", Shared: true, Shielded: false));
        var input = (Empty with { Signals = signals }).WithEcus(Ecu("old", "ecu-8", "1:logic-ground"), null).With(Device("coil", "flat-3", Origin, "1:power-ground", "2:logic-ground") with { InCabin = inCabin });
        var run = WiringWorksheet.Compute(hasStud ? input.WithPlug("stud", Plug("oval-2", new(0, 300, 0), "1:power-ground")).With(Device("stud", "oval-2", new(0, 300, 0), "1:power-ground")) : input)
            .Runs.Single(run => run.Signal == "logic-ground");

        Assert.Equal((end, place, length), (run.To.Kind, run.To.Place, run.LengthMm));
    }

    /// <summary>The line goes on from the module, and the harness's branches to an idle plug and to the bulkhead are left: stubs, where the ECU speaks on the line.</summary>
    [Theory]
    [InlineData(true, "high", true)]
    [InlineData(false, "high", false)] // nothing speaks on it
    [InlineData(true, "coolant", false)] // no line
    public void LooseEnds_BranchOfADataLine_IsCutBack(bool speaks, string signal, bool cutBack)
    {
        var old = Ecu("old", "ecu-8", "1:high", "2:low", "3:coolant");
        var reasons = LooseEnds.Of(WiringWorksheet.Compute((Empty with { Signals = s_bus }).WithEcus(old, speaks ? Ecu("new", "ecu-10", "4:high", "5:low", "6:coolant") : null)
            .WithPlug("cluster", Plug("flat-3", new(0, 100, 0), "1:high", "2:low", "3:coolant"))
            .WithBodies(Plug("bulkhead-6", Origin, "1:high", "2:low", "3:coolant"), Plug("bulkhead-4", Origin, "4:oil-lamp"))))
            .Where(end => end.Signal == signal && end.Action == LooseAction.Cap && end.Place is "cluster" or Places.HarnessBody && end.Signal == signal).Select(end => end.Reason).ToList();

        Assert.NotEmpty(reasons);
        Assert.All(reasons, reason => Assert.Equal(cutBack, reason.Contains("cut the wire back to where it branches off", StringComparison.Ordinal)));
    }

    /// <summary>A kit behind the dash has a lamp, and so has the dash: one output, one lamp.</summary>
    [Theory]
    [InlineData(true, true, true, true)]
    [InlineData(false, true, true, false)] // nothing in the dash wants it
    [InlineData(true, false, true, false)] // the dash's plug has no cavity for it
    [InlineData(true, true, false, false)] // a load in the bay
    public void Compute_LampOfAKitWhereTheDashHasOne_StaysEmpty(bool needed, bool hasCavity, bool inCabin, bool empty)
    {
        var sheet = WiringWorksheet.Compute((Empty with { Needs = needed ? ["purge"] : [] }).WithEcus(Ecu("brain", "ecu-8", "1:purge"), Ecu("brain", "ecu-8", "1:purge"))
            .WithBodies(Plug("bulkhead-6", Origin, "5:purge"), hasCavity ? Plug("bulkhead-4", Origin, "4:purge") : Plug("bulkhead-4", Origin, "4:oil-lamp"))
            .With(Device("kit", "oval-2", Origin, "1:purge") with { InCabin = inCabin }));
        var row = Assert.Single(sheet.Plugs.Single(plug => plug.Role == "kit").Wires);

        Assert.Equal(empty, row.Action == WireAction.Empty);
        Assert.Equal(!empty, sheet.Runs.Any(run => run.Role == "kit"));
        Assert.Equal(empty ? [(LooseAction.LeaveOff, "the cabin has one of its own on this output: leave the cavity empty")] : [], LooseEnds.Of(sheet).Where(end => end.Place == "kit" && end.Action == LooseAction.LeaveOff).Select(end => (end.Action, end.Reason)));
    }

    /// <summary>Three coils in a row.</summary>
    private static WiringInput Coils(double current) => Empty.With(
        [.. new[] { ("coil-1", 0), ("coil-2", 100), ("coil-3", 900) }.Select(one => Device(one.Item1, "oval-2", new(0, one.Item2, 0), "1:feed") with { CurrentA = current, Position = "coils" })]);
}
