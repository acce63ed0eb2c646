using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site;

/// <summary>Test classes that read the same rendered site.</summary>
[CollectionDefinition(Name)]
public sealed class ShippedSiteCollection : ICollectionFixture<ShippedSite>
{
    public const string Name = "shipped site";
}

/// <summary>The shipped base rendered whole, once for all classes that look at it.</summary>
public sealed class ShippedSite : IDisposable
{
    public ShippedSite()
    {
        Proof = Proof.Of(Path.Combine(Root(), "swap-kb"));
        (_, Pages, _) = SiteBuilder.Render(Proof, Folder, Templates.Embedded());
    }

    public Proof Proof { get; }

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), $"swapwright-shipped-{Guid.NewGuid():N}");

    /// <summary>How many pages the builder says there are.</summary>
    public int Pages { get; }

    public IReadOnlyList<string> Guides => [.. Directory.EnumerateFiles(Path.Combine(Folder, "guide"), "*.html", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Folder, recursive: true);

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
