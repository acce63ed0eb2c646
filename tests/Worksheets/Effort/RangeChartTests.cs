using System.Xml.Linq;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Tests.Worksheets.Effort;

public sealed class RangeChartTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Svg_Lines_AreDrawnOnOneScaleFromNought()
    {
        var drawing = XElement.Parse(RangeChart.Svg("Hours", [new("Remove", 10, 20, 40), new("All", 30, 50, 100, IsSum: true)], "hours", "hours"));

        double Of(string classes, int at, string attribute) => (double)drawing.Descendants(s_svg + "line").Where(line => (string)line.Attribute("class")! == classes).ElementAt(at).Attribute(attribute)!;
        var scale = (Of("bar", 1, "x2") - Of("bar", 0, "x2")) / 60;
        Assert.Equal(30 * scale, Of("bar", 0, "x2") - Of("bar", 0, "x1"), 0.2);
        Assert.Equal(10 * scale, Of("likely", 0, "x1") - Of("bar", 0, "x1"), 0.2);
        Assert.Equal("Remove: 20 hours likely, 10 at least, 40 at most. All: 50 hours, 30 at least, 100 at most.", drawing.Element(s_svg + "desc")!.Value);
        Assert.Contains(drawing.Descendants(s_svg + "text"), text => text.Value == "50 (30–100)");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Svg_NothingToDraw_IsEmpty(double most) => Assert.Equal("", RangeChart.Svg("Hours", [new("Remove", 0, 0, most)], "hours", "hours"));
}
