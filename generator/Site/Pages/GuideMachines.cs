using Markdig.Syntax;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Sheets;
using Swapwright.Site.Machines;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>What a guide gives to programs: its data, the same as structured data, a picture for previews.</summary>
internal static class GuideMachines
{
    public static SiteFrame Frame(SiteKnowledge site, GuideEntry guide, Sheet sheet, GuidePage page)
    {
        var settings = site.Base.Settings;
        var picture = SitePaths.Address(settings.BaseAddress, GuidePages.DataPath(guide, "png"));
        return page.Frame with
        {
            Alternates =
            [
                .. page.Frame.Alternates,
                new AlternateLink("application/json", "This guide as data", GuidePages.DataPath(guide, "json")),
                new AlternateLink("text/csv", "This guide as a table", GuidePages.DataPath(guide, "csv")),
            ],
            Picture = picture ?? "",
            StructuredData = HowToData.InShort(page, sheet, settings, SitePaths.Address(settings.BaseAddress, guide.Path), picture),
        };
    }

    public static SiteFile Picture(SiteKnowledge site, GuideEntry guide, string extension, Func<PreviewLines, byte[]> draw)
    {
        var sheet = site.SheetOf(guide);
        var (hours, money) = (SiteKnowledge.Whole(sheet.Hours), SiteKnowledge.Whole(sheet.Money));
        return new SiteFile(GuidePages.DataPath(guide, extension), draw(new PreviewLines(
            site.Base.Settings.Title,
            guide.Headline.Donor.Title,
            guide.Headline.Chassis.Title,
            InSentence.Lower(guide.Options),
            $"{SiteKnowledge.Span(hours)} hours",
            $"{SiteKnowledge.Span(money)} {site.Base.Settings.Currency}",
            FirstSentence(site.Base.Settings.Label))));
    }

    private static string FirstSentence(string markdown)
    {
        var words = MarkdownForm.PlainText((MarkdownForm.Parse(markdown)?.FirstOrDefault() as LeafBlock)?.Inline);
        var end = words.IndexOf(". ", StringComparison.Ordinal);
        return end < 0 ? words : words[..(end + 1)];
    }
}
