using System.Globalization;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Worksheets.Effort;

/// <summary>One line of a chart of ranges.</summary>
/// <param name="Likely">Of a sum the mean, which its title has to say.</param>
/// <param name="IsSum">The sum of the lines above it: drawn apart, since it is not the sum of their ends.</param>
public sealed record RangeLine(string Title, double Least, double Likely, double Most, bool IsSum = false);

/// <summary>
/// Draws estimates as bars from the least to the most with a stroke at the likely value, on one scale from nought. Class names
/// for a stylesheet: <c>range-chart</c>, <c>chart-grid</c>, <c>bar</c>, <c>likely</c>, <c>name</c>, <c>value</c>.
/// </summary>
public static class RangeChart
{
    private const double Width = 640;
    private const double Left = 190;
    private const double Right = 500;
    private const double Row = 26;
    private const double Top = 26;

    /// <param name="unit">Of all values, as in "hours".</param>
    /// <param name="id">Unique on the page; names the title and the description.</param>
    /// <returns>Empty where there is nothing to draw.</returns>
    public static string Svg(string title, IReadOnlyList<RangeLine> lines, string unit, string id)
    {
        var most = lines.Select(line => line.Most).DefaultIfEmpty(0).Max();
        if (!(most > 0) || !double.IsFinite(most))
        {
            return "";
        }

        var drawing = new Drawing();
        var height = Top + (lines.Count * Row) + 6;
        double At(double value) => Left + (value / most * (Right - Left));
        foreach (var mark in Marks(most))
        {
            drawing.Line("chart-grid", At(mark), Top - 4, At(mark), height - 4, " stroke-opacity=\"0.4\"");
            drawing.Text("value", At(mark), Top - 10, "middle", 10, Number(mark));
        }

        for (var at = 0; at < lines.Count; at++)
        {
            var line = lines[at];
            var y = Top + (at * Row) + (Row / 2);
            if (line.IsSum)
            {
                drawing.Line("chart-grid", 8, y - (Row / 2), Width - 8, y - (Row / 2));
            }

            drawing.Text("name", Left - 10, y + 4, "end", Drawing.Fit(12, line.Title, (Left - 18) * 0.85), line.Title, bold: line.IsSum);
            drawing.Line("bar", At(line.Least), y, At(line.Most), y, line.IsSum ? " stroke-width=\"9\" stroke-opacity=\"0.45\"" : " stroke-width=\"6\" stroke-opacity=\"0.45\"");
            drawing.Line("likely", At(line.Likely), y - 8, At(line.Likely), y + 8, " stroke-width=\"3\"");
            drawing.Text("value", Right + 12, y + 4, "start", 11, $"{Number(line.Likely)} ({Number(line.Least)}–{Number(line.Most)})", bold: line.IsSum);
        }

        var told = lines.Select(line => $"{line.Title}: {Number(line.Likely)} {unit}{(line.IsSum ? "" : " likely")}, {Number(line.Least)} at least, {Number(line.Most)} at most.");
        return drawing.Finish("range-chart", id, title, string.Join(' ', told), Width, height);
    }

    // Three to eight round marks.
    private static IEnumerable<double> Marks(double most)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(most)));
        step = (most / step) switch
        {
            < 2 => step / 4,
            < 5 => step,
            _ => step * 2,
        };
        for (var mark = 0.0; mark <= most; mark += step)
        {
            yield return mark;
        }
    }

    // Most values are small and whole, and the runtime keeps the texts of those.
    private static string Number(double value) =>
        value is >= 0 and < 1000 && value == Math.Floor(value) ? ((int)value).ToString(CultureInfo.InvariantCulture) : value.ToString("#,0.##", CultureInfo.InvariantCulture);
}
