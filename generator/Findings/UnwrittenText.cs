using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>A text of a draft that nobody has written yet. It is looked for as it is written, so no kind of file is left out.</summary>
public static class UnwrittenText
{
    public static readonly SourceCheck Check = new(FindingKinds.Unwritten, Run);

    private static IEnumerable<Finding> Run(SourceTree tree, KnowledgeBase kb) =>
        from file in tree.Files
        where file.Text.Contains(Unwritten.Mark, StringComparison.Ordinal)
        from place in Marks(file)
        select new Finding(FindingKinds.Unwritten, $"`{file.Id}` has a text that is still to be written", place)
        {
            Mend = $"Write the text, and take `{Unwritten.Mark}` out; where there is nothing to say, take its key out.",
        };

    private static IEnumerable<Place> Marks(SourceFile file)
    {
        for (var number = 1; file.Line(number) is { } line; number++)
        {
            for (var at = line.IndexOf(Unwritten.Mark, StringComparison.Ordinal); at >= 0; at = line.IndexOf(Unwritten.Mark, at + Unwritten.Mark.Length, StringComparison.Ordinal))
            {
                yield return new Place(file.Path, number, at + 1, number, at + Unwritten.Mark.Length + 1);
            }
        }
    }
}
