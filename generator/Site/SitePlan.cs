using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Site.Machines;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Site.Rendering;
using Swapwright.Site.Search;

namespace Swapwright.Site;

/// <summary>A page that can be made.</summary>
/// <param name="Path">From the site's root.</param>
/// <param name="AsksSpace">It asks the store of regions without a lock, so that one worker at a time may make it.</param>
/// <param name="IsGuide">One of the many.</param>
public sealed record PlannedPage(string Path, Func<Page> Build, bool AsksSpace = false, bool IsGuide = false);

/// <summary>Every page and every file of data of a site, to be made when it is asked for.</summary>
public sealed class SitePlan
{
    private readonly SiteKnowledge _site;
    private readonly ClosedWays _closed;
    private readonly Templates _templates;

    /// <param name="proof">Of a base whose space is known.</param>
    public SitePlan(Proof proof, Templates templates)
    {
        _site = new SiteKnowledge(proof);
        _closed = new ClosedWays(_site);
        _templates = templates;
        Pages = [.. AllPages()];
    }

    public IReadOnlyList<PlannedPage> Pages { get; }

    public int Guides => _site.Guides.Length;

    /// <summary>The same content as the guides as data, what the search searches, the feed, and previews where the site has an address.</summary>
    public IEnumerable<(string Path, Func<SiteFile> Make)> Data => _site.Guides.SelectMany(guide => new (string, Func<SiteFile>)[]
    {
        Planned(GuidePages.DataPath(guide, "json"), () => Json(_site.SheetOf(guide))),
        Planned(GuidePages.DataPath(guide, "csv"), () => new SheetLines(_site.SheetOf(guide), _site.Resolution).Csv()),
    })
        .Concat(_site.Base.Settings.BaseAddress is null ? [] : _site.Guides.Select(guide => (GuidePages.DataPath(guide, "svg"), (Func<SiteFile>)(() => GuideMachines.Picture(_site, guide)))))
        .Concat(_site.Guides.Select(guide => (GuideVariants.Path(guide), (Func<SiteFile>)new GuideVariants(_site, guide).File)))
        .Append((SearchIndex.Path, new SearchPages(_site).Index))
        .Append((AtomFeed.Path, new ChangePages(_site).Feed))
        .Append((SitePaths.FinderData, new FinderData(_site, _closed, new WhichPages(_site)).File));

    /// <summary>What speaks of all pages: the site map, where the site has an address. The page that is shown where there is none is no place to send anybody to.</summary>
    public IEnumerable<SiteFile> AboutAll(IReadOnlyList<string> paths) =>
        _site.Base.Settings.BaseAddress is { } address ? SiteMap.Files(paths.Where(path => path != SitePaths.NotFound), address) : [];

    private static (string Path, Func<SiteFile> Make) Planned(string path, Func<string> text) => (path, () => new SiteFile(path, Encoding.UTF8.GetBytes(text())));

    private IEnumerable<PlannedPage> AllPages()
    {
        var variants = new VariantPages(_site, _closed);
        var which = new WhichPages(_site);
        var differ = new DifferPages(_site);
        var texts = new TextPages(_site, id => _templates.Text($"findings/{id}.md") is { } text ? FindingTexts.Parse(text) : null);
        var knowledge = new KnowledgePages(_site);
        var kb = _site.Base;
        return new PlannedPage[]
        {
            new(SitePaths.About, texts.About, AsksSpace: true),
            new(SitePaths.NotFound, texts.NotFound, AsksSpace: true),
        }
            .Concat(new ListPages(_site).All().Select(list => new PlannedPage(list.Path, list.Build, AsksSpace: true)))
            .Append(new PlannedPage(SitePaths.Glossary, new GlossaryPages(_site).Page, AsksSpace: true))
            .Append(new PlannedPage(SitePaths.Search, new SearchPages(_site).Page, AsksSpace: true))
            .Append(new PlannedPage(SitePaths.AtoZ, new SearchPages(_site).List, AsksSpace: true))
            .Append(new PlannedPage(SitePaths.Changes, () => new ChangePages(_site).Page(), AsksSpace: true))
            .Append(new PlannedPage(SitePaths.Health, () => new HealthPages(_site).Page(), AsksSpace: true))
            .Concat(kb.PositionOrder.Select(position => new PlannedPage(SitePaths.Position(position.Id), () => knowledge.Position(position), AsksSpace: true)))
            .Concat(kb.Rules.All.Select(rule => new PlannedPage(SitePaths.Rule(rule.Id), () => knowledge.Rule(rule), AsksSpace: true)))
            .Concat(FindingKinds.All.Select(kind => new PlannedPage(SitePaths.Finding(kind.Id), () => texts.Finding(kind), AsksSpace: true)))
            .Append(new PlannedPage(SitePaths.Start, texts.Start))
            .Append(new PlannedPage(SitePaths.WhichChassis, which.Chassis))
            .Append(new PlannedPage(SitePaths.WhichDonor, which.Donor))
            .Concat(kb.Chassis.All.Where(chassis => _site.GuidesOfChassis[chassis.Id].Skip(1).Any()).Select(chassis => new PlannedPage(SitePaths.Differ(chassis.Id), () => differ.Of(chassis))))
            .Concat(kb.Connectors.All.Select(connector => new PlannedPage(SitePaths.Connector(connector.Id), () => knowledge.Connector(connector))))
            .Concat(kb.Articles.All.Select(article => new PlannedPage(SitePaths.Article(article.Id), () => texts.Article(article))))
            .Concat(kb.Pages.All.Select(page => new PlannedPage(SitePaths.Page(page.Id), () => texts.Own(page))))
            .Concat(_site.Guides.Select(guide => new PlannedPage(guide.Path, () => GuidePages.Build(_site, guide), IsGuide: true)))
            .Concat(_site.Guides.SelectMany(guide => BenchSheets.Of(_site, guide)))
            .Concat(kb.Chassis.All.Select(chassis => new PlannedPage(SitePaths.Chassis(chassis.Id), () => variants.Chassis(chassis))))
            .Concat(kb.Donors.All.Select(donor => new PlannedPage(SitePaths.Donor(donor.Id), () => variants.Donor(donor))));
    }

    // It asks the space for alternatives, which one worker may do at a time.
    private string Json(Sheets.Sheet sheet)
    {
        lock (_site.Store)
        {
            return new SheetJson(sheet, _site.Resolution).Write();
        }
    }
}
