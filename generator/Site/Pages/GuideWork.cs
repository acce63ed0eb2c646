using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Site.Pages;

/// <summary>Order of work and shopping of a guide's recommended combination.</summary>
/// <param name="path">Of the page that shows the tasks, or to which shopping leads back.</param>
/// <param name="steps">Path of the page that has every task; empty where it is the same page.</param>
internal sealed class GuideWork(SiteKnowledge site, Sheet sheet, string path, string steps = "")
{
    // The mean of a sum of estimates lies above the sum of their likely values.
    private const string All = "All of it, on average";

    private static readonly ImmutableArray<string> s_apart = ["before-start", "first-start"];

    private readonly ILookup<string, WorkTask> _byPhase = sheet.Tasks.ToLookup(task => task.Phase, StringComparer.Ordinal);

    /// <summary>Every phase with its steps.</summary>
    public ImmutableArray<WorkPhase> Phases() =>
    [
        .. InPhases().Select(pair => new WorkPhase
        {
            Id = pair.Phase,
            Title = ShopWords.Phase(pair.Phase),
            Hours = Hours(pair.Tasks),
            Tasks = [.. pair.Tasks.Select(task => Task(task, alone: false))],
        }),
    ];

    /// <summary>The phases in short, except those that the guide shows in sections of their own.</summary>
    public ImmutableArray<GuidePhase> Lines() =>
    [
        .. InPhases().Where(pair => !s_apart.Contains(pair.Phase)).Select(pair => new GuidePhase(
            new PageLink(ShopWords.Phase(pair.Phase), $"{steps}#phase-{pair.Phase}"),
            Hours(pair.Tasks),
            [.. pair.Tasks.Select(task => new GuideTaskLine(new PageLink(task.Title, $"{steps}#task-{task.Id}"), InShort(task)))])),
    ];

    /// <param name="alone">Whether the tasks stand one after the other, so that what each comes after need not be told.</param>
    public ImmutableArray<GuideTask> OfPhase(string phase, bool alone = false) => [.. _byPhase[phase].Select(task => Task(task, alone))];

    public HtmlString Drawing() => sheet.Tasks.IsEmpty
        ? HtmlString.Empty
        : site.Drawings.Of(new MadeFrom(["order", ImmutableCollectionsMarshal.AsArray(sheet.Tasks)]), () => new HtmlString(WorkChart.Svg(sheet.Effort.Together, sheet.Effort.CriticalPath.Select(job => job.Id).ToHashSet(StringComparer.Ordinal), (double)site.Base.Settings.Effort.HoursADay, "work-chart")));

    /// <summary>Hours by phase, and the whole as nine builds in ten should need.</summary>
    public HtmlString HoursDrawing() => site.Drawings.Of(new MadeFrom(["hours", ImmutableCollectionsMarshal.AsArray(sheet.Tasks)]), () => new HtmlString(RangeChart.Svg(
        "Hours of work by phase",
        [.. InPhases().Select(pair => Line(ShopWords.Phase(pair.Phase), pair.Tasks.Aggregate(default(Range3), (sum, task) => sum + task.Hours))), Line(All, SiteKnowledge.Whole(sheet.Hours)) with { IsSum = true }],
        "hours",
        "hours-by-phase")));

    /// <summary>Money by source, and the whole as nine builds in ten should need.</summary>
    public HtmlString MoneyDrawing() => site.Drawings.Of(new MadeFrom(["money", ImmutableCollectionsMarshal.AsArray(sheet.Shopping)]), () => new HtmlString(RangeChart.Svg(
        $"Parts by where they come from, {site.Base.Settings.Currency}",
        [.. BySource().Select(group => Line(ShopWords.Capital(ShopWords.From(group.Key)), Sum(group))), Line(All, SiteKnowledge.Whole(sheet.Money)) with { IsSum = true }],
        site.Base.Settings.Currency,
        "money-by-source")));

    private static RangeLine Line(string title, Range3 range) => new(title, (double)range.Least, (double)range.Likely, (double)range.Most);

    public string Words()
    {
        var effort = sheet.Effort;
        return sheet.Tasks.IsEmpty ? "" : string.Create(
            CultureInfo.InvariantCulture,
            $"Drawn for two people, {effort.DaysTogether} working days of {site.Base.Settings.Effort.HoursADay:0.#} hours; alone it takes {effort.DaysAlone}, with a helper where two are wanted. A phase begins when the one before is done. The dark bars are the chain that decides the length: an hour lost there is an hour later on the road. {Waiting()}");
    }

    /// <summary>No base knows how long a shop keeps people waiting, so the plan leaves it out and says so.</summary>
    private string Waiting()
    {
        var made = sheet.Shopping.Select(line => line.Part.From).Where(from => from is "machine-shop" or "hose-shop").Distinct(StringComparer.Ordinal).Select(ShopWords.From).Order(StringComparer.Ordinal).ToList();
        return $"Waiting for what is ordered is left out{(made.Count == 0 ? "" : $", and for what is made to measure ({string.Join(", ", made)}): a shop may take weeks")}; order before the first day.";
    }

    public ImmutableArray<string> Tools() => [.. sheet.ToolNames];

    public ImmutableArray<string> Consumables() => [.. sheet.Tasks.SelectMany(task => task.Consumables).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    /// <summary>The shopping list with every part.</summary>
    public ImmutableArray<ShoppingGroup> Shopping() =>
    [
        .. BySource().Select(group => new ShoppingGroup(
            group.Key,
            ShopWords.Capital(ShopWords.From(group.Key)),
            [.. group.Select(line => new ShoppingItem(
                site.Part(line.Part.Id).Part,
                line.Amount == 1 ? null : SiteKnowledge.Number(line.Amount),
                line.Part.Price is { } price ? site.Money(price) : null,
                line.For.IsEmpty ? null : new PageLink(line.For[0].Title, $"{path}#at-{line.For[0].Id}"))
            {
                Sizes = string.Join(", ", line.Sizes),
            })],
            site.Money(SiteKnowledge.Whole(Sum(group))))),
    ];

    /// <summary>What it comes to by source.</summary>
    /// <param name="list">Path of the shopping list.</param>
    public ImmutableArray<GuideShoppingSum> Sums(string list) =>
    [
        .. BySource().Select(group => new GuideShoppingSum(
            new PageLink(ShopWords.Capital(ShopWords.From(group.Key)), $"{list}#from-{group.Key}"),
            group.Count() == 1 ? "one thing" : $"{SiteKnowledge.Number(group.Count())} things",
            site.Money(SiteKnowledge.Whole(Sum(group))))),
    ];

    private IEnumerable<IGrouping<string, ShoppingLine>> BySource() =>
        sheet.Shopping.GroupBy(line => line.Part.From, StringComparer.Ordinal).OrderBy(group => ShopWords.From(group.Key), StringComparer.Ordinal);

    private static Range3 Sum(IEnumerable<ShoppingLine> lines) => lines.Aggregate(default(Range3), (sum, line) => sum + (line.Price ?? default));

    private IEnumerable<(string Phase, IEnumerable<WorkTask> Tasks)> InPhases() =>
        WorkTask.Phases.Where(_byPhase.Contains).Select(phase => (phase, _byPhase[phase]));

    private static RangeText Hours(IEnumerable<WorkTask> tasks) => SiteKnowledge.Hours(tasks.Aggregate(default(Range3), (sum, task) => sum + task.Hours));

    private static string InShort(WorkTask task) =>
        $"{SiteKnowledge.Span(task.Hours)} h{(ShopWords.SkillRank(task.Skill) > 1 ? $", {ShopWords.Skill(task.Skill)}" : "")}{(task.People > 1 ? ", two people" : "")}";

    /// <param name="alone">Whether what it comes after is left out.</param>
    private GuideTask Task(WorkTask task, bool alone)
    {
        WorkTask[] after = alone || task.After.IsEmpty ? [] : [.. sheet.Tasks.Where(other => task.After.Any(named => named.Id == other.Id))];
        TaskTool[] tools = task.Tools.IsEmpty ? [] : [.. task.Tools.Where(sheet.Tools.Contains)];
        return site.Pieces.Of(new MadeFrom([task, SitePaths.PrefixOf(path), after.Length == 0 ? null : steps, .. after, .. tools]), () => new GuideTask
        {
            Id = task.Id,
            Title = task.Title,
            Hours = SiteKnowledge.Hours(task.Hours),
            Skill = ShopWords.Skill(task.Skill),
            People = task.People > 1 ? "two people" : "one person",
            After = [.. after.Select(other => new PageLink(other.Title, $"{steps}#task-{other.Id}"))],
            Articles = [.. site.ArticlesOf(task).Select(SiteKnowledge.Link)],
            Tools = [.. tools.Select(tool => tool.Title)],
            Consumables = task.Consumables,
            Steps = site.Inlines(task.Steps, path),
            Cautions = site.Cautions(task.Cautions, path),
            Mistakes = site.Inlines(task.Mistakes, path),
            WhyNow = site.Inline(task.WhyNow, path),
        });
    }
}
