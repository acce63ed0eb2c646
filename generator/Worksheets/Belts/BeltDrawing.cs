using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using static Swapwright.Worksheets.Belts.DrawingText;

namespace Swapwright.Worksheets.Belts;

/// <summary>
/// Draws a loop to scale as one self-contained SVG element for a page: one user unit is one millimetre. There are no style
/// attributes and no style element, so that a strict content security policy lets it through; it shows properly without a
/// style sheet, and one can dress it by the classes belt-path, belt-pulley, belt-pulley-back, belt-label and belt-adjuster.
/// </summary>
public static class BeltDrawing
{
    private const double ScaleBarMm = 100;

    /// <summary>Distance of lines in font sizes.</summary>
    private const double LineHeight = 1.2;

    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    /// <summary>The drawing; the belt dashed where no real one could run so, and the pulleys alone where it has no path at all.</summary>
    public static string Svg(BeltLoop loop, BeltResult result, BeltDrawingOptions options)
    {
        var pulleys = Placed(loop, result);
        var mark = result.Running is null || loop.Adjuster is null ? null : new AdjusterMark(loop, loop.Adjuster);
        var fontSize = FontSize(pulleys);
        var labels = Labels(pulleys, result.Running, mark, fontSize);
        var root = Frame(loop, result, options, fontSize);
        if (mark is not null)
        {
            root.Add(mark.Element(Ns, fontSize));
        }

        root.Add(pulleys.Select(pulley => PulleyElement(pulley, fontSize)));
        if (result.Running is { } path)
        {
            root.Add(new XElement(
                Ns + "path",
                new XAttribute("class", "belt-path"),
                new XAttribute("d", PathData(path)),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "currentColor"),
                new XAttribute("stroke-width", Number(fontSize * 0.3)),
                new XAttribute("stroke-linejoin", "round"),
                result.PathIsPossible ? null : new XAttribute("stroke-dasharray", Number(fontSize))));
        }

        root.Add(pulleys.Zip(labels, (pulley, label) => LabelElements(pulley, label, fontSize)));
        var (left, top, right, bottom) = Extent(pulleys, labels, mark, fontSize);
        right = Math.Max(right, left + ScaleBarMm + (fontSize * 12));
        bottom += fontSize * 3;
        root.Add(ScaleBar(left, bottom - (fontSize * 0.6), fontSize));
        if (result.Designation is { } designation)
        {
            root.Add(new XElement(
                Ns + "text",
                new XAttribute("class", "belt-label"),
                new XAttribute("x", Number(right)),
                new XAttribute("y", Number(bottom - (fontSize * 0.25))),
                new XAttribute("text-anchor", "end"),
                new XAttribute("fill", "currentColor"),
                Clean(designation)));
        }

        var margin = fontSize * 0.8;
        root.SetAttributeValue(
            "viewBox",
            $"{Number(left - margin)} {Number(top - margin)} {Number(right - left + (2 * margin))} {Number(bottom - top + (2 * margin))}");
        return root.ToString(SaveOptions.DisableFormatting);
    }

    /// <summary>From the belt's plane, y up, to the screen, y down.</summary>
    internal static BeltPoint Screen(double x, double y) => new(x, -y);

    private static BeltPoint Screen(BeltPoint point) => Screen(point.X, point.Y);

    private static ImmutableArray<Pulley> Placed(BeltLoop loop, BeltResult result)
    {
        var pulleys = loop.Pulleys.IsDefault ? [] : loop.Pulleys;
        return result.Running is { } path
            ? [.. pulleys.Zip(path.Runs, (pulley, run) => pulley with { X = run.Centre.X, Y = run.Centre.Y })]
            : [.. pulleys.Where(LoopInput.IsDrawable)];
    }

    /// <summary>Lettering grows with the drawing, because the page fits the drawing to its own width.</summary>
    private static double FontSize(ImmutableArray<Pulley> pulleys)
    {
        if (pulleys.IsEmpty)
        {
            return ScaleBarMm / 10;
        }

        var width = pulleys.Max(pulley => pulley.X + (pulley.DiameterMm / 2)) - pulleys.Min(pulley => pulley.X - (pulley.DiameterMm / 2));
        var height = pulleys.Max(pulley => pulley.Y + (pulley.DiameterMm / 2)) - pulleys.Min(pulley => pulley.Y - (pulley.DiameterMm / 2));
        return Math.Max(width, height) / 36;
    }

    private static ImmutableArray<PlacedLabel> Labels(ImmutableArray<Pulley> pulleys, BeltPath? path, AdjusterMark? mark, double fontSize)
    {
        var placement = new LabelPlacement(fontSize);
        foreach (var pulley in pulleys)
        {
            placement.Avoid(Screen(pulley.X, pulley.Y), pulley.DiameterMm / 2);
        }

        foreach (var (centre, radius) in mark?.Outlines(fontSize) ?? [])
        {
            placement.Avoid(centre, radius);
        }

        var runs = path?.Runs ?? [];
        for (var i = 0; i < runs.Length; i++)
        {
            placement.Avoid(Screen(runs[i].ContactEnd), Screen(runs[(i + 1) % runs.Length].ContactStart));
        }

        var middle = pulleys.IsEmpty ? default : Screen(pulleys.Average(pulley => pulley.X), pulleys.Average(pulley => pulley.Y));
        return
        [
            .. pulleys.Select(pulley =>
            {
                var lines = Label(pulley);
                return placement.Place(
                    Screen(pulley.X, pulley.Y),
                    pulley.DiameterMm / 2,
                    lines.Max(Ems) * fontSize,
                    lines.Count * LineHeight * fontSize,
                    middle);
            }),
        ];
    }

    private static XElement Frame(BeltLoop loop, BeltResult result, BeltDrawingOptions options, double fontSize)
    {
        var title = Id(options.IdPrefix, "title");
        var description = Id(options.IdPrefix, "desc");
        return new XElement(
            Ns + "svg",
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", title + " " + description),
            new XAttribute("viewBox", ""),
            new XAttribute("font-family", "sans-serif"),
            new XAttribute("font-size", Number(fontSize)),
            new XElement(Ns + "title", new XAttribute("id", title), Clean(options.Title ?? "Belt loop: " + loop.Title)),
            new XElement(Ns + "desc", new XAttribute("id", description), Clean(options.Description ?? Description(loop, result))));
    }

    private static string PathData(BeltPath path)
    {
        var data = new StringBuilder();
        var runs = path.Runs;
        data.Append(CultureInfo.InvariantCulture, $"M{Pair(runs[^1].ContactEnd)}");
        foreach (var run in runs)
        {
            // On the screen, with y down, the sweep flag 1 turns clockwise.
            var clockwise = (run.Side == BeltSide.Grooved) != path.Anticlockwise;
            data.Append(
                CultureInfo.InvariantCulture,
                $"L{Pair(run.ContactStart)}A{Number(run.RadiusMm)} {Number(run.RadiusMm)} 0 {(run.WrapRad > Math.PI ? 1 : 0)} {(clockwise ? 1 : 0)} {Pair(run.ContactEnd)}");
        }

        return data.Append('Z').ToString();
    }

    private static string Pair(BeltPoint point) => Number(point.X) + " " + Number(Screen(point).Y);

    private static XElement PulleyElement(Pulley pulley, double fontSize)
    {
        var centre = Screen(pulley.X, pulley.Y);
        var radius = pulley.DiameterMm / 2;
        var arm = Math.Min(radius * 0.3, fontSize);
        var group = new XElement(
            Ns + "g",
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
            Ns + "path",
            new XAttribute(
                "d",
                $"M{Number(centre.X - arm)} {Number(centre.Y)}H{Number(centre.X + arm)}M{Number(centre.X)} {Number(centre.Y - arm)}V{Number(centre.Y + arm)}")));
        return group;
    }

    private static XElement Circle(BeltPoint centre, double radius) => new(
        Ns + "circle",
        new XAttribute("cx", Number(centre.X)),
        new XAttribute("cy", Number(centre.Y)),
        new XAttribute("r", Number(radius)));

    private static IEnumerable<XElement> LabelElements(Pulley pulley, PlacedLabel label, double fontSize)
    {
        var box = label.Box;
        if (label.Distance > fontSize * 2)
        {
            var centre = Screen(pulley.X, pulley.Y);
            var (toX, toY) = (box.NearestX(centre.X), box.NearestY(centre.Y));
            var length = Math.Sqrt(((toX - centre.X) * (toX - centre.X)) + ((toY - centre.Y) * (toY - centre.Y)));
            var rim = pulley.DiameterMm / 2 / length;
            yield return new XElement(
                Ns + "path",
                new XAttribute("class", "belt-label"),
                new XAttribute(
                    "d",
                    $"M{Number(centre.X + ((toX - centre.X) * rim))} {Number(centre.Y + ((toY - centre.Y) * rim))}L{Number(toX)} {Number(toY)}"),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "currentColor"),
                new XAttribute("stroke-width", Number(fontSize * 0.06)));
        }

        var lines = Label(pulley);
        yield return new XElement(
            Ns + "text",
            new XAttribute("class", "belt-label"),
            new XAttribute("text-anchor", "middle"),
            new XAttribute("fill", "currentColor"),
            lines.Select((line, index) => new XElement(
                Ns + "tspan",
                new XAttribute("x", Number(box.X)),
                new XAttribute("y", Number(box.Top + (fontSize * ((index * LineHeight) + 0.95)))),
                Clean(line))));
    }

    private static (double Left, double Top, double Right, double Bottom) Extent(
        ImmutableArray<Pulley> pulleys, ImmutableArray<PlacedLabel> labels, AdjusterMark? mark, double fontSize)
    {
        var boxes = pulleys.Select(pulley => (Centre: Screen(pulley.X, pulley.Y), Radius: pulley.DiameterMm / 2))
            .Concat(mark?.Outlines(fontSize) ?? [])
            .Select(disc => new LabelBox(disc.Centre.X, disc.Centre.Y, 2 * disc.Radius, 2 * disc.Radius))
            .Concat(labels.Select(label => label.Box))
            .DefaultIfEmpty()
            .ToList();
        return (boxes.Min(box => box.Left), boxes.Min(box => box.Top), boxes.Max(box => box.Right), boxes.Max(box => box.Bottom));
    }

    private static XElement ScaleBar(double left, double y, double fontSize)
    {
        var tick = fontSize * 0.35;
        return new XElement(
            Ns + "g",
            new XAttribute("class", "belt-label"),
            new XElement(
                Ns + "path",
                new XAttribute(
                    "d",
                    $"M{Number(left)} {Number(y - tick)}V{Number(y + tick)}M{Number(left)} {Number(y)}H{Number(left + ScaleBarMm)}M{Number(left + ScaleBarMm)} {Number(y - tick)}V{Number(y + tick)}"),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "currentColor"),
                new XAttribute("stroke-width", Number(fontSize * 0.1))),
            new XElement(
                Ns + "text",
                new XAttribute("x", Number(left + ScaleBarMm + (fontSize * 0.6))),
                new XAttribute("y", Number(y + (fontSize * 0.35))),
                new XAttribute("fill", "currentColor"),
                Number(ScaleBarMm) + " mm"));
    }
}
