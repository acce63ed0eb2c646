using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>The site as a reader opens it: from a folder, without a server.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class SiteFromDiskTests(RenderedSite site)
{
    [Fact]
    public async Task Start_FollowedToAGuide_AnswersInTheDesignsOrder()
    {
        var (page, problems) = await Open("index.html", 1280);
        await page.Locator(".found-guides a[href*='guide/']").First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/guide/", RegexOptions.None, TimeSpan.FromSeconds(1)));

        var headings = await page.Locator("main h2").AllTextContentsAsync();
        string[] wanted = ["Can it be done", "true first", "keep, take", "Gearbox", "Belts", "Wiring", "ECU", "order", "before the first start", "first start", "wrong", "Cautions", "sure"];
        var at = -1;
        foreach (var words in wanted)
        {
            var next = headings.Select((text, index) => (text, index)).FirstOrDefault(pair => pair.index > at && pair.text.Contains(words, StringComparison.OrdinalIgnoreCase));
            Assert.True(next.text is not null, $"no heading with '{words}' after the one before; headings: {string.Join(" | ", headings)}");
            at = next.index;
        }

        Assert.True(await page.Locator("svg[role=img]").CountAsync() > 0, "a guide draws its belts");
        Assert.Contains("nvented", await page.Locator("body").TextContentAsync(), StringComparison.Ordinal);
        Assert.Empty(problems);
    }

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task EveryKindOfPage_AtThisWidth_NeitherOverflowsNorComplains(int width)
    {
        var paths = OneOfEachKind().ToList();
        Assert.InRange(paths.Count, 20, 100);
        var (page, problems) = await Open(paths[0], width);
        foreach (var path in paths)
        {
            await page.GotoAsync(site.AddressOf(path));
            var overflow = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overflow <= 0, string.Create(CultureInfo.InvariantCulture, $"{path} is {overflow} px wider than a screen of {width} px"));
            Assert.True(problems.Count == 0, $"{path}: {string.Join("; ", problems)}");
            Assert.Equal(1, await page.Locator("h1").CountAsync());
        }

        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Guide_WithScriptsOff_ShowsEveryLineWithItsCondition()
    {
        var context = await site.Browser.NewContextAsync(new BrowserNewContextOptions { JavaScriptEnabled = false });
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.AddressOf(AGuideWith("if ECU is ")));

        Assert.Contains("if ECU is ", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        await page.Locator("main a[href$='wiring.html']").First.ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/bench/", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.True(await page.Locator("main table tbody tr").CountAsync() > 10);
    }

    private async Task<(IPage Page, List<string> Problems)> Open(string path, int width)
    {
        var context = await site.Browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = 900 } });
        var page = await context.NewPageAsync();
        var problems = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                problems.Add(message.Text);
            }
        };
        page.PageError += (_, error) => problems.Add(error);
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith("file://", StringComparison.Ordinal))
            {
                problems.Add($"asked for {request.Url}");
            }
        };
        await page.GotoAsync(site.AddressOf(path));
        return (page, problems);
    }

    private IEnumerable<string> OneOfEachKind() =>
        Directory.EnumerateFiles(site.Folder, "*.html").Select(Relative)
            .Concat(Directory.EnumerateDirectories(site.Folder).Select(folder => Directory.EnumerateFiles(folder, "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).FirstOrDefault()).OfType<string>().Select(Relative))
            .Order(StringComparer.Ordinal);

    private string AGuideWith(string words) => Relative(Directory.EnumerateFiles(Path.Combine(site.Folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        .First(file => File.ReadAllText(file).Contains(words, StringComparison.Ordinal)));

    private string Relative(string file) => Path.GetRelativePath(site.Folder, file);
}
