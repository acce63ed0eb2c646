using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>Articles and the glossary as a reader sees them.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class ArticleInUseTests(RenderedSite site)
{
    [Theory]
    [InlineData(390, ColorScheme.Light)]
    [InlineData(390, ColorScheme.Dark)]
    [InlineData(1280, ColorScheme.Light)]
    public async Task Articles_WithPictures_StandOutFromTheGroundAndStayOnThePage(int width, ColorScheme scheme)
    {
        var context = await site.Browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = 900 }, ColorScheme = scheme });
        var page = await context.NewPageAsync();
        var problems = new List<string>();
        page.Console += (_, message) => problems.Add(message.Text);
        page.Request += (_, request) => problems.AddRange(request.Url.StartsWith("file://", StringComparison.Ordinal) ? [] : [request.Url]);
        var pictures = 0;
        foreach (var file in Directory.EnumerateFiles(Path.Combine(site.Folder, "article"), "*.html").Order(StringComparer.Ordinal).Where(file => File.ReadAllText(file).Contains("<figure class=\"picture\">", StringComparison.Ordinal)))
        {
            await page.GotoAsync(site.AddressOf(Path.GetRelativePath(site.Folder, file)));
            pictures += await page.Locator("figure.picture svg[role=img]").CountAsync();
            var overflow = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            Assert.True(overflow <= 0, string.Create(CultureInfo.InvariantCulture, $"{file} is {overflow} px too wide"));

            // What is drawn has the ink of the scheme, never the black that SVG draws with when nobody says otherwise.
            var faint = await page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll("figure.picture svg :is(text, path, rect, circle)")].filter(shape => {
                  const style = getComputedStyle(shape);
                  const ink = shape.localName === "text" ? style.fill : style.stroke;
                  return ink === "rgb(0, 0, 0)" || (shape.localName !== "text" && !shape.closest("marker") && ink === "none");
                }).map(shape => shape.outerHTML.slice(0, 80))
                """);
            Assert.Empty(faint);

            // Words of a picture lie inside it.
            var cut = await page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll("figure.picture svg text")].filter(text => {
                  const box = text.getBBox(), view = text.ownerSVGElement.viewBox.baseVal;
                  return box.x < 0 || box.y < 0 || box.x + box.width > view.width || box.y + box.height > view.height;
                }).map(text => `${text.ownerSVGElement.querySelector("title").textContent}: ${text.textContent}`)
                """);
            Assert.Empty(cut);
        }

        Assert.True(pictures >= 10, "the shipped articles show pictures");
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Term_FollowedFromAnArticle_LeadsToItsLineOfTheGlossary()
    {
        var page = await site.Browser.NewPageAsync();
        await page.GotoAsync(site.AddressOf("article/crimping-a-terminal.html"));
        var term = page.Locator("main a.term").First;
        Assert.NotEqual("", await term.GetAttributeAsync("title"));
        await term.ClickAsync();

        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/glossary[.]html#term-[a-z-]+$", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.True(await page.Locator(":target dt").IsVisibleAsync());
        await page.CloseAsync();
    }

    [Fact]
    public async Task Glossary_OnPaper_TakesAFewSheets()
    {
        var page = await site.Browser.NewPageAsync();
        await page.GotoAsync(site.AddressOf("glossary.html"));
        var pdf = await page.PdfAsync(new() { Format = "A4", PreferCSSPageSize = true });

        Assert.InRange(Regex.Count(System.Text.Encoding.Latin1.GetString(pdf), "/Type /Page\\b", RegexOptions.NonBacktracking), 1, 8);
        await page.CloseAsync();
    }
}
