using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>Tabs before a line's content, which YAML forbids as indentation and the parser lets pass at some places.</summary>
internal static class TabIndentation
{
    /// <param name="lastLine">Lines after it were not read and are left alone.</param>
    /// <param name="multiLine">Lines on which a text continues; a tab there belongs to the text.</param>
    /// <returns>Whether there was one.</returns>
    public static bool Report(string path, LineIndex lines, int lastLine, List<(int First, int Last)> multiLine, FindingList findings)
    {
        var found = false;
        var next = 0;
        for (var number = 1; number <= Math.Min(lastLine, lines.Count) && !findings.IsFull; number++)
        {
            while (next < multiLine.Count && multiLine[next].Last < number)
            {
                next++;
            }

            var line = lines.Line(number);
            var indent = line.Length - line.TrimStart(" \t").Length;
            var tab = line[..indent].IndexOf('\t');
            var isText = next < multiLine.Count && multiLine[next].First <= number;
            if (tab < 0 || isText || indent == line.Length || line[indent] == '#')
            {
                continue;
            }

            found = true;
            findings.Add(new Place(path, number, tab + 1, number, tab + 2), "a tab is used as indentation", "Indent with spaces, two a level.");
        }

        return found;
    }
}
