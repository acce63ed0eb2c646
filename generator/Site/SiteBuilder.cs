using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Site.Machines;
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
        var closed = new ClosedWays(site);
        var done = 0;
        var pages = Pages(site, closed, templates, () => progress?.Invoke(Interlocked.Increment(ref done), site.Guides.Length));
        var count = SiteWriter.Write(target, pages, Data(site, closed), templates, paths => AboutAll(site, paths), cancellation);
        return (site.Guides.Length, count);
    }

    private static IEnumerable<Func<Page>> Pages(SiteKnowledge site, ClosedWays closed, Templates templates, Action guideDone)
    {
        var variants = new VariantPages(site, closed);
        var which = new WhichPages(site);
        var differ = new DifferPages(site);
        var texts = new TextPages(site, id => templates.Text($"findings/{id}.md") is { } text ? FindingTexts.Parse(text) : null);
        var knowledge = new KnowledgePages(site);
        var kb = site.Base;

        // What asks the space without a lock is made here, before the workers start.
        var ready = new List<Page> { texts.About(), texts.NotFound() };
        ready.AddRange(new ListPages(site).All());
        ready.Add(new GlossaryPages(site).Page());
        var search = new SearchPages(site);
        ready.AddRange([search.Page(), search.List(), new ChangePages(site).Page(), new HealthPages(site).Page()]);
        ready.AddRange(kb.PositionOrder.Select(knowledge.Position));
        ready.AddRange(kb.Rules.All.Select(knowledge.Rule));
        ready.AddRange(FindingKinds.All.Select(texts.Finding));
        return ready.Select(page => (Func<Page>)(() => page))
            .Append(texts.Start)
            .Append(which.Chassis)
            .Append(which.Donor)
            .Concat(kb.Chassis.All.Where(chassis => site.GuidesOfChassis[chassis.Id].Skip(1).Any()).Select(chassis => (Func<Page>)(() => differ.Of(chassis))))
            .Concat(kb.Connectors.All.Select(connector => (Func<Page>)(() => knowledge.Connector(connector))))
            .Concat(kb.Articles.All.Select(article => (Func<Page>)(() => texts.Article(article))))
            .Concat(site.Guides.Select(guide => (Func<Page>)(() =>
            {
                var page = GuidePages.Build(site, guide);
                guideDone();
                return page;
            })))
            .Concat(kb.Chassis.All.Select(chassis => (Func<Page>)(() => variants.Chassis(chassis))))
            .Concat(kb.Donors.All.Select(donor => (Func<Page>)(() => variants.Donor(donor))));
    }

    // The page that is shown where there is none is no place to send anybody to.
    private static IEnumerable<SiteFile> AboutAll(SiteKnowledge site, IEnumerable<string> paths) =>
        site.Base.Settings.BaseAddress is { } address ? SiteMap.Files(paths.Where(path => path != SitePaths.NotFound), address) : [];

    private static IEnumerable<Func<SiteFile>> Data(SiteKnowledge site, ClosedWays closed) => site.Guides.SelectMany(guide => new Func<SiteFile>[]
    {
        () => new SiteFile(GuidePages.DataPath(guide, "json"), Encoding.UTF8.GetBytes(Json(site, site.SheetOf(guide)))),
        () => new SiteFile(GuidePages.DataPath(guide, "csv"), Encoding.UTF8.GetBytes(new SheetLines(site.SheetOf(guide), site.Resolution).Csv())),
    })
        .Concat(site.Base.Settings.BaseAddress is null ? [] : site.Guides.Select(guide => (Func<SiteFile>)(() => GuideMachines.Picture(site, guide))))
        .Append(new SearchPages(site).Index)
        .Append(new ChangePages(site).Feed)
        .Append(new FinderData(site, closed, new WhichPages(site)).File);

    // It asks the space for alternatives, which one worker may do at a time.
    private static string Json(SiteKnowledge site, Sheets.Sheet sheet)
    {
        lock (site.Store)
        {
            return new SheetJson(sheet, site.Resolution).Write();
        }
    }
}
