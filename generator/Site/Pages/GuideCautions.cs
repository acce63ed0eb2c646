using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The cautions of a combination by hazard: what holds for the whole job first, then what belongs to a line or a task.</summary>
internal static class GuideCautions
{
    /// <summary>As a guide's page shows them.</summary>
    /// <param name="path">Of the page.</param>
    public static ImmutableArray<CautionGroup> OnPage(SiteKnowledge site, Sheet sheet, string path) => site.Cautioned.Of(
        new MadeFrom([SitePaths.PrefixOf(path), .. SheetTexts.PlacedFrom(sheet)]),
        () =>
        {
            var groups = Of(site, sheet, text => site.Inline(text, path).ToString());
            foreach (var group in groups)
            {
                group.Keep();
            }

            return groups;
        });

    public static ImmutableArray<CautionGroup> Of(SiteKnowledge site, Sheet sheet, Func<string, string> inline) =>
    [
        .. SheetTexts.Placed(sheet, site.Base).GroupBy(caution => ShopWords.CautionAbout(caution.Caution.About), StringComparer.Ordinal)
            .Select(group =>
            {
                var texts = group.Select(one => new PlacedText(new HtmlString(inline(one.Caution.Text)), Where(one))).ToLookup(one => one.Where.Length > 0);
                return new CautionGroup(group.Key, [.. texts[false].Select(one => one.Text)], [.. texts[true]]);
            }),
    ];

    private static string Where(PlacedCaution caution) =>
        (caution.Positions.Length + caution.Tasks.Length) switch
        {
            0 => "",
            1 => Title(caution, 0),
            2 => $"{Title(caution, 0)}; {Title(caution, 1)}",
            var count => string.Create(CultureInfo.InvariantCulture, $"{Title(caution, 0)} and {count - 1} more"),
        };

    // Lines first, then tasks.
    private static string Title(PlacedCaution caution, int at) =>
        at < caution.Positions.Length ? caution.Positions[at].Title : caution.Tasks[at - caution.Positions.Length].Title;
}
