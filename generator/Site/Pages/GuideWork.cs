using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Site.Pages;

/// <summary>Order of work and shopping of a guide's recommended combination.</summary>
internal sealed class GuideWork(SiteKnowledge site, Sheet sheet, string path)
{
    private static readonly ImmutableArray<string> s_apart = ["before-start", "first-start"];

    /// <summary>The phases except those that stand in sections of their own.</summary>
    public ImmutableArray<GuidePhase> Phases() =>
    [
        .. WorkTask.Phases.Where(phase => !s_apart.Contains(phase))
            .Select(phase => (phase, tasks: sheet.Tasks.Where(task => task.Phase == phase).ToList()))
            .Where(pair => pair.tasks.Count > 0)
            .Select(pair => new GuidePhase
            {
                Id = pair.phase,
                Title = ShopWords.Phase(pair.phase),
                Hours = SiteKnowledge.Hours(pair.tasks.Aggregate(default(Range3), (sum, task) => sum + task.Hours)),
                Tasks = [.. pair.tasks.Select(Task)],
            }),
    ];

    public ImmutableArray<GuideTask> OfPhase(string phase) => [.. sheet.Tasks.Where(task => task.Phase == phase).Select(Task)];

    public ImmutableArray<GuideShoppingGroup> Shopping() =>
    [
        .. sheet.Shopping.GroupBy(line => line.Part.From, StringComparer.Ordinal).OrderBy(group => ShopWords.From(group.Key), StringComparer.Ordinal)
            .Select(group => new GuideShoppingGroup(
                ShopWords.Capital(ShopWords.From(group.Key)),
                [.. group.Select(line => new GuideShoppingItem(
                    site.Part(line.Part.Id).Part,
                    line.Amount == 1 ? null : SiteKnowledge.Number(line.Amount),
                    line.Part.Price is { } price ? site.Money(price) : null,
                    line.For.IsEmpty ? null : new PageLink(line.For[0].Title, $"#at-{line.For[0].Id}")))],
                site.Money(group.Aggregate(default(Range3), (sum, line) => sum + (line.Price ?? default))))),
    ];

    public HtmlString Drawing() => sheet.Tasks.IsEmpty
        ? HtmlString.Empty
        : new HtmlString(WorkChart.Svg(sheet.Effort.Together, sheet.Effort.CriticalPath.Select(job => job.Id).ToHashSet(StringComparer.Ordinal), (double)site.Base.Settings.Effort.HoursADay, "work-chart"));

    public string Words()
    {
        var effort = sheet.Effort;
        return sheet.Tasks.IsEmpty ? "" : string.Create(
            CultureInfo.InvariantCulture,
            $"Drawn for two people, {effort.DaysTogether} working days of {site.Base.Settings.Effort.HoursADay:0.#} hours; alone it takes {effort.DaysAlone}, with a helper where two are wanted. A phase begins when the one before is done. The dark bars are the chain that decides the length: an hour lost there is an hour later on the road.");
    }

    public ImmutableArray<string> Tools() => [.. sheet.Tasks.SelectMany(task => task.Tools).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public ImmutableArray<string> Consumables() => [.. sheet.Tasks.SelectMany(task => task.Consumables).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    private GuideTask Task(WorkTask task)
    {
        var here = sheet.Tasks.Where(other => task.After.Any(named => named.Id == other.Id));
        return new GuideTask
        {
            Id = task.Id,
            Title = task.Title,
            Hours = SiteKnowledge.Hours(task.Hours),
            Skill = ShopWords.Skill(task.Skill),
            People = task.People > 1 ? "two people" : "one person",
            After = [.. here.Select(other => new PageLink(other.Title, $"#task-{other.Id}"))],
            Articles = [.. site.Articles.Where(article => article.Tasks.Any(named => named.Id == task.Id)).Select(SiteKnowledge.Link)],
            Tools = task.Tools,
            Consumables = task.Consumables,
            Steps = site.Inlines(task.Steps, path),
            Cautions = site.Cautions(task.Cautions, path),
            Mistakes = site.Inlines(task.Mistakes, path),
            WhyNow = site.Inline(task.WhyNow, path),
        };
    }
}
