using System.Collections.Immutable;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The state of the base on one page, from the proof and the resolution. One worker at a time.</summary>
internal sealed class HealthPages(SiteKnowledge site)
{
    private const string Intro = "The state of this knowledge base, for those who keep it: what is covered, on whose word, and what wants a second look. The numbers come from the check and from the regions in which rules speak; no combination is tried one by one.";

    // A list beyond this is a matter for the check's own report.
    private const int MostLines = 60;

    private const int MostOverridden = 12;

    public HealthPage Page() => new()
    {
        Frame = site.Frame(SitePaths.Health, "State of the knowledge", "What is covered, how sure it is, and what wants a second look."),
        Title = "State of the knowledge",
        Intro = Intro,
        Counts = Counted(),
        Systems = new HealthSystems(site).All(),
        Checked = Checked(),
        Lists = [Findings(), Accepted(), Stale(), Overridden(), Unsourced(), Unlinked(), Unused()],
    };

    private ImmutableArray<NamedValue> Counted()
    {
        var counts = Reports.Counts.Of(site.Proof);
        return
        [
            new("Rules", SiteKnowledge.Grouped(counts.Rules)),
            new("Positions", SiteKnowledge.Grouped(counts.Positions)),
            new("Chassis", SiteKnowledge.Grouped(counts.ChassisVariants)),
            new("Donors", SiteKnowledge.Grouped(counts.DonorVariants)),
            new("Choices", SiteKnowledge.Grouped(counts.Choices)),
            new("Connectors", SiteKnowledge.Grouped(counts.Connectors)),
            new("Guides", SiteKnowledge.Grouped(counts.Guides)),
            new("Combinations", SiteKnowledge.Grouped(counts.Combinations)),
            new("Buildable", SiteKnowledge.Grouped(counts.Buildable)),
            new("Warnings", SiteKnowledge.Grouped(counts.Warnings), null, counts.Warnings > 0 ? Weight.Caution : Weight.Plain),
            new("Notes", SiteKnowledge.Grouped(counts.Notes)),
            new("Accepted", SiteKnowledge.Grouped(counts.Accepted)),
        ];
    }

    private ImmutableArray<HealthBar> Checked()
    {
        var years = site.Base.Rules.All.GroupBy(rule => rule.Checked is { Length: >= 4 } day ? day[..4] : "no day said", StringComparer.Ordinal)
            .OrderBy(year => year.Key, StringComparer.Ordinal).Select(year => (year.Key, Count: year.Count())).ToList();
        var longest = years.Select(year => year.Count).DefaultIfEmpty(0).Max();
        return [.. years.Select(year => new HealthBar(year.Key, SiteKnowledge.Grouped(year.Count), HealthBars.Single(year.Count, longest)))];
    }

    private HealthList Findings() => List("findings", "What the check finds", "Warnings and notes that nobody has accepted.", "The check finds nothing.", site.Proof.Findings.Select(Line));

    private HealthList Accepted() => List(
        "accepted",
        "What is let stand",
        "Findings that a file accepts, with its reason.",
        "Nothing is accepted.",
        NamedEntity.All(site).SelectMany(entity => entity.Entity.Accepts.Select(accept => new HealthLine(
            accept.Because, entity.LinkOrTitle, FindingLink(FindingKinds.All.FirstOrDefault(kind => kind.Id == accept.Finding)), accept.Place.ToString(), entity.Word))));

    private HealthList Stale() => List("stale", "Not checked for long", "Rules and articles whose last check lies too far back, or on no known day; accepted ones as well.", "Everything was checked in time.", OfKind(FindingKinds.Stale));

    private HealthList Unsourced() => List("unsourced", "On nobody's word", "Rules that decide something and name no source; accepted ones as well.", "Every rule that decides something names its source.", OfKind(FindingKinds.Unsourced));

    private HealthList Unused() => List("unused", "Parts that nothing uses", "Accepted ones as well.", "Every part is used.", OfKind(FindingKinds.PartUse));

    private HealthList Overridden()
    {
        var rules = site.Resolution.Overriders
            .Select(pair => (Rule: site.Base.Rules.Find(pair.Key), By: pair.Value.Length)).Where(pair => pair.Rule is not null)
            .OrderByDescending(pair => pair.By).ThenBy(pair => pair.Rule!.Id, StringComparer.Ordinal).ToList();
        return List(
            "overridden",
            "Most overridden rules",
            "A general rule with many exceptions may want to be two rules.",
            "No rule overrides another.",
            rules.Take(MostOverridden).Select(pair => new HealthLine($"{SiteKnowledge.Grouped(pair.By)} rule{(pair.By == 1 ? "" : "s")} override{(pair.By == 1 ? "s" : "")} it", SiteKnowledge.Link(pair.Rule!))),
            rules.Count);
    }

    private HealthList Unlinked()
    {
        var linked = LinkedArticles().ToHashSet(StringComparer.Ordinal);
        return List(
            "unlinked",
            "Articles that nothing leads to",
            "No position, task, answer or text names them; readers find them in the list of articles only.",
            "Something leads to every article.",
            site.Articles.Where(article => article.Positions.IsEmpty && article.Tasks.IsEmpty && !linked.Contains(article.Id)).Select(article => new HealthLine(article.Summary, SiteKnowledge.Link(article))));
    }

    /// <summary>Articles that an answer, a word's "see" or a text of another page names.</summary>
    private IEnumerable<string> LinkedArticles()
    {
        var kb = site.Base;
        var texts = kb.Articles.All.Select(article => (From: article.Id, Text: article.Body))
            .Concat(NamedEntity.All(site).Select(entity => (From: "", Text: entity.Entity.About)))
            .Concat(kb.Rules.All.SelectMany(rule => rule.Answers.SelectMany(answer => answer.Steps.Append(answer.Notes)).Append(rule.Because)).Select(text => (From: "", Text: text)))
            .Concat(kb.Tasks.All.SelectMany(task => task.Steps).Select(text => (From: "", Text: text)))
            .Concat(kb.Terms.All.Select(term => (From: "", Text: term.About)))
            .Concat(kb.Settings.Cautions.Select(caution => (From: "", caution.Text)));
        return kb.Rules.All.SelectMany(rule => rule.Answers).Select(answer => answer.Article).OfType<string>()
            .Concat(kb.Terms.All.SelectMany(term => term.See).Select(named => OwnLink.Parse(named.Id)).OfType<OwnLink>().Where(own => own.Kind == "article").Select(own => own.Id))
            .Concat(texts.Where(pair => pair.Text.Contains("article:", StringComparison.Ordinal)).SelectMany(pair => ArticlesIn(pair.Text).Where(id => id != pair.From)));
    }

    private static IEnumerable<string> ArticlesIn(string text) =>
        MarkdownForm.Parse(text)?.Descendants<LinkInline>().Select(link => OwnLink.Parse(MarkdownForm.AddressOf(link))).OfType<OwnLink>().Where(own => own.Kind == "article").Select(own => own.Id) ?? [];

    private IEnumerable<HealthLine> OfKind(FindingKind kind) =>
        site.Proof.Findings.Concat(site.Proof.Accepted).Where(finding => finding.Kind == kind).OrderBy(finding => finding.Place).Select(Line);

    private static HealthLine Line(Finding finding) =>
        new(finding.Message, null, FindingLink(finding.Kind), finding.Place.ToString(), finding.Mend ?? "", TextPages.SeverityWeight(finding.Severity));

    private static PageLink? FindingLink(FindingKind? kind) => kind is null ? null : new PageLink(kind.Title, SitePaths.Finding(kind.Id));

    private static HealthList List(string id, string title, string intro, string empty, IEnumerable<HealthLine> lines, int? count = null)
    {
        var all = lines.ToList();
        var total = count ?? all.Count;
        var shown = all.Take(MostLines).ToList();
        return new HealthList(id, title, SiteKnowledge.Grouped(total), intro, empty, shown, total > shown.Count ? $"And {SiteKnowledge.Grouped(total - shown.Count)} more." : "");
    }
}
