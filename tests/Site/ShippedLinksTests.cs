using AngleSharp.Dom;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site;

/// <summary>The shipped base rendered whole: a link that leads nowhere is found here and not by a reader.</summary>
public sealed class ShippedLinksTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), $"swapwright-links-{Guid.NewGuid():N}");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Render_ShippedBase_EveryInternalLinkAndAnchorResolves()
    {
        var (_, count) = SiteBuilder.Render(Proof.Of(Path.Combine(Root(), "swap-kb")), _folder, Templates.Embedded());

        var pages = Directory.EnumerateFiles(_folder, "*.html", SearchOption.AllDirectories)
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
            let target = parts[0].Length == 0 ? page.Key : Relative(Path.GetFullPath(Path.Combine(_folder, Path.GetDirectoryName(page.Key)!, parts[0])))
            where parts.Length > 1 ? !pages.TryGetValue(target, out var other) || !other.Ids.Contains(parts[1]) : !File.Exists(Path.Combine(_folder, target))
            orderby page.Key, link
            select $"{page.Key}: {link}";

        Assert.Equal(count, pages.Count);
        Assert.Empty(dead.Take(20));
    }

    private string Relative(string file) => Path.GetRelativePath(_folder, file).Replace('\\', '/');

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Swapwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests do not lie inside the repository");
        }

        return folder;
    }
}
