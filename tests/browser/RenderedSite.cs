using Microsoft.Playwright;
using Swapwright.Findings;
using Swapwright.Tests;

namespace Swapwright.BrowserTests;

/// <summary>Test classes that share one rendered site.</summary>
[CollectionDefinition(Name)]
public sealed class RenderedSiteCollection : ICollectionFixture<RenderedSite>
{
    public const string Name = "rendered site";
}

/// <summary>The shipped base rendered once for all tests, and one browser that opens it from disk.</summary>
public sealed class RenderedSite : IAsyncLifetime
{
    private readonly SharedSite _site = SharedSite.Of(() => Proof.Of(Path.Combine(Browsers.Repository(), "swap-kb")));
    private IPlaywright? _playwright;

    public string Folder => _site.Folder;

    public IBrowser Browser { get; private set; } = null!;

    /// <summary>What was seen of one page of every kind.</summary>
    internal PageVisits Visits => field ??= new PageVisits(this);

    public string AddressOf(string path) => new Uri(Path.Combine(Folder, path)).AbsoluteUri;

    /// <summary>An empty page that has nothing in common with any other.</summary>
    public async Task<IPage> Open(int width, ColorScheme scheme) =>
        await (await Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 }, ColorScheme = scheme })).NewPageAsync();

    public async Task InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        Browser = await Browsers.Start(_playwright);
    }

    public async Task DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright?.Dispose();
        _site.Dispose();
    }
}
