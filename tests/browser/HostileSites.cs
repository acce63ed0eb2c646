using System.Globalization;
using Microsoft.Playwright;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.BrowserTests;

/// <summary>Hostile bases, each rendered once, and one browser that opens them.</summary>
public sealed class HostileSites : IAsyncLifetime, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("swapwright-hostile-").FullName;
    private readonly Dictionary<int, (string Site, IReadOnlyCollection<string> Marks)> _rendered = [];
    private IPlaywright? _playwright;

    public IBrowser Browser { get; private set; } = null!;

    public async Task InitializeAsync()
    {
        _playwright = await Playwright.CreateAsync();
        Browser = await Browsers.Start(_playwright);
    }

    public async Task DisposeAsync() => await Browser.DisposeAsync();

    public void Dispose()
    {
        _playwright?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    internal HostileBase Written() => HostileBase.Write(Path.Combine(_folder, "written"), 0);

    /// <param name="first">With which of the texts that try to break out the base begins.</param>
    internal (string Site, IReadOnlyCollection<string> Marks) Rendered(int first)
    {
        if (!_rendered.TryGetValue(first, out var rendered))
        {
            _rendered[first] = rendered = Render(first);
        }

        return rendered;
    }

    private (string Site, IReadOnlyCollection<string> Marks) Render(int first)
    {
        var kb = Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"kb-{first}"));
        var hostile = HostileBase.Write(kb, first);
        var proof = Proof.Of(kb);
        Assert.True(proof.Resolution is not null, string.Join('\n', proof.Findings.Take(20).Select(finding => $"{finding.Place}: {finding.Message}")));

        // A base with such findings is not rendered by the program: here it is all the same, so that escaping stands alone.
        var site = Path.Combine(_folder, string.Create(CultureInfo.InvariantCulture, $"site-{first}"));
        SiteBuilder.Render(proof, site, Templates.Embedded());
        return (site, hostile.Marks.Values);
    }
}
