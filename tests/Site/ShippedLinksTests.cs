namespace Swapwright.Tests.Site;

/// <summary>The shipped base rendered whole: a link that leads nowhere is found here and not by a reader.</summary>
[Collection(ShippedSiteCollection.Name)]
public sealed class ShippedLinksTests(ShippedSite site)
{
    [Fact]
    public void Render_ShippedBase_EveryInternalLinkAndAnchorResolves()
    {
        var pages = Directory.EnumerateFiles(site.Folder, "*.html", SearchOption.AllDirectories)
            .AsParallel()
            .Select(file => (Path: Relative(file), Found: PageLinks.Of(File.ReadAllText(file))))
            .ToDictionary(page => page.Path, page => page.Found, StringComparer.Ordinal);
        var dead =
            from page in pages
            from link in page.Value.Links
            where !link.Contains(':', StringComparison.Ordinal)
            let parts = link.Split('#')
            let target = parts[0].Length == 0 ? page.Key : Relative(Path.GetFullPath(Path.Combine(site.Folder, Path.GetDirectoryName(page.Key)!, parts[0])))
            where parts.Length > 1 ? !pages.TryGetValue(target, out var other) || !other.Ids.Contains(parts[1]) : !File.Exists(Path.Combine(site.Folder, target))
            orderby page.Key, link
            select $"{page.Key}: {link}";

        Assert.Equal(site.Pages, pages.Count);
        Assert.Empty(dead.Take(20));
    }

    /// <summary>The tags as they are read for that, against documents as a browser's parser builds them.</summary>
    [Fact]
    public void PageLinks_OfSomePages_AreThoseOfTheirDocuments()
    {
        var pages = Directory.EnumerateFiles(site.Folder, "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Where((_, at) => at % 100 == 0).Concat(Directory.EnumerateFiles(site.Folder, "*.html")).ToList();
        Assert.True(pages.Count > 40);
        foreach (var html in pages.Select(File.ReadAllText))
        {
            var document = ParsedPage.Of(html).Document;
            var (ids, links) = PageLinks.Of(html);
            Assert.Equal(document.QuerySelectorAll("[id]").Select(element => element.Id!).ToHashSet(StringComparer.Ordinal), ids);
            Assert.Equal(document.QuerySelectorAll("[href], [src]").Select(element => element.GetAttribute("href") ?? element.GetAttribute("src")!).ToHashSet(StringComparer.Ordinal), links);
        }
    }

    private string Relative(string file) => Path.GetRelativePath(site.Folder, file).Replace('\\', '/');
}
