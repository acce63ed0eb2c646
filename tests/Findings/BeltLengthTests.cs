using Swapwright.Diagnostics;

namespace Swapwright.Tests.Findings;

/// <summary>Loops on which no belt can run, each laid out so that one thing is wrong with it, and the words that tell of it.</summary>
public sealed class BeltLengthTests
{
    private const string Engine = "engines/marn.yaml";
    private const string Crank = "x: 0, y: 0, plane: 0, side: grooved, diameter: 140";
    private const string Pump = "x: -20, y: 220, plane: 0, side: grooved, diameter: 120";
    private const string PumpStation = "      - {id: water-pump, title: Water pump, position: water-pump, " + Pump + ", ribs: 5, role: other}\n";

    /// <summary>
    /// The pump 100 mm above a crank of 140 mm: radii of 70 and 60 mm overlap by 30. A pump of 20 mm in the middle of the crank lies inside it:
    /// no line touches both. A roller for the back, some 150 mm outside of the span between the other two, is never met.
    /// </summary>
    [Theory]
    [InlineData(Pump, "x: 0, y: 100, plane: 0, side: grooved, diameter: 120", "`crank` and `water-pump` overlap")]
    [InlineData(Pump, "x: -20, y: 220, plane: 0, side: back, diameter: 60", "it does not reach `water-pump` on the side that is written")]
    [InlineData(Pump, "x: 5, y: 5, plane: 0, side: grooved, diameter: 20", "there is no way from `alternator` to `water-pump`", "there is no way from `water-pump` to `crank`", "`crank` and `water-pump` overlap")]
    public void Check_PulleysThatNoBeltRunsRound_AreToldByName(string old, string changed, params string[] words)
    {
        var messages = ChangedBase.Prove("workshop", (Engine, old, changed)).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.StartsWith("no belt can run on `accessory` round `crank` (140 mm), `alternator` (", message, StringComparison.Ordinal));
        Assert.All(messages, message => Assert.Contains(words, one => message.EndsWith(": " + one, StringComparison.Ordinal)));
    }

    /// <summary>Four pulleys in a square, written crosswise: two spans meet in the middle.</summary>
    [Fact]
    public void Check_PulleysInTheWrongOrder_SayWhereTheBeltCrosses()
    {
        var messages = ChangedBase.Prove("workshop", (Engine, PumpStation, PumpStation.Replace("x: -20, y: 220", "x: 200, y: 0", StringComparison.Ordinal)
            + "      - {id: fixed, title: Fixed idler, x: -20, y: 240, plane: 0, side: grooved, diameter: 60, ribs: 5, role: idler}\n")).Messages(FindingKinds.BeltLength);

        Assert.Contains(messages, message => message.Contains("it crosses itself behind `", StringComparison.Ordinal));
    }

    /// <summary>An idler of 300 mm across the way from the pump to the crank, its rim inside the loop: the belt would run through it.</summary>
    [Fact]
    public void Check_IdlerInTheWay_IsNamed()
    {
        var messages = ChangedBase.Prove("workshop", (Engine, PumpStation, PumpStation + "      - {id: fixed, title: Fixed roller, x: 230, y: 100, plane: 0, side: back, diameter: 60, ribs: 0, role: idler}\n")).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.Matches("it runs over `|does not reach `fixed`|crosses itself", message));
    }

    /// <summary>Pulleys of five grooves, and a shelf with belts of two ribs: what is asked for is told with what the shelf has not.</summary>
    [Fact]
    public void Check_RibsThatNobodyStocks_AreTold()
    {
        var messages = ChangedBase.Prove("workshop", ("parts/belt.yaml", "ribs: [4, 5, 6]", "ribs: [2]")).Messages(FindingKinds.BeltLength);

        Assert.NotEmpty(messages);
        Assert.All(messages, message => Assert.Contains("it takes 5 ribs and ", message, StringComparison.Ordinal));
        Assert.All(messages, message => Assert.EndsWith(" over the travel, and none of that many ribs is stocked", message, StringComparison.Ordinal));
    }

    [Fact]
    public void Check_BaseAsItIs_FindsNothing() => Assert.Empty(ChangedBase.Prove("workshop", (Engine, Crank, Crank)).Messages(FindingKinds.BeltLength));
}
