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

    private static IEnumerable<(string? Part, int Amount)> Wires(WiringStock[] stock) =>
        WiringPurchases.Of(s_sheet, [.. stock]).Where(want => want.SizeMm2 is not null).Select(want => (want.Part, want.Amount));
}
