using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>Every kind of page against axe-core, and pages in the middle of their use.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class AccessibilityTests(RenderedSite site)
{
    [Theory]
    [InlineData(PageVisits.Narrow)]
    [InlineData(PageVisits.Wide)]
    public async Task EveryKindOfPage_HasNoViolation(int width) =>
        Assert.Empty((await site.Visits.At(width)).SelectMany(seen => seen.Violations.Select(one => $"{seen.Path}: {one}")));

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task GuideSwitchedWithItsReasonsOpen_HasNoViolation(ColorScheme scheme)
    {
        var page = await Open(PageKinds.Of(site).Single(path => path.StartsWith("guide/", StringComparison.Ordinal)), 390, scheme);
        await page.Locator("[data-choice] input[type=radio]:enabled:not(:checked)").First.CheckAsync();
        await page.Locator(".is-switched").WaitForAsync();
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach((one) => { one.open = true; })");

        Assert.Empty(await Axe.Violations(page));
    }

    [Fact]
    public async Task FinderHalfWay_HasNoViolation()
    {
        var page = await Open("index.html", 390, ColorScheme.Light);
        await page.FollowAsync(() => page.Locator("#find-c ~ .replies button").First.ClickAsync());
        await page.EvaluateAsync("() => document.querySelectorAll('.finder details').forEach((one) => { one.open = true; })");

        Assert.Empty(await Axe.Violations(page));
    }

    [Fact]
    public async Task SearchWithHits_HasNoViolation()
    {
        var page = await Open("search.html#q=alternater", 1440, ColorScheme.Dark);
        await page.Locator("main a[href*='position/alternator.html']").First.WaitForAsync();

        Assert.Empty(await Axe.Violations(page));
    }

    [Fact]
    public async Task Axe_OnAPageWithAFault_FindsIt()
    {
        var page = await Open("about.html", 390, ColorScheme.Light);
        await page.EvaluateAsync("() => { document.documentElement.removeAttribute('lang'); document.querySelector('main').append(document.createElement('button')); }");

        var found = await Axe.Violations(page);

        Assert.Contains(found, one => one.StartsWith("html-has-lang ", StringComparison.Ordinal));
        Assert.Contains(found, one => one.StartsWith("button-name ", StringComparison.Ordinal));
    }

    private async Task<IPage> Open(string path, int width, ColorScheme scheme)
    {
        var page = await site.Open(width, scheme);
        var parts = path.Split('#');
        await page.GotoAsync(site.AddressOf(parts[0]) + (parts.Length > 1 ? $"#{parts[1]}" : ""));
        return page;
    }
}
