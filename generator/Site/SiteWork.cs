using Swapwright.Site.Models;

namespace Swapwright.Site;

/// <summary>Pages and files that one worker makes, one after the other: what they share lives no longer than they take.</summary>
/// <param name="Done">Told when the last of them is written.</param>
public sealed record SiteWork(IEnumerable<Func<Page>> Pages, IEnumerable<PlannedFile> Files, Action? Done = null);
