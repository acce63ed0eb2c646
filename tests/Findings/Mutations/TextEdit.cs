using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Changes a file's text at a node and leaves everything else as it is written.</summary>
internal static class TextEdit
{
    public static string Replace(SourceFile file, Place place, string by) => Replace(file.Text, place, by);

    public static string Replace(string text, Place place, string by)
    {
        var (from, to) = Span(text, place);
        return string.Concat(text.AsSpan(0, from), by, text.AsSpan(to));
    }

    public static string Text(SourceFile file, Place place)
    {
        var (from, to) = Span(file.Text, place);
        return file.Text[from..to];
    }

    /// <summary>Takes an entry out of a mapping; the last one leaves it empty.</summary>
    public static string Remove(SourceFile file, MappingNode mapping, MappingEntry entry) =>
        RemoveAt(file, mapping, [.. mapping.Entries.Select(one => (Start(one.Key.Place), End(one.Value.Place)))], mapping.Entries.IndexOf(entry), "{}");

    /// <summary>Takes an item out of a list.</summary>
    public static string Remove(SourceFile file, SequenceNode list, int at) =>
        RemoveAt(file, list, [.. list.Items.Select(one => (Start(one.Place), End(one.Place)))], at, "[]");

    /// <summary>Writes an entry before the first of a mapping, in the mapping's own style.</summary>
    public static string Insert(SourceFile file, MappingNode mapping, string entry)
    {
        var (from, _) = Span(file.Text, mapping.Place);
        if (mapping.Entries.IsEmpty)
        {
            return Replace(file, mapping.Place, $"{{{entry}}}");
        }

        var first = Span(file.Text, mapping.Entries[0].Key.Place).From;
        var between = file.Text[from] == '{' ? ", " : "\n" + new string(' ', mapping.Entries[0].Key.Place.Column - 1);
        return file.Text.Insert(first, entry + between);
    }

    private static string RemoveAt(SourceFile file, SourceNode whole, ((int Line, int Column) Start, (int Line, int Column) End)[] parts, int at, string empty)
    {
        if (parts.Length == 1)
        {
            return Replace(file, whole.Place, empty);
        }

        var (from, to) = at + 1 < parts.Length
            ? (Offset(file.Text, parts[at].Start), Offset(file.Text, parts[at + 1].Start))
            : (Offset(file.Text, parts[at - 1].End), Offset(file.Text, parts[at].End));
        return file.Text.Remove(from, to - from);
    }

    private static (int From, int To) Span(string text, Place place) => (Offset(text, Start(place)), Offset(text, End(place)));

    private static int Offset(string text, (int Line, int Column) at)
    {
        var offset = 0;
        for (var line = 1; line < at.Line; line++)
        {
            offset = text.IndexOf('\n', offset) + 1;
        }

        return offset + at.Column - 1;
    }

    private static (int Line, int Column) Start(Place place) => (place.Line, place.Column);

    private static (int Line, int Column) End(Place place) => (place.EndLine, place.EndColumn);
}
