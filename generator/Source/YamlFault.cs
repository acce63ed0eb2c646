using Swapwright.Diagnostics;
using YamlDotNet.Core;

namespace Swapwright.Source;

/// <summary>What the parser says about malformed YAML, in this program's words.</summary>
internal sealed class YamlFault
{
    private const string Unclosed = "expected ',' or";

    // What the parser's message contains, what a contributor needs to read, and how it is mended. The first hit counts.
    private static readonly (string Says, string Message, string Mend)[] Known =
    [
        ("cannot start any token", "a value cannot begin with this character", "Put the value in quotes."),
        ("unexpected end of stream", "a quoted text is not closed", "Close the text with the quote that opened it."),
        ("wrong indentation", "a quoted text is not closed, or goes on without indentation", "Close the text with the quote that opened it, or indent its further lines."),
        ("unexpected document indicator", "a quoted text is not closed", "Close the text with the quote that opened it."),
        ("invalid mapping", "a colon followed by a space cannot stand here", "Put the value in quotes, or line the key up with the keys of its mapping."),
        ("mapping values are not allowed", "a colon followed by a space cannot stand here", "Put the value in quotes, or line the key up with the keys of its mapping."),
        ("expected ':'", "a key is not followed by a colon", "Write `key: value`; put text that goes over several lines in quotes or after `|`."),
        ("expected key", "this does not fit the mapping that it stands in", "Line it up with the keys of its mapping; look for a quote inside a quoted text just before."),
        ("expected '-' indicator", "this is no item of the list that it stands in", "Begin it with `- `, or indent it as its mapping asks for."),
        ("sequence entries are not allowed", "a list cannot begin here", "Begin the list on a new line after the key, or put the value in quotes."),
        (Unclosed, "a comma or a closing bracket is missing before here", "Put commas between the items, and close `[` with `]` and `{` with `}`."),
        ("expected node content", "a value is missing before here", "Write the value, or put one that holds `,`, `]` or `}` in quotes."),
        ("anchor or alias", "a value cannot begin with `*` or `&`", "Put the value in quotes."),
        ("expected comment or line break", "text cannot follow `|` or `>` on the same line", "Begin the text on the next line, indented."),
        ("escape", "a text in double quotes holds a `\\` that means nothing", "Write `\\\\` for a backslash, or use single quotes."),
        ("hexadecimal", "a text in double quotes holds a `\\` that means nothing", "Write `\\\\` for a backslash, or use single quotes."),
        ("surrogates", "a text in double quotes holds half of a character", "Write the character itself."),
    ];

    private readonly Mark _start;
    private readonly Mark _end;
    private readonly string? _says;
    private readonly bool _atEnd;

    private YamlFault(Mark start, Mark end, string? says, bool atEnd)
    {
        _start = start;
        _end = end;
        _says = says;
        _atEnd = atEnd;
    }

    /// <summary>The last line that the parser has certainly seen.</summary>
    public int Reached => (int)Math.Max(_start.Line, _end.Line);

    public bool IsTab => _says?.Contains("tab ", StringComparison.Ordinal) ?? false;

    public static YamlFault Of(YamlException error, LineIndex lines) => new(error.Start, error.End, error.Message, error.Start.Line > lines.Count);

    /// <summary>A fault that the parser gave no place for.</summary>
    /// <param name="last">The end of what it had read before.</param>
    public static YamlFault WithoutPlace(Mark last) => new(last, last, null, atEnd: false);

    /// <param name="open">The innermost bracket that was open: where the parser ran past it, that is what is wrong.</param>
    public Finding ToFinding(string path, LineIndex lines, Mark? open)
    {
        var ranPast = _says is null || _atEnd || _says.Contains(Unclosed, StringComparison.Ordinal);
        if (open is { } bracket && ranPast)
        {
            var place = Clamped(path, lines, bracket, bracket);
            var sign = lines.Line(place.Line) is var line && place.Column <= line.Length ? line[place.Column - 1] : '[';
            return new Finding(FindingKinds.Schema, $"the `{sign}` is not closed, or a comma is missing after it", place)
            {
                Mend = $"Put commas between the items, and `{(sign == '{' ? '}' : ']')}` after the last one.",
            };
        }

        foreach (var (says, message, mend) in Known)
        {
            if (_says?.Contains(says, StringComparison.OrdinalIgnoreCase) ?? false)
            {
                return new Finding(FindingKinds.Schema, message, Clamped(path, lines, _start, _end)) { Mend = mend };
            }
        }

        return new Finding(FindingKinds.Schema, "the file is not valid YAML from here on", Clamped(path, lines, _start, _end))
        {
            Mend = "Look for a missing quote, colon or space just before.",
        };
    }

    /// <summary>The parser's marks can lie beyond the last line; a place lies inside and is at least one column wide.</summary>
    private static Place Clamped(string path, LineIndex lines, Mark start, Mark end)
    {
        var line = (int)Math.Clamp(start.Line, 1, lines.Count);
        var column = start.Line > lines.Count ? lines.Line(line).Length + 1 : (int)Math.Clamp(start.Column, 1, lines.Line(line).Length + 1);
        var endLine = (int)Math.Clamp(end.Line, line, lines.Count);
        var endColumn = (int)Math.Clamp(end.Column, 1, lines.Line(endLine).Length + 1);
        return endLine > line || endColumn > column
            ? new Place(path, line, column, endLine, endColumn)
            : new Place(path, line, column, line, column + 1);
    }
}
