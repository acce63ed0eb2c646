using System.Collections.Immutable;
using System.Globalization;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Draws an adapter harness: the harness's cavities on the left, the cavities in use on the right, in the order of the rows, so
/// that a joined pair faces each other and the lines do not cross. Colour is written beside each line and never told by paint alone.
/// </summary>
/// <remarks>
/// Class names for a stylesheet: <c>adapter-drawing</c>, <c>plug-box</c>, <c>plug-title</c>, <c>cavity</c>, <c>signal</c>, <c>code</c>,
/// <c>note</c>, <c>pin</c>, <c>wire</c> with <c>base-xx</c>, <c>tracer</c> with <c>tracer-xx</c>, <c>joined</c>, <c>shield</c>,
/// <c>cap</c>, <c>add</c>, <c>missing</c>.
/// </remarks>
public static class AdapterDrawing
{
    private const double Row = 24;
    private const double Top = 52;
    private const double LeftPin = 108;
    private const double RightPin = 612;
    private const double Width = 720;
    private const double Middle = (LeftPin + RightPin) / 2;

    /// <param name="id">Unique on the page; names the title and the description.</param>
    public static string Svg(AdapterHarness adapter, string id)
    {
        var drawing = new Drawing();
        var lines = Place(adapter.Rows);
        var height = Top + (lines.Length * Row) + 56;
        Side(drawing, adapter.From.Title, 8, LeftPin, lines, adapter.From.Plugs.Length > 0);
        Side(drawing, adapter.To.Title, RightPin, Width - 8, lines, adapter.To.Plugs.Length > 0);
        foreach (var line in lines)
        {
            Wire(drawing, line);
        }

        Legend(drawing, Top + (lines.Length * Row) + 20);
        return drawing.Finish("adapter-drawing", id, $"Adapter harness: {adapter.From.Title} to {adapter.To.Title}", Describe(adapter), Width, height);
    }

    /// <summary>The height of each row, and for a surplus cavity the height of the row that it joins.</summary>
    private static ImmutableArray<DrawnRow> Place(ImmutableArray<AdapterRow> rows)
    {
        var first = new Dictionary<(bool IsFrom, string Name), double>();
        var drawn = ImmutableArray.CreateBuilder<DrawnRow>(rows.Length);
        for (var i = 0; i < rows.Length; i++)
        {
            var (row, y) = (rows[i], Top + (i * Row) + (Row / 2));
            var left = row.From is null || first.TryAdd((true, row.From), y) ? y : first[(true, row.From)];
            var right = row.To is null || first.TryAdd((false, row.To), y) ? y : first[(false, row.To)];
            drawn.Add(new(row, y, left, right));
        }

        return drawn.MoveToImmutable();
    }

    private static void Side(Drawing drawing, string title, double left, double right, ImmutableArray<DrawnRow> lines, bool exists)
    {
        var anchor = left < Middle ? "start" : "end";
        drawing.Text("plug-title", left < Middle ? left : right, 24, anchor, 14, title, bold: true);
        if (exists)
        {
            drawing.Box("plug-box", left, Top - 8, right - left, (lines.Length * Row) + 16, 6);
        }
    }

    private static void Wire(Drawing drawing, DrawnRow line)
    {
        var row = line.Row;
        if (row.From is not null && line.LeftY == line.Y)
        {
            End(drawing, LeftPin, line.Y, row.From, row.FromColour, isLeft: true);
        }

        if (row.To is not null && line.RightY == line.Y)
        {
            End(drawing, RightPin, line.Y, row.To, row.ToColour, isLeft: false);
        }

        switch (row.Action)
        {
            case AdapterAction.Join:
                Joined(drawing, line);
                break;
            case AdapterAction.Cap:
                Stub(drawing, line, LeftPin, LeftPin + 100, "cap", row.FromColour);
                drawing.Line("cap", LeftPin + 100, line.Y - 6, LeftPin + 100, line.Y + 6, " stroke-width=\"3\"");
                drawing.Text("note", LeftPin + 110, line.Y + 4, "start", 11, $"{Name(row)}: capped");
                break;
            case AdapterAction.AddWire:
                Stub(drawing, line, RightPin, RightPin - 100, "add", row.ToColour);
                drawing.Path("add", $"M{Drawing.N(RightPin - 92)} {Drawing.N(line.Y - 6)} l-8 6 l8 6", " stroke-width=\"1.5\"");
                drawing.Text("note", RightPin - 110, line.Y + 4, "end", 11, $"{Name(row)}: {row.Note}");
                break;
            default:
                drawing.Path("missing", Cross(RightPin - 12, line.Y), " stroke-width=\"1.5\"");
                drawing.Text("note", RightPin - 110, line.Y + 4, "end", 11, row.Optional ? $"{Name(row)}: not used" : $"{Name(row)}: MISSING");
                break;
        }
    }

    private static void End(Drawing drawing, double x, double y, string cavity, string? colour, bool isLeft)
    {
        var inwards = isLeft ? 1 : -1;
        drawing.Dot("pin", x, y, 3);
        drawing.Text("cavity", x - (10 * inwards), y + 4, isLeft ? "end" : "start", 12, cavity, bold: true);
        drawing.Text("code", x + (8 * inwards), y - 4, isLeft ? "start" : "end", 10, colour ?? "");
    }

    private static void Joined(Drawing drawing, DrawnRow line)
    {
        var row = line.Row;
        var bend = line.LeftY == line.RightY ? 0 : 1;
        var (leftBend, rightBend) = line.LeftY == line.Y ? (RightPin - 90, RightPin - 60) : (LeftPin + 60, LeftPin + 90);
        var path = bend == 0
            ? $"M{Drawing.N(LeftPin)} {Drawing.N(line.Y)} H{Drawing.N(RightPin)}"
            : line.LeftY == line.Y
                ? $"M{Drawing.N(LeftPin)} {Drawing.N(line.LeftY)} H{Drawing.N(leftBend)} L{Drawing.N(rightBend)} {Drawing.N(line.RightY)}"
                : $"M{Drawing.N(leftBend)} {Drawing.N(line.LeftY)} L{Drawing.N(rightBend)} {Drawing.N(line.RightY)} H{Drawing.N(RightPin)}";
        Stroke(drawing, path, row.ToColour ?? row.FromColour, row.Shielded ? "joined shield" : "joined");
        if (bend == 1)
        {
            var (x, y) = line.LeftY == line.Y ? (rightBend, line.RightY) : (leftBend, line.LeftY);
            drawing.Dot("splice", x, y, 4);
        }

        if (row.Shielded)
        {
            drawing.Path("shield", Ellipse(LeftPin + 70, line.Y) + Ellipse(RightPin - 70, line.Y), " stroke-width=\"1\" stroke-dasharray=\"2 2\"");
        }

        drawing.Text("signal", Middle, line.Y - 4, "middle", 11, Name(row) + (bend == 1 ? $" ({row.Note})" : ""));
    }

    private static void Stub(Drawing drawing, DrawnRow line, double from, double to, string classes, string? colour) =>
        Stroke(drawing, $"M{Drawing.N(from)} {Drawing.N(line.Y)} H{Drawing.N(to)}", colour, classes);

    /// <summary>The wire, and the tracer as dashes upon it where the colour has one.</summary>
    private static void Stroke(Drawing drawing, string path, string? colour, string classes)
    {
        if (!WireColour.TryParse(colour, out var known))
        {
            drawing.Path("wire " + classes, path, " stroke-width=\"1.5\"");
            return;
        }

        drawing.Path($"wire {classes} {known.BaseClass}", path, " stroke-width=\"1.5\"");
        if (known.TracerClass is { } tracer)
        {
            drawing.Path($"tracer {tracer}", path, " stroke-width=\"1.5\" stroke-dasharray=\"6 10\"");
        }
    }

    private static string Cross(double x, double y) =>
        $"M{Drawing.N(x - 5)} {Drawing.N(y - 5)} l10 10 m0 -10 l-10 10";

    private static string Ellipse(double x, double y) =>
        $"M{Drawing.N(x - 4)} {Drawing.N(y)} a4 8 0 1 0 8 0 a4 8 0 1 0 -8 0 ";

    private static string Name(AdapterRow row) =>
        string.Create(CultureInfo.InvariantCulture, $"{row.Title}, {row.SizeMm2:0.##} mm²");

    private static void Legend(Drawing drawing, double y)
    {
        drawing.Line("cap", 8, y, 38, y, " stroke-width=\"1.5\"");
        drawing.Line("cap", 38, y - 6, 38, y + 6, " stroke-width=\"3\"");
        drawing.Text("note", 46, y + 4, "start", 11, "capped end");
        drawing.Path("add", $"M168 {Drawing.N(y)} H138 m8 -6 l-8 6 l8 6", " stroke-width=\"1.5\"");
        drawing.Text("note", 176, y + 4, "start", 11, "new wire");
        drawing.Dot("splice", 268, y, 4);
        drawing.Text("note", 278, y + 4, "start", 11, "splice");
        drawing.Path("shield", Ellipse(350, y), " stroke-width=\"1\" stroke-dasharray=\"2 2\"");
        drawing.Text("note", 362, y + 4, "start", 11, "shielded");
        drawing.Path("missing", Cross(444, y), " stroke-width=\"1.5\"");
        drawing.Text("note", 456, y + 4, "start", 11, "no wire");
        drawing.Text("note", 8, y + 26, "start", 11, "Letters at the ends are the colours found there (base/tracer).");
    }

    private static string Describe(AdapterHarness adapter)
    {
        var sentences = adapter.Rows.Select(row => row.Action switch
        {
            AdapterAction.Join => $"{row.From} to {row.To}: {row.Title}, {row.FromColour} to {row.ToColour}.",
            AdapterAction.Cap => $"{row.From}: {row.Title}, capped.",
            AdapterAction.AddWire => $"{row.To}: {row.Title}, {row.Note}.",
            _ => $"{row.To}: {row.Title}, no wire.",
        });
        return string.Join(' ', sentences);
    }

    /// <summary>A row and where it is drawn; the end of a surplus cavity sits at the row that it joins.</summary>
    private sealed record DrawnRow(AdapterRow Row, double Y, double LeftY, double RightY);
}
