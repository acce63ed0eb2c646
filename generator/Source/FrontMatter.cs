namespace Swapwright.Source;

/// <summary>Where an article's front matter ends and its Markdown begins.</summary>
internal sealed record FrontMatter(int HeadEnd, int BodyStart, int BodyLine)
{
    private const string Fence = "---";

    /// <summary>Null, with a finding, where the article has no front matter or never closes it.</summary>
    public static FrontMatter? Split(string text, LineIndex lines, FindingList findings)
    {
        if (text.Length == 0)
        {
            findings.Add(findings.WholeFile, "the file is empty", "Fill it, or remove it.");
            return null;
        }

        if (!IsFence(lines, 1))
        {
            findings.Add(findings.WholeFile, "the article does not begin with its front matter", "Begin it with a line `---`, the title and the other keys, and another line `---`.");
            return null;
        }

        for (var line = 2; line <= lines.Count; line++)
        {
            if (IsFence(lines, line))
            {
                var body = line < lines.Count ? lines.Start(line + 1) : text.Length;
                return new FrontMatter(lines.Start(line), body, line + 1);
            }
        }

        findings.Add(findings.WholeFile with { EndColumn = Fence.Length + 1 }, "the front matter is not closed", "Write a line `---` after its last key.");
        return null;
    }

    private static bool IsFence(LineIndex lines, int line) => lines.Line(line).TrimEnd().SequenceEqual(Fence);
}
