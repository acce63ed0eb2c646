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
        SiteBuilder.Render(Proof.Of(Path.Combine(Root(), "swap-kb")), Folder, Templates.Embedded());
        _playwright = await Playwright.CreateAsync();
        Browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = "/usr/bin/chromium",
            Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public async Task DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright?.Dispose();
        Directory.Delete(Folder, recursive: true);
    }

    /// <summary>The repository.</summary>
    public static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Swapwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests do not lie inside the repository");
        }

        return folder;
    }
}
