namespace Swapwright.BrowserTests;

/// <summary>One page of every kind that the site has, the fullest where there are many.</summary>
internal static class PageKinds
{
    /// <summary>Paths from the site's root, in order.</summary>
    public static IReadOnlyList<string> Of(RenderedSite site)
    {
        var alone = Directory.EnumerateFiles(site.Folder, "*.html");
        var fullest = Directory.EnumerateDirectories(site.Folder)
            .Where(folder => Path.GetFileName(folder) != "bench")
            .Select(folder => Fullest(Directory.EnumerateFiles(folder, "*.html", SearchOption.AllDirectories))).OfType<string>().ToList();
        var guide = fullest.Single(file => Path.GetRelativePath(site.Folder, file).StartsWith("guide/", StringComparison.Ordinal));
        var sheets = Directory.EnumerateFiles(Path.Combine(site.Folder, "bench", Path.ChangeExtension(Path.GetRelativePath(Path.Combine(site.Folder, "guide"), guide), null)), "*.html");
        return [.. alone.Concat(fullest).Concat(sheets).Select(file => Path.GetRelativePath(site.Folder, file)).Order(StringComparer.Ordinal)];
    }

    private static string? Fullest(IEnumerable<string> files) =>
        files.OrderByDescending(file => new FileInfo(file).Length).ThenBy(file => file, StringComparer.Ordinal).FirstOrDefault();
}
