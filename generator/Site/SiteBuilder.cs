using Swapwright.Findings;
using Swapwright.Site.Models;
using Swapwright.Site.Rendering;

namespace Swapwright.Site;

/// <summary>A proved knowledge base → a rendered site in a folder.</summary>
public static class SiteBuilder
{
    /// <param name="progress">Told how many of how many guides are done; null where nobody watches.</param>
    /// <returns>The number of guides, and of pages in all.</returns>
    /// <exception cref="Output.SiteFolderException">The folder cannot be written or is not the program's own.</exception>
    public static (int Guides, int Pages) Render(Proof proof, string target, Templates templates, Action<int, int>? progress = null, CancellationToken cancellation = default)
    {
        var plan = new SitePlan(proof, templates);
        var done = 0;

        // What asks the space without a lock is made here, before the workers start.
        var ready = plan.Pages.Where(page => page.AsksSpace).Select(page => page.Build()).ToList();
        var pages = ready.Select(page => (Func<Page>)(() => page)).Concat(plan.Pages.Where(page => !page.AsksSpace).Select(page => (Func<Page>)(() =>
        {
            var built = page.Build();
            if (page.IsGuide)
            {
                progress?.Invoke(Interlocked.Increment(ref done), plan.Guides);
            }

            return built;
        })));
        var count = SiteWriter.Write(target, pages, plan.Data.Select(data => data.Make), templates, plan.AboutAll, cancellation);
        return (plan.Guides, count);
    }
}
