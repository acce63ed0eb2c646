using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Swapwright.BrowserTests;

/// <summary>The search as a reader uses it, from a folder and by keys alone.</summary>
[Collection(RenderedSiteCollection.Name)]
public sealed class SearchInUseTests(RenderedSite site)
{
    [Theory]
    [InlineData("alternator", "position/alternator.html")]
    [InlineData("altenator", "position/alternator.html")]
    [InlineData("altrenator", "position/alternator.html")]
    [InlineData("ALTERNÁTOR", "position/alternator.html")]
    [InlineData("releasing fule pressure", "article/releasing-fuel-pressure.html")]
    [InlineData("contradicton", "finding/contradiction.html")]
    public async Task Page_WordsRightOrWithASlip_FindTheRightPageAmongTheFirst(string words, string path)
    {
        var (page, problems) = await Open("search.html");

        await page.Keyboard.TypeAsync(words);
        await page.Locator(".found section").First.WaitForAsync();

        var found = await page.Locator(".found section li:nth-child(-n+3) a").EvaluateAllAsync<string[]>("links => links.map(link => link.href)");
        Assert.Contains(site.AddressOf(path), found);
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Page_ExactWordsAndSlips_ExactComesFirst()
    {
        var (page, _) = await Open("search.html#q=belt");
        await page.Locator(".found section").First.WaitForAsync();

        // Kind by kind: what has the word in its title stands before what has it only beside.
        var kinds = await page.Locator(".found section").EvaluateAllAsync<string[][]>("kinds => kinds.map(kind => [...kind.querySelectorAll('li a')].map(link => link.textContent))");
        Assert.NotEmpty(kinds);
        Assert.Contains("belt", kinds[0][0], StringComparison.OrdinalIgnoreCase);
        Assert.All(kinds, titles => Assert.DoesNotContain(
            titles.SkipWhile(title => title.Contains("belt", StringComparison.OrdinalIgnoreCase)),
            title => title.Split(' ', ',').Contains("belt", StringComparer.OrdinalIgnoreCase)));
        Assert.DoesNotContain("written nowhere", await page.Locator("[role=status]").TextContentAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Page_ChassisAndDonor_FindTheirGuides()
    {
        var guide = Directory.EnumerateFiles(Path.Combine(site.Folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        var (page, _) = await Open(Path.GetRelativePath(site.Folder, guide));
        var title = await page.Locator("h1").TextContentAsync();

        await page.GotoAsync($"{site.AddressOf("search.html")}#q={Uri.EscapeDataString(title!)}");
        await page.Locator(".found section").First.WaitForAsync();

        Assert.Equal(new Uri(guide).AbsoluteUri, await page.Locator(".found a").First.EvaluateAsync<string>("link => link.href"));
    }

    [Fact]
    public async Task Page_ByKeysAlone_WalksTheListAndComesBack()
    {
        var (page, problems) = await Open("search.html");
        await page.Keyboard.TypeAsync("hose");
        await page.Locator(".found section").First.WaitForAsync();

        await page.Keyboard.PressAsync("ArrowDown");
        Assert.Equal(await page.Locator(".found a").First.TextContentAsync(), await Focused(page));
        await page.Keyboard.PressAsync("ArrowDown");
        Assert.Equal(await page.Locator(".found a").Nth(1).TextContentAsync(), await Focused(page));
        await page.Keyboard.PressAsync("Escape");
        Assert.Equal("asked", await page.EvaluateAsync<string>("() => document.activeElement.id"));
        Assert.Equal("hose", await page.Locator("#asked").InputValueAsync());
        await page.Keyboard.PressAsync("Escape");
        Assert.Equal("", await page.Locator("#asked").InputValueAsync());
        Assert.Equal(0, await page.Locator(".found section").CountAsync());
        Assert.True(await page.Locator(".by-list").First.IsVisibleAsync());
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Field_ByKeysAlone_OpensChoosesAndFollows()
    {
        var (page, problems) = await Open("rules.html");
        Assert.Equal(0, await page.Locator("script[src$='search-index.js']").CountAsync());

        await page.Keyboard.PressAsync("/");
        await page.Keyboard.TypeAsync("thermostta");
        var input = page.GetByRole(AriaRole.Combobox, new() { Name = "Search" });
        await page.GetByRole(AriaRole.Option).First.WaitForAsync();
        Assert.Equal("true", await input.GetAttributeAsync("aria-expanded"));
        Assert.Null(await input.GetAttributeAsync("aria-activedescendant"));

        await page.Keyboard.PressAsync("ArrowDown");
        var active = await input.GetAttributeAsync("aria-activedescendant");
        var option = page.Locator($"#{active}");
        Assert.Equal("true", await option.GetAttributeAsync("aria-selected"));
        Assert.Contains("hermostat", await option.TextContentAsync(), StringComparison.Ordinal);
        var target = await option.EvaluateAsync<string>("link => link.href");

        await page.Keyboard.PressAsync("Escape");
        Assert.Equal("false", await input.GetAttributeAsync("aria-expanded"));
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page).ToHaveURLAsync(Exactly(target));
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Field_EmptiedByEscape_HasNoListLeft()
    {
        var (page, problems) = await Open("rules.html");
        await page.Locator("#find").FillAsync("hose");
        await page.Locator("#find-list [role=option]").First.WaitForAsync();

        await page.Keyboard.PressAsync("Escape");
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.Locator("#find-list [role=option]")).ToHaveCountAsync(0);
        await page.Keyboard.PressAsync("ArrowDown");

        Assert.Equal("", await page.Locator("#find").InputValueAsync());
        Assert.Equal("false", await page.Locator("#find").GetAttributeAsync("aria-expanded"));
        Assert.Empty(problems);
    }

    /// <summary>A window that comes to the front takes the field's focus as an event, and leaves it the active element.</summary>
    [Fact]
    public async Task Field_AnotherWindowComesToTheFront_KeepsItsListUntilItIsLeft()
    {
        var (page, problems) = await Open("rules.html");
        await page.Locator("#find").FillAsync("hose");
        await page.Locator("#find-list [role=option]").First.WaitForAsync();

        await page.Locator("#find").EvaluateAsync("field => field.dispatchEvent(new FocusEvent('blur'))");
        Assert.Equal("true", await page.Locator("#find").GetAttributeAsync("aria-expanded"));
        await page.Locator("main a").First.FocusAsync();

        Assert.Equal("false", await page.Locator("#find").GetAttributeAsync("aria-expanded"));
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Field_EnterWithoutAChoice_GoesToTheSearchPage()
    {
        var (page, problems) = await Open("positions.html");
        await page.Locator("#find").FillAsync("wire & fuse");
        await page.Locator("#find").PressAsync("Enter");

        await Assertions.Expect(page).ToHaveURLAsync(Exactly(site.AddressOf("search.html") + "#q=wire%20%26%20fuse"));
        await page.Locator(".found section").First.WaitForAsync();
        Assert.Equal("wire & fuse", await page.Locator("#asked").InputValueAsync());
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Page_MarkupAsked_StaysText()
    {
        var (page, problems) = await Open($"search.html#q={Uri.EscapeDataString("<img src=x onerror=alert(1)> zzzzqqqq belt")}");
        await page.Locator(".found section").First.WaitForAsync();

        Assert.Equal(0, await page.Locator("main img").CountAsync());
        Assert.Contains("zzzzqqqq", await page.Locator("[role=status]").TextContentAsync(), StringComparison.Ordinal);
        Assert.Empty(problems);
    }

    [Fact]
    public async Task Page_WithScriptsOff_LeadsToTheListsFromAToZ()
    {
        var context = await site.Browser.NewContextAsync(new() { JavaScriptEnabled = false });
        var page = await context.NewPageAsync();
        await page.GotoAsync(site.AddressOf("rules.html"));
        await page.Locator(".find a").ClickAsync();
        await page.Locator(".initials a", new() { HasTextString = "A" }).First.ClickAsync();

        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/a-z[.]html#letter-a$", RegexOptions.None, TimeSpan.FromSeconds(1)));
        Assert.Contains("Alternator", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Guide_StructuredData_IsReadAndNotRun()
    {
        var guide = Directory.EnumerateFiles(Path.Combine(site.Folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        var (page, problems) = await Open(Path.GetRelativePath(site.Folder, guide));

        Assert.Equal("HowTo", await page.EvaluateAsync<string>("() => JSON.parse(document.querySelector('script[type=\"application/ld+json\"]').textContent)['@type']"));
        Assert.Empty(problems);
    }

    // As text, an address would be taken for a pattern with its escapes undone.
    private static Regex Exactly(string address) => new($"^{Regex.Escape(address)}$", RegexOptions.None, TimeSpan.FromSeconds(1));

    private static Task<string> Focused(IPage page) => page.EvaluateAsync<string>("() => document.activeElement.textContent");

    private async Task<(IPage Page, List<string> Problems)> Open(string path)
    {
        var context = await site.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 900 } });
        var page = await context.NewPageAsync();
        var problems = new List<string>();
        page.Console += (_, message) => problems.Add(message.Text);
        page.PageError += (_, error) => problems.Add(error);
        page.Request += (_, request) => problems.AddRange(request.Url.StartsWith("file://", StringComparison.Ordinal) ? [] : [request.Url]);
        var file = path.Split('#');
        await page.GotoAsync(site.AddressOf(file[0]) + (file.Length > 1 ? "#" + file[1] : ""));
        return (page, problems);
    }
}
