namespace Swapwright.Worksheets.Wiring;

/// <summary>Millimetres of the bay → units of a plan: x to the right, z up the page. What lies beyond is held at the edge.</summary>
internal sealed record PlanFrame(double Left, double Top, double Right, double Bottom, double Scale, double Edge, double Height)
{
    // Tall enough for a bay that is longer than wide, and no taller than a page.
    private const double MostHeight = 620;

    public static PlanFrame Around(IEnumerable<BayPoint> points, double width, double edge)
    {
        var all = points.Append(default).ToList();
        var (left, right) = (all.Min(point => point.X), all.Max(point => point.X));
        var (bottom, top) = (all.Min(point => point.Z), all.Max(point => point.Z));
        var scale = Math.Min((width - (2 * edge)) / Math.Max(1, right - left), (MostHeight - (2 * edge)) / Math.Max(1, top - bottom));

        // The narrow way gets what is over, so that the plan fills its breadth.
        var spare = (((width - (2 * edge)) / scale) - (right - left)) / 2;
        return new(left - spare, top, right + spare, bottom, scale, edge, ((top - bottom) * scale) + (2 * edge));
    }

    public bool Holds(BayPoint point) => point.X >= Left - 1 && point.X <= Right + 1 && point.Z >= Bottom - 1 && point.Z <= Top + 1;

    public (double X, double Y) Of(BayPoint point) => (
        Edge + ((Math.Clamp(point.X, Left, Right) - Left) * Scale),
        Edge + ((Top - Math.Clamp(point.Z, Bottom, Top)) * Scale));

    public IEnumerable<double> LinesX(double step) => Steps(Left, Right, step).Select(x => Of(new BayPoint(x, 0, 0)).X);

    public IEnumerable<double> LinesZ(double step) => Steps(Bottom, Top, step).Select(z => Of(new BayPoint(0, 0, z)).Y);

    private static IEnumerable<double> Steps(double from, double to, double step)
    {
        for (var at = Math.Ceiling(from / step) * step; at <= to; at += step)
        {
            yield return at;
        }
    }
}
