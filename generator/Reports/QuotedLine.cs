using Spectre.Console;
using Swapwright.Diagnostics;

namespace Swapwright.Reports;

/// <summary>A line of a file as it is quoted below a finding: the part around what the finding points at, and where to put the marks.</summary>
/// <param name="Text">Tame, at most as wide as asked for.</param>
/// <param name="Before">Cells before the first mark.</param>
internal readonly record struct QuotedLine(string Text, int Before, int Marks)
{
    private const string Cut = "…";

    /// <summary>The line that a place begins in; null where the place lies beyond its end.</summary>
    public static QuotedLine? At(string line, Place place, int room)
    {
        if (place.Column > line.Length + 1)
        {
            return null;
        }

        var end = place.EndLine == place.Line ? Math.Max(place.EndColumn, place.Column + 1) : line.TrimEnd().Length + 1;
        return Of(line, place.Column - 1, end - place.Column, room);
    }

    /// <param name="from">First character that is pointed at; may lie one past the end.</param>
    /// <param name="length">How many are.</param>
    /// <param name="room">Most cells that the quote may take, its cut ends included.</param>
    public static QuotedLine Of(string line, int from, int length, int room)
    {
        // Some of what stands before is kept: it says what the marked thing belongs to.
        var start = from + Math.Min(length, room / 2) + Cut.Length <= room ? 0 : from - (room / 3);
        var opening = start > 0 ? Cut : "";
        // What is certainly too wide is not measured: a line may be as long as a file.
        var end = Math.Min(line.Length, start + (4 * room));
        string Shown() => opening + PlainText.Tame(line[start..end]) + (end < line.Length ? Cut : "");
        while (end > from && end > start && Shown().GetCellWidth() > room)
        {
            end--;
        }

        var before = (opening + PlainText.Tame(line[start..from])).GetCellWidth();
        var marked = PlainText.Tame(line[Math.Min(from, end)..Math.Clamp(from + length, Math.Min(from, end), end)]).GetCellWidth();
        return new QuotedLine(Shown(), before, Math.Max(1, marked));
    }
}
