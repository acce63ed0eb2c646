namespace Swapwright.Site.Models;

/// <summary>Where a reader finds their build.</summary>
public sealed record StartPage : Page
{
    public HtmlString Intro { get; init; } = HtmlString.Empty;

    /// <summary>How much there is: guides, combinations proved, rules.</summary>
    public IReadOnlyList<NamedValue> Figures { get; init; } = [];

    /// <summary>Questions for who does not know their chassis, and for who does not know their donor.</summary>
    public IReadOnlyList<PageLink> Which { get; init; } = [];

    public IReadOnlyList<VariantGroup> Chassis { get; init; } = [];

    public IReadOnlyList<VariantGroup> Donors { get; init; } = [];

    public IReadOnlyList<IndexItem> Articles { get; init; } = [];

    /// <summary>The list of all articles where <see cref="Articles"/> has only the first; null where it has them all.</summary>
    public PageLink? AllArticles { get; init; }

    public override IReadOnlyList<string> Styles => ["assets/find.css"];

    public override IReadOnlyList<string> Scripts => [SitePaths.FinderData, "assets/find.js"];

    internal override string Template => "start";
}

/// <param name="Which">Where an owner tells the variants of the family apart.</param>
public sealed record VariantGroup(string Title, PageLink Which, IReadOnlyList<VariantItem> Variants);

/// <param name="Years">As in "1986 to 1988".</param>
/// <param name="Goes">The families that it goes together with, with how many guides.</param>
/// <param name="Not">The families of which none goes; leads to why.</param>
public sealed record VariantItem(PageLink Link, string Years, string Detail, string Guides, IReadOnlyList<FamilyCount> Goes, IReadOnlyList<PageLink> Not);

public sealed record FamilyCount(PageLink Family, string Guides);
