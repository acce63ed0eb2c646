using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>What was seen of a page: how it came to be shown, and which rules of axe-core it breaks.</summary>
internal sealed record Seen(string Path, Showing Showing, IReadOnlyList<string> Violations);

/// <summary>One page of every kind, opened once at each width for all tests that look at every kind: opening a page takes as long as most looks at it.</summary>
internal sealed class PageVisits(RenderedSite site)
{
    /// <summary>Widths of a window in CSS pixels: a telephone by day and a large screen at night.</summary>
    public const int Narrow = 390;

    /// <inheritdoc cref="Narrow"/>
    public const int Wide = 1440;

    // Several at a time: each is watched for a while in which it does nothing.
    private const int Together = 6;

    private readonly ConcurrentDictionary<int, Lazy<Task<IReadOnlyList<Seen>>>> _seen = new();

    /// <param name="width"><see cref="Narrow"/> in light colours or <see cref="Wide"/> in dark ones.</param>
    public Task<IReadOnlyList<Seen>> At(int width) => _seen.GetOrAdd(width, _ => new(() => Visit(width))).Value;

    private async Task<IReadOnlyList<Seen>> Visit(int width)
    {
        var paths = PageKinds.Of(site);
        Assert.InRange(paths.Count, 30, 100);
        return await Tabs.Visit(Together, paths, () => site.Open(width, width == Wide ? ColorScheme.Dark : ColorScheme.Light), async (page, path) =>
            new Seen(path, await Showing.Of(page, site.AddressOf(path)), await Axe.Violations(page)));
    }
}
