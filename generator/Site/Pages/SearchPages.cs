using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Site.Models;
using Swapwright.Site.Search;

namespace Swapwright.Site.Pages;

/// <summary>What can be searched, the page that searches it, and the list of it from A to Z.</summary>
internal sealed class SearchPages(SiteKnowledge site)
{
    private const string Intro = "Everything by its name: vehicles, engines, positions, rules, parts, work, words. Spelling need not be right. The search runs in this page; no word of it leaves your machine.";

    private const string AtoZ = "Everything but the guides, by its first letter. Guides are found by their chassis or donor.";

    public SiteFile Index() => SearchIndex.File(Kinds(), Guides());

    public SearchPage Page() => new()
    {
        Frame = site.Frame(SitePaths.Search, "Search", Intro),
        Title = "Search",
        Intro = Intro,
        Letters = [.. ByLetter().Select(letter => new PageLink(letter.Key, $"{SitePaths.AtoZ}#{Anchor(letter.Key)}"))],
        Kinds = [.. Kinds().Select((kind, number) => new SearchKindLine(new PageLink(kind.Title, kind.List), SiteKnowledge.Grouped(number == 0 ? site.Guides.Length : kind.Entries.Count)))],
    };

    public IndexPage List() => new()
    {
        Frame = site.Frame(SitePaths.AtoZ, "From A to Z", AtoZ, new PageLink("Search", SitePaths.Search)),
        Title = "From A to Z",
        Intro = site.Inline(AtoZ, SitePaths.AtoZ),
        Groups =
        [
            .. ByLetter().Select(letter => new IndexGroup(
                letter.Key,
                [.. letter.Select(pair => new IndexItem(new PageLink(pair.Entry.Title, pair.Kind.Before + pair.Entry.Id + pair.Kind.After), "", pair.Kind.One))],
                Anchor(letter.Key))),
        ],
    };

    /// <summary>Guides first; their entries are numbers, see <see cref="Guides"/>.</summary>
    public IReadOnlyList<SearchKind> Kinds()
    {
        var kb = site.Base;
        return
        [
            Paged("Guides", "guide", SitePaths.Guide("", "", []), SitePaths.Start, []),
            Paged("Chassis", "chassis", SitePaths.Chassis(""), SitePaths.Start, kb.Chassis.All.Select(one => new SearchEntry(one.Title, one.Id, Words(one), $"{VariantPages.Years(one)}{(one.Trim.Length > 0 ? ", " : "")}{one.Trim}"))),
            Paged("Donors", "donor", SitePaths.Donor(""), SitePaths.Start, kb.Donors.All.Select(one => new SearchEntry(one.Title, one.Id, Words(one), VariantPages.Years(one)))),
            Paged("How-to", "how-to", SitePaths.Article(""), SitePaths.Articles, kb.Articles.All.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Id, one.Topic, one.Summary), one.Summary))),
            Anchored("Glossary", "word", SitePaths.Term(""), SitePaths.Glossary, kb.Terms.All.Select(one => new SearchEntry(one.Term, one.Id, SearchWords.Besides(one.Term, one.Also.Prepend(one.Id)), one.Short))),
            Paged("Positions", "position", SitePaths.Position(""), SitePaths.Positions, kb.PositionOrder.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Id, SystemTitle(one.System))))),
            Paged("Rules", "rule", SitePaths.Rule(""), SitePaths.Rules, kb.Rules.All.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Answers.Select(answer => kb.Positions.Find(answer.Position)?.Title ?? "").Prepend(one.Id))))),
            Anchored("Parts", "part", SitePaths.Part(""), SitePaths.Parts, kb.Parts.All.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Id, one.Category)))),
            Anchored("Work", "task", SitePaths.Task(""), SitePaths.Tasks, kb.Tasks.All.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Id, ShopWords.Phase(one.Phase))))),
            Paged("Connectors", "connector", SitePaths.Connector(""), SitePaths.Connectors, kb.Connectors.All.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Id, one.Terminal)))),
            Paged("Findings", "finding", SitePaths.Finding(""), SitePaths.Findings, FindingKinds.All.Select(one => new SearchEntry(one.Title, one.Id, SearchWords.Besides(one.Title, one.Id), one.Id))),
        ];
    }

    public SearchGuides Guides()
    {
        var options = site.Guides.SelectMany(guide => guide.Headline.Options).Distinct().ToList();
        var chassis = Numbers(site.Base.Chassis.Ids);
        var donors = Numbers(site.Base.Donors.Ids);
        var numbers = options.Select((option, number) => (option, number)).ToDictionary(pair => pair.option, pair => pair.number);
        return new SearchGuides(
            [.. site.Base.Chassis.All.Select(one => new SearchEntry(one.Title, one.Id, Words(one)))],
            [.. site.Base.Donors.All.Select(one => new SearchEntry(one.Title, one.Id, Words(one)))],
            [.. options.Select(option => new SearchEntry(InSentence.Lower(site.OptionTitle(option.Key, option.Value)), option.Value))],
            [.. site.Guides.Select(guide => (IReadOnlyList<int>)[chassis[guide.Headline.Chassis.Id], donors[guide.Headline.Donor.Id], .. guide.Headline.Options.Select(option => numbers[option])])]);
    }

    private IEnumerable<IGrouping<string, (SearchKind Kind, SearchEntry Entry)>> ByLetter() => Kinds()
        .SelectMany(kind => kind.Entries.Select(entry => (Kind: kind, Entry: entry)))
        .OrderBy(pair => SearchWords.Letter(pair.Entry.Title), StringComparer.Ordinal)
        .ThenBy(pair => string.Join(' ', SearchWords.Of(pair.Entry.Title)), StringComparer.Ordinal)
        .ThenBy(pair => pair.Kind.One, StringComparer.Ordinal)
        .ThenBy(pair => pair.Entry.Id, StringComparer.Ordinal)
        .GroupBy(pair => SearchWords.Letter(pair.Entry.Title), StringComparer.Ordinal);

    private string SystemTitle(string id) => site.Base.Systems.FirstOrDefault(one => one.Id == id)?.Title ?? "";

    // An anchor is plain letters and digits: every other letter is named by its number.
    private static string Anchor(string letter) => letter.Length > 1 ? "letter-other"
        : char.IsAsciiLetter(letter[0]) ? $"letter-{letter.ToLowerInvariant()}"
        : string.Create(CultureInfo.InvariantCulture, $"letter-u{(int)letter[0]:x4}");

    private static string Words(Variant variant) => SearchWords.Besides(variant.Title, variant.Id, variant.Maker, variant.Family, VariantPages.Years(variant), variant is ChassisVariant chassis ? chassis.Trim : "");

    private static Dictionary<string, int> Numbers(IEnumerable<string> ids) => ids.Select((id, number) => (id, number)).ToDictionary(pair => pair.id, pair => pair.number, StringComparer.Ordinal);

    private static SearchKind Paged(string title, string one, string path, string list, IEnumerable<SearchEntry> entries) =>
        new(title, one, path[..(path.IndexOf('/', StringComparison.Ordinal) + 1)], ".html", list, [.. entries]);

    private static SearchKind Anchored(string title, string one, string path, string list, IEnumerable<SearchEntry> entries) => new(title, one, path, "", list, [.. entries]);
}
