using System.Collections.Immutable;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Draws a plug's face: its cavities in their rows, numbered. Class names for a stylesheet: <c>connector-face</c>, <c>shell</c>,
/// <c>cavity-box</c> (<c>used</c> where a caption is given), <c>cavity</c>, <c>code</c>; a caption that is a wire's colour is painted as well.
/// </summary>
public static class ConnectorFace
{
    private const double Cell = 44;
    private const double Margin = 14;

    /// <param name="id">Unique on the page; names the title and the description.</param>
    /// <param name="title">The connector's title.</param>
    /// <param name="rows">Cavities as on the face, row by row; rows may differ in length and are centred.</param>
    /// <param name="captions">Short texts (such as colour codes) under cavities; null for none.</param>
    public static string Svg(
        string id, string title, ImmutableArray<ImmutableArray<string>> rows, IReadOnlyDictionary<string, string>? captions = null)
    {
        var drawing = new Drawing();
        var clean = rows.IsDefault ? [] : rows.Where(row => !row.IsDefaultOrEmpty).ToImmutableArray();
        var widest = clean.Select(row => row.Length).DefaultIfEmpty(1).Max();
        var width = (widest * Cell) + (2 * Margin);
        var height = (Math.Max(1, clean.Length) * Cell) + (2 * Margin);
        drawing.Box("shell", 2, 2, width - 4, height - 4, 10);
        for (var i = 0; i < clean.Length; i++)
        {
            var left = (width - (clean[i].Length * Cell)) / 2;
            for (var j = 0; j < clean[i].Length; j++)
            {
                var caption = captions?.GetValueOrDefault(clean[i][j]);
                Cavity(drawing, left + (j * Cell), Margin + (i * Cell), clean[i][j], caption);
            }
        }

        var told = clean.Select((row, i) => $"Row {Drawing.N(i + 1)}: {string.Join(", ", row.Select(cavity => Tell(cavity, captions)))}.");
        return drawing.Finish("connector-face", id, $"Face of {title}", string.Join(' ', told), width, height);
    }

    private static string Tell(string cavity, IReadOnlyDictionary<string, string>? captions) =>
        captions?.GetValueOrDefault(cavity) is { } caption ? $"{cavity} ({caption})" : cavity;

    private static void Cavity(Drawing drawing, double x, double y, string name, string? caption)
    {
        drawing.Box(caption is null ? "cavity-box" : "cavity-box used", x + 3, y + 3, Cell - 6, Cell - 6, 4);
        var middle = x + (Cell / 2);
        if (caption is null)
        {
            drawing.Text("cavity", middle, y + (Cell / 2) + 5, "middle", 14, name, bold: true);
            return;
        }

        drawing.Text("cavity", middle, y + 19, "middle", 14, name, bold: true);
        if (WireColour.TryParse(caption, out var colour))
        {
            var wire = $"M{Drawing.N(x + 7)} {Drawing.N(y + 25)} h{Drawing.N(Cell - 14)}";
            drawing.Path($"wire {colour.BaseClass}", wire);
            if (colour.TracerClass is { } tracer)
            {
                drawing.Path($"tracer {tracer}", wire, " stroke=\"none\"");
            }
        }

        drawing.Text("code", middle, y + 37, "middle", 9, caption);
    }
}
