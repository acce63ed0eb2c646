using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Swapwright.Worksheets.Ledgers;

/// <summary>What the page decides about a chart.</summary>
/// <param name="IdPrefix">Makes the ids of the drawing unique on its page; anything but letters, digits, hyphens and underscores becomes a hyphen.</param>
public sealed record ChartDrawingOptions(string IdPrefix);

/// <summary>
/// Draws lines over two axes as one self-contained SVG element. No style attributes and no style element, so that a strict
/// content security policy lets it through; it shows properly without a style sheet and can be dressed by the classes chart-grid,
/// chart-axis, chart-line, chart-reference and chart-label. Lines are told apart by their pattern and by the label at
/// their end, never by colour; the labels stand in a column beside the plot and give way to each other there.
/// </summary>
public static class ChartDrawing
{
    private const double Font = 13;
    private const double LineHeight = Font * 1.25;
    private const double LeastPlotHeight = 260;
    private const double LabelGap = 14;
    private const double TickLength = 5;

    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    // Whole, long dashes, dash and dot, short dashes, dash and two dots; then over again, which the labels tell apart.
    private static readonly ImmutableArray<string?> s_patterns = [null, "12 4", "9 3 2 3", "5 3", "9 3 2 3 2 3"];

    private const string ReferencePattern = "2 4";

    /// <summary>The chart, its axes widened to round numbers. A line that leaves the axes is drawn as far as they reach.</summary>
    public static string Svg(LedgerChart chart, ChartDrawingOptions options)
    {
        var series = chart.Series.Where(one => !one.Points.IsDefaultOrEmpty && one.Points.All(point => double.IsFinite(point.Across) && double.IsFinite(point.Up))).ToImmutableArray();
        var across = ChartTicks.Of(chart.Across.From, chart.Across.To, 5);
        var up = ChartTicks.Of(chart.Up.From, chart.Up.To, 6);
        var plot = new Plot(across[0], across[^1], up[0], up[^1], Math.Max(LeastPlotHeight, series.Length * LineHeight));
        var upLabels = up.Select(tick => Number(tick, ChartTicks.Decimals(up[1] - up[0]))).ToList();
        var left = upLabels.Max(Width) + TickLength + 8;
        var labels = Labels(series, plot);
        var right = Plot.Width + LabelGap + series.Select(one => Width(one.Title)).DefaultIfEmpty().Max() + 4;
        var (top, bottom) = (-(LineHeight * 1.6), plot.Height + TickLength + (LineHeight * 2.4));
        var title = Id(options.IdPrefix, "title");
        var description = Id(options.IdPrefix, "desc");
        var root = new XElement(
            s_svg + "svg",
            new XAttribute("class", "chart"),
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{title} {description}"),
            new XAttribute("viewBox", $"{Coordinate(-left)} {Coordinate(top)} {Coordinate(left + right)} {Coordinate(bottom - top)}"),
            new XAttribute("font-family", "sans-serif"),
            new XAttribute("font-size", Coordinate(Font)),
            new XElement(s_svg + "title", new XAttribute("id", title), Clean(chart.Title)),
            new XElement(s_svg + "desc", new XAttribute("id", description), Clean(chart.Words)));
        root.Add(Grid(plot, across, up));
        root.Add(Axes(plot, chart, across, up, upLabels));
        // References first, so that what holds now lies on top.
        root.Add(series.Where(one => one.IsReference).Select(one => Line(one, plot, ReferencePattern)));
        root.Add(series.Where(one => !one.IsReference).Select((one, at) => Line(one, plot, s_patterns[at % s_patterns.Length])));
        root.Add(labels.SelectMany(label => Label(label, plot)));
        return root.ToString(SaveOptions.DisableFormatting);
    }

    /// <summary>Where the labels stand: beside the end of their line, pushed apart so that none covers another, in the order of the ends.</summary>
    internal static ImmutableArray<ChartLabel> Labels(ImmutableArray<ChartSeries> series, Plot plot)
    {
        var ends = series.Select((one, at) => (Series: one, At: at, End: plot.Place(one.Points[^1]))).OrderBy(one => one.End.Y).ThenBy(one => one.At).ToList();
        var heights = ends.Select(one => one.End.Y).ToArray();
        for (var at = 1; at < heights.Length; at++)
        {
            heights[at] = Math.Max(heights[at], heights[at - 1] + LineHeight);
        }

        // What was pushed over the foot of the plot comes back up, and pushes the others up before it.
        var foot = plot.Height;
        for (var at = heights.Length - 1; at >= 0 && heights[at] > foot; at--)
        {
            heights[at] = foot;
            foot -= LineHeight;
        }

        return [.. ends.Zip(heights, (one, height) => new ChartLabel(one.Series.Title, one.Series.IsReference, one.End.X, one.End.Y, height))];
    }

    private static XElement Grid(Plot plot, ImmutableArray<double> across, ImmutableArray<double> up)
    {
        var data = new StringBuilder();
        foreach (var tick in across)
        {
            data.Append(CultureInfo.InvariantCulture, $"M{Coordinate(plot.X(tick))} 0V{Coordinate(plot.Height)}");
        }

        foreach (var tick in up)
        {
            data.Append(CultureInfo.InvariantCulture, $"M0 {Coordinate(plot.Y(tick))}H{Coordinate(Plot.Width)}");
        }

        return Path("chart-grid", data.ToString(), 0.5, new XAttribute("stroke-opacity", "0.35"), new XAttribute("shape-rendering", "crispEdges"));
    }

    private static IEnumerable<XElement> Axes(Plot plot, LedgerChart chart, ImmutableArray<double> across, ImmutableArray<double> up, List<string> upLabels)
    {
        yield return Path("chart-axis", $"M0 0V{Coordinate(plot.Height)}H{Coordinate(Plot.Width)}", 1.2, new XAttribute("shape-rendering", "crispEdges"));
        var decimals = ChartTicks.Decimals(across[1] - across[0]);
        foreach (var tick in across)
        {
            yield return Text(Number(tick, decimals), plot.X(tick), plot.Height + TickLength + Font, "middle");
        }

        foreach (var (tick, words) in up.Zip(upLabels))
        {
            yield return Text(words, -TickLength - 2, plot.Y(tick) + (Font * 0.35), "end");
        }

        yield return Text(Title(chart.Across), Plot.Width / 2, plot.Height + TickLength + (LineHeight * 2.1), "middle");
        yield return Text(Title(chart.Up), -TickLength - 2, -(LineHeight * 0.75), "start");
    }

    private static XElement Line(ChartSeries series, Plot plot, string? pattern)
    {
        var data = string.Concat(series.Points.Select((point, at) =>
        {
            var (x, y) = plot.Place(point);
            return $"{(at == 0 ? "M" : "L")}{Coordinate(x)} {Coordinate(y)}";
        }));
        return Path(
            series.IsReference ? "chart-line chart-reference" : "chart-line",
            data,
            series.IsReference ? 1.2 : 2,
            [new XAttribute("stroke-linejoin", "round"), .. pattern is null ? (XAttribute[])[] : [new XAttribute("stroke-dasharray", pattern)]]);
    }

    private static IEnumerable<XElement> Label(ChartLabel label, Plot plot)
    {
        if (Math.Abs(label.Y - label.EndY) > 0.5 || Plot.Width - label.EndX > 0.5)
        {
            yield return Path("chart-label", $"M{Coordinate(label.EndX)} {Coordinate(label.EndY)}L{Coordinate(Plot.Width + LabelGap - 3)} {Coordinate(label.Y)}", 0.6);
        }

        yield return Text(label.Title, Plot.Width + LabelGap, label.Y + (Font * 0.35), "start");
    }

    private static XElement Path(string name, string data, double width, params XAttribute[] more) => new(
        s_svg + "path",
        new XAttribute("class", name),
        new XAttribute("d", data),
        new XAttribute("fill", "none"),
        new XAttribute("stroke", "currentColor"),
        new XAttribute("stroke-width", Coordinate(width)),
        more);

    private static XElement Text(string words, double x, double y, string anchor) => new(
        s_svg + "text",
        new XAttribute("class", "chart-label"),
        new XAttribute("x", Coordinate(x)),
        new XAttribute("y", Coordinate(y)),
        new XAttribute("text-anchor", anchor),
        new XAttribute("fill", "currentColor"),
        Clean(words));

    private static string Title(ChartAxis axis) => axis.Unit.Length > 0 ? $"{axis.Title}, {axis.Unit}" : axis.Title;

    private static string Number(double value, int decimals) => (Math.Round(value, decimals) + 0.0).ToString("#,0" + (decimals > 0 ? "." + new string('0', decimals) : ""), CultureInfo.InvariantCulture);

    private static string Coordinate(double value) => (Math.Round(value, 2, MidpointRounding.AwayFromZero) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);

    // Reckoned for common sans-serif faces, on the wide side; a drawing made without a browser cannot measure it.
    private static double Width(string words) => words.Length * Font * 0.6;

    private static string Clean(string text) => string.Concat(text.EnumerateRunes().Select(rune => rune.Value > 0xFFFF || XmlConvert.IsXmlChar((char)rune.Value) ? rune.ToString() : "\uFFFD"));

    private static string Id(string prefix, string name) =>
        string.Concat(prefix.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '-')) + "-" + name;
}

/// <summary>A label beside the plot, and the end of the line it names.</summary>
internal sealed record ChartLabel(string Title, bool IsReference, double EndX, double EndY, double Y);

/// <summary>The field between the axes: from the units of the axes to those of the drawing, y down.</summary>
internal sealed record Plot(double Left, double Right, double Bottom, double Top, double Height)
{
    // Narrow, so that the lettering can still be read where a telephone fits the chart to its width.
    public const double Width = 320;

    public double X(double across) => Math.Clamp((across - Left) / (Right - Left), 0, 1) * Width;

    public double Y(double up) => (1 - Math.Clamp((up - Bottom) / (Top - Bottom), 0, 1)) * Height;

    public (double X, double Y) Place(ChartPoint point) => (X(point.Across), Y(point.Up));
}
