using Microsoft.Playwright;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;

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
    private IPlaywright? _playwright;

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), $"swapwright-site-{Guid.NewGuid():N}");

    public IBrowser Browser { get; private set; } = null!;

    public string AddressOf(string path) => new Uri(Path.Combine(Folder, path)).AbsoluteUri;

    public async Task InitializeAsync()
    {
        SiteBuilder.Render(Proof.Of(Path.Combine(Browsers.Repository(), "swap-kb")), Folder, Templates.Embedded());
        _playwright = await Playwright.CreateAsync();
        Browser = await Browsers.Start(_playwright);
    }

    public async Task DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright?.Dispose();
        Directory.Delete(Folder, recursive: true);
    }
}
