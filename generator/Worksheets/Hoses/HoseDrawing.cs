using System.Collections.Immutable;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Worksheets.Hoses;

/// <summary>
/// Draws a circuit: ports as boxes, hoses as lines between them with size and length. A port that serves two hoses is drawn
/// once. An inline SVG that looks as meant without a stylesheet.
/// </summary>
public static class HoseDrawing
{
    private const double Width = 720;
    private const double BoxWidth = 244;
    private const double BoxHeight = 44;
    private const double Row = 60;
    private const double Top = 14;
    private const double Edge = 4;
    private const double LeftEnd = Edge + BoxWidth;
    private const double RightStart = Width - Edge - BoxWidth;
    private const double Middle = Width / 2;
    private const double TextRoom = BoxWidth - 16;
    private const double LabelRoom = RightStart - LeftEnd - 24;

    /// <param name="id">Prefix of the ids in the drawing; unique on the page.</param>
    public static string Svg(HoseSheet sheet, HoseCircuit circuit, string id)
    {
        var runs = sheet.Runs.Where(run => run.Circuit == circuit).ToList();
        var blanked = sheet.Blanked.Where(blank => blank.Port.Circuit == circuit).ToList();
        var open = sheet.Open.Where(port => port.Circuit == circuit).ToList();
        var drawing = new Drawing();
        var row = 0;
        var left = new Dictionary<string, double>(StringComparer.Ordinal);
        var right = new Dictionary<string, double>(StringComparer.Ordinal);
        // A hose begins on the row of a port that is already drawn on its side, else on a row of its own.
        foreach (var run in runs)
        {
            var y = Top + (row * Row) + (BoxHeight / 2);
            var isNew = !left.ContainsKey(run.From.Id) || !right.ContainsKey(run.To.Id);
            row += isNew ? 1 : 0;
            var from = Placed(drawing, left, run.From, Edge, y);
            var to = Placed(drawing, right, run.To, RightStart, y);
            Hose(drawing, run, from, to);
        }

        foreach (var blank in blanked)
        {
            var y = Top + (row++ * Row) + (BoxHeight / 2);
            Box(drawing, blank.Port, Edge, y);
            drawing.Line("stub", LeftEnd, y, LeftEnd + 30, y, " stroke-width=\"3\"");
            drawing.Line("cap", LeftEnd + 30, y - 10, LeftEnd + 30, y + 10, " stroke-width=\"4\"");
            drawing.Text("note", LeftEnd + 42, y + 4, "start", 12, HoseWords.Blank(blank.Port));
        }

        foreach (var port in open)
        {
            var y = Top + (row++ * Row) + (BoxHeight / 2);
            Box(drawing, port, Edge, y);
            drawing.Line("stub", LeftEnd, y, LeftEnd + 30, y, " stroke-width=\"3\"");
            drawing.Text("note", LeftEnd + 42, y + 4, "start", Drawing.Fit(12, port.Open, Width - LeftEnd - 100), $"open: {port.Open}");
        }

        return drawing.Finish("hoses", id, $"Hoses, {HoseWords.Circuit(circuit)}", Describe(runs, blanked, open), Width, Top + (row * Row));
    }

    /// <summary>The circuits that have something to draw, in their order.</summary>
    public static ImmutableArray<HoseCircuit> Circuits(HoseSheet sheet) =>
        [.. sheet.Runs.Select(run => run.Circuit).Concat(sheet.Blanked.Select(blank => blank.Port.Circuit)).Concat(sheet.Open.Select(port => port.Circuit)).Distinct().Order()];

    private static double Placed(Drawing drawing, Dictionary<string, double> side, Port port, double x, double y)
    {
        if (side.TryGetValue(port.Id, out var known))
        {
            return known;
        }

        side.Add(port.Id, y);
        Box(drawing, port, x, y);
        return y;
    }

    private static void Box(Drawing drawing, Port port, double x, double y)
    {
        drawing.Box("port", x, y - (BoxHeight / 2), BoxWidth, BoxHeight, 4);
        // Bold letters are wider than the average that Fit reckons with.
        drawing.Text("name", x + 8, y - 3, "start", Drawing.Fit(12, port.Title, 0.85 * TextRoom), port.Title, bold: true);
        var detail = $"{port.Owner}, {HoseWords.Number(port.SizeMm)} mm{(port.Kind == PortKind.Thread && port.Thread.Length > 0 ? $", {port.Thread}" : "")}";
        drawing.Text("owner", x + 8, y + 14, "start", Drawing.Fit(11, detail, TextRoom), detail);
    }

    private static void Hose(Drawing drawing, HoseRun run, double from, double to)
    {
        var (start, end) = (LeftEnd, RightStart);
        drawing.Path($"hose {run.Action.ToString().ToLowerInvariant()}", from == to
            ? $"M{Drawing.N(start)} {Drawing.N(from)} H{Drawing.N(end)}"
            : $"M{Drawing.N(start)} {Drawing.N(from)} H{Drawing.N(start + 14)} L{Drawing.N(end - 14)} {Drawing.N(to)} H{Drawing.N(end)}",
            $" stroke-width=\"3\"{(run.Action == HoseAction.Keep ? " stroke-dasharray=\"10 4\"" : "")}");
        var y = (from + to) / 2;
        if (run.Joiner is not null)
        {
            drawing.Box("joiner", Middle - 9, y - 6, 18, 12, 0);
        }

        var above = $"{run.Title}, {HoseWords.Size(run)}";
        var below = string.Join(", ", Below(run));
        drawing.Text("title", Middle, y - 11, "middle", Drawing.Fit(12, above, LabelRoom), above);
        drawing.Text("length", Middle, y + 18, "middle", Drawing.Fit(11, below, LabelRoom), below);
    }

    private static IEnumerable<string> Below(HoseRun run)
    {
        yield return HoseWords.Length(run.LengthMm);
        if (run.LeastClass is { } known)
        {
            yield return HoseWords.Class(known);
        }

        yield return run.Action switch
        {
            HoseAction.Keep => "kept",
            HoseAction.Set => "moulded",
            _ => "cut",
        };
    }

    private static string Describe(List<HoseRun> runs, List<BlankedPort> blanked, List<Port> open) => string.Join(' ',
    [
        .. runs.Select(run => $"{run.Title}: {run.From.Title} to {run.To.Title}, {HoseWords.Size(run)}, {string.Join(", ", Below(run))}{(run.Joiner is null ? "" : ", with a stepped joiner")}."),
        .. blanked.Select(blank => $"{blank.Port.Title}: {HoseWords.Blank(blank.Port)}."),
        .. open.Select(port => $"{port.Title}: open, {port.Open}"),
    ]);
}
