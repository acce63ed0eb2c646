using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The cautions of a combination by hazard: what holds for the whole job first, then what belongs to a line or a task.</summary>
internal static class GuideCautions
{
    public static ImmutableArray<CautionGroup> Of(SiteKnowledge site, Sheet sheet, Func<string, string> inline) =>
    [
        .. SheetTexts.Placed(sheet, site.Base).GroupBy(caution => ShopWords.CautionAbout(caution.Caution.About), StringComparer.Ordinal)
            .Select(group => new CautionGroup(
                group.Key,
                [.. group.Where(one => Where(one).Length == 0).Select(one => new HtmlString(inline(one.Caution.Text)))],
                [.. group.Where(one => Where(one).Length > 0).Select(one => new PlacedText(new HtmlString(inline(one.Caution.Text)), Where(one)))])),
    ];

    private static string Where(PlacedCaution caution) =>
        caution.Positions.Select(position => position.Title).Concat(caution.Tasks.Select(task => task.Title)).ToList() switch
        {
            [] => "",
            [var only] => only,
            [var first, var second] => $"{first}; {second}",
            [var first, .. var others] => string.Create(CultureInfo.InvariantCulture, $"{first} and {others.Count} more"),
        };
}
