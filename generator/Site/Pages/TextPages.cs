using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Reports;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The start page, articles, findings, lists, cautions and sources.</summary>
internal sealed class TextPages(SiteKnowledge site, VariantPages variants, Func<string, FindingTexts?> findingTexts)
{
    // Beyond this a table of builds is wider than a screen can show.
    private const int MostDonorsAcross = 24;

    private const int MostArticlesAtStart = 8;

    public StartPage Start()
    {
        var counts = Counts.Of(site.Proof);
        return new StartPage
        {
            Frame = site.Frame(SitePaths.Start, "Find your build", $"{site.Base.Settings.Title}: what it takes to put one engine into another car."),
            Title = site.Base.Settings.Title,
            Intro = site.Block(site.Base.Settings.About, SitePaths.Start),
            Figures =
            [
                new("Guides", SiteKnowledge.Grouped(counts.Guides)),
                new("Combinations proved", SiteKnowledge.Grouped(counts.Buildable)),
                new("Rules", SiteKnowledge.Grouped(counts.Rules)),
                new("Connectors drawn", SiteKnowledge.Grouped(counts.Connectors)),
            ],
            Chassis = [.. Groups(site.Base.Chassis.All, chassis => SiteKnowledge.Link(chassis), chassis => chassis.Trim, chassis => site.GuidesOfChassis[chassis.Id].Count())],
            Donors = [.. Groups(site.Base.Donors.All, donor => SiteKnowledge.Link(donor), _ => "", donor => site.GuidesOfDonor[donor.Id].Count())],
            Builds = site.Base.Donors.Count <= MostDonorsAcross ? Builds() : null,
            Articles = [.. site.Articles.Take(MostArticlesAtStart).Select(article => new IndexItem(SiteKnowledge.Link(article), article.Summary))],
            AllArticles = site.Base.Articles.Count > MostArticlesAtStart ? new PageLink($"All {SiteKnowledge.Grouped(site.Base.Articles.Count)} articles, by topic", SitePaths.Articles) : null,
        };
    }

    public ArticlePage Article(Article article)
    {
        var path = SitePaths.Article(article.Id);
        var rendered = site.Markdown.Article(article.Body, SitePaths.PrefixOf(path));
        return new ArticlePage
        {
            Frame = site.Frame(path, article.Title, article.Summary, new PageLink("How-to", SitePaths.Articles)),
            Title = article.Title,
            Summary = article.Summary,
            Body = rendered.Html,
            Contents = rendered.Contents,
            Positions = [.. article.Positions.Select(named => site.Base.Positions.Find(named.Id)).OfType<Position>().Select(SiteKnowledge.Link)],
            Tasks = [.. article.Tasks.Select(named => site.Base.Tasks.Find(named.Id)).OfType<WorkTask>().Select(SiteKnowledge.Link)],
            Sources = site.Sources(article.Sources),
            Standing = article.Standing.Length > 0 ? SiteKnowledge.Standing(article.Standing) : null,
            StandingText = article.Standing.Length > 0 ? SiteKnowledge.StandingText(article.Standing) : "",
            Checked = article.Checked,
            Topic = article.Topic,
            More = article.Topic.Length == 0 ? [] : [.. site.Articles.Where(other => other.Topic == article.Topic && other.Id != article.Id).Select(SiteKnowledge.Link)],
        };
    }

    public OwnPage Own(TextPage page)
    {
        var path = SitePaths.Page(page.Id);
        return new OwnPage
        {
            Frame = site.Frame(path, page.Title, page.Summary),
            Title = page.Title,
            Summary = page.Summary,
            Body = site.Markdown.Article(page.Body, SitePaths.PrefixOf(path)).Html,
        };
    }

    public FindingPage Finding(FindingKind kind)
    {
        var path = SitePaths.Finding(kind.Id);
        var texts = findingTexts(kind.Id) ?? throw new InvalidOperationException($"finding `{kind.Id}` has no page text among the templates");
        return new FindingPage
        {
            Frame = site.Frame(path, kind.Title, kind.Title, new PageLink("Findings", SitePaths.Findings)),
            Id = kind.Id,
            Title = kind.Title,
            Severity = SeverityWord(kind.Severity),
            SeverityWeight = SeverityWeight(kind.Severity),
            Meaning = site.Block(texts.Meaning, path),
            Example = texts.Example,
            Message = texts.Message,
            Mend = site.Block(texts.Mend, path),
            MendedExample = texts.Mended,
            WhenToAccept = site.Block(texts.Accept, path),
        };
    }

    public AboutPage About()
    {
        var settings = site.Base.Settings;
        var counts = Counts.Of(site.Proof);
        return new AboutPage
        {
            Frame = site.Frame(SitePaths.About, "Cautions and sources", "Cautions, how these pages are made, and on whose word they stand."),
            Title = "Cautions and sources",
            About = site.Block(settings.About, SitePaths.About),
            Scenario = site.Block(settings.Label, SitePaths.About),
            Cautions = site.Cautions(settings.Cautions, SitePaths.About),
            HowMade = site.Block(
                "Every page is made from rules that contributors wrote down. Before anything is rendered, the generator proves over the whole space of combinations that no two rules contradict each other and that no position is left open; belts and wiring are computed. Each answer names its rule, and each rule its sources.",
                SitePaths.About),
            Figures =
            [
                new("Combinations", SiteKnowledge.Grouped(counts.Combinations)),
                new("Buildable", SiteKnowledge.Grouped(counts.Buildable)),
                new("Prices of", settings.PriceDate),
                new("Knowledge as of", settings.AsOf),
            ],
            Sources = site.Sources(site.Base.Sources.Ids),
        };
    }

    public NotFoundPage NotFound() => new()
    {
        // A server shows it at any address, where a way up from this one leads astray; and it has no address of its own.
        Frame = site.Frame(SitePaths.NotFound, "Not found", "There is no page at this address.") with { Canonical = "", Root = SitePaths.Address(site.Base.Settings.BaseAddress, "") },
        Title = "There is no page at this address",
        Words = "It may have been renamed with the knowledge it showed. These pages lead to everything there is:",
        Links = [new("Search", SitePaths.Search), new("Find your build", SitePaths.Start), new("Positions", SitePaths.Positions), new("Rules", SitePaths.Rules), new("How-to", SitePaths.Articles)],
    };

    public static string SeverityWord(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };

    public static Weight SeverityWeight(Severity severity) => severity switch
    {
        Severity.Error => Weight.Bad,
        Severity.Warning => Weight.Caution,
        _ => Weight.Plain,
    };

    private static IEnumerable<VariantGroup> Groups<T>(IEnumerable<T> all, Func<T, PageLink> link, Func<T, string> detail, Func<T, int> guides)
        where T : Variant =>
        all.GroupBy(variant => variant.Family, StringComparer.Ordinal).Select(family => new VariantGroup(
            ShopWords.Capital(family.Key.Replace('-', ' ')),
            [.. family.OrderBy(variant => variant.Years.From).ThenBy(variant => variant.Id, StringComparer.Ordinal)
                .Select(variant => new VariantItem(link(variant), VariantPages.Years(variant), detail(variant), "", guides(variant) switch
                {
                    0 => "no guide",
                    1 => "1 guide",
                    var many => $"{SiteKnowledge.Grouped(many)} guides",
                }))]));

    private BuildTable Builds() => new(
        [.. site.Base.Donors.All.Select(donor => SiteKnowledge.Link(donor))],
        [
            .. site.Base.Chassis.All.Select(chassis => new BuildRow(
                SiteKnowledge.Link(chassis),
                [
                    .. site.Base.Donors.All.Select(donor =>
                    {
                        var guides = site.GuidesOfChassis[chassis.Id].Where(guide => guide.Headline.Donor.Id == donor.Id).Select(guide => new PageLink(ShortOptions(guide), guide.Path)).ToList();
                        var reason = guides.Count == 0 ? variants.Reason(chassis, donor) : null;
                        return new BuildCell(guides, guides.Count == 0 ? "none" : "", reason is null ? null : SiteKnowledge.Link(reason) with { Text = "why" });
                    }),
                ])),
        ],
        [
            .. site.Guides.SelectMany(guide => guide.Headline.Options).Distinct()
                .OrderBy(option => site.Base.Choices[option.Key].Order)
                .Select(option => new NamedValue(OptionWord(option.Value), site.OptionTitle(option.Key, option.Value))),
        ]);

    private static string OptionWord(string option) => option.Replace('-', ' ');

    private static string ShortOptions(GuideEntry guide) =>
        guide.Headline.Options.Any() ? string.Join(" + ", guide.Headline.Options.Select(option => OptionWord(option.Value))) : "guide";
}
