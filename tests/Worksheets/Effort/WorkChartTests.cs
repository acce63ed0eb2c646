using System.Globalization;
using System.Xml.Linq;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Tests.Worksheets.Effort;

/// <summary>The bars of the work, read back as XML and held against a plan that is laid out by hand.</summary>
public sealed class WorkChartTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    /// <summary>Drain 4 h, then lift 12 h with cleaning 2 h beside it: 16 hours are two days of eight, and the bars are as 4 to 12 to 2.</summary>
    [Fact]
    public void Svg_ThreeJobs_AreBarsAsLongAsTheyTakeFromWhereTheyBegin()
    {
        var drawing = Draw(8, ["drain", "lift"], Turn("drain", 0, 0, 4), Turn("lift", 1, 4, 16), Turn("clean", 1, 4, 6));

        var bars = Bars(drawing);
        var hour = bars[0].Wide / 4;
        Assert.Equal([4.0, 12, 2], bars.Select(bar => bar.Wide / hour), Near);
        Assert.Equal([0.0, 4, 4], bars.Select(bar => (bar.X - bars[0].X) / hour), Near);
        Assert.Equal(["bar critical", "bar critical", "bar"], bars.Select(bar => bar.Classes));
        Assert.True(bars[0].Y < bars[1].Y && bars[1].Y < bars[2].Y);

        // A line where each day begins and where the last ends; the first two have their number. One line between the phases.
        Assert.Equal([0.0, 8, 16], Lines(drawing, "day").Select(x => (x - bars[0].X) / hour), Near);
        Assert.Equal(["1", "2"], Texts(drawing, "day"));
        Assert.Single(Lines(drawing, "phase"));
        Assert.Equal(["DRAIN", "LIFT", "CLEAN"], Texts(drawing, "job"));
        Assert.Equal("3 pieces of work over 2 working days. These decide how long it takes: DRAIN; LIFT.", drawing.Element(s_svg + "desc")!.Value);
    }

    /// <summary>45 days: a line on each would be a grey field, so every third is drawn, 0 to 45, and days 1, 4 … 43 are numbered.</summary>
    [Fact]
    public void Svg_ManyDays_NumbersOneInSoMany()
    {
        var drawing = Draw(8, ["all"], Turn("all", 0, 0, 45 * 8));

        Assert.Equal(Enumerable.Range(0, 15).Select(at => ((3 * at) + 1).ToString(CultureInfo.InvariantCulture)), Texts(drawing, "day"));
        Assert.Equal(16, Lines(drawing, "day").Count);
    }

    /// <summary>Minutes of a long build are still seen, and sixths of hours that add up to a day begin no second one.</summary>
    [Fact]
    public void Svg_ShortestJobAndDayThatIsJustFull_StayAsTheyAre()
    {
        var drawing = Draw(8, ["long"], Turn("short", 0, 0, 0.001), Turn("long", 0, 0.001, 8 + 1e-12));

        Assert.True(Bars(drawing)[0].Wide >= 1.5);
        Assert.Equal(["1"], Texts(drawing, "day"));
        Assert.Equal("2 pieces of work over 1 working day. These decide how long it takes: LONG.", drawing.Element(s_svg + "desc")!.Value);
    }

    /// <summary>Tasks whose every guess is refused leave no work to draw: an empty day, and no number that is none.</summary>
    [Fact]
    public void Svg_NoJobs_IsADayWithoutBars()
    {
        var drawing = Draw(8, []);

        Assert.Empty(Bars(drawing));
        Assert.Equal(["1"], Texts(drawing, "day"));
        Assert.DoesNotContain("NaN", drawing.ToString(), StringComparison.Ordinal);
    }

    private static bool Near(double one, double other) => Math.Abs(one - other) < 0.05;

    private static XElement Draw(double hoursADay, HashSet<string> critical, params JobTurn[] turns) => XElement.Parse(WorkChart.Svg([.. turns], critical, hoursADay, "work"));

    private static JobTurn Turn(string id, int phase, double start, double end) => new(new Job(id, id.ToUpperInvariant(), new Estimate(1, 1, 1), 1, phase, []), start, end);

    private static List<double> Lines(XElement drawing, string classes) =>
        [.. drawing.Descendants(s_svg + "line").Where(line => (string)line.Attribute("class")! == classes).Select(line => (double)line.Attribute("x1")!)];

    private static List<string> Texts(XElement drawing, string classes) =>
        [.. drawing.Descendants(s_svg + "text").Where(text => (string)text.Attribute("class")! == classes).Select(text => text.Value)];

    // "Mx y hWide …"
    private static List<(string Classes, double X, double Y, double Wide)> Bars(XElement drawing) =>
        [.. drawing.Descendants(s_svg + "path").Select(path => ((string)path.Attribute("class")!, ((string)path.Attribute("d")!).Split(' ')))
            .Select(one => (one.Item1, Number(one.Item2[0]), Number(one.Item2[1]), Number(one.Item2[2])))];

    private static double Number(string text) => double.Parse(text.TrimStart('M', 'h'), CultureInfo.InvariantCulture);
}
