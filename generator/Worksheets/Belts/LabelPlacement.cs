using System.Runtime.InteropServices;

namespace Swapwright.Worksheets.Belts;

/// <summary>An upright box of the drawing, by its middle.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct LabelBox(double X, double Y, double Width, double Height)
{
    public double Left => X - (Width / 2);

    public double Right => X + (Width / 2);

    public double Top => Y - (Height / 2);

    public double Bottom => Y + (Height / 2);

    public BeltPoint Nearest(BeltPoint point) => new(Math.Clamp(point.X, Left, Right), Math.Clamp(point.Y, Top, Bottom));

    public bool Overlaps(LabelBox other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
}

/// <summary>A label's box and how far it stands from the rim of its pulley.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct PlacedLabel(LabelBox Box, double Distance);

/// <summary>
/// Finds each label a place beside its pulley: a ring of places is tried at growing distance, and the first cheapest wins.
/// Covering anything costs far more than standing further out; of free places, those facing away from the loop are preferred.
/// </summary>
internal sealed class LabelPlacement(double fontSize)
{
    private const int Directions = 24;
    private const int Rings = 12;
    private const double CoverCost = 1000;

    private readonly List<(BeltPoint Centre, double Radius)> discs = [];
    private readonly List<(BeltPoint From, BeltPoint To)> lines = [];
    private readonly List<LabelBox> boxes = [];

    public void Avoid(BeltPoint centre, double radius) => discs.Add((centre, radius));

    public void Avoid(BeltPoint from, BeltPoint to) => lines.Add((from, to));

    public PlacedLabel Place(BeltPoint centre, double radius, double width, double height, BeltPoint loopMiddle)
    {
        var outward = Math.Atan2(centre.Y - loopMiddle.Y, centre.X - loopMiddle.X);
        var best = default(PlacedLabel);
        var least = double.PositiveInfinity;
        for (var ring = 0; ring < Rings; ring++)
        {
            var distance = fontSize * (0.7 + (0.8 * ring));
            for (var i = 0; i < Directions; i++)
            {
                var angle = 2 * Math.PI * i / Directions;
                var (sin, cos) = Math.SinCos(angle);
                var reach = radius + distance;

                // The box touches the ring from outside, whatever the direction.
                var box = new LabelBox(
                    centre.X + (cos * reach) + (Math.Clamp(cos * 2, -1, 1) * width / 2),
                    centre.Y + (sin * reach) + (Math.Clamp(sin * 2, -1, 1) * height / 2),
                    width,
                    height);
                var cost = (CoverCost * Covered(box)) + distance + (fontSize * (1 - Math.Cos(angle - outward)));
                if (cost < least - 1e-9)
                {
                    (best, least) = (new PlacedLabel(box, distance), cost);
                }
            }
        }

        boxes.Add(best.Box);
        return best;
    }

    private int Covered(LabelBox place)
    {
        var margin = fontSize * 0.4;
        var wide = place with { Width = place.Width + (2 * margin), Height = place.Height + (2 * margin) };
        var covered = 0;
        foreach (var (centre, radius) in discs)
        {
            covered += centre.DistanceTo(wide.Nearest(centre)) < radius ? 1 : 0;
        }

        foreach (var (from, to) in lines)
        {
            covered += Meets(wide, from, to) ? 1 : 0;
        }

        foreach (var box in boxes)
        {
            covered += wide.Overlaps(box) ? 1 : 0;
        }

        return covered;
    }

    /// <summary>Clips the segment by the four sides of the box (Liang and Barsky's method).</summary>
    private static bool Meets(LabelBox box, BeltPoint from, BeltPoint to)
    {
        var (enter, leave) = (0.0, 1.0);
        return Clip(from.X - to.X, from.X - box.Left, ref enter, ref leave)
            && Clip(to.X - from.X, box.Right - from.X, ref enter, ref leave)
            && Clip(from.Y - to.Y, from.Y - box.Top, ref enter, ref leave)
            && Clip(to.Y - from.Y, box.Bottom - from.Y, ref enter, ref leave);
    }

    private static bool Clip(double slope, double room, ref double enter, ref double leave)
    {
        if (slope == 0)
        {
            return room >= 0;
        }

        var at = room / slope;
        if (slope < 0)
        {
            enter = Math.Max(enter, at);
        }
        else
        {
            leave = Math.Min(leave, at);
        }

        return enter <= leave;
    }
}
