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
            root.Add(mark.Element(fontSize));
        }

        root.Add(pulleys.Select(pulley => DrawingShapes.Pulley(pulley, fontSize)));
        if (result.Running is { } path)
        {
            root.Add(new XElement(
                DrawingShapes.Svg + "path",
                new XAttribute("class", "belt-path"),
                new XAttribute("d", PathData(path)),
                new XAttribute("fill", "none"),
                new XAttribute("stroke", "currentColor"),
                new XAttribute("stroke-width", Number(fontSize * 0.3)),
                new XAttribute("stroke-linejoin", "round"),
                result.PathIsPossible ? null : new XAttribute("stroke-dasharray", Number(fontSize))));
        }

        root.Add(pulleys.Zip(labels, (pulley, label) => DrawingShapes.Label(pulley, label, fontSize)));
        var (left, top, right, bottom) = Extent(pulleys, labels, mark, fontSize);
        right = Math.Max(right, left + DrawingShapes.ScaleBarMm + (fontSize * 12));
        bottom += fontSize * 3;
        root.Add(DrawingShapes.ScaleBar(left, bottom - (fontSize * 0.6), fontSize));
        if (result.Designation is { } designation)
        {
            root.Add(new XElement(
                DrawingShapes.Svg + "text",
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
            return DrawingShapes.ScaleBarMm / 10;
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
                    lines.Count * DrawingShapes.LineHeight * fontSize,
                    middle);
            }),
        ];
    }

    private static XElement Frame(BeltLoop loop, BeltResult result, BeltDrawingOptions options, double fontSize)
    {
        var title = Id(options.IdPrefix, "title");
        var description = Id(options.IdPrefix, "desc");
        return new XElement(
            DrawingShapes.Svg + "svg",
            new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", title + " " + description),
            new XAttribute("viewBox", ""),
            new XAttribute("font-family", "sans-serif"),
            new XAttribute("font-size", Number(fontSize)),
            new XElement(DrawingShapes.Svg + "title", new XAttribute("id", title), Clean(options.Title ?? "Belt loop: " + loop.Title)),
            new XElement(
                DrawingShapes.Svg + "desc",
                new XAttribute("id", description),
                Clean(options.Description ?? Description(loop, result))));
    }

    private static string PathData(BeltPath path)
    {
        var data = new StringBuilder();
        var runs = path.Runs;
        data.Append(CultureInfo.InvariantCulture, $"M{Pair(Screen(runs[^1].ContactEnd))}");
        foreach (var run in runs)
        {
            // On the screen, with y down, the sweep flag 1 turns clockwise.
            var clockwise = (run.Side == BeltSide.Grooved) != path.Anticlockwise;
            var radius = Number(run.RadiusMm);
            data.Append(CultureInfo.InvariantCulture, $"L{Pair(Screen(run.ContactStart))}A{radius} {radius} 0 ")
                .Append(run.WrapRad > Math.PI ? "1 " : "0 ")
                .Append(clockwise ? "1 " : "0 ")
                .Append(Pair(Screen(run.ContactEnd)));
        }

        return data.Append('Z').ToString();
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
}
