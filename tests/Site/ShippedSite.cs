using Swapwright.Findings;

namespace Swapwright.Tests.Site;

/// <summary>Test classes that read the same rendered site.</summary>
[CollectionDefinition(Name)]
public sealed class ShippedSiteCollection : ICollectionFixture<ShippedSite>
{
    public const string Name = "shipped site";
}

/// <summary>The shipped base rendered whole, for all classes that look at it.</summary>
public sealed class ShippedSite : IDisposable
{
    private readonly SharedSite _site;

    public ShippedSite() => _site = SharedSite.Of(() => Proof);

    public Proof Proof { get; } = ShippedKnowledge.Proof();

    public string Folder => _site.Folder;

    /// <inheritdoc cref="SharedSite.Pages"/>
    public int Pages => _site.Pages;

    public IReadOnlyList<string> Guides => [.. Directory.EnumerateFiles(Path.Combine(Folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    public void Dispose() => _site.Dispose();
}
