namespace Swapwright.Site.Models;

/// <summary>A list: all rules, positions, connectors, articles, findings, parts, tasks.</summary>
public sealed record IndexPage : Page
{
    public HtmlString Intro { get; init; } = HtmlString.Empty;

    public IReadOnlyList<IndexGroup> Groups { get; init; } = [];

    internal override string Template => "index";
}

public sealed record IndexGroup(string Title, IReadOnlyList<IndexItem> Items);

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
