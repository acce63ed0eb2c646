using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>A guide taken to the workshop: printed, ticked off, and switched to other choices.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class GuideInUseTests(RenderedSite site)
{
    private const int MostPages = 30;

    // What the address of a guide says once its choices are switched.
    private static readonly Regex s_switched = new("#build:", RegexOptions.None, TimeSpan.FromSeconds(1));

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
    public async Task Guide_Switched_ShowsOtherSumsKeepsThemInItsAddressAndFindsThemAgain()
    {
        var page = await Open(LargestGuide());
        var problems = new List<string>();
        page.PageError += (_, error) => problems.Add(error);
        page.Console += (_, message) => problems.AddRange(message.Type is "error" ? [message.Text] : []);
        var before = await Shown(page);

        await page.Locator("[data-choice=ecu] input[type=radio]:enabled:not(:checked)").First.CheckAsync();
        await page.Locator(".is-switched").WaitForAsync();

        var after = await Shown(page);
        Assert.NotEqual(before, after);
        await Assertions.Expect(page).ToHaveURLAsync(s_switched);
        Assert.Contains("hours", await page.Locator(".switch-state").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await page.Locator(".line.switched").CountAsync() > 0);
        Assert.Equal(0, await page.Locator(".position:not([hidden])").Filter(new LocatorFilterOptions { HasNot = page.Locator(".line:not([hidden])") }).CountAsync());

        await page.ReloadAsync();
        await page.Locator(".is-switched").WaitForAsync();
        Assert.Equal(after, await Shown(page));

        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the recommended choices" }).ClickAsync();
        Assert.Equal(before, await Shown(page));
        await Assertions.Expect(page).Not.ToHaveURLAsync(s_switched);
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Guide_Switched_SaysWhichSheetsStillHoldAndSavesTheBuildAsItStands()
    {
        var page = await Open(LargestGuide());
        await page.Locator("[data-choice=ecu] input[type=radio]:enabled:not(:checked)").First.CheckAsync();
        await page.Locator(".is-switched").WaitForAsync();

        var marks = await page.Locator(".sheets li").AllInnerTextsAsync();
        Assert.All(marks, one => Assert.Matches("holds for this build too|recommended choices only", one));
        Assert.Contains(marks, one => one.StartsWith("Wiring sheet", StringComparison.Ordinal) && one.Contains("recommended choices only", StringComparison.Ordinal));
        Assert.Contains("recommended choices", await page.Locator(".foot strong").InnerTextAsync(), StringComparison.Ordinal);

        var saved = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save it as a table" }).ClickAsync());
        var rows = await File.ReadAllLinesAsync(await saved.PathAsync());
        Assert.Equal("\"position\",\"do\",\"what\",\"parts\",\"rule\"", rows[0]);
        Assert.Equal(await page.Locator(".guide .position:not([hidden])").CountAsync(), rows.Length - 1);

        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the recommended choices" }).ClickAsync();
        Assert.Equal(0, await page.Locator(".sheets .mark, .foot strong").CountAsync());
    }

    [Fact]
    public async Task Guide_SwitchedAndBack_IsAsItWas()
    {
        var page = await Open(LargestGuide());
        var before = await Told(page);
        await page.Locator("[data-choice] input[type=radio]:enabled:not(:checked)").First.CheckAsync();
        await page.Locator(".is-switched").WaitForAsync();
        Assert.NotEqual(before, await Told(page));

        await page.GetByRole(AriaRole.Button, new() { Name = "Back to the recommended choices" }).ClickAsync();

        Assert.Equal(before, await Told(page));
    }

    // Long blocks are put together from what stood on the page.
    private static async Task<string> Told(IPage page) => string.Join('\n', await page.EvaluateAsync<string[]>(
        "() => ['cautions', 'mistakes', 'tasks', 'wiring', 'belts', 'hoses', 'shopping', 'notes'].flatMap((name) => [...document.querySelectorAll(`[data-block=${name}] :is(li, dd, dt, .chosen, figure, p)`)].map((one) => one.textContent.replace(/\\s+/g, ' ').trim()))"));

    [Fact]
    public async Task Ticks_SavedAndLoadedElsewhere_AreTheSame()
    {
        var page = await Open(LargestGuide());
        await page.Locator("#do ~ .system input[type=checkbox]").Nth(2).CheckAsync();
        await page.Locator(".tasks input[type=checkbox]").First.CheckAsync();
        var saved = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save ticks" }).ClickAsync());
        var file = await saved.PathAsync();

        var elsewhere = await Open(LargestGuide());
        Assert.Equal(0, await elsewhere.Locator("main input[type=checkbox]:checked").CountAsync());
        await elsewhere.Locator(".ticks input[type=file]").SetInputFilesAsync(file);
        await elsewhere.GetByText("Loaded.").WaitForAsync();
        Assert.Equal(2, await elsewhere.Locator("main input[type=checkbox]:checked").CountAsync());

        // The work sheet has the same task, ticked.
        await elsewhere.Locator(".sheets a[href$='work.html']").ClickAsync();
        await elsewhere.Locator(".task input[type=checkbox]:checked").First.WaitForAsync();
        Assert.Equal(1, await elsewhere.Locator(".task input[type=checkbox]:checked").CountAsync());
    }

    [Theory]
    [InlineData("wiring")]
    [InlineData("belts")]
    [InlineData("hoses")]
    [InlineData("work")]
    [InlineData("shopping")]
    [InlineData("figures")]
    [InlineData("otherwise")]
    public async Task Sheet_OnATelephone_StacksItsRowsAndOverflowsNowhere(string sheet)
    {
        var context = await site.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = 390, Height = 844 } });
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.AddressOf(LargestGuide()));
        await page.Locator($".sheets a[href$='{sheet}.html']").ClickAsync();
        await page.Locator("nav.others").WaitForAsync();

        var wide = await page.EvaluateAsync<string[]>("() => [document.documentElement, ...document.querySelectorAll('.scroll')].filter(one => one.scrollWidth > one.clientWidth + 1).map(one => one.getAttribute('aria-label') || 'page')");
        Assert.Empty(wide);
    }

    private static async Task<string> Shown(IPage page) =>
        string.Join('|', await page.Locator(".gauges dd").AllInnerTextsAsync()) + await page.Locator("[data-block=plug-counts]").InnerTextAsync();

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
