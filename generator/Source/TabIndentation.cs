using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>Tabs before a line's content, which YAML forbids as indentation and the parser lets pass at some places.</summary>
internal static class TabIndentation
{
    /// <param name="lastLine">The parser got so far; lines after it are left alone, since a tab there may belong to a text.</param>
    /// <param name="isTheFault">The parser stopped at a tab without saying where: one before a remark counts, and the next one is it.</param>
    /// <param name="multiLine">Lines on which a text continues; a tab there belongs to the text.</param>
    /// <returns>Whether there was one.</returns>
    public static bool Report(string path, LineIndex lines, int lastLine, bool isTheFault, List<(int First, int Last)> multiLine, FindingList findings)
    {
        var found = false;
        var next = 0;
        for (var number = 1; number <= lines.Count && !findings.IsFull && (number <= lastLine || (isTheFault && !found)); number++)
        {
            while (next < multiLine.Count && multiLine[next].Last < number)
            {
                next++;
            }

            var isText = next < multiLine.Count && multiLine[next].First <= number;
            var tab = isText ? -1 : TabBeforeContent(lines.Line(number), isTheFault);
            if (tab >= 0)
            {
                found = true;
                findings.Add(new Place(path, number, tab + 1, number, tab + 2), "a tab is used as indentation", "Indent with spaces, two a level.");
            }
        }

        return found;
    }

    private static int TabBeforeContent(ReadOnlySpan<char> line, bool remarksToo)
    {
        var tab = -1;
        for (var at = 0; at < line.Length; at++)
        {
            var isDash = line[at] == '-' && at + 1 < line.Length && line[at + 1] is ' ' or '\t';
            if (line[at] == '\t')
            {
                tab = tab < 0 ? at : tab;
            }
            else if (line[at] != ' ' && !isDash)
            {
                return line[at] == '#' && !remarksToo ? -1 : tab;
            }
        }

        return remarksToo ? tab : -1; // nothing but blanks
    }
}
