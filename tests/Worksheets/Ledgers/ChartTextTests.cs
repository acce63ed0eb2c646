using System.Xml.Linq;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Ledgers;

/// <summary>Titles, numbers and ids of a chart, whatever a base calls its things.</summary>
public sealed class ChartTextTests
{
    [Theory]
    [InlineData("km/h", "Speed, km/h")]
    [InlineData("", "Speed")]
    public void Svg_Axis_CarriesItsUnitWhereItHasOne(string unit, string title) => Assert.Contains(title, Texts(Chart(unit: unit)));

    [Theory]
    [InlineData(0.4, "0.1")]
    [InlineData(400, "100")]
    [InlineData(4000, "1,000")]
    public void Svg_Ticks_HaveTheDecimalsOfTheirStep(double to, string tick) => Assert.Contains(tick, Texts(Chart(to: to)));

    [Fact]
    public void Svg_PrefixThatIsNoId_BecomesOne()
    {
        var svg = XElement.Parse(ChartDrawing.Svg(Chart(), new ChartDrawingOptions("a 1_b-Ü\"")));

        Assert.Equal("a-1_b----title a-1_b----desc", svg.Attribute("aria-labelledby")!.Value);
    }

    /// <summary>XML 1.0 allows no control but tab and line ends, and no lone surrogate; signs beyond the first plane it does.</summary>
    [Theory]
    [InlineData("speed\u0001", "speed\uFFFD")]
    [InlineData("speed \U0001F3CE", "speed \U0001F3CE")]
    public void Svg_SignThatXmlForbids_IsReplaced(string title, string shown) => Assert.Contains(shown, Texts(Chart(title)));

    // Half a pair does not survive as the argument of a test.
    [Fact]
    public void Svg_HalfOfAPairOfSurrogates_IsReplaced() => Assert.Contains("speed \uFFFD", Texts(Chart("speed \uD83C")));

    [Fact]
    public void Svg_LineThatIsNotSet_IsLeftOut() => Assert.DoesNotContain("unset", Texts(Chart() with { Series = [new("unset", default), new("set", [new(0, 0), new(1, 1)])] }));

    /// <summary>A span that is so many powers of ten is stepped by that power.</summary>
    [Theory]
    [InlineData(0, 60, 6, 10)]
    [InlineData(0, 0.5, 5, 0.1)]
    [InlineData(0, 61, 6, 20)]
    public void Ticks_SpanOfPowersOfTen_AreSteppedByOne(double from, double to, int wanted, double step)
    {
        var ticks = ChartTicks.Of(from, to, wanted);

        Assert.Equal(step, ticks[1] - ticks[0], 9);
    }

    private static LedgerChart Chart(string title = "line", string unit = "rpm", double to = 100) =>
        new("speeds", "Speeds", new ChartAxis("Speed", unit, 0, to), new ChartAxis("Up", "km/h", 0, 80), [new ChartSeries(title, [new(0, 0), new(to, 80)])]) { Words = "One line." };

    private static IEnumerable<string> Texts(LedgerChart chart) =>
        XElement.Parse(ChartDrawing.Svg(chart, new ChartDrawingOptions("p"))).Descendants().Where(one => one.Name.LocalName == "text").Select(one => one.Value);
}
