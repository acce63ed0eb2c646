using System.Collections.Immutable;
using Swapwright.Site.Reuse;

namespace Swapwright.Site;

/// <summary>Pages and files that one worker makes, one after the other: what they share lives no longer than they take.</summary>
/// <param name="Name">By which the record of an earlier run knows it; unique in a site.</param>
internal sealed record SiteWork(string Name, IEnumerable<PlannedPage> Pages, IEnumerable<PlannedFile> Files)
{
    /// <summary>What it is made from; null where that is not followed, and it is made each time.</summary>
    public Digest? Inputs { get; init; }

    /// <summary>What is noted of it for the next run, once it is made or kept.</summary>
    public Func<ImmutableArray<byte>> Note { get; init; } = () => [];

    /// <summary>Told when the last file of it is in place.</summary>
    public Action? Done { get; init; }
}
