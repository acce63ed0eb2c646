using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>What is read off a sheet: splices and sleeves, terminals by size, grounds, loose ends, the way of a signal.</summary>
public sealed class WiringListsTests
{
    private static readonly BayPoint Far = new(0, 900, 0);

    [Fact]
    public void Splices_LengthenedPlug_AreInLineAndAsManyAsTheBillCounts()
    {
        var sheet = Lengthened();

        Assert.Equal(sheet.Bill.Splices, Joints.Splices(sheet).Sum(joint => joint.Count));
        Assert.All(Joints.Splices(sheet), joint => Assert.Equal(JointKind.InLine, joint.Kind));
    }

    [Theory]
    // Outer diameters of thin-wall wire by ISO 6722-1, from memory; the quarter to spare is common practice, no source.
    [InlineData(JointKind.InLine, 0.5, 0.5, 3.0)] // 1.5 × 1.6 × 1.25 = 3.0
    [InlineData(JointKind.InLine, 1.5, 1.5, 4.8)] // 4.5; shrunk 1.6
    [InlineData(JointKind.InLine, 2.5, 1.5, 6.0)] // 5.6; shrunk 2.0
    [InlineData(JointKind.Branch, 0.5, 0.5, 4.8)] // 3.2 × 1.25 = 4.0
    [InlineData(JointKind.Branch, 2.5, 2.5, 9.0)] // 7.5
    public void Sleeve_Joint_GoesOverAndGrips(JointKind kind, double thick, double thin, double sleeve) => Assert.Equal(sleeve, Joints.Sleeve(kind, thick, thin));

    [Fact]
    public void Sleeve_WiresTooUnlike_IsNone() => Assert.Null(Joints.Sleeve(JointKind.InLine, 25, 0.35));

    [Fact]
    public void Terminals_BySize_AddUpToTheBill()
    {
        var sheet = Mixed();

        Assert.Equal(
            sheet.Bill.Terminals.Select(line => (line.Connector, line.Count)),
            Joints.Terminals(sheet).GroupBy(line => line.Connector).Select(group => (group.Key, group.Sum(line => line.Count))));
        Assert.Contains(Joints.Terminals(sheet), line => line is { Connector: "flat-3", SizeMm2: 0.75 });
    }

    [Fact]
    public void Grounds_SensorGroundAndPowerGround_StayApart()
    {
        var groups = GroundGroups.Of(Mixed());
        var sensor = groups.Single(group => group.Signal == "sensor-ground");

        Assert.Equal(SignalKind.SensorGround, sensor.Kind);
        Assert.Contains("power-ground", sensor.Apart);
        Assert.Empty(sensor.Meets);
        Assert.Equal([("ecu-new", "a2"), ("throttle", "2")], sensor.Members.Select(member => (member.Place, member.Cavity)).Order());
    }

    [Theory]
    [InlineData(SignalKind.Ground, SignalKind.Ground, true)]
    [InlineData(SignalKind.Ground, SignalKind.SensorGround, false)]
    [InlineData(SignalKind.Shield, SignalKind.Shield, false)]
    [InlineData(SignalKind.Shield, SignalKind.Ground, false)]
    public void MayMeet_Kinds_OnlyPowerGroundsDo(SignalKind one, SignalKind other, bool may) => Assert.Equal(may, GroundGroups.MayMeet(one, other));

    [Fact]
    public void LooseEnds_Mixed_SayWhatToDoAndWhy()
    {
        var ends = LooseEnds.Of(Mixed());

        Assert.All(ends, end => Assert.NotEmpty(end.Reason));
        Assert.Equal(LooseAction.Cap, Action(ends, "purge", "ecu-old")); // the ECU in use does not have it
        Assert.Equal(LooseAction.LeaveOff, Action(ends, "tach", "ecu-new")); // nothing fitted gives it
        Assert.Equal(LooseAction.RunNew, Action(ends, "throttle", "throttle")); // the plug has no wire for it
        Assert.Equal(LooseAction.Cap, Action(ends, "injector-1", "injector")); // the device is not fitted
        Assert.Equal(LooseAction.Missing, Action(ends, "knock", "throttle")); // nobody carries it
    }

    [Fact]
    public void TitleOf_Places_AreWhatAReaderSeesThere()
    {
        var input = Bench.Empty.WithPlug("purge-valve", Bench.Plug("oval-2", Bench.Origin, "1:purge") with { Title = "Purge valve" }) with { Ecu = Bench.Ecu("new", "ecu-8", "1:tach") };
        var data = WiringWorksheet.Compute(input with { Harness = input.Harness with { MadeFor = Bench.Ecu("old", "ecu-8", "1:purge") } }).Data!;

        Assert.Equal("Purge valve", data.TitleOf("purge-valve")); // nothing is fitted that takes it
        Assert.Equal("the harness's ECU plug", data.TitleOf("old")); // that ECU is not in the car
        Assert.Equal("new", data.TitleOf("new"));
    }

    [Fact]
    public void Trace_SignalThatArrives_NamesEveryCavity()
    {
        var trace = SignalTrace.Of(Mixed(), "throttle")!;

        Assert.Equal(("throttle", "1"), (trace.Devices[0].From.Place, trace.Devices[0].From.Cavity));
        Assert.Equal(("ecu-new", "a1"), (trace.Devices[0].To!.Place, trace.Devices[0].To!.Cavity));
        Assert.NotNull(trace.Devices[0].LengthMm);
        Assert.Empty(trace.Gaps);
    }

    [Fact]
    public void Trace_JoinedByTheAdapter_PassesBothEcuSides()
    {
        var step = Assert.Single(SignalTrace.Of(Mixed(), "sensor-ground")!.Ecu);

        Assert.Equal(("ecu-old", "a3", "ecu-new", "a2"), (step.From.Place, step.From.Cavity, step.To!.Place, step.To.Cavity));
    }

    [Fact]
    public void Trace_NothingCarriesIt_SaysWhereItIsBroken()
    {
        var trace = SignalTrace.Of(Mixed(), "knock")!;

        Assert.Null(trace.Devices[0].To);
        Assert.Single(trace.Gaps);
        Assert.True(trace.IsUsed);
    }

    [Fact]
    public void Trace_CabinOfTheSamePlug_PlugsIn()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(Plug("bulkhead-4", Origin, "1:gauge"), Plug("bulkhead-4", Origin, "1:gauge")));

        Assert.Equal("plugs in", Assert.Single(SignalTrace.Of(sheet, "gauge")!.Cabin).Work);
    }

    [Fact]
    public void Trace_SignalOfNoBase_IsNone() => Assert.Null(SignalTrace.Of(Mixed(), "nonsense"));

    private static LooseAction Action(IEnumerable<LooseEnd> ends, string signal, string place) => ends.Single(end => end.Signal == signal && end.Place == place).Action;

    private static WiringSheet Lengthened() => WiringWorksheet.Compute(
        Empty.With(Device("purge", "square-2", Far, "1:feed", "2:purge")).WithPlug("purge", Plug("square-2", Origin, "1:feed", "2:purge")));

    // A throttle sensor on a plug without its signal, an injector plug over, an ECU that was not the harness's.
    private static WiringSheet Mixed() => WiringWorksheet.Compute(Empty
        .With(Device("throttle", "flat-3", Origin, "1:throttle", "2:sensor-ground", "3:knock"), Device("valve", "square-2", Origin, "1:purge", "2:power-ground"))
        .WithPlug("throttle", Plug("oval-2", Origin, "1:sensor-ground"))
        .WithPlug("injector", Plug("oval-2", Origin, "1:injector-1"))
        .WithPlug("valve", Plug("square-2", Origin, "1:purge", "2:power-ground"))
        .WithEcus(Ecu("ecu-old", "ecu-8", "3:sensor-ground", "4:purge"), Ecu("ecu-new", "ecu-10", "1:throttle", "2:sensor-ground", "5:tach")));
}
