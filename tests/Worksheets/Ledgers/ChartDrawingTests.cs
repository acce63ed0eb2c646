using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Ledgers;

public sealed class ChartDrawingTests
{
    private const double LineHeight = 13 * 1.25;

    [Fact]
    public void Svg_Chart_HasAccessibleNameAndDescription()
    {
        var svg = Draw(Fan(3));

        Assert.Equal("img", svg.Attribute("role")!.Value);
        var names = svg.Attribute("aria-labelledby")!.Value.Split(' ');
        Assert.Equal(["p-title", "p-desc"], names);
        Assert.Equal(["Speeds <1>", "Three lines."], svg.Elements().Where(one => names.Contains(one.Attribute("id")?.Value)).Select(one => one.Value));
        Assert.DoesNotContain(svg.DescendantsAndSelf(), one => one.Name.LocalName == "style" || one.Attribute("style") is not null);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    [InlineData(12)]
    [InlineData(40)]
    public void Svg_ManyLines_LabelsAllOfThemAndNoneCoversAnother(int lines)
    {
        var labels = LabelHeights(Draw(Fan(lines)), "line ");

        Assert.Equal(lines, labels.Count);
        Assert.All(labels.Zip(labels.Skip(1)), pair => Assert.True(pair.Second - pair.First > LineHeight - 0.02));
    }

    [Fact]
    public void Svg_LinesThatEndInOnePlace_StillHaveLabelsApart()
    {
        var series = Enumerable.Range(0, 8).Select(at => new ChartSeries(Name(at), [new(0, at), new(100, 0)])).ToImmutableArray();
        var labels = LabelHeights(Draw(Chart(series)), "line ");

        Assert.All(labels.Zip(labels.Skip(1)), pair => Assert.True(pair.Second - pair.First > LineHeight - 0.02));
    }

    [Fact]
    public void Svg_EveryCoordinate_LiesWithinTheView()
    {
        var svg = Draw(Fan(12));
        var view = svg.Attribute("viewBox")!.Value.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray();

        Assert.All(svg.Descendants().Where(one => one.Name.LocalName == "text"), text =>
        {
            Assert.InRange(Number(text, "x"), view[0], view[0] + view[2]);
            Assert.InRange(Number(text, "y"), view[1], view[1] + view[3]);
        });
    }

    [Fact]
    public void Svg_NeighbouringLines_DifferInMoreThanColour()
    {
        var patterns = Draw(Fan(5)).Descendants().Where(one => one.Attribute("class")?.Value == "chart-line").Select(one => one.Attribute("stroke-dasharray")?.Value ?? "").ToList();

        Assert.Equal(5, patterns.Distinct().Count());
    }

    [Fact]
    public void Svg_Reference_IsBrokenAndThinner()
    {
        var svg = Draw(Chart([new("now", [new(0, 0), new(100, 80)]), new("before", [new(0, 0), new(100, 60)], IsReference: true)]));
        var reference = Assert.Single(svg.Descendants(), one => one.Attribute("class")?.Value == "chart-line chart-reference");
        var now = Assert.Single(svg.Descendants(), one => one.Attribute("class")?.Value == "chart-line");

        Assert.NotNull(reference.Attribute("stroke-dasharray"));
        Assert.True(Number(reference, "stroke-width") < Number(now, "stroke-width"));
    }

    [Fact]
    public void Svg_SeriesWithoutNumbers_IsLeftOut() =>
        Assert.Empty(LabelHeights(Draw(Chart([new("line a", []), new("line b", [new(0, double.NaN)])])), "line "));

    [Theory]
    [InlineData(0, 6500, 7, 0, 7000, 1000)]
    [InlineData(0, 215, 6, 0, 250, 50)]
    [InlineData(-0.3, 0.9, 6, -0.4, 1, 0.2)]
    public void Ticks_Range_AreRoundAndHoldIt(double from, double to, int wanted, double first, double last, double step)
    {
        var ticks = ChartTicks.Of(from, to, wanted);

        Assert.Equal(first, ticks[0], 9);
        Assert.Equal(last, ticks[^1], 9);
        Assert.Equal(step, ticks[1] - ticks[0], 9);
    }

    [Fact]
    public void Ticks_NoExtent_AreTwoAtLeast() => Assert.True(ChartTicks.Of(5, 5, 6).Length >= 2);

    private static LedgerChart Fan(int lines) => Chart([.. Enumerable.Range(1, lines).Select(at => new ChartSeries(Name(at), [new(0, 0), new(100, 80.0 * at / lines)]))]);

    private static LedgerChart Chart(ImmutableArray<ChartSeries> series) =>
        new("speeds", "Speeds <1>", new ChartAxis("Across", "rpm", 0, 100), new ChartAxis("Up", "km/h", 0, 80), series) { Words = "Three lines." };

    private static string Name(int at) => string.Create(CultureInfo.InvariantCulture, $"line {at}");

    private static XElement Draw(LedgerChart chart) => XElement.Parse(ChartDrawing.Svg(chart, new ChartDrawingOptions("p")));

    private static List<double> LabelHeights(XElement svg, string start) =>
        [.. svg.Descendants().Where(one => one.Name.LocalName == "text" && one.Value.StartsWith(start, StringComparison.Ordinal)).Select(one => Number(one, "y")).Order()];

    private static double Number(XElement element, string name) => double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);
}
