namespace Swapwright.Site.Models;

/// <summary>Where a reader finds their build.</summary>
public sealed record StartPage : Page
{
    public HtmlString Intro { get; init; } = HtmlString.Empty;

    /// <summary>How much there is: guides, combinations proved, rules.</summary>
    public IReadOnlyList<NamedValue> Figures { get; init; } = [];

    public IReadOnlyList<VariantGroup> Chassis { get; init; } = [];

    public IReadOnlyList<VariantGroup> Donors { get; init; } = [];

    /// <summary>Chassis down, donors across; null where the table would be too wide to help.</summary>
    public BuildTable? Builds { get; init; }

    /// <summary>The first articles of all.</summary>
    public IReadOnlyList<IndexItem> Articles { get; init; } = [];

    /// <summary>The list of all articles; null where the first ones are all there are.</summary>
    public PageLink? AllArticles { get; init; }

    internal override string Template => "start";
}

public sealed record VariantGroup(string Title, IReadOnlyList<VariantItem> Variants);

/// <param name="Years">As in "1986 to 1988".</param>
/// <param name="HowToTell">One line by which an owner recognises it.</param>
public sealed record VariantItem(PageLink Link, string Years, string Detail = "", string HowToTell = "", string Guides = "");

/// <param name="Legend">What the short words in the cells stand for.</param>
public sealed record BuildTable(IReadOnlyList<PageLink> Donors, IReadOnlyList<BuildRow> Rows, IReadOnlyList<NamedValue> Legend);

/// <param name="Cells">As many as there are donors.</param>
public sealed record BuildRow(PageLink Chassis, IReadOnlyList<BuildCell> Cells);

/// <summary>The guides of one chassis and donor; where there is none, why.</summary>
public sealed record BuildCell(IReadOnlyList<PageLink> Guides, string None = "", PageLink? Rule = null);
