namespace Swapwright.Site.Search;

/// <summary>Things of one kind, as a search finds them and as the lists from A to Z name them.</summary>
/// <param name="Title">As in "Rules".</param>
/// <param name="One">One of them, as in "rule".</param>
/// <param name="Before">What stands before an id in the address of its page, from the site's root.</param>
/// <param name="List">The page that lists them.</param>
internal sealed record SearchKind(string Title, string One, string Before, string After, string List, IReadOnlyList<SearchEntry> Entries);

/// <param name="Words">What it is found by besides its title and id.</param>
/// <param name="Detail">One line that tells it from others; not searched.</param>
internal sealed record SearchEntry(string Title, string Id, string Words = "", string Detail = "");

/// <summary>Guides by number: each is a chassis, a donor and its options, so that thousands stay small.</summary>
/// <param name="Rows">Indexes into the three lists: chassis, donor, options in the order of the headline.</param>
internal sealed record SearchGuides(
    IReadOnlyList<SearchEntry> Chassis, IReadOnlyList<SearchEntry> Donors, IReadOnlyList<SearchEntry> Options, IReadOnlyList<IReadOnlyList<int>> Rows);
