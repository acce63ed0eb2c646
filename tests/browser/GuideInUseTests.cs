using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>A guide taken to the workshop: printed, ticked off, and switched to other choices.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class GuideInUseTests(RenderedSite site)
{
    private const int MostPages = 30;

    [Fact]
    public async Task Guide_PrintedOnA4_TakesNoMoreThanThirtyPages()
    {
        var page = await Open(LargestGuide());

        var pdf = await page.PdfAsync(new PagePdfOptions { Format = "A4", PreferCSSPageSize = true });

        Assert.InRange(PagesOf(pdf), 5, MostPages);
    }

    [Fact]
    public async Task Guide_TickedAndReloaded_KeepsTheTick()
    {
        var page = await Open(LargestGuide());
        var boxes = page.Locator("#do ~ .system input[type=checkbox]");
        await boxes.Nth(1).CheckAsync();

        await page.ReloadAsync();

        Assert.True(await boxes.Nth(1).IsCheckedAsync());
        Assert.Equal(1, await page.Locator("input[type=checkbox]:checked").CountAsync());
    }

    [Fact]
    public async Task Guide_SwitchedToAnOption_PutsAwayTheLinesOfTheOthers()
    {
        var page = await Open(LargestGuide());
        var conditional = page.Locator(".line[data-when]");
        var before = await conditional.Filter(new LocatorFilterOptions { Visible = true }).CountAsync();

        await page.Locator("[data-choice] input[type=radio]:enabled").First.CheckAsync();

        var hidden = await page.Locator(".line[data-when][hidden]").CountAsync();
        Assert.InRange(hidden, 1, before - 1);
        Assert.Equal(before - hidden, await conditional.Filter(new LocatorFilterOptions { Visible = true }).CountAsync());
        Assert.Contains("put away", await page.Locator(".switch-state").InnerTextAsync(), StringComparison.Ordinal);
    }

    private async Task<IPage> Open(string path)
    {
        var context = await site.Browser.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.AddressOf(path));
        return page;
    }

    private string LargestGuide() => Path.GetRelativePath(
        site.Folder,
        Directory.EnumerateFiles(Path.Combine(site.Folder, "guide"), "*.html", SearchOption.AllDirectories)
            .OrderByDescending(file => new FileInfo(file).Length).ThenBy(file => file, StringComparer.Ordinal).First());

    // Every page of a PDF is an object of the type "Page"; the tree above them has the type "Pages".
    private static int PagesOf(byte[] pdf)
    {
        var text = System.Text.Encoding.Latin1.GetString(pdf);
        var count = 0;
        for (var at = text.IndexOf("/Type /Page", StringComparison.Ordinal); at >= 0; at = text.IndexOf("/Type /Page", at + 1, StringComparison.Ordinal))
        {
            count += text[at + "/Type /Page".Length] == 's' ? 0 : 1;
        }

        return count;
    }
}
