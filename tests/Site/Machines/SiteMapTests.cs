using System.Text;
using System.Xml.Linq;
using Swapwright.Site;
using Swapwright.Site.Machines;

namespace Swapwright.Tests.Site.Machines;

/// <summary>Held against the protocol of sitemaps.org: root, one address an entry, 50,000 addresses and 50 MB a file.</summary>
public sealed class SiteMapTests
{
    private const string Address = "https://swaps.example/a&b/";

    private static readonly XNamespace s_map = "http://www.sitemaps.org/schemas/sitemap/0.9";

    [Fact]
    public void Files_FewPages_AreOneMapAndAWordToRobots()
    {
        var files = SiteMap.Files(["index.html", "rule/a.html"], Address).ToList();

        Assert.Equal(["sitemap.xml", "robots.txt"], files.Select(file => file.Path));
        var map = Read(files[0]);
        Assert.Equal(s_map + "urlset", map.Name);
        Assert.All(map.Elements(), url => Assert.Equal(s_map + "loc", Assert.Single(url.Elements()).Name));
        Assert.Equal(["https://swaps.example/a&b/", "https://swaps.example/a&b/rule/a.html"], map.Elements(s_map + "url").Select(url => url.Value));
        Assert.Equal("User-agent: *\nAllow: /\n\nSitemap: https://swaps.example/a&b/sitemap.xml\n", Encoding.UTF8.GetString(files[1].Bytes.Span));
    }

    [Fact]
    public void Files_OnePageMoreThanAMapHolds_AreTwoUnderAnIndex()
    {
        var paths = Enumerable.Range(0, SiteMap.MostAddresses + 1).Select(number => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"rule/r{number}.html")).ToList();

        var files = SiteMap.Files(paths, Address).ToList();

        Assert.Equal(["sitemap.xml", "sitemap-1.xml", "sitemap-2.xml", "robots.txt"], files.Select(file => file.Path));
        var index = Read(files[0]);
        Assert.Equal(s_map + "sitemapindex", index.Name);
        Assert.Equal(["https://swaps.example/a&b/sitemap-1.xml", "https://swaps.example/a&b/sitemap-2.xml"], index.Elements(s_map + "sitemap").Select(map => map.Element(s_map + "loc")!.Value));
        Assert.Equal([SiteMap.MostAddresses, 1], files.Skip(1).Take(2).Select(file => Read(file).Elements().Count()));
        Assert.All(files, file => Assert.InRange(file.Bytes.Length, 1, SiteMap.MostBytes));
    }

    [Fact]
    public void Files_BytesAreShort_SplitsBeforeTheLimit()
    {
        var paths = Enumerable.Range(10, 20).Select(number => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"r{number}.html")).ToList();

        var files = SiteMap.Files(paths, "https://x.example", mostBytes: 400).Where(file => file.Path.StartsWith("sitemap-", StringComparison.Ordinal)).ToList();

        Assert.True(files.Count > 1);
        Assert.All(files, file => Assert.InRange(file.Bytes.Length, 1, 400));
        Assert.Equal(paths.Select(path => $"https://x.example/{path}"), files.SelectMany(file => Read(file).Elements().Select(url => url.Value)));
    }

    private static XElement Read(SiteFile file) => XDocument.Parse(Encoding.UTF8.GetString(file.Bytes.Span)).Root!;
}
