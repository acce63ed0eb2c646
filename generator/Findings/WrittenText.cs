using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>A Markdown text with the stretch of its file in which it is written.</summary>
/// <param name="Article">The id of the article whose body it is; null for every other text.</param>
internal sealed record WrittenText(SourceFile File, string Text, Place Whole, string? Article)
{
    public bool IsArticle => Article is not null;

    public static WrittenText Of(SourceFile file, ScalarNode scalar) => new(file, scalar.Text, scalar.Place, null);

    public static WrittenText OfBody(SourceFile file)
    {
        var last = file.BodyLine;
        while (file.Line(last + 1) is not null)
        {
            last++;
        }

        return new(file, file.Body!, new Place(file.Path, file.BodyLine, 1, last, (file.Line(last)?.Length ?? 0) + 1), file.Id);
    }

    /// <summary>The whole of a line of the text. Lines of a value may be folded together: there the value is meant.</summary>
    public Place Line(int line) => IsArticle && File.Line(Whole.Line + line) is { } written
        ? new Place(File.Path, Whole.Line + line, 1, Whole.Line + line, written.Length + 1)
        : Whole;

    /// <summary>
    /// Where a stretch of the text stands in the file, as it is counted from the text's beginning; its line where it is
    /// written otherwise than it reads (with escapes).
    /// </summary>
    public Place Find(string words, int at, int line)
    {
        if (words.Length == 0)
        {
            return Line(line);
        }

        var before = Count(words, Text[..Math.Clamp(at, 0, Text.Length)]);
        for (var number = Whole.Line; number <= Whole.EndLine && File.Line(number) is { } written; number++)
        {
            var column = number == Whole.Line ? Whole.Column - 1 : 0;
            while ((column = written.IndexOf(words, Math.Min(column, written.Length), StringComparison.Ordinal)) >= 0)
            {
                if (before-- == 0)
                {
                    return new Place(File.Path, number, column + 1, number, column + words.Length + 1);
                }

                column += words.Length;
            }
        }

        return Line(line);
    }

    private static int Count(string words, string text)
    {
        var count = 0;
        for (var at = text.IndexOf(words, StringComparison.Ordinal); at >= 0; at = text.IndexOf(words, at + words.Length, StringComparison.Ordinal))
        {
            count++;
        }

        return count;
    }
}
