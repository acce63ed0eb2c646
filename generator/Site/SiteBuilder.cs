using Swapwright.Findings;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;

namespace Swapwright.Site;

/// <summary>A proved knowledge base → a rendered site in a folder.</summary>
public static class SiteBuilder
{
    /// <param name="progress">Told how many of how many guides are done, first that none is; null where nobody watches.</param>
    /// <param name="shard">The part to render; null for all.</param>
    /// <param name="anew">Whether every page is made, even where the record of an earlier run says that it would be the same.</param>
    /// <param name="many">How many files a site has whose previous tree is left to the next run.</param>
    /// <returns>The number of guides, of pages in all, and of pages that were made in this run.</returns>
    /// <exception cref="Output.SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    public static (int Guides, int Pages, int Made) Render(
        Proof proof, string target, Templates templates, Action<int, int>? progress = null, Shard? shard = null, bool anew = false, int many = SiteWriter.ManyFiles, CancellationToken cancellation = default)
    {
        var part = shard ?? Shard.Whole;

        // A part of a site is rendered into an empty folder on a machine that comes and goes: there is nothing to keep.
        var record = shard is not null ? null : anew ? SiteRecord.None : SiteRecord.Read(target);
        var plan = new SitePlan(proof, templates, record);
        var guides = plan.Guides.Where((_, at) => part.HasGuide(at)).ToList();
        var done = 0;
        var works = guides.Select(guide => guide with
        {
            Done = () =>
            {
                guide.Done!();
                progress?.Invoke(Interlocked.Increment(ref done), guides.Count);
            },
        });

        progress?.Invoke(0, guides.Count);

        // The guides come first: what speaks of several then finds what it needs of each already worked out.
        var (pages, made) = SiteWriter.Write(
            target, works.Concat(part.HasShared ? plan.Shared : []), part.HasShared ? templates.Assets : [], templates, part.HasShared ? About(plan) : [], record, many, cancellation);
        return (guides.Count, pages, made);
    }

    // When every guide is made: which sheets lie beside it is then known.
    private static IEnumerable<SiteFile> About(SitePlan plan)
    {
        foreach (var file in plan.AboutAll(plan.Pages.Select(page => page.Path)))
        {
            yield return file;
        }
    }
}
