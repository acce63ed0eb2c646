namespace Swapwright.Site.Models;

/// <summary>Where everything is found; without scripts it leads to the lists.</summary>
public sealed record SearchPage : Page
{
    public string Intro { get; init; } = "";

    /// <summary>First letters, into the list from A to Z.</summary>
    public IReadOnlyList<PageLink> Letters { get; init; } = [];

    public IReadOnlyList<SearchKindLine> Kinds { get; init; } = [];

    internal override string Template => "search";
}

/// <summary>A kind of thing, the page that lists it, and how many there are.</summary>
public sealed record SearchKindLine(PageLink Link, string Count);
