using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Sheets;

namespace Swapwright.Site.Pages;

/// <summary>What other pages tell of a guide. It is kept when the guide's sheet, a thousand times as large, is let go.</summary>
/// <param name="Answers">By position, in the order of the base; null where the position does not apply or has no answer.</param>
internal sealed record GuideBrief(GuideCounts Counts, ImmutableArray<Answer?> Answers)
{
    public static GuideBrief Of(Sheet sheet, KnowledgeBase kb)
    {
        var answers = sheet.Answers.ToDictionary(answer => answer.Position.Id, answer => answer.Answer, StringComparer.Ordinal);
        return new GuideBrief(GuideCounts.Of(sheet), [.. kb.PositionOrder.Select(position => answers.GetValueOrDefault(position.Id))]);
    }
}
