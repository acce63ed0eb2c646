using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>A reader without knowledge of the site looks for their build, by hand and by keyboard, and compares what they find.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class FinderTests(RenderedSite site)
{
    private const int MostSteps = 12;

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Finder_AnsweredByPointer_EndsAtAGuideWithoutDeadEnd(int width)
    {
        await using var visit = await Visit.Open(site, "index.html", width);
        var page = visit.Page;
        foreach (var side in new[] { "c", "d" })
        {
            for (var step = 0; step < MostSteps; step++)
            {
                var open = Side(page, side).Locator(".replies button:enabled");
                if (await open.CountAsync() == 0)
                {
                    break;
                }

                var promised = await open.Last.Locator(".left").InnerTextAsync();
                await page.FollowAsync(() => open.Last.ClickAsync());
                Assert.Equal(Leading(promised), Leading(await page.Locator(".found-count").InnerTextAsync()));
            }

            Assert.Contains("It is:", await Side(page, side).InnerTextAsync(), StringComparison.Ordinal);
        }

        Assert.True(await page.Locator(".found-guides a").CountAsync() > 0);
        await page.Locator(".found-guides a").First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/guide/", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.Empty(visit.Problems);
    }

    [Fact]
    public async Task Finder_AnsweredByKeyboard_MovesTheFocusToTheNextQuestion()
    {
        await using var visit = await Visit.Open(site, "index.html", 1280);
        var page = visit.Page;
        await Side(page, "c").Locator(".replies button:enabled").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForSelectorAsync("#find-c:focus");

        for (var step = 0; step < MostSteps && !(await Side(page, "c").InnerTextAsync()).Contains("It is:", StringComparison.Ordinal); step++)
        {
            // From the heading over the buttons that change an answer to the first answer that can be given.
            for (var press = 0; press < 20 && !await page.EvaluateAsync<bool>("() => document.activeElement.closest('.replies') !== null"); press++)
            {
                await page.Keyboard.PressAsync("Tab");
            }

            await page.Keyboard.PressAsync("Enter");
            await page.WaitForSelectorAsync("#find-c:focus");
        }

        Assert.Contains("It is:", await Side(page, "c").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(visit.Problems);
    }

    [Fact]
    public async Task Finder_EveryAnswerThatIsClosed_SaysWhy()
    {
        await using var visit = await Visit.Open(site, "index.html", 1280);
        var page = visit.Page;
        var closed = 0;
        var families = await Side(page, "c").Locator(".replies button").CountAsync();
        for (var family = 0; family < families; family++)
        {
            await page.FollowAsync(() => Side(page, "c").Locator(".replies button").Nth(family).ClickAsync());
            var items = Side(page, "d").Locator(".replies li:has(button:disabled)");
            for (var item = 0; item < await items.CountAsync(); item++)
            {
                var because = items.Nth(item).Locator(".because");
                Assert.NotEqual("", (await because.InnerTextAsync()).Trim());
                Assert.True(await because.Locator("a[href^='rule/']").CountAsync() > 0);
                closed++;
            }

            await page.FollowAsync(() => page.GoBackAsync());
        }

        Assert.True(closed > 0, "no family is closed to another in the shipped base");
        Assert.Empty(visit.Problems);
    }

    [Fact]
    public async Task Finder_WishAndWayBack_NarrowAndWiden()
    {
        await using var visit = await Visit.Open(site, "index.html", 1280);
        var page = visit.Page;
        var before = Leading(await page.Locator(".found-count").InnerTextAsync());
        var option = page.Locator("#find-money option:enabled").Nth(1);
        var amount = (await option.GetAttributeAsync("value"))!;
        await page.FollowAsync(() => page.Locator("#find-money").SelectOptionAsync(amount));
        var narrowed = Leading(await page.Locator(".found-count").InnerTextAsync());
        Assert.InRange(narrowed, 1, before - 1);

        await page.ReloadAsync();
        Assert.Equal(narrowed, Leading(await page.Locator(".found-count").InnerTextAsync()));
        await page.FollowAsync(() => page.GoBackAsync());
        Assert.Equal(before, Leading(await page.Locator(".found-count").InnerTextAsync()));
        Assert.Empty(visit.Problems);
    }

    [Fact]
    public async Task Comparison_SortedByKeyboard_SaysSoAndOrdersTheRows()
    {
        await using var visit = await Visit.Open(site, SomeChassis(), 1280);
        var page = visit.Page;
        var head = page.Locator("th:has(button:text-is('Parts'))");
        await head.Locator("button").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        Assert.Equal("ascending", await head.GetAttributeAsync("aria-sort"));
        var rising = await Values(page);
        Assert.Equal(rising.Order(), rising);

        await page.Keyboard.PressAsync("Space");
        Assert.Equal("descending", await head.GetAttributeAsync("aria-sort"));
        Assert.Equal(rising.OrderDescending(), await Values(page));
        Assert.Equal(1, await page.Locator("[aria-sort]").CountAsync());
        Assert.Empty(visit.Problems);
    }

    [Fact]
    public async Task Differences_OfTwoGuides_ShowOnlyWhereTheyDiffer()
    {
        await using var visit = await Visit.Open(site, SomeChassis().Replace("chassis/", "differ/", StringComparison.Ordinal), 1280);
        var page = visit.Page;
        var all = await page.Locator(".differ-position").CountAsync();
        await page.Locator(".two select").Nth(0).SelectOptionAsync("1");
        await page.Locator(".two select").Nth(1).SelectOptionAsync("2");

        var shown = page.Locator(".differ-position:not([hidden])");
        Assert.InRange(await shown.CountAsync(), 1, all - 1);
        for (var at = 0; at < await shown.CountAsync(); at++)
        {
            Assert.Equal(2, await shown.Nth(at).Locator("li:not([hidden])").CountAsync());
        }

        Assert.Contains("They differ at", await page.Locator(".two").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(visit.Problems);
    }

    [Fact]
    public async Task Start_WithoutScripts_LeadsToEveryChassisAndDonor()
    {
        var context = await site.Browser.NewContextAsync(new BrowserNewContextOptions { JavaScriptEnabled = false });
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.AddressOf("index.html"));

        Assert.False(await page.Locator(".finder").IsVisibleAsync());
        foreach (var kind in new[] { "chassis", "donor" })
        {
            var links = (await page.Locator($".builds a[href^='{kind}/']").EvaluateAllAsync<string[]>("all => all.map(a => a.getAttribute('href').split('#')[0])")).Distinct(StringComparer.Ordinal);
            var pages = Directory.EnumerateFiles(Path.Combine(site.Folder, kind)).Select(file => $"{kind}/{Path.GetFileName(file)}");
            Assert.Equal(pages.Order(StringComparer.Ordinal), links.Order(StringComparer.Ordinal));
        }

        await context.CloseAsync();
    }

    private static ILocator Side(IPage page, string side) => page.Locator($".ask:has(#find-{side})");

    private static int Leading(string text) => int.Parse(text.Trim().Split(' ')[0], CultureInfo.InvariantCulture);

    private static async Task<decimal[]> Values(IPage page) =>
        [.. (await page.Locator("table.compare td[data-label='Parts']").EvaluateAllAsync<string[]>("all => all.map(cell => cell.dataset.value)")).Select(value => decimal.Parse(value, CultureInfo.InvariantCulture))];

    private string SomeChassis() => $"chassis/{Path.GetFileName(Directory.EnumerateFiles(Path.Combine(site.Folder, "differ")).Order(StringComparer.Ordinal).First())}";

    /// <summary>A page open in a browser of its own, with whatever it complains of or asks for elsewhere.</summary>
    private sealed class Visit(IPage page) : IAsyncDisposable
    {
        public IPage Page { get; } = page;

        public List<string> Problems { get; } = [];

        public static async Task<Visit> Open(RenderedSite site, string path, int width)
        {
            var context = await site.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 } });
            var visit = new Visit(await context.NewPageAsync());
            visit.Page.Console += (_, message) =>
            {
                if (message.Type is "error" or "warning")
                {
                    visit.Problems.Add(message.Text);
                }
            };
            visit.Page.PageError += (_, error) => visit.Problems.Add(error);
            visit.Page.Request += (_, request) =>
            {
                if (!request.Url.StartsWith("file://", StringComparison.Ordinal))
                {
                    visit.Problems.Add($"asked for {request.Url}");
                }
            };
            await visit.Page.GotoAsync(site.AddressOf(path));
            return visit;
        }

        public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
    }
}
