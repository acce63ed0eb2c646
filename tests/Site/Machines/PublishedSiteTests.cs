using System.Text.Json;
using AngleSharp.Dom;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Site.Machines;

/// <summary>A small base rendered whole, once with an address and once without.</summary>
public sealed class PublishedSiteTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"swapwright-published-{Guid.NewGuid():N}");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Render_BaseWithAnAddress_TellsMachinesWhereThingsAre()
    {
        Render(Proof.Of(KnowledgeBaseCase.GoodFolder("workshop")));

        var guide = Directory.EnumerateFiles(Path.Combine(_folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        var path = Path.GetRelativePath(_folder, guide).Replace('\\', '/');
        var document = Page(path);
        Assert.Equal($"https://swaps.example/{path}", document.QuerySelector("link[rel=canonical]")!.GetAttribute("href"));
        Assert.Equal($"https://swaps.example/{path}", Meta(document, "og:url"));
        Assert.Equal($"https://swaps.example/{Path.ChangeExtension(path, "png")}", Meta(document, "og:image"));
        Assert.True(File.Exists(Path.ChangeExtension(guide, "png")));
        Assert.True(File.Exists(Path.ChangeExtension(guide, "svg")));
        Assert.Equal(["application/atom+xml", "application/json", "text/csv"], document.QuerySelectorAll("link[rel=alternate]").Select(link => link.GetAttribute("type")!));
        Assert.All(document.QuerySelectorAll("link[rel=alternate]"), link => Assert.True(File.Exists(Path.Combine(Path.GetDirectoryName(guide)!, link.GetAttribute("href")!))));

        Assert.Equal("https://swaps.example/", Page("index.html").QuerySelector("link[rel=canonical]")!.GetAttribute("href"));
        Assert.Null(Page("404.html").QuerySelector("link[rel=canonical]"));
        Assert.Equal("https://swaps.example/assets/site.css", Page("404.html").QuerySelector("link[rel=stylesheet]")!.GetAttribute("href"));
        var map = File.ReadAllText(Path.Combine(_folder, "sitemap.xml"));
        Assert.Contains($"<loc>https://swaps.example/{path}</loc>", map, StringComparison.Ordinal);
        Assert.DoesNotContain("404.html", map, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder, "robots.txt")));
    }

    /// <summary>Each sheet for the bench that has a table gives it to a spreadsheet, and says so where the guide says it.</summary>
    [Theory]
    [InlineData("workshop", "wiring", "wiring")]
    [InlineData("workshop", "belts", "belts")]
    [InlineData("plumbing", "hoses", "hoses")]
    [InlineData("workshop", "work", "effort")]
    [InlineData("workshop", "shopping", "effort")]
    [InlineData("likes", "figures", "figures")]
    public void Render_BenchSheet_LinksToItsTable(string knowledgeBase, string sheet, string table)
    {
        Render(Proof.Of(KnowledgeBaseCase.GoodFolder(knowledgeBase)));

        var page = Directory.EnumerateFiles(Path.Combine(_folder, "bench"), $"{sheet}.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        var link = Assert.Single(ParsedPage.Of(File.ReadAllText(page)).Document.QuerySelectorAll("footer a"), link => link.GetAttribute("href")!.EndsWith(".csv", StringComparison.Ordinal));
        var file = Path.Combine(Path.GetDirectoryName(page)!, link.GetAttribute("href")!);
        Assert.Equal($"{table}.csv", Path.GetFileName(file));
        Assert.Contains(',', File.ReadLines(file).First());
    }

    /// <summary>A sheet or a table with nothing on it is not made, and neither are switches where nothing is left to choose.</summary>
    [Theory]
    [InlineData("small", "effort.csv shopping.html work.html")]
    [InlineData("workshop", "belts.csv belts.html choices.js effort.csv otherwise.html shopping.html wiring.csv wiring.html work.html")]
    [InlineData("plumbing", "choices.js effort.csv hoses.csv hoses.html otherwise.html shopping.html work.html")]
    public void Render_SheetsOfTheBench_AreThoseThatHaveSomethingOnThem(string knowledgeBase, string expected)
    {
        Render(Proof.Of(KnowledgeBaseCase.GoodFolder(knowledgeBase)));

        var guides = Directory.EnumerateFiles(Path.Combine(_folder, "bench"), "*", SearchOption.AllDirectories).GroupBy(Path.GetDirectoryName).ToList();
        Assert.NotEmpty(guides);
        Assert.All(guides, files => Assert.Equal(expected, string.Join(' ', files.Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal))));
    }

    [Fact]
    public void Render_BaseWithoutAnAddress_ClaimsNone()
    {
        Render(ChangedBase.Prove("workshop", ("kb.yaml", "site: {base-address: \"https://swaps.example/\"}\n", "")));

        Assert.False(File.Exists(Path.Combine(_folder, "sitemap.xml")));
        Assert.False(File.Exists(Path.Combine(_folder, "robots.txt")));
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(_folder, "guide"), "*.svg", SearchOption.AllDirectories));
        Assert.Empty(Directory.EnumerateFiles(Path.Combine(_folder, "guide"), "*.png", SearchOption.AllDirectories));
        Assert.All(Directory.EnumerateFiles(_folder, "*.html", SearchOption.AllDirectories), file => Assert.Empty(ParsedPage.Of(File.ReadAllText(file)).Document.QuerySelectorAll("link[rel=canonical], meta[property]")));
        Assert.True(File.Exists(Path.Combine(_folder, "feed.xml")));
    }

    [Fact]
    public void Render_Guide_SaysItsWorkAsStructuredData()
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder("workshop"));
        Render(proof);
        var guide = Directory.EnumerateFiles(Path.Combine(_folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        var path = Path.GetRelativePath(_folder, guide).Replace('\\', '/');
        using var shown = Data(Page(path));
        Check(Page(path), shown.RootElement);
        Assert.All(shown.RootElement.GetProperty("step").EnumerateArray(), step => AssertLeadsToPage(step.GetProperty("url").GetString()!));

        var work = Page(SitePaths.Bench(path, "work"));
        using var json = Data(work);
        Check(work, json.RootElement);
        var steps = json.RootElement.GetProperty("step").EnumerateArray().SelectMany(section => section.GetProperty("itemListElement").EnumerateArray()).ToList();
        Assert.NotEmpty(steps);
        Assert.All(steps, step => AssertLeadsToPage(step.GetProperty("url").GetString()!));
        Assert.Equal(work.QuerySelectorAll(".task").Length, steps.Count);
        Assert.All(json.RootElement.GetProperty("supply").EnumerateArray(), supply => Assert.Equal("HowToSupply", supply.GetProperty("@type").GetString()));
    }

    private static JsonDocument Data(IDocument document) => JsonDocument.Parse(document.QuerySelector("script[type='application/ld+json']")!.TextContent);

    private static void Check(IDocument document, JsonElement data)
    {
        Assert.Equal("https://schema.org", data.GetProperty("@context").GetString());
        Assert.Equal("HowTo", data.GetProperty("@type").GetString());
        Assert.Equal(document.QuerySelector("h1")!.TextContent, data.GetProperty("name").GetString());
        Assert.Matches("^PT[0-9]+H$", data.GetProperty("totalTime").GetString());
        var cost = data.GetProperty("estimatedCost");
        Assert.Equal("EUR", cost.GetProperty("currency").GetString());
        Assert.True(cost.GetProperty("minValue").GetDecimal() <= cost.GetProperty("value").GetDecimal());
        Assert.True(cost.GetProperty("value").GetDecimal() <= cost.GetProperty("maxValue").GetDecimal());
    }

    private void AssertLeadsToPage(string address)
    {
        var parts = address["https://swaps.example/".Length..].Split('#');
        Assert.NotNull(Page(parts[0]).GetElementById(parts[1]));
    }

    private void Render(Proof proof) => SiteBuilder.Render(proof, _folder, BuiltIn.Templates);

    private IDocument Page(string path) => ParsedPage.Of(File.ReadAllText(Path.Combine(_folder, path))).Document;

    private static string? Meta(IDocument document, string property) => document.QuerySelector($"meta[property='{property}']")?.GetAttribute("content");
}
