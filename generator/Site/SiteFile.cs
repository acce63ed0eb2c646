namespace Swapwright.Site;

/// <summary>A file of the site as it is written.</summary>
/// <param name="Path">From the site's root, forward slashes.</param>
public sealed record SiteFile(string Path, ReadOnlyMemory<byte> Bytes);
