using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>Variants by family, each with the families it goes together with: a list that a phone can show, however many there are.</summary>
internal static class FamilyLists
{
    /// <param name="which">The page whose questions tell the variants of a family apart.</param>
    /// <param name="partners">What a variant's guides put it together with, one a guide.</param>
    /// <param name="others">Everything it could be put together with.</param>
    public static ImmutableArray<VariantGroup> Of<T, TOther>(
        ImmutableArray<T> variants, string which, Func<T, PageLink> link, Func<T, string> detail, Func<T, IEnumerable<TOther>> partners, ImmutableArray<TOther> others)
        where T : Variant
        where TOther : Variant
    {
        var families = others.Select(other => other.Family).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return
        [
            .. variants.GroupBy(variant => variant.Family, StringComparer.Ordinal).OrderBy(family => family.Key, StringComparer.Ordinal).Select(family => new VariantGroup(
                WhichPages.FamilyTitle(family.Key),
                new PageLink("Which one is it?", $"{which}#{WhichPages.Anchor(family.First())}"),
                [.. family.OrderBy(variant => variant.Years.From).ThenBy(variant => variant.Id, StringComparer.Ordinal).Select(Item)])),
        ];

        VariantItem Item(T variant)
        {
            var page = link(variant);
            var counts = partners(variant).CountBy(partner => partner.Family, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
            return new VariantItem(
                page,
                Unsaid(VariantPages.Years(variant), variant.Years.From.ToString(CultureInfo.InvariantCulture), variant.Title),
                Unsaid(detail(variant), detail(variant), variant.Title),
                Guides(counts.Values.Sum()),
                [.. families.Where(counts.ContainsKey).Select(family => new FamilyCount(new PageLink(WhichPages.FamilyTitle(family), $"{page.Href}#{SitePaths.With(family)}"), SiteKnowledge.Number(counts[family])))],
                [.. families.Where(family => !counts.ContainsKey(family)).Select(family => new PageLink(WhichPages.FamilyTitle(family), $"{page.Href}#not-buildable"))]);
        }
    }

    // A title that says it already is not followed by it.
    private static string Unsaid(string text, string word, string title) => word.Length > 0 && title.Contains(word, StringComparison.OrdinalIgnoreCase) ? "" : text;

    private static string Guides(int count) => count switch
    {
        0 => "no guide",
        1 => "1 guide",
        _ => $"{SiteKnowledge.Number(count)} guides",
    };
}
