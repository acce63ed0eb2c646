using Swapwright.Findings;
using Swapwright.Site.Models;
using Swapwright.Site.Rendering;

namespace Swapwright.Site;

/// <summary>A proved knowledge base → a rendered site in a folder.</summary>
public static class SiteBuilder
{
    /// <param name="progress">Told how many of how many guides are done; null where nobody watches.</param>
    /// <param name="shard">The part to render; null for all.</param>
    /// <returns>The number of guides, and of pages in all.</returns>
    /// <exception cref="Output.SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    public static (int Guides, int Pages) Render(
        Proof proof, string target, Templates templates, Action<int, int>? progress = null, Shard? shard = null, CancellationToken cancellation = default)
    {
        var part = shard ?? Shard.Whole;
        var plan = new SitePlan(proof, templates);
        var guides = plan.Guides.Where((_, at) => part.HasGuide(at)).ToList();
        var done = 0;
        var works = guides.Select(guide => new SiteWork(guide.Pages.Select(page => page.Build), guide.Files, () =>
        {
            guide.Release();
            progress?.Invoke(Interlocked.Increment(ref done), guides.Count);
        }));

        // The guides come first: what speaks of several then finds what it needs of each already worked out.
        var shared = !part.HasShared ? [] : plan.SharedPages.Select(page => new SiteWork([page.Build], [])).Concat(plan.SharedFiles.Select(file => new SiteWork([], [file])));
        var about = !part.HasShared ? [] : plan.AboutAll([.. plan.Pages.Select(page => page.Path).Order(StringComparer.Ordinal)]);
        var count = SiteWriter.Write(target, works.Concat(shared), part.HasShared ? templates.Assets : [], templates, about, cancellation);
        return (guides.Count, count);
    }
}
