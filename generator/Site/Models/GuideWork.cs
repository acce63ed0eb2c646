namespace Swapwright.Site.Models;

/// <summary>A phase of the work as the guide lists it.</summary>
public sealed record GuidePhase(PageLink Phase, RangeText? Hours, IReadOnlyList<GuideTaskLine> Tasks);

/// <summary>A piece of work in a line.</summary>
/// <param name="Task">Linked to its steps on the work sheet.</param>
/// <param name="Hours">Display-ready, with the skill where it is more than careful.</param>
public sealed record GuideTaskLine(PageLink Task, string Hours);

public sealed record WorkPhase
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public RangeText? Hours { get; init; }

    public IReadOnlyList<GuideTask> Tasks { get; init; } = [];
}

/// <summary>A piece of work with a box to tick.</summary>
public sealed record GuideTask : Repeated
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public RangeText? Hours { get; init; }

    public string Skill { get; init; } = "";

    public string People { get; init; } = "";

    /// <summary>Tasks on the same page that come first.</summary>
    public IReadOnlyList<PageLink> After { get; init; } = [];

    /// <summary>Articles that say how it is done.</summary>
    public IReadOnlyList<PageLink> Articles { get; init; } = [];

    public IReadOnlyList<string> Tools { get; init; } = [];

    public IReadOnlyList<string> Consumables { get; init; } = [];

    public IReadOnlyList<HtmlString> Steps { get; init; } = [];

    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    public IReadOnlyList<HtmlString> Mistakes { get; init; } = [];

    /// <summary>Why a part is refreshed while it can be reached.</summary>
    public HtmlString WhyNow { get; init; } = HtmlString.Empty;
}
