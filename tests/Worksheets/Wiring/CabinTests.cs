using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Devices that stand between harness and cabin, or live behind the dash; signals whose only device is not fitted.</summary>
public sealed class CabinTests
{
    private static readonly Plug s_harnessBody = Plug("bulkhead-6", new(0, 0, 500), "1:tach", "2:feed");

    private static readonly Plug s_cabin = Plug("bulkhead-4", new(0, 0, 500), "4:tach", "3:feed");

    private static readonly WiringInput s_base = Empty.WithBodies(s_harnessBody, s_cabin);

    private static readonly Device s_divider = Device("divider", "flat-3", new(0, 0, 700), "1:feed", "2:tach", "3:tach") with { ToCabin = ["3"], InCabin = true };

    /// <summary>Joined past the divider, the dash counts what the engine gives: the harness's side goes in, the cabin's side comes out.</summary>
    [Fact]
    public void Compute_DeviceThatGivesTheCabinItsOwnInput_IsNotBypassed()
    {
        var sheet = WiringWorksheet.Compute(s_base.With(s_divider) with { Needs = ["tach"] });
        var rows = sheet.BodyAdapter!.Rows.Where(row => row.Signal == "tach").ToList();

        Assert.Equal([(AdapterAction.Branch, "1", null), (AdapterAction.AddWire, null, "4")], rows.Select(row => (row.Action, row.From, row.To)));
        Assert.Equal(
            [("2", "harness body", "1", WireEndKind.Splice), ("3", "body", "4", WireEndKind.Terminal)],
            sheet.Runs.Where(run => run.Signal == "tach").Select(run => (run.Cavity, run.To.Place, run.To.Cavity, run.To.Kind)));
        Assert.Equal((NeedSupply.Device, "divider", "3"), (sheet.Needs[0].Supply, sheet.Needs[0].Place, sheet.Needs[0].Cavity));
    }

    [Fact]
    public void Compute_WithoutTheDivider_JoinsBothSides() =>
        Assert.Equal(AdapterAction.Join, WiringWorksheet.Compute(s_base).BodyAdapter!.Rows.Single(row => row.Signal == "tach").Action);

    /// <summary>Where both halves of the bulkhead plug go together, the wire is drawn out of its cavity.</summary>
    [Fact]
    public void Compute_DividerBetweenPlugsThatMate_DrawsTheWireOut()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(s_harnessBody, Plug("bulkhead-6", new(0, 0, 500), "1:tach", "2:feed")).With(s_divider));

        Assert.Contains("drawn out", sheet.BodyAdapter!.Rows.Single(row => row is { Signal: "tach", From: "1" }).Note, StringComparison.Ordinal);
    }

    /// <summary>An engine's ground is nearer in the frame than the dash's own metal, and carries the coils' current.</summary>
    [Theory]
    [InlineData(true, WireEndKind.Ring, "body metal", "harness body")]
    [InlineData(false, WireEndKind.Splice, "coil", "coil")]
    public void Compute_DeviceBehindTheDash_IsFedAndGroundedThere(bool inCabin, WireEndKind end, string ground, string feed)
    {
        var sheet = WiringWorksheet.Compute(s_base
            .WithPlug("coil", Plug("oval-2", new(0, 0, 690), "1:feed", "2:power-ground"))
            .With(Device("coil", "oval-2", new(0, 0, 690), "1:feed", "2:power-ground"), Device("lamp", "oval-2", new(0, 0, 700), "1:feed", "2:power-ground") with { InCabin = inCabin, CurrentA = 1 }));
        var runs = sheet.Runs.Where(run => run.Role == "lamp").ToDictionary(run => run.Signal);

        Assert.Equal((end, ground), (runs["power-ground"].To.Kind, runs["power-ground"].To.Place));
        Assert.Equal(feed, runs["feed"].To.Place);
    }

    /// <summary>
    /// Its plug hangs at the bulkhead, the module lives two metres ahead of it: the data wire alone is lengthened, feed and ground are those of the dash, and the plug's
    /// own are sealed. Within reach everything stays. Common practice, no source.
    /// </summary>
    [Theory]
    [InlineData(2000, true)]
    [InlineData(30, false)]
    public void Compute_PlugWhoseDeviceLivesBehindTheDash_LengthensItsSignalsAlone(double away, bool moved)
    {
        var module = Device("module", "flat-3", new(0, 0, 500 + away), "1:feed", "2:power-ground", "3:tach") with { InCabin = true, CurrentA = 0.3 };
        var sheet = WiringWorksheet.Compute(s_base.WithPlug("module", Plug("flat-3", new(0, 0, 500), "1:feed", "2:power-ground", "3:tach")).With(module));
        var runs = sheet.Runs.Where(run => run.Role == "module").Select(run => (run.Signal, run.Purpose, run.To.Place)).Order().ToList();

        Assert.Equal(moved ? [("feed", WirePurpose.Device, "harness body"), ("power-ground", WirePurpose.Device, "body metal"), ("tach", WirePurpose.Extension, "module")] : [], runs);
        Assert.Equal(moved ? ["1", "2"] : [], LooseEnds.Of(sheet).Where(end => end.Reason.Contains("has this from there", StringComparison.Ordinal)).Select(end => end.Cavity).Order());
        Assert.Equal(moved, GroundGroups.Of(sheet).Single().Point.Contains("go to the body beside it", StringComparison.Ordinal));
    }

    /// <summary>200 mm to the metal beside it: 1.2 × 200 + 60, and a ring terminal, no splice.</summary>
    [Fact]
    public void Compute_GroundBehindTheDash_TakesAShortWireAndARing()
    {
        var sheet = WiringWorksheet.Compute(s_base.With(Device("lamp", "oval-2", new(0, 0, 700), "2:power-ground") with { InCabin = true }));
        var run = Assert.Single(sheet.Runs, one => one.Role == "lamp");

        Assert.Equal((300.0, 0), (run.LengthMm, run.Splices));
        Assert.Equal(1, sheet.Bill.Terminals.Single(line => line.Terminal == "ring").Count);
        Assert.Contains("ring terminal", LooseEnds.Of(sheet).Single(one => one.Place == "lamp").Reason, StringComparison.Ordinal);
    }

    /// <summary>A fan that is left off: its feed would be live in a capped plug.</summary>
    [Theory]
    [InlineData(false, AdapterAction.Cap, AdapterAction.Missing)]
    [InlineData(true, AdapterAction.Join, AdapterAction.Join)]
    public void Compute_WireToADeviceThatIsNotFitted_IsNotJoined(bool fitted, AdapterAction from, AdapterAction to)
    {
        var input = Empty
            .WithPlug("fan", Plug("oval-2", Origin, "1:battery"))
            .WithBodies(Plug("bulkhead-6", Origin, "5:battery"), Plug("bulkhead-4", Origin, "2:battery"));
        var rows = WiringWorksheet.Compute(fitted ? input.With(Device("fan", "oval-2", Origin, "1:battery")) : input).BodyAdapter!.Rows;

        Assert.Equal((from, to), (rows.Single(row => row.From == "5").Action, rows.Single(row => row.To == "2").Action));
    }

    /// <summary>An ECU's input that ends in a capped plug is an aerial.</summary>
    [Fact]
    public void Compute_SensorThatIsNotFitted_IsNotJoinedAtTheEcu()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithPlug("sensor", Plug("oval-2", Origin, "1:coolant")).WithEcus(Ecu("old", "ecu-8", "1:coolant"), Ecu("new", "ecu-10", "5:coolant")));

        Assert.Equal([AdapterAction.Cap, AdapterAction.Missing], sheet.EcuAdapter!.Rows.Select(row => row.Action));
        Assert.Empty(sheet.Runs);
    }
}
