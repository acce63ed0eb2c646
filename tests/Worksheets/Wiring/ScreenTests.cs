using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Screened wire: the size that is sold, the metres that are bought, and the screen of wires that stay. Common practice, no source.</summary>
public sealed class ScreenTests
{
    private static readonly WiringInput s_base = Empty with
    {
        Signals = Signals
            .Add("screen", new("screen", "Screen", SignalKind.Shield, null, 0.5, "GY", Shared: true, Shielded: false))
            .Add("crank", new("crank", "Crank sensor", SignalKind.Frequency, 0.1, 0.5, "BU", Shared: false, Shielded: true)),
    };

    /// <summary>Three wires of 300 mm and 0.5 mm² in three colours, two of them screened, one of these with a current.</summary>
    private static readonly WiringInput s_adapter = s_base.WithEcus(
        new Ecu("old", "old", [new EcuPlug("a", "ecu-8", [new Pin("1", "coolant", "GN", 0.5), new Pin("2", "crank", "BN", 0.5), new Pin("3", "knock", "BN", 0.5)])]),
        new Ecu("new", "new", [new EcuPlug("a", "ecu-10", [new Pin("6", "coolant", "GN", 0.5), new Pin("7", "crank", "BU", 0.5), new Pin("8", "knock", "WH", 0.5)])]));

    [Theory]
    [InlineData(0.75, 1.5, 0.75)]
    [InlineData(1.5, 0.5, 0.5)]
    [InlineData(0.35, 0.35, 0.5)] // nothing that is sold does, so the sheet keeps what is wanted
    public void Compute_ScreenedWire_IsOfTheNextSizeThatIsSold(double one, double other, double expected)
    {
        var sheet = WiringWorksheet.Compute(s_adapter with { ScreenedMm2 = [one, other] });

        Assert.Equal([("coolant", 0.5), ("crank", expected), ("knock", expected)], sheet.Bill.Cuts.Select(cut => (cut.Signal, cut.SizeMm2)).Order());
        Assert.Equal([0.5, expected, expected], sheet.EcuAdapter!.Rows.Select(row => row.SizeMm2));
        Assert.Equal(3, Joints.Terminals(sheet).Sum(line => line.Count));
        Assert.Equal(expected == 0.5 ? 3 : 2, Joints.Terminals(sheet).Single(line => line.SizeMm2 == expected).Count);
        var crank = sheet.Runs.Single(run => run.Signal == "crank");
        Assert.Equal((expected, 0.5), (crank.Conductor!.SizeMm2, crank.Conductor.For.AskedMm2));
        Assert.Equal(expected == 0.75 ? "mechanical minimum 0.5 mm²; screened wire is sold in 0.75 mm²" : "mechanical minimum 0.5 mm²", WiringWords.Why(crank.Conductor));
        Assert.Equal(Conductor.DropV(0.1, Conductor.GreatestOhmPerMetre(expected, 85), 300), crank.DropV!.Value, 1e-9);
    }

    /// <summary>0.6 m in all: one metre, and not one for each colour, since screened wire is not sold by colour.</summary>
    [Fact]
    public void Purchases_ScreenedWireOfTwoColours_IsOneReel()
    {
        var sheet = WiringWorksheet.Compute(s_adapter with { ScreenedMm2 = [0.75] });

        Assert.Equal([("BU", 1), ("GN", 0), ("WH", 1)], sheet.Bill.Wire.Select(line => (line.Colour, line.Screened)).Order());
        Assert.Equal(
            [new(WiringGood.Wire, 0.5, 1, "plain"), new(WiringGood.ScreenedWire, 0.75, 1, "screened")],
            WiringPurchases.Of(sheet, [new("plain", WiringGood.Wire, 0.5), new("screened", WiringGood.ScreenedWire, 0.75)]).Where(want => want.SizeMm2 is not null));
    }

    /// <summary>The screen of an adapter's screened wire comes with that wire: nothing is cut or bought for it, and its end is crimped all the same.</summary>
    [Theory]
    [InlineData("crank knock", "crank", "screen", "knock", "screen")]
    [InlineData("crank", "crank", "screen")]
    [InlineData("crank screen", "crank", "screen", "screen")] // one screen more than there are screened wires
    [InlineData("screen", "screen")]
    public void Compute_ScreensOfAnAdapter_ComeWithItsScreenedWires(string cut, params string[] signals)
    {
        string[] pins = [.. signals.Select((signal, at) => FormattableString.Invariant($"{at + 1}:{signal}"))];
        var sheet = WiringWorksheet.Compute(s_base.WithEcus(Ecu("old", "ecu-8", pins), Ecu("new", "ecu-10", pins)));
        var screens = sheet.Runs.Where(run => run.ScreenOf is not null).ToList();

        Assert.Equal(cut.Split(' ').Order(StringComparer.Ordinal), sheet.Bill.Cuts.Select(piece => piece.Signal).Order(StringComparer.Ordinal));
        Assert.Equal(signals.Length, sheet.Bill.Cuts.Length + screens.Count);
        Assert.Equal(screens.Count, screens.Select(run => run.ScreenOf).Distinct(StringComparer.Ordinal).Count());
        Assert.All(screens, run => Assert.Contains(sheet.Runs, wire => wire.Label == run.ScreenOf && wire.Shielded));
        Assert.Equal(signals.Length, sheet.Bill.Terminals.Single(line => line.Connector == "ecu-10").Count);
        Assert.Equal(signals.Length, sheet.EcuAdapter!.Rows.Length);
    }

    /// <summary>Two twisted wires lie under one screen, so the second screen is that of the third wire.</summary>
    [Fact]
    public void Compute_ScreensOfAnAdapterWithAPair_AreOnePerCable()
    {
        string[] pins = ["1:crank", "2:crank-minus", "3:knock", "4:screen", "5:screen"];
        var sheet = WiringWorksheet.Compute((s_base with { Signals = s_base.Signals.Add("crank-minus", new("crank-minus", "Crank sensor -", SignalKind.Frequency, 0.1, 0.5, "YE", Shared: false, Shielded: true) { TwistedWith = "crank" }) })
            .WithEcus(Ecu("old", "ecu-8", pins), Ecu("new", "ecu-10", pins)));

        Assert.Equal(["new/a1 crank", "new/a3 knock"], sheet.Runs.Select(run => run.ScreenOf).OfType<string>().Order(StringComparer.Ordinal));
    }

    /// <summary>The plug is changed, and its screened wire goes into the new housing: the screen is there already and wants a sleeve and a terminal, no wire.</summary>
    [Fact]
    public void Compute_ScreenOfAWireThatStaysAtThePlug_IsNoNewWire()
    {
        var sheet = WiringWorksheet.Compute(Sensor("2:crank"));
        var plug = sheet.Plugs.Single(plug => plug.Role == "sensor");

        Assert.Empty(sheet.Runs);
        Assert.Equal([(WireAction.Moves, "1"), (WireAction.Screen, "3")], plug.Wires.Select(wire => (wire.Action, wire.Cavity)));
        Assert.Equal(2, sheet.Bill.Terminals.Single(line => line.Connector == "flat-3").Count);
        Assert.Equal(2, Joints.Terminals(sheet).Where(line => line.Connector == "flat-3").Sum(line => line.Count));
        Assert.Equal(1, sheet.Bill.BlankingPlugs);
        Assert.DoesNotContain(LooseEnds.Of(sheet), end => end.Signal == "screen");
        Assert.Equal("the screen of the wires that are there, drawn out and sleeved", SignalTrace.Of(sheet, "screen")!.Devices.Single().Work);
        Assert.Contains("old screen, sleeved", DeviceDrawing.Svg(sheet, plug, "sensor"), StringComparison.Ordinal);
    }

    /// <summary>A plug that has nothing screened has no screen to draw out.</summary>
    [Fact]
    public void Compute_PlugWithoutAScreenedWire_GetsItsScreenFromTheHarness() =>
        Assert.Contains(WiringWorksheet.Compute(Sensor("2:feed")).Runs, run => run is { Role: "sensor", Signal: "screen", To.Cavity: "a2" });

    private static WiringInput Sensor(string wire) => s_base
        .WithEcus(Ecu("ecu", "ecu-8", "1:crank", "2:screen"), Ecu("ecu", "ecu-8", "1:crank", "2:screen"))
        .WithPlug("sensor", Plug("square-2", Origin, wire))
        .With(Device("sensor", "flat-3", Origin, "1:crank", "3:screen"));
}
