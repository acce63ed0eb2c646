using System.Globalization;
using System.Net;
using Microsoft.Playwright;
using Swapwright.Drafting;
using Swapwright.Preview;

namespace Swapwright.BrowserTests;

/// <summary>The preview as somebody sees it who writes: the open page follows the files, and the bar shows what is wrong with them.</summary>
public sealed class PreviewInUseTests : IAsyncLifetime, IDisposable
{
    private const string Guide = "guide/first-car/first-engine.html";

    private readonly string _folder = Directory.CreateTempSubdirectory("swapwright-preview-").FullName;
    private readonly CancellationTokenSource _stop = new();
    private readonly int _port = Browsers.FreePort();
    private PreviewServer? _server;
    private Task? _running;
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private IPage? _page;

    private string Engine => Path.Combine(_folder, "swap-kb", "engines", "first-engine.yaml");

    public async Task InitializeAsync()
    {
        BaseDraft.Write(_folder, "Our swaps");
        _server = PreviewServer.Start(Path.Combine(_folder, "swap-kb"), IPAddress.Loopback, _port);
        _running = _server.Run(_stop.Token);
        _playwright = await Playwright.CreateAsync();
        _browser = await Browsers.Start(_playwright);
        _page = await _browser.NewPageAsync();
    }

    public async Task DisposeAsync()
    {
        await _browser!.DisposeAsync();
        await _stop.CancelAsync();
        await _running!;
    }

    public void Dispose()
    {
        _playwright?.Dispose();
        _server?.Dispose();
        _stop.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task OpenPage_FilesEditedBrokenAndMended_FollowsThem()
    {
        var page = _page!;
        var problems = new List<string>();
        page.PageError += (_, error) => problems.Add(error);
        page.Console += (_, message) => problems.AddRange(message.Type is "error" or "warning" ? [message.Text] : []);
        await page.GotoAsync(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{_port}/{Guide}"));
        // The first look at the base may still be under way.
        await page.Locator("h1", new() { HasText = "First engine" }).WaitForAsync();
        Assert.Equal(0, await page.Locator(".preview-bar").CountAsync());

        // An edit: the page that is open shows it, without a hand at the browser.
        Edit("title: First engine", "title: Renamed engine");
        await page.Locator("h1", new() { HasText = "Renamed engine" }).WaitForAsync();

        // Half a value: the page stays, and the bar says what is wrong and where.
        Edit("  power: 80", "  power: [80");
        var bar = page.Locator(".preview-bar");
        await bar.WaitForAsync();
        Assert.Contains("Renamed engine", await page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("The page is that of the last state without errors", await bar.Locator("> summary").InnerTextAsync(), StringComparison.Ordinal);
        var line = File.ReadAllLines(Engine).ToList().FindIndex(text => text.Contains("power: [80", StringComparison.Ordinal)) + 1;
        var place = bar.Locator("li code").First;
        Assert.Equal(string.Create(CultureInfo.InvariantCulture, $"{Engine}:{line}:10"), await place.InnerTextAsync());

        // The place opens to the line itself and to what mends it.
        await place.ClickAsync();
        Assert.Contains("power: [80", await bar.Locator("li pre").First.InnerTextAsync(), StringComparison.Ordinal);
        Assert.NotEqual("", await bar.Locator("li p").First.InnerTextAsync());

        // Files may hold anything; the bar shows it as text.
        Edit("  power: [80", "  power: \"<img src=x onerror=alert(1)>\"");
        await bar.Locator("li", new() { HasText = "<img src=x onerror" }).First.WaitForAsync();
        Assert.Equal(0, await page.Locator("img").CountAsync());

        // Mended: the bar goes, and what was written meanwhile is there.
        Edit("  power: \"<img src=x onerror=alert(1)>\"", "  power: 80");
        Edit("title: Renamed engine", "title: Engine once more");
        await page.Locator("h1", new() { HasText = "Engine once more" }).WaitForAsync();
        await Assertions.Expect(bar).ToHaveCountAsync(0);
        Assert.Empty(problems);
    }

    private void Edit(string from, string to)
    {
        var text = File.ReadAllText(Engine);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(Engine, text.Replace(from, to, StringComparison.Ordinal));
    }
}
