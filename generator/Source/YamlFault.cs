using Swapwright.Diagnostics;
using YamlDotNet.Core;

namespace Swapwright.Source;

/// <summary>What the parser says about malformed YAML, in this program's words.</summary>
internal static class YamlFault
{
    // What the parser's message contains, what a contributor needs to read, and how it is mended. Order matters: the first hit counts.
    private static readonly (string Says, string Message, string Mend)[] Known =
    [
        ("cannot start any token", "a value cannot begin with this character", "Put the value in quotes."),
        ("Tab", "a tab is used as indentation", "Indent with spaces, two a level."),
        ("unexpected end of stream", "a quoted text is not closed", "Close the text with the quote that opened it."),
        ("unexpected document indicator", "a quoted text is not closed", "Close the text with the quote that opened it."),
        ("Mapping values are not allowed", "a colon followed by a space cannot stand here", "Put the value in quotes, or put the key on a line of its own."),
        ("expected ':'", "a key is not followed by a colon", "Write `key: value`; put text that goes over several lines in quotes or after `|`."),
        ("expected key", "this line is not indented like the lines before it", "Line it up with the keys of its mapping."),
        ("expected '-' indicator", "this line is not indented like the list before it", "Line it up with the items of its list, or begin it with `- `."),
        ("sequence entries are not allowed", "a list cannot begin here", "Begin the list on a new line after the key, or put the value in quotes."),
        ("expected ',' or", "a list in `[…]` or a mapping in `{…}` is not closed", "Close it, and put commas between its items."),
        ("unknown escape", "a double-quoted text holds an escape that is not known", "Write `\\\\` for a backslash, or use single quotes."),
    ];

    public static Finding Describe(YamlException error, string path, LineIndex lines)
    {
        var (message, mend) = ("the file is not valid YAML here", (string?)"Look for a missing quote, colon or space just before.");
        foreach (var known in Known)
        {
            if (error.Message.Contains(known.Says, StringComparison.OrdinalIgnoreCase))
            {
                (message, mend) = (known.Message, known.Mend);
                break;
            }
        }

        return Make(error.Start, error.End, message, mend, path, lines);
    }

    /// <summary>A fault that the parser gave no place for: the last one that it had reached.</summary>
    public static Finding Unnamed(Mark last, LineIndex lines, string path) => Make(
        last,
        last,
        "the file is not valid YAML from here on",
        "Look for a list in `[…]` or a mapping in `{…}` that is not closed.",
        path,
        lines);

    private static Finding Make(Mark start, Mark end, string message, string? mend, string path, LineIndex lines)
    {
        var line = (int)Math.Clamp(start.Line, 1, lines.Count);
        var column = (int)Math.Clamp(start.Column, 1, lines.Line(line).Length + 1);
        var place = new Place(path, line, column, line, column + 1);
        if (end.Line > line || (end.Line == line && end.Column > column))
        {
            var endLine = (int)Math.Clamp(end.Line, line, lines.Count);
            place = place with { EndLine = endLine, EndColumn = (int)Math.Clamp(end.Column, 1, lines.Line(endLine).Length + 1) };
        }

        return new Finding(FindingKinds.Schema, message, place) { Mend = mend };
    }
}
