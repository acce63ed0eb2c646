using System.Collections.Immutable;

namespace Swapwright.Reports;

/// <summary>One line under an item of a report.</summary>
/// <param name="IsCode">The text is to be typed as it stands, as in ids on a command line.</param>
internal sealed record ImpactDetail(string Label, string Text, bool IsCode = false);

/// <summary>One change, in words that say it alone; details say the rest.</summary>
internal sealed record ImpactItem(string Lead, params ImmutableArray<ImpactDetail> Details);

/// <summary>Changes of one kind, as every form for reading shows them.</summary>
/// <param name="Summary">How much there is of it, in a few words.</param>
internal sealed record ImpactSection(string Title, string Summary, ImmutableArray<ImpactItem> Items);
