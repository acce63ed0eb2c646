using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Worksheets.Effort;

/// <summary>Draws the work as bars over working days, phase by phase. An inline SVG that looks as meant without a stylesheet.</summary>
public static class WorkChart
{
    private const double Width = 720;
    private const double NameRoom = 250;
    private const double Row = 15;
    private const double Top = 26;
    private const double Right = 8;

    /// <param name="id">Prefix of the ids in the drawing; unique on the page.</param>
    /// <param name="critical">Jobs that decide the length: drawn solid, the others hatched by an outline.</param>
    public static string Svg(ImmutableArray<JobTurn> turns, IReadOnlySet<string> critical, double hoursADay, string id)
    {
        var drawing = new Drawing();
        var length = Math.Max(turns.IsEmpty ? 0 : turns.Max(turn => turn.End), 1e-3);
        var days = (int)Math.Ceiling(Math.Round(length / hoursADay, 9));
        var hour = (Width - NameRoom - Right) / (days * hoursADay);
        var height = Top + (turns.Length * Row) + 6;
        var step = Math.Max(1, (int)Math.Ceiling(days / 20.0));
        for (var day = 0; day <= days; day += step)
        {
            var x = NameRoom + (day * hoursADay * hour);
            drawing.Line("day", x, Top - 6, x, height - 4, " stroke-opacity=\".25\"");
            if (day < days)
            {
                drawing.Text("day", x + 3, Top - 10, "start", 10, (day + 1).ToString(CultureInfo.InvariantCulture));
            }
        }

        drawing.Text("axis", NameRoom - 8, Top - 10, "end", 10, "Working day");
        for (var at = 0; at < turns.Length; at++)
        {
            var turn = turns[at];
            var y = Top + (at * Row);
            if (at > 0 && turns[at - 1].Job.Phase != turn.Job.Phase)
            {
                drawing.Line("phase", 4, y - 1, Width - Right, y - 1, " stroke-opacity=\".5\"");
            }

            var wide = Math.Max(1.5, (turn.End - turn.Start) * hour);
            drawing.Text("job", NameRoom - 8, y + 10, "end", Drawing.Fit(10.5, turn.Job.Title, NameRoom - 14), turn.Job.Title);
            var more = critical.Contains(turn.Job.Id) ? " fill=\"currentColor\"" : " fill=\"currentColor\" fill-opacity=\".18\"";
            drawing.Path(
                critical.Contains(turn.Job.Id) ? "bar critical" : "bar",
                string.Create(CultureInfo.InvariantCulture, $"M{Drawing.N(NameRoom + (turn.Start * hour))} {Drawing.N(y + 2)} h{Drawing.N(wide)} v{Drawing.N(Row - 5)} h{Drawing.N(-wide)} z"),
                more);
        }

        return drawing.Finish("work-chart", id, "Order of work", Describe(turns, critical, days), Width, height);
    }

    private static string Describe(ImmutableArray<JobTurn> turns, IReadOnlySet<string> critical, int days) => string.Create(
        CultureInfo.InvariantCulture,
        $"{turns.Length} pieces of work over {days} working {(days == 1 ? "day" : "days")}. These decide how long it takes: {string.Join("; ", turns.Where(turn => critical.Contains(turn.Job.Id)).Select(turn => turn.Job.Title))}.");
}
