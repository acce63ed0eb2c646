using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Site.Machines;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>What changed, as the dated notes of the entities tell it: the page and the feed.</summary>
internal sealed class ChangePages
{
    private const string Intro = "What contributors noted when they changed something, newest first. Every note stands on the page of what it speaks of as well.";

    private readonly SiteKnowledge _site;
    private readonly ImmutableArray<Change> _changes;

    private sealed record Change(NamedEntity About, DateOnly Day, string Text, int Number);

    public ChangePages(SiteKnowledge site)
    {
        _site = site;
        _changes =
        [
            .. NamedEntity.All(site)
                .SelectMany(entity => entity.Entity.Notes.GroupBy(note => note.Date).SelectMany(day => day.Select((note, number) => new Change(entity, note.Date, note.Text, number))))
                .OrderByDescending(change => change.Day),
        ];
    }

    public ChangesPage Page() => new()
    {
        Frame = _site.Frame(SitePaths.Changes, "What changed", Intro),
        Title = "What changed",
        Intro = Intro,
        Feed = new PageLink("feed", AtomFeed.Path),
        Days =
        [
            .. _changes.GroupBy(change => change.Day).Select(day => new ChangeDay(
                Words(day.Key),
                [.. day.Select(change => new ChangeLine(change.About.Word, change.About.LinkOrTitle, _site.Inline(change.Text, SitePaths.Changes)))])),
        ],
    };

    public SiteFile Feed()
    {
        var settings = _site.Base.Settings;
        var judged = DateOnly.TryParseExact(settings.AsOf, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : DateOnly.MinValue;
        return AtomFeed.File(
            settings.Title,
            settings.Language,
            [
                .. _changes.Select(change => new FeedEntry(
                    $"{change.About.Kind}/{change.About.Entity.Id}/{Words(change.Day)}/{change.Number.ToString(CultureInfo.InvariantCulture)}",
                    $"{change.About.Word}: {change.About.Entity.Title}",
                    change.Day,
                    change.About.Link?.Href ?? SitePaths.Changes,
                    _site.Inline(change.Text, AtomFeed.Path))),
            ],
            judged,
            settings.BaseAddress);
    }

    private static string Words(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
