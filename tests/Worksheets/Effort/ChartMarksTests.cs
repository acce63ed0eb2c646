using System.Globalization;
using System.Xml.Linq;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Tests.Worksheets.Effort;

public sealed class ChartMarksTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    /// <summary>Marks stand an even step apart, from nought to no further than the longest bar, and so many that a value can be read between two.</summary>
    [Theory]
    [InlineData(10, 2.5)]
    [InlineData(19, 2.5)]
    [InlineData(20, 10)]
    [InlineData(49, 10)]
    [InlineData(50, 20)]
    [InlineData(99, 20)]
    [InlineData(1500, 250)]
    public void Svg_AnyLength_HasAFewRoundMarks(double most, double step)
    {
        var drawing = XElement.Parse(RangeChart.Svg("Hours", [new("Remove", 1, 2, most)], "hours", "hours"));
        var marks = drawing.Descendants(s_svg + "text").Where(text => (string?)text.Attribute("font-size") == "10").Select(text => double.Parse(text.Value, NumberStyles.Number, CultureInfo.InvariantCulture)).ToList();

        Assert.InRange(marks.Count, 3, 8);
        Assert.Equal(Enumerable.Range(0, marks.Count).Select(at => at * step), marks);
        Assert.InRange(most - marks[^1], 0, step);
    }

    /// <summary>Guesses that leave no doubt: the sum is certain, and so is whether it is enough.</summary>
    [Theory]
    [InlineData(4.9, 0)]
    [InlineData(5, 1)]
    [InlineData(6, 1)]
    public void ShareWithin_NoDoubt_IsAllOrNothing(double limit, double share) =>
        Assert.Equal(share, EstimateSum.Of([new Estimate(2, 2, 2), new Estimate(3, 3, 3)], 0.5).ShareWithin(limit));
}
