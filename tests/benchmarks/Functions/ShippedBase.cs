using Swapwright.Findings;
using Swapwright.Rules;
using Swapwright.Site.Pages;

namespace Swapwright.Benchmarks.Functions;

/// <summary>The base of this repository: drawn bases have no harness, no belts and no texts worth rendering.</summary>
internal static class ShippedBase
{
    private static readonly Lazy<Proof> s_proof = new(Prove);

    /// <summary>The folder of the repository.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>As <c>site</c> begins with it. The store of regions is a copy, so that nothing an earlier function asked is remembered.</summary>
    public static SiteKnowledge Fresh()
    {
        var resolution = s_proof.Value.Resolution!.Copy();
        return new SiteKnowledge(s_proof.Value with { Resolution = resolution, Words = new RegionWords(resolution) });
    }

    private static Proof Prove() => Proof.Of(Path.Combine(Root, "swap-kb"), examine: false);

    private static string FindRoot()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Swapwright.slnx")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("run this from a build inside the repository");
        }

        return folder;
    }
}
