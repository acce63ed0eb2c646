using System.Globalization;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests;

/// <summary>
/// The shipped base rendered whole. Where <c>SWAPWRIGHT_TEST_SITE</c> names a folder, as <c>tests/run</c> does, test projects share what
/// lies there: whoever comes first renders it, and the others wait. A project that is tested by itself renders for itself.
/// </summary>
internal sealed class SharedSite : IDisposable
{
    private readonly bool _own;

    private SharedSite(string folder, int pages, bool own) => (Folder, Pages, _own) = (folder, pages, own);

    public string Folder { get; }

    /// <summary>How many pages the builder says there are.</summary>
    public int Pages { get; }

    public static SharedSite Of(Func<Proof> proof)
    {
        var shared = Environment.GetEnvironmentVariable("SWAPWRIGHT_TEST_SITE");
        if (string.IsNullOrEmpty(shared))
        {
            var folder = Path.Combine(Path.GetTempPath(), $"swapwright-shipped-{Guid.NewGuid():N}");
            return new SharedSite(folder, Render(proof, folder), own: true);
        }

        // The file says how many pages were made, and is the lock while they are.
        using var counted = Locked(shared + ".pages");
        using var reader = new StreamReader(counted, leaveOpen: true);
        if (!int.TryParse(reader.ReadToEnd(), NumberStyles.None, CultureInfo.InvariantCulture, out var pages))
        {
            pages = Render(proof, shared);
            using var writer = new StreamWriter(counted, leaveOpen: true);
            writer.Write(pages.ToString(CultureInfo.InvariantCulture));
        }

        return new SharedSite(shared, pages, own: false);
    }

    public void Dispose()
    {
        if (_own)
        {
            Directory.Delete(Folder, recursive: true);
        }
    }

    private static int Render(Func<Proof> proof, string folder) => SiteBuilder.Render(proof(), folder, Templates.Embedded()).Pages;

    private static FileStream Locked(string path)
    {
        var patience = DateTime.UtcNow + TimeSpan.FromMinutes(10);
        while (true)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (DateTime.UtcNow < patience)
            {
                Thread.Sleep(200);
            }
        }
    }
}
