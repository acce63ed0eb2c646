using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The lists: everything of one kind, grouped.</summary>
internal sealed class ListPages(SiteKnowledge site)
{
    public IEnumerable<(string Path, Func<IndexPage> Build)> All() =>
    [
        (SitePaths.Rules, Rules), (SitePaths.Positions, Positions), (SitePaths.Connectors, Connectors), (SitePaths.Articles, Articles),
        (SitePaths.Findings, Findings), (SitePaths.Parts, Parts), (SitePaths.Tasks, Tasks),
    ];

    private IndexPage Rules() => List(SitePaths.Rules, "Rules", "Every rule, by the system it speaks of.", SystemGroups(
        site.Base.Rules.All,
        rule => rule.Answers.IsEmpty ? null : site.Base.Positions.Find(rule.Answers[0].Position)?.System,
        "What can be built, advice and cautions",
        rule => new IndexItem(SiteKnowledge.Link(rule), "", SiteKnowledge.StandingText(rule.Standing))));

    private IndexPage Positions() => List(SitePaths.Positions, "Positions", "Every place on the vehicle that a guide settles.", SystemGroups(
        site.Base.PositionOrder,
        position => position.System,
        "Others",
        position => new IndexItem(SiteKnowledge.Link(position))));

    private IndexPage Connectors() => List(SitePaths.Connectors, "Connectors", "Every connector family, by the number of its cavities.", site.Base.Connectors.All
        .GroupBy(connector => connector.Cavities.Count()).OrderBy(group => group.Key)
        .Select(group => new IndexGroup(
            group.Key == 1 ? "1 cavity" : $"{SiteKnowledge.Grouped(group.Key)} cavities",
            [.. group.Select(connector => new IndexItem(new PageLink(connector.Title, SitePaths.Connector(connector.Id)), WiringWords.Terminal(connector.Terminal), connector.Sealed ? "sealed" : ""))])));

    private IndexPage Articles() => List(SitePaths.Articles, "How-to", "Work that many swaps share, step by step.",
        site.Articles.GroupBy(article => article.Topic, StringComparer.Ordinal)
            .Select(topic => new IndexGroup(topic.Key.Length > 0 ? topic.Key : "Others", [.. topic.Select(article => new IndexItem(SiteKnowledge.Link(article), article.Summary, article.Standing.Length > 0 ? SiteKnowledge.StandingText(article.Standing) : ""))])));

    private IndexPage Findings() => List(SitePaths.Findings, "Findings", "What the check can find, for those who write the knowledge.",
    [
        new IndexGroup("Findings", [.. FindingKinds.All.Select(kind => new IndexItem(new PageLink(kind.Title, SitePaths.Finding(kind.Id)), kind.Id, TextPages.SeverityWord(kind.Severity), TextPages.SeverityWeight(kind.Severity)))]),
    ]);

    private IndexPage Parts() => List(SitePaths.Parts, "Parts", "What the guides ask for, by where it is found.", site.Base.Parts.All
        .GroupBy(part => part.From, StringComparer.Ordinal).OrderBy(group => ShopWords.From(group.Key), StringComparer.Ordinal)
        .Select(group => new IndexGroup(
            ShopWords.Capital(ShopWords.From(group.Key)),
            [.. group.OrderBy(part => part.Title, StringComparer.Ordinal).Select(part => new IndexItem(new PageLink(part.Title, SitePaths.Part(part.Id)), part.About, part.Price is { } price ? site.Money(price) : "", Weight.Plain, $"part-{part.Id}"))])));

    private IndexPage Tasks() => List(SitePaths.Tasks, "Tasks", "Pieces of work, by phase.", WorkTask.Phases
        .Select(phase => new IndexGroup(ShopWords.Phase(phase), [.. site.Base.Tasks.All.Where(task => task.Phase == phase)
            .Select(task => new IndexItem(SiteKnowledge.Link(task), ShopWords.Skill(task.Skill), $"{SiteKnowledge.Span(task.Hours)} h", Weight.Plain, $"task-{task.Id}"))]))
        .Where(group => group.Items.Count > 0));

    private IEnumerable<IndexGroup> SystemGroups<T>(IEnumerable<T> items, Func<T, string?> system, string others, Func<T, IndexItem> item)
    {
        var groups = items.ToLookup(one => system(one) ?? "", StringComparer.Ordinal);
        return site.Base.Systems.Select(one => new IndexGroup(one.Title, [.. groups[one.Id].Select(item)]))
            .Append(new IndexGroup(others, [.. groups[""].Select(item)]))
            .Where(group => group.Items.Count > 0);
    }

    private IndexPage List(string path, string title, string intro, IEnumerable<IndexGroup> groups) => new()
    {
        Frame = site.Frame(path, title, intro),
        Title = title,
        Intro = site.Inline(intro, path),
        Groups = [.. groups],
    };
}
