using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Site.Pages;

/// <summary>A guide in the chart.</summary>
/// <param name="Number">As in the table beside it.</param>
internal sealed record ComparePoint(string Number, string Title, double Money, double Hours, bool IsUnbeaten);

/// <summary>
/// Draws money against hours. Unbeaten guides are filled squares with a bold number, the others rings, so that colour says nothing alone;
/// numbers are set where they meet neither each other nor a mark, or left out where there is no room: the table has them all.
/// </summary>
internal static class CompareChart
{
    private const double Width = 470;
    private const double Height = 320;
    private const double Left = 54;
    private const double Right = 16;
    private const double Top = 26;
    private const double Bottom = 40;

    // A number may reach this far over the ends of the upright axis; beyond are the words of the axes.
    private const double Margin = 6;
    private const int Steps = 5;

    public static string Svg(ImmutableArray<ComparePoint> points, string currency, string id)
    {
        var drawing = new Drawing();
        var across = Axis(points.Select(point => point.Money));
        var up = Axis(points.Select(point => point.Hours));
        double X(double money) => Left + ((money - across.From) / (across.To - across.From) * (Width - Left - Right));
        double Y(double hours) => Height - Bottom - ((hours - up.From) / (up.To - up.From) * (Height - Top - Bottom));
        for (var tick = across.From; tick <= across.To + (across.Step / 2); tick += across.Step)
        {
            drawing.Line("grid", X(tick), Top, X(tick), Height - Bottom, " stroke-opacity=\".2\"");
            drawing.Text("tick", X(tick), Height - Bottom + 15, "middle", 12, Number(tick));
        }

        for (var tick = up.From; tick <= up.To + (up.Step / 2); tick += up.Step)
        {
            drawing.Line("grid", Left, Y(tick), Width - Right, Y(tick), " stroke-opacity=\".2\"");
            drawing.Text("tick", Left - 6, Y(tick) + 4, "end", 12, Number(tick));
        }

        drawing.Text("axis", Width - Right, Height - 6, "end", 12, $"Parts, {currency}");
        drawing.Text("axis", 4, Top - 11, "start", 12, "Hours of work");
        var taken = points.Select(point => new Room(X(point.Money) - 5, Y(point.Hours) - 5, 10, 10)).ToList();
        // The marked ones get the best places for their numbers and lie on top.
        foreach (var point in points.OrderByDescending(point => point.IsUnbeaten))
        {
            Label(drawing, taken, point, X(point.Money), Y(point.Hours));
        }

        foreach (var point in points.OrderBy(point => point.IsUnbeaten))
        {
            var (x, y) = (X(point.Money), Y(point.Hours));
            var shape = point.IsUnbeaten
                ? string.Create(CultureInfo.InvariantCulture, $"M{Drawing.N(x - 5)} {Drawing.N(y - 5)}h10v10h-10z")
                : string.Create(CultureInfo.InvariantCulture, $"M{Drawing.N(x - 4)} {Drawing.N(y)}a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z");
            drawing.Path(point.IsUnbeaten ? "offer unbeaten" : "offer", shape, point.IsUnbeaten ? " fill=\"currentColor\"" : "");
        }

        return drawing.Finish("compare-chart", id, "Parts against hours of work", Describe(points, currency), Width, Height);
    }

    private static void Label(Drawing drawing, List<Room> taken, ComparePoint point, double x, double y)
    {
        var wide = 7.5 * point.Number.Length;
        (double X, double Y)[] places = [(x + 7, y - 5), (x - 7 - wide, y - 5), (x - (wide / 2), y - 18), (x - (wide / 2), y + 7), (x + 7, y + 4), (x - 7 - wide, y + 4)];
        foreach (var place in places)
        {
            var room = new Room(place.X, place.Y, wide, 11);
            if (room.X > Left && room.X + room.Wide < Width && room.Y >= Top - Margin && room.Y + room.High <= Height - Bottom + Margin && !taken.Exists(room.Meets))
            {
                taken.Add(room);
                drawing.Text("number", room.X, room.Y + 9.5, "start", 12, point.Number, point.IsUnbeaten);
                return;
            }
        }
    }

    /// <summary>From, to and step of an axis: whole steps of 1, 2 or 5 times a power of ten that hold every value.</summary>
    private static (double From, double To, double Step) Axis(IEnumerable<double> values)
    {
        var (least, most) = (values.Min(), values.Max());
        var rough = Math.Max(most - least, 1) / Steps;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = power * (rough / power <= 1 ? 1 : rough / power <= 2 ? 2 : rough / power <= 5 ? 5 : 10);
        var from = Math.Floor(least / step) * step;
        return (from, Math.Max(Math.Ceiling(most / step) * step, from + step), step);
    }

    private static string Describe(ImmutableArray<ComparePoint> points, string currency)
    {
        var unbeaten = points.Where(point => point.IsUnbeaten).OrderBy(point => point.Money).ThenBy(point => point.Hours)
            .Select(point => $"{point.Number}, {point.Title}: {Number(point.Money)} {currency}, {Number(point.Hours)} hours");
        return $"{Number(points.Length)} guides; the table gives every number. No other beats: {string.Join("; ", unbeaten)}.";
    }

    private static string Number(double value) => value.ToString("#,0.##", CultureInfo.InvariantCulture);

    private readonly record struct Room(double X, double Y, double Wide, double High)
    {
        public bool Meets(Room other) => X < other.X + other.Wide && other.X < X + Wide && Y < other.Y + other.High && other.Y < Y + High;
    }
}
