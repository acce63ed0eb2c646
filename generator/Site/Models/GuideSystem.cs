namespace Swapwright.Site.Models;

public sealed record GuideSystem
{
    public required string Id { get; init; }

    public required string Title { get; init; }

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<GuidePosition> Positions { get; init; } = [];
}

/// <summary>One place on the vehicle with everything that may be done there.</summary>
public sealed record GuidePosition : Repeated
{
    public required string Id { get; init; }

    public required PageLink Position { get; init; }

    /// <summary>What holds with the recommended choices; empty where the position does not arise with them.</summary>
    public IReadOnlyList<GuideLine> Lines { get; init; } = [];

    /// <summary>What holds with other choices, in short.</summary>
    public IReadOnlyList<GuideOtherLine> Others { get; init; } = [];
}

/// <summary>An answer that other choices lead to.</summary>
/// <param name="Id">Its anchor there, by which the switches find it.</param>
/// <param name="Line">Its words, linked to where it is told in full.</param>
public sealed record GuideOtherLine(string Id, Verb Verb, PageLink Line, GuideCondition? Condition);

/// <summary>An answer with its reason.</summary>
public sealed record GuideLine : Repeated
{
    public required Verb Verb { get; init; }

    /// <summary>What to do in words: "Keep the chassis's own, refreshed".</summary>
    public required string VerbText { get; init; }

    /// <summary>Null where the line always holds.</summary>
    public GuideCondition? Condition { get; init; }

    /// <summary>The part, then the parts wanted besides.</summary>
    public IReadOnlyList<GuidePart> Parts { get; init; } = [];

    /// <summary>What its rule warns of.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

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
}

/// <summary>What is to be got from one kind of place.</summary>
/// <param name="Source">Linked to its part of the shopping list.</param>
public sealed record GuideShoppingSum(PageLink Source, string Count, string Total);
