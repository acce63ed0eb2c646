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
            .Select(file => (Path: Relative(file), Document: ParsedPage.Of(File.ReadAllText(file)).Document))
            .ToDictionary(
                page => page.Path,
                page => (
                    Ids: page.Document.QuerySelectorAll("[id]").Select(element => element.Id!).ToHashSet(StringComparer.Ordinal),
                    Links: page.Document.QuerySelectorAll("[href], [src]").Select(element => element.GetAttribute("href") ?? element.GetAttribute("src")!).ToHashSet(StringComparer.Ordinal)),
                StringComparer.Ordinal);
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

    private string Relative(string file) => Path.GetRelativePath(site.Folder, file).Replace('\\', '/');
}
