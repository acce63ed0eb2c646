namespace Swapwright.Site.Models;

public sealed record GuideSystem
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<GuidePosition> Positions { get; init; } = [];
}

/// <summary>One place on the vehicle with everything that may be done there.</summary>
public sealed record GuidePosition
{
    public required string Id { get; init; }

    public required PageLink Position { get; init; }

    /// <summary>One line where the answer is the same whatever is chosen; otherwise one for each condition.</summary>
    public IReadOnlyList<GuideLine> Lines { get; init; } = [];
}

/// <summary>An answer with its reason.</summary>
public sealed record GuideLine
{
    public required Verb Verb { get; init; }

    /// <summary>What to do in words: "Keep the chassis's own, refreshed".</summary>
    public required string VerbText { get; init; }

    /// <summary>Null where the line always holds.</summary>
    public GuideCondition? Condition { get; init; }

    /// <summary>The part, then the parts wanted besides.</summary>
    public IReadOnlyList<GuidePart> Parts { get; init; } = [];

    public IReadOnlyList<HtmlString> Steps { get; init; } = [];

    public HtmlString Notes { get; init; } = HtmlString.Empty;

    public IReadOnlyList<HtmlString> Mistakes { get; init; } = [];

    public IReadOnlyList<PageLink> Articles { get; init; } = [];

    public required GuideReason Reason { get; init; }
}

public sealed record GuidePart(PageLink Part, string? Price = null, string? From = null);

/// <summary>Why a line says what it says.</summary>
public sealed record GuideReason
{
    public HtmlString Because { get; init; } = HtmlString.Empty;

    /// <summary>Under its id, by which a reader of the printed page finds the rule.</summary>
    public required PageLink Rule { get; init; }

    public Standing Standing { get; init; }

    public string StandingText { get; init; } = "";

    public string? Checked { get; init; }

    public string? By { get; init; }

    /// <summary>Numbers of the guide's list of sources.</summary>
    public IReadOnlyList<PageLink> Sources { get; init; } = [];

    /// <summary>Rules that are silent here because this one names them.</summary>
    public IReadOnlyList<PageLink> Overridden { get; init; } = [];
}

/// <summary>What to get, by where it comes from.</summary>
public sealed record GuideShoppingGroup(string Source, IReadOnlyList<GuideShoppingItem> Items, string? Total = null);

/// <param name="Amount">Null for one.</param>
public sealed record GuideShoppingItem(
    PageLink Part, string? Amount = null, string? Price = null, PageLink? For = null, GuideCondition? Condition = null);
