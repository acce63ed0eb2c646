using System.Xml.Linq;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>One wire of each sort, laid out by hand: what its trace, its drawing and the list of loose ends say of it.</summary>
public sealed class WayOfASignalTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    // The plug lies 200 mm from the device: a new wire is 1.2 × 200 + 60 = 300 mm, and so is a piece that is let in.
    private static readonly BayPoint s_aside = new(0, 0, -200);

    private static readonly Ecu s_ecu = Ecu("ecu", "ecu-8", "1:throttle", "2:coolant");

    /// <summary>By the plug's family, its pins and its distance: what is done to one wire, in the trace's words.</summary>
    [Theory]
    [InlineData("oval-2", "1", 0, "plugs in")]
    [InlineData("oval-2", "2", 0, "moves to this cavity")]
    [InlineData("flat-3", "1", 0, "new housing")]
    [InlineData("square-2", "1", 0, "by the adapter lead")]
    [InlineData("oval-2", "1", -200, "plugs in, lengthened")]
    [InlineData("flat-3", "1", -200, "new housing, lengthened")]
    public void Trace_WireOfAPlug_SaysWhatIsDoneToIt(string connector, string cavity, double away, string work)
    {
        var sheet = Sheet(connector, cavity, away);

        var step = Assert.Single(SignalTrace.Of(sheet, "throttle")!.Devices);
        Assert.Equal(("sensor", "1", cavity, work), (step.From.Place, step.From.Cavity, step.To!.Cavity, step.Work));
        Assert.Equal("sensor, harness plug", step.To.Title);
        Assert.Equal(away == 0 ? null : 300.0, step.LengthMm);
        Assert.Equal(("BN", 0.75), step.Wire);
    }

    /// <summary>The same wires drawn: the cavity of the plug as found, the piece that is let in, the lead, and the ECU's cavity at the end.</summary>
    [Theory]
    [InlineData("oval-2", "2", 0, "Cavity 1, Throttle sensor, BN 0.75 mm², from cavity 2 of the plug as found, to ECU a1.")]
    [InlineData("oval-2", "1", -200, "Cavity 1, Throttle sensor, BN 0.75 mm², from cavity 1 of the plug as found, let in 300 mm, to ECU a1.")]
    [InlineData("square-2", "1", 0, "Cavity 1, Throttle sensor, BN 0.75 mm², from cavity 1 of the plug as found, by the adapter lead, to ECU a1.")]
    public void Drawing_WireOfAPlug_TellsTheSame(string connector, string cavity, double away, string told) => Assert.Equal(told, Told(Sheet(connector, cavity, away), "sensor"));

    [Fact]
    public void Trace_EcuThatTheHarnessWasMadeFor_TakesItsOwnPlug()
    {
        var step = Assert.Single(SignalTrace.Of(Sheet("oval-2", "1", 0), "throttle")!.Ecu);

        Assert.Equal(("ecu", "a1", "the harness's own plug goes in"), (step.From.Place, step.From.Cavity, step.Work));
        Assert.Null(step.To);
    }

    /// <summary>No plug at all: a new wire to the ECU by way of the trunk, 1.2 × (0 + 1000) + 60 = 1260 mm.</summary>
    [Fact]
    public void Trace_DeviceWithoutPlug_RunsANewWireToTheEcu()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithEcus(s_ecu, s_ecu));

        var step = Assert.Single(SignalTrace.Of(sheet, "throttle")!.Devices);
        Assert.Equal(("ecu", "a1", "new wire", 1260.0), (step.To!.Place, step.To.Cavity, step.Work, step.LengthMm!.Value));
        Assert.Equal("Cavity 1, Throttle sensor, BU 0.5 mm², new wire, 1,260 mm, to ECU a1.", Told(sheet, "sensor"));
    }

    /// <summary>A ground that the device's own plug lacks and another plug 200 mm away has: joined there.</summary>
    [Fact]
    public void Trace_SharedGround_JoinsTheNearestWire()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("valve", "oval-2", Origin, "1:power-ground"), Device("sensor", "oval-2", s_aside, "1:power-ground"))
            .WithPlug("sensor", Plug("oval-2", s_aside, "1:power-ground")));

        var step = SignalTrace.Of(sheet, "power-ground")!.Devices.Single(one => one.From.Place == "valve");
        Assert.Equal(("sensor", "new wire, joined to one that carries it", 300.0), (step.To!.Place, step.Work, step.LengthMm!.Value));
        Assert.EndsWith("new wire, spliced, 300 mm, to sensor 1, splice.", Told(sheet, "valve"), StringComparison.Ordinal);
        Assert.Equal(LooseAction.FeedFrom, LooseEnds.Of(sheet).Single(end => end.Place == "valve").Action);
    }

    /// <summary>The distributor is gone: its wire is cut out and lengthened to the sensor that takes its place.</summary>
    [Fact]
    public void Trace_WireOfAnIdlePlug_IsTakenOver()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithPlug("distributor", Plug("oval-2", s_aside, "1:throttle"))
            .WithEcus(Ecu("old", "ecu-8", "1:throttle"), Ecu("new", "ecu-10", "5:throttle")));

        var step = Assert.Single(SignalTrace.Of(sheet, "throttle")!.Devices);
        Assert.Equal(("distributor", "new wire, joined to one cut out of a plug that nothing takes"), (step.To!.Place, step.Work));
        Assert.EndsWith("to distributor 1, splice.", Told(sheet, "sensor"), StringComparison.Ordinal);
    }

    [Fact]
    public void Trace_SignalThatNothingCarries_IsAGapAndACrossOnTheDrawing()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("sensor", "oval-2", Origin, "1:throttle")));

        Assert.Equal(["sensor asks for it at cavity 1, and nothing carries it there."], SignalTrace.Of(sheet, "throttle")!.Gaps.AsEnumerable());
        Assert.Equal("Cavity 1, Throttle sensor: nothing carries it: see the rules.", Told(sheet, "sensor"));
        Assert.Single(Drawing(sheet, "sensor").Descendants(s_svg + "path"), path => (string)path.Attribute("class")! == "missing");
        Assert.Equal(LooseAction.Missing, LooseEnds.Of(sheet).Single(end => end.Place == "sensor").Action);
    }

    /// <summary>What the cabin must get and nobody gives.</summary>
    [Fact]
    public void Trace_NeedThatNobodyMeets_IsAGap()
    {
        var trace = SignalTrace.Of(WiringWorksheet.Compute(Empty with { Needs = ["gauge"] }), "gauge")!;

        Assert.Equal(["The cabin asks for it, and nothing in this build gives it."], trace.Gaps.AsEnumerable());
        Assert.False(trace.IsUsed);
    }

    /// <summary>Old ECU and new: one signal in another cavity, one that is no longer asked for, one that a plug has and the ECU's side had not, one that nothing has.</summary>
    [Fact]
    public void Trace_EcuOfAnotherPinOut_GoesByTheAdapter()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", Origin, "1:coolant"), Device("throttle", "oval-2", Origin, "1:throttle"))
            .WithPlug("sensor", Plug("oval-2", Origin, "1:coolant")).WithPlug("throttle", Plug("oval-2", Origin, "1:throttle", "2:purge"))
            .WithEcus(Ecu("old", "ecu-8", "1:throttle", "2:purge"), Ecu("new", "ecu-10", "5:throttle", "6:coolant", "7:battery", "8:tach")));

        (string From, string? To, string Work) At(string signal) => SignalTrace.Of(sheet, signal)!.Ecu.Select(step => (step.From.Cavity, step.To?.Cavity, step.Work.Split(':')[0])).Single();
        Assert.Equal(("a1", "a5", "joined"), At("throttle"));
        Assert.Equal(("a2", null, "capped"), At("purge"));
        Assert.Equal(("1", "a6", "new wire"), At("coolant"));
        Assert.Equal(("a8", null, "left empty"), At("tach"));
        Assert.Equal(["new asks for it at cavity a7, and nothing fitted carries it."], SignalTrace.Of(sheet, "battery")!.Gaps.AsEnumerable());
        Assert.Empty(SignalTrace.Of(sheet, "tach")!.Gaps);
    }

    /// <summary>Bulkhead plugs of two families: joined in between.</summary>
    [Fact]
    public void Trace_CabinOfAnotherPlug_GoesByTheAdapter()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(Plug("bulkhead-6", Origin, "3:gauge"), Plug("bulkhead-4", Origin, "2:gauge")));

        var step = Assert.Single(SignalTrace.Of(sheet, "gauge")!.Cabin);
        Assert.Equal(("3", "2", "joined"), (step.From.Cavity, step.To!.Cavity, step.Work));
        Assert.Equal(("bulkhead-6", "bulkhead-4"), (step.From.Connector, step.To.Connector));
    }

    /// <summary>A sheet that was read and not computed has nothing to trace or to draw from.</summary>
    [Fact]
    public void Of_SheetWithoutItsData_IsNothing()
    {
        var sheet = Sheet("oval-2", "1", 0) with { Data = null };

        Assert.Null(SignalTrace.Of(sheet, "throttle"));
        Assert.Equal("", DeviceDrawing.Svg(sheet, sheet.Plugs[0], "wires"));
        Assert.Equal("", BayPlan.Svg(sheet, [.. sheet.Plugs], "plan"));
    }

    /// <summary>Ends of a wire: the ECU, the bulkhead, or neither where only other devices in the loom have the signal.</summary>
    [Fact]
    public void Drawing_WireThatLeavesTheEngine_EndsWhereTheHarnessLeadsIt()
    {
        var cabin = WiringWorksheet.Compute(Empty.With(Device("lamp", "oval-2", Origin, "1:oil-lamp")).WithPlug("lamp", Plug("oval-2", Origin, "1:oil-lamp"))
            .WithBodies(Plug("bulkhead-4", Origin, "2:oil-lamp"), Plug("bulkhead-4", Origin, "2:oil-lamp")));
        var loom = WiringWorksheet.Compute(Empty.With(Device("lamp", "oval-2", Origin, "1:oil-lamp")).WithPlug("lamp", Plug("oval-2", Origin, "1:oil-lamp")));

        Assert.EndsWith(", to bulkhead plug 2.", Told(cabin, "lamp"), StringComparison.Ordinal);
        Assert.EndsWith(", to inside the loom.", Told(loom, "lamp"), StringComparison.Ordinal);
    }

    private static WiringSheet Sheet(string connector, string cavity, double away) => WiringWorksheet.Compute((Empty with { Leads = [new AdapterLead("lead", "square-2", "oval-2")] })
        .With(Device("sensor", "oval-2", Origin, "1:throttle"))
        .WithPlug("sensor", Plug(connector, new(0, 0, away), $"{cavity}:throttle"))
        .WithEcus(s_ecu, s_ecu));

    private static XElement Drawing(WiringSheet sheet, string role) => XElement.Parse(DeviceDrawing.Svg(sheet, sheet.Plugs.Single(plug => plug.Role == role), "wires"));

    private static string Told(WiringSheet sheet, string role) => Drawing(sheet, role).Element(s_svg + "desc")!.Value;
}
