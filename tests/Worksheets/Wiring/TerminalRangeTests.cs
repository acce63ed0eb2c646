using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>A terminal is crimped on the conductor that current, fuse and drop ask for, and it is made for some sizes only. Common practice, no source.</summary>
public sealed class TerminalRangeTests
{
    [Theory]
    [InlineData("feed", 4, true)]
    [InlineData("feed", 2.5, false)]
    [InlineData("coolant", 0.5, false)]
    [InlineData("coolant", 0.35, true)]
    public void Beyond_PieceOfAnAdapter_IsHeldAgainstItsTerminals(string signal, double size, bool beyond)
    {
        var sheet = Adapter(signal, size, Connectors.SetItem("ecu-10", Connectors["ecu-10"] with { FromMm2 = 0.5, ToMm2 = 2.5 }));
        var run = Assert.Single(sheet.Runs);

        Assert.Equal(size, run.SizeMm2);
        Assert.Equal(beyond ? [new TerminalRange(run.To, 0.5, 2.5)] : [], TerminalRange.Beyond(sheet, run).ToList());
        Assert.Equal(beyond ? "terminals at new, a1 take 0.5 to 2.5 mm²: look for one of the family that takes this wire, or join on a short tail that goes in and fuse by the tail" : "", WiringWords.Beyond(sheet, run));
    }

    [Theory]
    [InlineData(2.5, "terminals at the harness's ECU plug, a1 and new, a1 take 0.5 to 2.5 mm²: ")]
    [InlineData(1.5, "terminals at the harness's ECU plug, a1 take 0.5 to 1.5 mm²: ")]
    public void Beyond_BothEnds_AreTogetherWhereTheyTakeTheSame(double other, string words)
    {
        var connectors = Connectors.SetItem("ecu-10", Connectors["ecu-10"] with { FromMm2 = 0.5, ToMm2 = 2.5 }).SetItem("ecu-8", Connectors["ecu-8"] with { FromMm2 = 0.5, ToMm2 = other });
        var sheet = Adapter("feed", 4, connectors);

        Assert.StartsWith(words, WiringWords.Beyond(sheet, Assert.Single(sheet.Runs)), StringComparison.Ordinal);
    }

    [Fact]
    public void Beyond_FamilyThatStatesNoRange_IsPassedOver()
    {
        var sheet = Adapter("feed", 4, Connectors);

        Assert.Empty(TerminalRange.Beyond(sheet, Assert.Single(sheet.Runs)));
    }

    private static WiringSheet Adapter(string signal, double size, System.Collections.Immutable.ImmutableDictionary<string, ConnectorFamily> connectors) => WiringWorksheet.Compute((Empty with { Connectors = connectors }).WithEcus(
        new Ecu("old", "old", [new EcuPlug("a", "ecu-8", [new Pin("1", signal, "RD", size)])]),
        new Ecu("new", "new", [new EcuPlug("a", "ecu-10", [new Pin("1", signal, "RD", size)])])));
}
