using System.Globalization;
using System.IO.Compression;

namespace Swapwright.Tests.Site;

/// <summary>A guide is opened in a garage, over a telephone's connection: what it may weigh is fixed, and every one of them is weighed.</summary>
[Collection(ShippedSiteCollection.Name)]
public sealed class GuideWeightTests(ShippedSite site)
{
    /// <summary>As a server sends it, by the compression that servers use; the site's own style sheets and scripts are fetched once.</summary>
    private const int MostCompressed = 40_000;

    [Fact]
    public void Guides_OfTheShippedBase_KeepWithinTheirWeight()
    {
        var weights = site.Guides.AsParallel().Select(guide => (Guide: Path.GetRelativePath(site.Folder, guide), Bytes: Compressed(File.ReadAllBytes(guide)))).ToList();

        Assert.NotEmpty(weights);
        Assert.All(weights, one => Assert.True(one.Bytes < MostCompressed, string.Create(CultureInfo.InvariantCulture, $"{one.Guide} weighs {one.Bytes} bytes compressed, {MostCompressed} at most")));
    }

    private static long Compressed(byte[] page)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, new ZLibCompressionOptions { CompressionLevel = 6 }, leaveOpen: true))
        {
            gzip.Write(page);
        }

        return packed.Length;
    }
}
