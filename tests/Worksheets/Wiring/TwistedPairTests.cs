using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Two wires that are twisted together are told and bought as the one thing that they are.</summary>
public sealed class TwistedPairTests
{
    /// <summary>A module 1,000 mm beside the trunk on a bus of two wires, and a sensor that shares its way.</summary>
    private static readonly WiringSheet s_sheet = WiringWorksheet.Compute((Empty with
    {
        Signals = Signals
            .Add("bus-high", new Signal("bus-high", "Bus high", SignalKind.Data, null, 0.5, "OG/GY", Shared: false, Shielded: false) { TwistedWith = "bus-low" })
            .Add("bus-low", new Signal("bus-low", "Bus low", SignalKind.Data, null, 0.5, "OG/BN", Shared: false, Shielded: false)),
    })
        .With(Device("module", "flat-3", new(1000, 0, 0), "1:bus-high", "2:bus-low", "3:coolant"))
        .WithEcus(null, Ecu("ecu", "ecu-8", "1:bus-high", "2:bus-low", "3:coolant")));

    [Fact]
    public void Beside_EitherWireOfThePair_IsTheOther()
    {
        var twins = s_sheet.Runs.Select(run => (run.Signal, TwistedPairs.Beside(s_sheet, run)?.Signal));

        Assert.Equal([("bus-high", "bus-low"), ("bus-low", "bus-high"), ("coolant", null)], twins);
    }

    /// <summary>By way of the trunk: 1,000 and 1,000 mm, 1.2 times as much and 60 mm of slack are 2,460 mm, so three metres, once.</summary>
    [Fact]
    public void Purchases_Pair_CountsOnceWhereItIsSold()
    {
        WiringStock wire = new("wire", WiringGood.Wire, 0.5), pair = new("pair", WiringGood.TwistedPair, 0.5);

        Assert.Equal([("wire", 3), ("pair", 3)], Wires([wire, pair]));
        Assert.Equal([("wire", 9)], Wires([wire]));
    }

    /// <summary>A lead brings one of the two, so the other comes off a reel by itself: 2,460 mm, three metres. Common practice, no source.</summary>
    [Theory]
    [InlineData("1")]
    [InlineData("2")]
    public void Purchases_PairOfWhichALeadBringsOne_IsOneWire(string brought)
    {
        var sheet = WiringWorksheet.Compute(Module("bus-high", "bus-low", false, new DeviceLead("lead", "Lead", [brought])));

        Assert.Equal([("wire", 3)], Wires([new("wire", WiringGood.Wire, 0.5), new("pair", WiringGood.TwistedPair, 0.5)], sheet));
    }

    /// <summary>
    /// Two cores of 2,460 mm under one screen are one cable of that length: three metres of a screened pair. Where none is sold they are two screened wires, 4,920 mm
    /// or five metres off one reel, and never a pair without a screen. Common practice, no source.
    /// </summary>
    [Fact]
    public void Purchases_PairUnderOneScreen_IsOneCable()
    {
        var sheet = WiringWorksheet.Compute(Module("crank-plus", "crank-minus", true) with { ScreenedMm2 = [0.75] });
        WiringStock wire = new("wire", WiringGood.Wire, 0.5), pair = new("pair", WiringGood.TwistedPair, 0.75), screened = new("screened", WiringGood.ScreenedWire, 0.75), both = new("both", WiringGood.ScreenedPair, 0.75);

        Assert.Equal([("both", 3)], Wires([wire, pair, screened, both], sheet));
        Assert.Equal([("screened", 5)], Wires([wire, pair, screened], sheet));
        Assert.Equal("module/1 crank-plus", sheet.Runs.Single(run => run.Signal == "screen").ScreenOf);
        Assert.Equal(7380, sheet.Runs.Sum(run => run.LengthMm));
    }

    /// <summary>A module 1,000 mm beside the trunk, with two wires that are twisted and, where they are screened, the screen.</summary>
    private static WiringInput Module(string one, string other, bool shielded, params DeviceLead[] leads)
    {
        string[] pins = [$"1:{one}", $"2:{other}", .. shielded ? ["3:screen"] : Array.Empty<string>()];
        return (Empty with
        {
            Signals = Signals
                .Add(one, new Signal(one, one, SignalKind.Frequency, null, 0.5, "BU", Shared: false, shielded) { TwistedWith = other })
                .Add(other, new Signal(other, other, SignalKind.Frequency, null, 0.5, "BN", Shared: false, shielded))
                .Add("screen", new Signal("screen", "Screen", SignalKind.Shield, null, 0.5, "GY", Shared: true, Shielded: false)),
        })
            .With(Device("module", "flat-3", new(1000, 0, 0), pins) with { Leads = [.. leads] })
            .WithEcus(null, Ecu("ecu", "ecu-8", pins));
    }

    private static IEnumerable<(string? Part, int Amount)> Wires(WiringStock[] stock, WiringSheet? sheet = null) =>
        WiringPurchases.Of(sheet ?? s_sheet, [.. stock]).Where(want => want.SizeMm2 is not null).Select(want => (want.Part, want.Amount));
}
