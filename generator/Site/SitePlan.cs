using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Site.Machines;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Site.Rendering;
using Swapwright.Site.Reuse;
using Swapwright.Site.Search;

namespace Swapwright.Site;

/// <summary>A page that can be made.</summary>
/// <param name="Path">From the site's root.</param>
public sealed record PlannedPage(string Path, Func<Page> Build)
{
    /// <summary>What it is made from, where it is a work of its own.</summary>
    internal Func<PageInputs, Digest> Inputs { get; init; } = inputs => inputs.Everything;
}

/// <summary>Every page and every file of data of a site, to be made when it is asked for.</summary>
public sealed class SitePlan
{
    private readonly SiteKnowledge _site;
    private readonly ClosedWays _closed;
    private readonly Templates _templates;
    private readonly PageInputs? _inputs;

    /// <param name="proof">Of a base whose space is known.</param>
    public SitePlan(Proof proof, Templates templates)
        : this(proof, templates, null)
    {
    }

    /// <param name="record">Of an earlier run; null where nobody asks what pages are made from.</param>
    internal SitePlan(Proof proof, Templates templates, SiteRecord? record)
    {
        _site = new SiteKnowledge(proof);
        _closed = new ClosedWays(_site);
        _templates = templates;
        if (record is not null)
        {
            _inputs = new PageInputs(_site, templates);
            Recall(record, _inputs);
        }
    }

    public IEnumerable<PlannedPage> Pages => SharedPages.Concat(_site.Guides.SelectMany(GuidePagesOf));

    public IEnumerable<PlannedFile> Files => SharedFiles.Concat(_site.Guides.SelectMany(GuideData));

    /// <summary>The guides, each with all that lies beside it: everything draws on one sheet, so one worker makes it.</summary>
    internal IEnumerable<SiteWork> Guides => _site.Guides.Select(guide => new SiteWork(guide.Path, GuidePagesOf(guide), GuideData(guide))
    {
        Inputs = _inputs?.OfGuide(guide),
        Note = () => BriefNote.Write(_site.BriefOf(guide)),
        Done = () => _site.Release(guide),
    });

    /// <summary>The pages and files that are no guide's own, each by itself.</summary>
    internal IEnumerable<SiteWork> Shared =>
        SharedPages.Select(page => new SiteWork(page.Path, [page], []) { Inputs = _inputs is null ? null : page.Inputs(_inputs) })
            .Concat(SharedFiles.Select(file => new SiteWork(file.Path, [], [file]) { Inputs = _inputs?.Everything }));

    private void Recall(SiteRecord record, PageInputs inputs)
    {
        foreach (var guide in _site.Guides)
        {
            if (record.Find(guide.Path, inputs.OfGuide(guide)) is { } known && BriefNote.Read(known.Note) is { } brief)
            {
                _site.Recall(guide, brief);
            }
        }
    }

    // The sheet is kept for the guide's own page before anything asks which bench sheets there are.
    private IEnumerable<PlannedPage> GuidePagesOf(GuideEntry guide)
    {
        yield return new PlannedPage(guide.Path, () => GuidePages.Build(_site, guide));
        foreach (var page in BenchSheets.Pages(_site, guide))
        {
            yield return page;
        }
    }

    /// <summary>What the search searches, the feed and what the finder narrows by.</summary>
    public IEnumerable<PlannedFile> SharedFiles =>
    [
        PlannedFile.Of(SearchIndex.Path, () => new SearchPages(_site).Index()),
        PlannedFile.Of(AtomFeed.Path, () => new ChangePages(_site).Feed()),
        PlannedFile.Of(SitePaths.FinderData, () => new FinderData(_site, _closed, new WhichPages(_site)).File()),
    ];

    // The same content as the guide, and a preview where the site has an address.
    private IEnumerable<PlannedFile> GuideData(GuideEntry guide)
    {
        yield return new PlannedFile(GuidePages.DataPath(guide, "json"), buffer => new SheetJson(_site.SheetOf(guide), _site.Resolution, known: _site.Forms).Write(buffer));
        yield return new PlannedFile(GuidePages.DataPath(guide, "csv"), buffer => new SheetLines(_site.SheetOf(guide), _site.Resolution).Csv(buffer, _site.Forms));
        foreach (var table in BenchSheets.Tables(_site, guide))
        {
            yield return new PlannedFile(SitePaths.Table(guide.Path, table), buffer => Encoding.UTF8.GetBytes(SheetTables.Csv(_site.SheetOf(guide), table, _site.Base.Settings.Currency, _site.Forms), buffer));
        }

        if (_site.BriefOf(guide).IsOpen)
        {
            yield return PlannedFile.Of(GuideVariants.Path(guide), () => new GuideVariants(_site, guide).File());
        }

        if (_site.Base.Settings.BaseAddress is not null)
        {
            yield return PlannedFile.Of(GuidePages.DataPath(guide, "svg"), () => GuideMachines.Picture(_site, guide, "svg", PreviewPicture.Svg));
            yield return PlannedFile.Of(GuidePages.DataPath(guide, "png"), () => GuideMachines.Picture(_site, guide, "png", PreviewPicture.Png));
        }
    }

    /// <summary>What speaks of all pages: the site map, where the site has an address. The page that is shown where there is none is no place to send anybody to.</summary>
    public IEnumerable<SiteFile> AboutAll(IEnumerable<string> paths) =>
        _site.Base.Settings.BaseAddress is { } address ? SiteMap.Files(paths.Where(path => path != SitePaths.NotFound).Order(StringComparer.Ordinal), address) : [];

    /// <summary>Pages that are no guide's own.</summary>
    public IEnumerable<PlannedPage> SharedPages
    {
        get
        {
            var variants = new VariantPages(_site, _closed);
            var which = new WhichPages(_site);
            var differ = new DifferPages(_site);
            var texts = new TextPages(_site, id => _templates.Text($"findings/{id}.md") is { } text ? FindingTexts.Parse(text) : null);
            var knowledge = new KnowledgePages(_site);
            var kb = _site.Base;
            return new PlannedPage[]
            {
                Asking(SitePaths.About, texts.About),
                Asking(SitePaths.NotFound, texts.NotFound),
            }
                .Concat(new ListPages(_site).All().Select(list => Asking(list.Path, list.Build)))
                .Append(Asking(SitePaths.Glossary, new GlossaryPages(_site).Page))
                .Append(Asking(SitePaths.Search, new SearchPages(_site).Page))
                .Append(Asking(SitePaths.AtoZ, new SearchPages(_site).List))
                .Append(Asking(SitePaths.Changes, () => new ChangePages(_site).Page()))
                .Append(Asking(SitePaths.Health, () => new HealthPages(_site).Page()))
                .Concat(kb.PositionOrder.Select(position => Asking(SitePaths.Position(position.Id), () => knowledge.Position(position)) with { Inputs = inputs => inputs.OfPosition(position) }))
                .Concat(kb.Rules.All.Select(rule => Asking(SitePaths.Rule(rule.Id), () => knowledge.Rule(rule)) with { Inputs = inputs => inputs.OfRule(rule) }))
                .Concat(FindingKinds.All.Select(kind => Asking(SitePaths.Finding(kind.Id), () => texts.Finding(kind)) with { Inputs = inputs => inputs.NoRule }))
                .Append(new PlannedPage(SitePaths.Start, texts.Start))
                .Append(new PlannedPage(SitePaths.WhichChassis, which.Chassis))
                .Append(new PlannedPage(SitePaths.WhichDonor, which.Donor))
                .Concat(kb.Chassis.All.Where(chassis => _site.GuidesOfChassis[chassis.Id].Skip(1).Any()).Select(chassis => new PlannedPage(SitePaths.Differ(chassis.Id), () => differ.Of(chassis)) { Inputs = inputs => inputs.OfGuides(_site.GuidesOfChassis[chassis.Id]) }))
                .Concat(kb.Connectors.All.Select(connector => new PlannedPage(SitePaths.Connector(connector.Id), () => knowledge.Connector(connector)) { Inputs = inputs => inputs.NoRule }))
                .Concat(kb.Articles.All.Select(article => new PlannedPage(SitePaths.Article(article.Id), () => texts.Article(article))))
                .Concat(kb.Pages.All.Select(page => new PlannedPage(SitePaths.Page(page.Id), () => texts.Own(page))))
                .Concat(kb.Chassis.All.Select(chassis => new PlannedPage(SitePaths.Chassis(chassis.Id), () => variants.Chassis(chassis)) { Inputs = inputs => inputs.OfGuides(_site.GuidesOfChassis[chassis.Id]) }))
                .Concat(kb.Donors.All.Select(donor => new PlannedPage(SitePaths.Donor(donor.Id), () => variants.Donor(donor)) { Inputs = inputs => inputs.OfGuides(_site.GuidesOfDonor[donor.Id]) }));
        }
    }

    /// <summary>A page that asks the store of regions, which one worker may do at a time.</summary>
    private PlannedPage Asking(string path, Func<Page> build) => new(path, () =>
    {
        lock (_site.Store)
        {
            return build();
        }
    });
}
