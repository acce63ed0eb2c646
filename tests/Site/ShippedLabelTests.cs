namespace Swapwright.Tests.Site;

/// <summary>Whoever lands on one page of the shipped base, and on no other, is told there that nothing on it exists.</summary>
[Collection(ShippedSiteCollection.Name)]
public sealed class ShippedLabelTests(ShippedSite site)
{
    private const string Label = "<div class=\"label\" role=\"note\"><strong>Invented scenario.</strong>";

    [Fact]
    public void Render_ShippedBase_EveryPageSaysThatItIsInvented()
    {
        var pages = Directory.EnumerateFiles(site.Folder, "*.html", SearchOption.AllDirectories).ToList();

        Assert.Equal(site.Pages, pages.Count);
        Assert.Empty(pages.AsParallel().Where(page => !File.ReadAllText(page).Contains(Label, StringComparison.Ordinal)).Select(page => Path.GetRelativePath(site.Folder, page)).Order(StringComparer.Ordinal).Take(20));
    }
}
