namespace Swapwright.Worksheets.Wiring;

/// <summary>Finds room for the numbers of a plan: beside their spot, on no other spot and on no other number, and within its breadth.</summary>
/// <param name="breadth">Of the plan, in the units of the spots; what lies beyond is cut off.</param>
internal sealed class PlanLabels(IEnumerable<(double X, double Y)> spots, double breadth)
{
    public const double Size = 11;

    private const double Half = 5;

    private readonly List<(double Left, double Top, double Right, double Bottom)> _taken = [.. spots.Select(spot => (spot.X - Half, spot.Y - Half, spot.X + Half, spot.Y + Half))];

    /// <summary>The baseline's place and the anchor; the least bad place where there is no free one.</summary>
    public (double X, double Y, string Anchor) Place(double x, double y, string text)
    {
        var width = (0.62 * Size * text.Length) + 2;
        var best = (X: x + 8, Y: y + 4, Anchor: "start");
        var least = int.MaxValue;
        foreach (var (dx, dy, anchor) in Places())
        {
            var left = anchor == "start" ? x + dx : anchor == "end" ? x + dx - width : x + dx - (width / 2);
            var box = (Left: left, Top: y + dy - Size + 2, Right: left + width, Bottom: y + dy + 2);
            var met = box.Left < 0 || box.Right > breadth ? int.MaxValue - 1
                : _taken.Count(one => one.Left < box.Right && box.Left < one.Right && one.Top < box.Bottom && box.Top < one.Bottom);
            if (met < least)
            {
                (best, least) = ((x + dx, y + dy, anchor), met);
            }

            if (met == 0)
            {
                break;
            }
        }

        var start = best.Anchor == "start" ? best.X : best.Anchor == "end" ? best.X - width : best.X - (width / 2);
        _taken.Add((start, best.Y - Size + 2, start + width, best.Y + 2));
        return best;
    }

    private static IEnumerable<(double X, double Y, string Anchor)> Places()
    {
        foreach (var away in new[] { 8.0, 16, 26, 38 })
        {
            yield return (away, 4, "start");
            yield return (-away, 4, "end");
            yield return (0, -away, "middle");
            yield return (0, away + 8, "middle");
            yield return (away * 0.8, -away * 0.7, "start");
            yield return (away * 0.8, (away * 0.7) + 7, "start");
            yield return (-away * 0.8, -away * 0.7, "end");
            yield return (-away * 0.8, (away * 0.7) + 7, "end");
        }
    }
}
