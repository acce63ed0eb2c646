using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Sheets;

namespace Swapwright.Site.Pages;

/// <summary>What other pages tell of a guide. It is kept when the guide's sheet, a thousand times as large, is let go.</summary>
/// <param name="Answers">By position, in the order of the base; null where the position does not apply or has no answer. None where it is not known, see <see cref="SiteKnowledge.AnswersOf"/>.</param>
/// <param name="Sheets">The bench sheets that there are, see <see cref="BenchSheets.Of"/>.</param>
/// <param name="IsOpen">Whether its reader still decides something besides the headline choices.</param>
internal sealed record GuideBrief(GuideCounts Counts, ImmutableArray<Answer?>? Answers, ImmutableArray<string> Sheets, bool IsOpen)
{
    public static GuideBrief Of(Sheet sheet, Headline headline, KnowledgeBase kb)
    {
        // A choice that applies in some combinations of a guide only hangs on one that applies in all of them.
        var isOpen = sheet.Choices.Any(choice => choice.Value != Choice.None && headline.Options.All(option => option.Key != choice.Key));
        return new GuideBrief(GuideCounts.Of(sheet), AnswersOf(sheet.Answers, kb), BenchSheets.Of(sheet, isOpen), isOpen);
    }

    public static ImmutableArray<Answer?> AnswersOf(ImmutableArray<SheetAnswer> given, KnowledgeBase kb)
    {
        // Both in the order of the base; a position that does not apply is not among those given.
        var answers = ImmutableArray.CreateBuilder<Answer?>(kb.PositionOrder.Length);
        var at = 0;
        foreach (var position in kb.PositionOrder)
        {
            answers.Add(at < given.Length && ReferenceEquals(given[at].Position, position) ? given[at++].Answer : null);
        }

        return answers.MoveToImmutable();
    }
}
