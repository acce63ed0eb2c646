using System.Xml.Linq;
using static Swapwright.Worksheets.Belts.DrawingText;

namespace Swapwright.Worksheets.Belts;

/// <summary>The parts that a belt drawing is put together from.</summary>
internal static class DrawingShapes
{
    public const double ScaleBarMm = 100;

    /// <summary>Distance of lines in font sizes.</summary>
    public const double LineHeight = 1.2;

    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static XElement Pulley(Pulley pulley, double fontSize)
    {
        var centre = BeltDrawing.Screen(pulley.X, pulley.Y);
        var radius = pulley.DiameterMm / 2;
        var arm = Math.Min(radius * 0.3, fontSize);
        var group = new XElement(
            Svg + "g",
            new XAttribute("class", pulley.Side == BeltSide.Back ? "belt-pulley belt-pulley-back" : "belt-pulley"),
            new XAttribute("fill", "none"),
            new XAttribute("stroke", "currentColor"),
            new XAttribute("stroke-width", Number(fontSize * 0.1)),
            Circle(centre, radius));
        if (pulley.Ribs > 0)
        {
            // The bottom of the grooves, for the eye only.
            group.Add(Circle(centre, radius * 0.88));
        }

        group.Add(new XElement(
            Svg + "path",
            new XAttribute(
                "d",
                $"M{Number(centre.X - arm)} {Number(centre.Y)}H{Number(centre.X + arm)}"
                + $"M{Number(centre.X)} {Number(centre.Y - arm)}V{Number(centre.Y + arm)}")));
        return group;
    }

    private static XElement Circle(BeltPoint centre, double radius) => new(
        Svg + "circle",
        new XAttribute("cx", Number(centre.X)),
        new XAttribute("cy", Number(centre.Y)),
        new XAttribute("r", Number(radius)));

    public static IEnumerable<XElement> Label(Pulley pulley, PlacedLabel label, double fontSize)
    {
        var box = label.Box;
        if (label.Distance > fontSize * 2)
        {
            var centre = BeltDrawing.Screen(pulley.X, pulley.Y);
            var end = box.Nearest(centre);
            var part = pulley.DiameterMm / 2 / centre.DistanceTo(end);
            var rim = new BeltPoint(centre.X + ((end.X - centre.X) * part), centre.Y + ((end.Y - centre.Y) * part));
            yield return new XElement(
                Svg + "path",
                new XAttribute("class", "belt-label"),
                new XAttribute("d", $"M{Pair(rim)}L{Pair(end)}"),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "currentColor"),
                new XAttribute("stroke-width", Number(fontSize * 0.06)));
        }

        var lines = DrawingText.Label(pulley);
        yield return new XElement(
            Svg + "text",
            new XAttribute("class", "belt-label"),
            new XAttribute("text-anchor", "middle"),
            new XAttribute("fill", "currentColor"),
            lines.Select((line, index) => new XElement(
                Svg + "tspan",
                new XAttribute("x", Number(box.X)),
                new XAttribute("y", Number(box.Top + (fontSize * ((index * LineHeight) + 0.95)))),
                Clean(line))));
    }

    public static XElement ScaleBar(double left, double y, double fontSize)
    {
        var (low, high, right) = (Number(y + (fontSize * 0.35)), Number(y - (fontSize * 0.35)), Number(left + ScaleBarMm));
        return new XElement(
            Svg + "g",
            new XAttribute("class", "belt-label"),
            new XElement(
                Svg + "path",
                new XAttribute("d", $"M{Number(left)} {high}V{low}M{Number(left)} {Number(y)}H{right}M{right} {high}V{low}"),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "currentColor"),
                new XAttribute("stroke-width", Number(fontSize * 0.1))),
            new XElement(
                Svg + "text",
                new XAttribute("x", Number(left + ScaleBarMm + (fontSize * 0.6))),
                new XAttribute("y", Number(y + (fontSize * 0.35))),
                new XAttribute("fill", "currentColor"),
                Number(ScaleBarMm) + " mm"));
    }
}
