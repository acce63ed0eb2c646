using System.Globalization;
using System.Xml.Linq;
using static Swapwright.Worksheets.Belts.DrawingText;

namespace Swapwright.Worksheets.Belts;

/// <summary>
/// Shows an adjuster's travel to scale: the pulley's outline at both ends and a double arrow, straight or bent, along which its centre
/// moves; a swinging one with its pivot, a spring's with a cross at the nominal mark.
/// </summary>
internal sealed class AdjusterMark
{
    private readonly Adjuster adjuster;
    private readonly Pulley atFrom;
    private readonly Pulley atTo;
    private readonly Pulley? atMark;

    public AdjusterMark(BeltLoop loop, Adjuster adjuster)
    {
        this.adjuster = adjuster is SpringAdjuster spring ? spring.Way : adjuster;
        atMark = adjuster is SpringAdjuster ? AdjusterTravel.At(loop, adjuster, AdjusterTravel.Mid(adjuster)).First(pulley => pulley.Id == adjuster.StationId) : null;
        var (from, to) = AdjusterTravel.Range(adjuster);
        atFrom = AdjusterTravel.At(loop, adjuster, from).First(pulley => pulley.Id == adjuster.StationId);
        atTo = AdjusterTravel.At(loop, adjuster, to).First(pulley => pulley.Id == adjuster.StationId);
    }

    public IEnumerable<(BeltPoint Centre, double Radius)> Outlines(double fontSize)
    {
        yield return (BeltDrawing.Screen(atFrom.X, atFrom.Y), atFrom.DiameterMm / 2);
        yield return (BeltDrawing.Screen(atTo.X, atTo.Y), atTo.DiameterMm / 2);
        if (adjuster is SwingAdjuster swing)
        {
            yield return (BeltDrawing.Screen(swing.PivotX, swing.PivotY), fontSize * 0.5);
        }
    }

    public XElement Element(double fontSize)
    {
        var thin = Number(fontSize * 0.08);
        var dashes = Number(fontSize * 0.35);
        var group = new XElement(
            DrawingShapes.Svg + "g",
            new XAttribute("class", "belt-adjuster"),
            new XAttribute("fill", "none"),
            new XAttribute("stroke", "currentColor"),
            new XAttribute("stroke-width", thin));
        foreach (var (centre, radius) in Outlines(fontSize).Take(2))
        {
            group.Add(new XElement(
                DrawingShapes.Svg + "circle",
                new XAttribute("cx", Number(centre.X)),
                new XAttribute("cy", Number(centre.Y)),
                new XAttribute("r", Number(radius)),
                new XAttribute("stroke-dasharray", dashes)));
        }

        var from = BeltDrawing.Screen(atFrom.X, atFrom.Y);
        var to = BeltDrawing.Screen(atTo.X, atTo.Y);
        if (adjuster is SwingAdjuster swing)
        {
            var pivot = BeltDrawing.Screen(swing.PivotX, swing.PivotY);
            group.Add(new XElement(
                DrawingShapes.Svg + "circle",
                new XAttribute("cx", Number(pivot.X)),
                new XAttribute("cy", Number(pivot.Y)),
                new XAttribute("r", Number(fontSize * 0.25)),
                new XAttribute("fill", "currentColor")));
            group.Add(new XElement(
                DrawingShapes.Svg + "path",
                new XAttribute("d", $"M{Pair(from)}L{Pair(pivot)}L{Pair(to)}"),
                new XAttribute("stroke-dasharray", dashes)));
            AddBent(group, pivot, from, to, swing.ToRad - swing.FromRad, fontSize);
        }
        else
        {
            var heading = Math.Atan2(to.Y - from.Y, to.X - from.X);
            AddArrow(group, from, to, "L", heading, heading, HeadSize(fontSize, from.DistanceTo(to)));
        }

        if (atMark is not null)
        {
            var (mark, arm) = (BeltDrawing.Screen(atMark.X, atMark.Y), fontSize * 0.35);
            group.Add(new XElement(
                DrawingShapes.Svg + "path",
                new XAttribute("class", "belt-nominal"),
                new XAttribute("d", $"M{Pair(mark with { X = mark.X - arm })}L{Pair(mark with { X = mark.X + arm })}M{Pair(mark with { Y = mark.Y - arm })}L{Pair(mark with { Y = mark.Y + arm })}")));
        }

        return group;
    }

    private static void AddBent(XElement group, BeltPoint pivot, BeltPoint from, BeltPoint to, double turn, double fontSize)
    {
        var arm = pivot.DistanceTo(from);
        var bend = string.Create(
            CultureInfo.InvariantCulture, $"A{Number(arm)} {Number(arm)} 0 {(turn > Math.PI ? 1 : 0)} 0 ");

        // Anticlockwise as drawn is a falling angle on the screen, so the arrow leaves at a quarter turn behind the arm.
        var start = Math.Atan2(from.Y - pivot.Y, from.X - pivot.X) - (Math.PI / 2);
        AddArrow(group, from, to, bend, start, start - turn, HeadSize(fontSize, arm * turn));
    }

    private static void AddArrow(
        XElement group, BeltPoint from, BeltPoint to, string joint, double headingAtFrom, double headingAtTo, double head)
    {
        group.Add(new XElement(
            DrawingShapes.Svg + "path",
            new XAttribute("d", $"M{Pair(from)}{joint}{Pair(to)}"),
            new XAttribute("stroke-width", Number(head * 0.25))));
        group.Add(Head(from, headingAtFrom + Math.PI, head));
        group.Add(Head(to, headingAtTo, head));
    }

    private static XElement Head(BeltPoint tip, double heading, double size)
    {
        BeltPoint Corner(double side) => new(
            tip.X - (size * Math.Cos(heading)) - (side * size * Math.Sin(heading)),
            tip.Y - (size * Math.Sin(heading)) + (side * size * Math.Cos(heading)));
        return new XElement(
            DrawingShapes.Svg + "path",
            new XAttribute("d", $"M{Pair(tip)}L{Pair(Corner(0.4))}L{Pair(Corner(-0.4))}Z"),
            new XAttribute("fill", "currentColor"),
            new XAttribute("stroke", "none"));
    }

    /// <summary>Short travels get short heads, so that both still show.</summary>
    private static double HeadSize(double fontSize, double travel) => Math.Min(fontSize * 0.6, travel / 3);
}
