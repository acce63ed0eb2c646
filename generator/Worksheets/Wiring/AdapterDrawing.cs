using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Drawings;

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
    private const double LeftPin = 76;
    private const double RightPin = 644;
    private const double Width = 720;
    private const double Middle = (LeftPin + RightPin) / 2;
    private const double Stub = 100;
    private const double TextRoom = RightPin - LeftPin - 120;

    /// <param name="id">Unique on the page; names the title and the description.</param>
    public static string Svg(AdapterHarness adapter, string id)
    {
        var drawing = new Drawing();
        var lines = Place(adapter.Rows);
        var height = Top + (lines.Length * Row) + 64;
        Side(drawing, adapter.From, 8, LeftPin, lines.Length);
        Side(drawing, adapter.To, RightPin, Width - 8, lines.Length);
        foreach (var line in lines)
        {
            Wire(drawing, line);
            Ends(drawing, line);
        }

        Legend(drawing, Top + (lines.Length * Row) + 28);
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

    private static void Side(Drawing drawing, AdapterSide side, double left, double right, int rows)
    {
        var (x, anchor) = left < Middle ? (left, "start") : (right, "end");
        drawing.Text("plug-title", x, 20, anchor, Drawing.Fit(14, side.Title, (Width / 2) - 20), side.Title, bold: true);
        var plugs = string.Join(", ", side.Plugs.Select(plug => plug.Key.Length == 0 ? plug.Value : $"{plug.Key}: {plug.Value}"));
        drawing.Text("note", x, 36, anchor, Drawing.Fit(11, plugs, (Width / 2) - 20), plugs);
        if (side.Plugs.Length > 0)
        {
            drawing.Box("plug-box", left, Top - 8, right - left, (rows * Row) + 16, 6);
        }
    }

    /// <summary>Pins are drawn after their wire, so that no tracer lies on them.</summary>
    private static void Ends(Drawing drawing, DrawnRow line)
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
    }

    private static void Wire(Drawing drawing, DrawnRow line)
    {
        var row = line.Row;
        switch (row.Action)
        {
            case AdapterAction.Join:
                Joined(drawing, line);
                break;
            case AdapterAction.Cap:
                Stroke(drawing, Across(LeftPin, LeftPin + Stub, line.Y), row.FromColour, "cap");
                drawing.Line("cap", LeftPin + Stub, line.Y - 6, LeftPin + Stub, line.Y + 6, " stroke-width=\"3\"");
                Note(drawing, LeftPin + Stub + 10, line.Y, "start", $"{Name(row)}: capped");
                break;
            case AdapterAction.Branch:
                Stroke(drawing, Across(LeftPin, LeftPin + Stub, line.Y), row.FromColour, "add");
                drawing.Dot("splice", LeftPin + Stub, line.Y, 4);
                Note(drawing, LeftPin + Stub + 10, line.Y, "start", $"{Name(row)}: to {row.Note}");
                break;
            case AdapterAction.AddWire:
                Stroke(drawing, Across(RightPin, RightPin - Stub, line.Y), row.CutColour ?? row.ToColour, "add");
                drawing.Path("add", $"M{Drawing.N(RightPin - Stub + 8)} {Drawing.N(line.Y - 6)} l-8 6 l8 6");
                Note(drawing, RightPin - Stub - 10, line.Y, "end", $"{Name(row)}: {row.Note}");
                break;
            default:
                drawing.Path("missing", Cross(RightPin - Stub + 8, line.Y));
                Note(drawing, RightPin - Stub - 10, line.Y, "end", row.Optional ? $"{Name(row)}: not used" : $"{Name(row)}: MISSING");
                break;
        }
    }

    private static void Note(Drawing drawing, double x, double y, string anchor, string text) =>
        drawing.Text("note", x, y + 4, anchor, Drawing.Fit(11, text, TextRoom), text);

    private static string Across(double from, double to, double y) => $"M{Drawing.N(from)} {Drawing.N(y)} H{Drawing.N(to)}";

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
        var isSurplus = line.LeftY != line.RightY;
        Stroke(drawing, JoinPath(line), row.CutColour ?? row.ToColour ?? row.FromColour, row.Shielded ? "joined shield" : "joined");
        if (isSurplus)
        {
            var (x, y) = line.LeftY == line.Y ? (RightPin - 60, line.RightY) : (LeftPin + 60, line.LeftY);
            drawing.Dot("splice", x, y, 4);
        }

        if (row.Shielded)
        {
            drawing.Path("shield", Ellipse(LeftPin + 70, line.Y) + Ellipse(RightPin - 70, line.Y), " stroke-dasharray=\"2 2\"");
        }

        // Where the plugs go together as they are, the note says which wire moves.
        var text = row.Note.Length > 0 && (isSurplus || row.Run is null) ? $"{Name(row)} ({row.Note})" : Name(row);
        drawing.Text("signal", Middle, line.Y - 4, "middle", Drawing.Fit(11, text, TextRoom), text);
    }

    /// <summary>Straight across, or to the splice on the row that a surplus cavity joins.</summary>
    private static string JoinPath(DrawnRow line)
    {
        if (line.LeftY == line.RightY)
        {
            return Across(LeftPin, RightPin, line.Y);
        }

        return line.LeftY == line.Y
            ? $"{Across(LeftPin, RightPin - 90, line.Y)} L{Drawing.N(RightPin - 60)} {Drawing.N(line.RightY)}"
            : $"M{Drawing.N(LeftPin + 60)} {Drawing.N(line.LeftY)} L{Drawing.N(LeftPin + 90)} {Drawing.N(line.Y)} H{Drawing.N(RightPin)}";
    }

    /// <summary>The wire, and the tracer as dashes upon it where the colour has one (seen only where a stylesheet paints it).</summary>
    private static void Stroke(Drawing drawing, string path, string? colour, string classes)
    {
        if (!WireColour.TryParse(colour, out var known))
        {
            drawing.Path("wire " + classes, path);
            return;
        }

        drawing.Path($"wire {classes} {known.BaseClass}", path);
        if (known.TracerClass is { } tracer)
        {
            drawing.Path($"tracer {tracer}", path, " stroke=\"none\" stroke-dasharray=\"6 10\"");
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
        drawing.Line("cap", 8, y, 38, y);
        drawing.Line("cap", 38, y - 6, 38, y + 6, " stroke-width=\"3\"");
        drawing.Text("note", 46, y + 4, "start", 11, "capped end");
        drawing.Path("add", $"M168 {Drawing.N(y)} H138 m8 -6 l-8 6 l8 6");
        drawing.Text("note", 176, y + 4, "start", 11, "new wire");
        drawing.Dot("splice", 268, y, 4);
        drawing.Text("note", 278, y + 4, "start", 11, "splice");
        drawing.Path("shield", Ellipse(350, y), " stroke-dasharray=\"2 2\"");
        drawing.Text("note", 362, y + 4, "start", 11, "screened");
        drawing.Path("missing", Cross(444, y));
        drawing.Text("note", 456, y + 4, "start", 11, "no wire");
        drawing.Text("note", 8, y + 26, "start", 11, "Letters at the ends are the colours found there (base/tracer).");
    }

    private static string Describe(AdapterHarness adapter)
    {
        var sentences = adapter.Rows.Select(row => row.Action switch
        {
            AdapterAction.Join => $"{row.From} to {row.To}: {row.Title}, {row.FromColour} to {row.ToColour}.",
            AdapterAction.Cap => $"{row.From}: {row.Title}, capped.",
            AdapterAction.Branch => $"{row.From}: {row.Title}, to {row.Note}.",
            AdapterAction.AddWire => $"{row.To}: {row.Title}, {row.Note}.",
            _ => $"{row.To}: {row.Title}, no wire.",
        });
        return string.Join(' ', sentences);
    }

    /// <summary>A row and where it is drawn; the end of a surplus cavity sits at the row that it joins.</summary>
    private sealed record DrawnRow(AdapterRow Row, double Y, double LeftY, double RightY);
}
