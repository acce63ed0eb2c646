namespace Swapwright.Site.Models;

/// <summary>A list: all rules, positions, connectors, articles, findings, parts, tasks.</summary>
public sealed record IndexPage : Page
{
    public HtmlString Intro { get; init; } = HtmlString.Empty;

    public IReadOnlyList<IndexGroup> Groups { get; init; } = [];

    internal override string Template => "index";
}

/// <param name="Anchor">The heading's own id; null where nothing links to it.</param>
public sealed record IndexGroup(string Title, IReadOnlyList<IndexItem> Items, string? Anchor = null);

/// <param name="Anchor">The line's own id on the page, "part-adapter-plate"; null where nothing links to it.</param>
/// <param name="Mark">A short word at the end of the line, as in "error" or "built".</param>
public sealed record IndexItem(PageLink Link, string Words = "", string Mark = "", Weight Weight = Weight.Plain, string? Anchor = null);

/// <summary>Cautions, how the site is made, and what is invented.</summary>
public sealed record AboutPage : Page
{
    public HtmlString About { get; init; } = HtmlString.Empty;

    public HtmlString Scenario { get; init; } = HtmlString.Empty;

    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    public HtmlString HowMade { get; init; } = HtmlString.Empty;

    public IReadOnlyList<NamedValue> Figures { get; init; } = [];

    public IReadOnlyList<SourceLine> Sources { get; init; } = [];

    internal override string Template => "about";
}

public sealed record NotFoundPage : Page
{
    public string Words { get; init; } = "";

    public IReadOnlyList<PageLink> Links { get; init; } = [];

    internal override string Template => "not-found";
}

/// <summary>A page in the community's own words.</summary>
public sealed record OwnPage : Page
{
    public string Summary { get; init; } = "";

    public required HtmlString Body { get; init; }

    internal override string Template => "page";
}

/// <summary>The words of the trade in alphabetical order.</summary>
public sealed record GlossaryPage : Page
{
    public HtmlString Intro { get; init; } = HtmlString.Empty;

    public IReadOnlyList<GlossaryLetter> Letters { get; init; } = [];

    internal override string Template => "glossary";
}

public sealed record GlossaryLetter(string Letter, IReadOnlyList<GlossaryEntry> Entries);

/// <summary>One word: its anchor is "term-" and its id.</summary>
public sealed record GlossaryEntry
{
    public required string Id { get; init; }

    public required string Term { get; init; }

    /// <summary>Other words for the same.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    public string Short { get; init; } = "";

    public HtmlString About { get; init; } = HtmlString.Empty;

    public IReadOnlyList<PageLink> See { get; init; } = [];

    /// <summary>Articles that lead here and are not among what is to be seen.</summary>
    public IReadOnlyList<PageLink> UsedIn { get; init; } = [];
}
