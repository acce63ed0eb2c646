using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
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
        var site = new SiteKnowledge(proof);
        var done = 0;
        var pages = Pages(site, templates, () => progress?.Invoke(Interlocked.Increment(ref done), site.Guides.Length));
        var count = SiteWriter.Write(target, pages, Data(site), templates, cancellation);
        return (site.Guides.Length, count);
    }

    private static IEnumerable<Func<Page>> Pages(SiteKnowledge site, Templates templates, Action guideDone)
    {
        var variants = new VariantPages(site);
        var texts = new TextPages(site, variants, id => templates.Text($"findings/{id}.md") is { } text ? FindingTexts.Parse(text) : null);
        var knowledge = new KnowledgePages(site);
        var kb = site.Base;

        // Everything that asks the space is made here, before the workers start.
        var ready = new List<Page> { texts.Start(), texts.About(), texts.NotFound() };
        ready.AddRange(new ListPages(site).All());
        ready.AddRange(kb.Chassis.All.Select(variants.Chassis));
        ready.AddRange(kb.Donors.All.Select(variants.Donor));
        ready.AddRange(kb.PositionOrder.Select(knowledge.Position));
        ready.AddRange(kb.Rules.All.Select(knowledge.Rule));
        ready.AddRange(FindingKinds.All.Select(texts.Finding));
        return ready.Select(page => (Func<Page>)(() => page))
            .Concat(kb.Connectors.All.Select(connector => (Func<Page>)(() => knowledge.Connector(connector))))
            .Concat(kb.Articles.All.Select(article => (Func<Page>)(() => texts.Article(article))))
            .Concat(site.Guides.Select(guide => (Func<Page>)(() =>
            {
                var page = GuidePages.Build(site, guide);
                guideDone();
                return page;
            })));
    }

    private static IEnumerable<SiteFile> Data(SiteKnowledge site)
    {
        foreach (var guide in site.Guides)
        {
            var sheet = site.SheetOf(guide);
            yield return new SiteFile(GuidePages.DataPath(guide, "json"), Encoding.UTF8.GetBytes(new SheetJson(sheet, site.Resolution).Write()));
            yield return new SiteFile(GuidePages.DataPath(guide, "csv"), Encoding.UTF8.GetBytes(new SheetLines(sheet, site.Resolution).Csv()));
        }
    }
}
