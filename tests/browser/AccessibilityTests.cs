using System.Text.Json;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>Every kind of page against axe-core: the rules of WCAG 2.0 to 2.2, levels A and AA, and its good practices.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class AccessibilityTests(RenderedSite site)
{
    private const string Run = """
        async () => {
          const told = await axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"], resultTypes: ["violations"] });
          return told.violations.map((one) => `${one.id} at ${one.nodes.length}: ${one.nodes[0].target.join(" ")}: ${one.nodes[0].failureSummary}`);
        }
        """;

    private static readonly string s_axe = File.ReadAllText(NodeTools.PathOf("axe-core", "axe.min.js"));

    [Theory]
    [InlineData(390, ColorScheme.Light)]
    [InlineData(1440, ColorScheme.Dark)]
    public async Task EveryKindOfPage_HasNoViolation(int width, ColorScheme scheme)
    {
        var paths = PageKinds.Of(site);
        Assert.InRange(paths.Count, 30, 100);
        var found = await Tabs.Visit(2, paths, () => Open("about.html", width, scheme), async (page, path) =>
        {
            await page.GotoAsync(site.AddressOf(path));
            return (await Violations(page)).Select(one => $"{path}: {one}");
        });

        Assert.Empty(found.SelectMany(one => one));
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task GuideSwitchedWithItsReasonsOpen_HasNoViolation(ColorScheme scheme)
    {
        var page = await Open(PageKinds.Of(site).Single(path => path.StartsWith("guide/", StringComparison.Ordinal)), 390, scheme);
        await page.Locator("[data-choice] input[type=radio]:enabled:not(:checked)").First.CheckAsync();
        await page.Locator(".is-switched").WaitForAsync();
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach((one) => { one.open = true; })");

        Assert.Empty(await Violations(page));
    }

    [Fact]
    public async Task FinderHalfWay_HasNoViolation()
    {
        var page = await Open("index.html", 390, ColorScheme.Light);
        await page.FollowAsync(() => page.Locator("#find-c ~ .replies button").First.ClickAsync());
        await page.EvaluateAsync("() => document.querySelectorAll('.finder details').forEach((one) => { one.open = true; })");

        Assert.Empty(await Violations(page));
    }

    [Fact]
    public async Task SearchWithHits_HasNoViolation()
    {
        var page = await Open("search.html#q=alternater", 1440, ColorScheme.Dark);
        await page.Locator("main a[href*='position/alternator.html']").First.WaitForAsync();

        Assert.Empty(await Violations(page));
    }

    [Fact]
    public async Task Axe_OnAPageWithAFault_FindsIt()
    {
        var page = await Open("about.html", 390, ColorScheme.Light);
        await page.EvaluateAsync("() => { document.documentElement.removeAttribute('lang'); document.querySelector('main').append(document.createElement('button')); }");

        var found = await Violations(page);

        Assert.Contains(found, one => one.StartsWith("html-has-lang ", StringComparison.Ordinal));
        Assert.Contains(found, one => one.StartsWith("button-name ", StringComparison.Ordinal));
    }

    private async Task<IPage> Open(string path, int width, ColorScheme scheme)
    {
        var context = await site.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 }, ColorScheme = scheme });
        var page = await context.NewPageAsync();
        var parts = path.Split('#');
        await page.GotoAsync(site.AddressOf(parts[0]) + (parts.Length > 1 ? $"#{parts[1]}" : ""));
        return page;
    }

    private static async Task<IReadOnlyList<string>> Violations(IPage page)
    {
        await page.EvaluateAsync(s_axe);
        return [.. (await page.EvaluateAsync<JsonElement>(Run)).EnumerateArray().Select(one => one.GetString()!)];
    }
}
