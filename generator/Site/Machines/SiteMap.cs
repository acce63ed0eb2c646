using System.Globalization;
using System.Text;
using Swapwright.Site.Rendering;

namespace Swapwright.Site.Machines;

/// <summary>Every page's address for search engines, by the protocol of sitemaps.org.</summary>
internal static class SiteMap
{
    public const string Path = "sitemap.xml";
    public const string RobotsPath = "robots.txt";

    /// <summary>The protocol's limits for one file.</summary>
    public const int MostAddresses = 50_000;
    public const int MostBytes = 52_428_800;

    private const string Head = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
    private const string Schema = " xmlns=\"http://www.sitemaps.org/schemas/sitemap/0.9\">\n";

    /// <summary>One file, or several under an index where one would pass a limit; and the file that tells machines of it.</summary>
    /// <param name="paths">From the site's root, in the order of the map.</param>
    /// <param name="address">Where the site is published.</param>
    public static IEnumerable<SiteFile> Files(IEnumerable<string> paths, string address, int mostAddresses = MostAddresses, int mostBytes = MostBytes)
    {
        var maps = Parts(paths.Select(path => $"<url><loc>{HtmlText.Escape(SitePaths.Address(address, path)!)}</loc></url>\n"), mostAddresses, mostBytes - Wrapped("urlset", "").Length)
            .Select(part => Wrapped("urlset", part)).ToList();
        if (maps.Count == 1)
        {
            yield return new SiteFile(Path, maps[0]);
        }
        else
        {
            var names = maps.Select((_, number) => string.Create(CultureInfo.InvariantCulture, $"sitemap-{number + 1}.xml")).ToList();
            yield return new SiteFile(Path, Wrapped("sitemapindex", string.Concat(names.Select(name => $"<sitemap><loc>{HtmlText.Escape(SitePaths.Address(address, name)!)}</loc></sitemap>\n"))));
            foreach (var (name, map) in names.Zip(maps))
            {
                yield return new SiteFile(name, map);
            }
        }

        yield return new SiteFile(RobotsPath, Encoding.UTF8.GetBytes($"User-agent: *\nAllow: /\n\nSitemap: {SitePaths.Address(address, Path)}\n"));
    }

    private static IEnumerable<string> Parts(IEnumerable<string> lines, int mostAddresses, int mostBytes)
    {
        var part = new StringBuilder();
        var (count, bytes) = (0, 0);
        foreach (var line in lines)
        {
            var size = Encoding.UTF8.GetByteCount(line);
            if (count > 0 && (count == mostAddresses || bytes + size > mostBytes))
            {
                yield return part.ToString();
                part.Clear();
                (count, bytes) = (0, 0);
            }

            part.Append(line);
            (count, bytes) = (count + 1, bytes + size);
        }

        yield return part.ToString();
    }

    private static byte[] Wrapped(string root, string inside) => Encoding.UTF8.GetBytes($"{Head}<{root}{Schema}{inside}</{root}>\n");
}
