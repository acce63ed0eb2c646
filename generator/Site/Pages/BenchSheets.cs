using System.Collections.Immutable;
using Swapwright.Reports;
using Swapwright.Sheets;
using Swapwright.Site.Machines;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>
/// The sheets beside a guide: what is taken to the bench, printed for itself. The guide says what is done and why; wires,
/// hoses, steps, parts and formulas stand here, so that a guide stays light enough to be opened anywhere.
/// </summary>
internal static class BenchSheets
{
    public const string Wiring = "wiring";
    public const string Belts = "belts";
    public const string Hoses = "hoses";
    public const string Work = "work";
    public const string Shopping = "shopping";
    public const string Figures = "figures";
    public const string Otherwise = "otherwise";

    // In the order in which a builder takes them up.
    private static readonly ImmutableArray<(string Id, string Kind, string Words)> s_kinds =
    [
        (Shopping, "Shopping list", "every part with its price, by where it comes from"),
        (Work, "Work sheet", "every task in order: steps, tools, torques and fluids"),
        (Wiring, "Wiring sheet", "every plug by cavity, wires to cut, terminals, the adapter"),
        (Belts, "Belt card", "path, pulleys, adjuster and tension of each belt"),
        (Hoses, "Hose card", "every hose from end to end"),
        (Figures, "Sheet of figures", "gearing, fuel, mass and cooling with tables, charts and formulas"),
        (Otherwise, "Other choices", "each line that another option changes"),
    ];

    // Hours and money stand in one table, line by line.
    private static string? Table(string sheet) => sheet switch
    {
        Work or Shopping => "effort",
        Figures => SheetTables.Figures,
        Otherwise => null,
        _ => sheet,
    };

    /// <summary>The sheets of a guide that have something on them; there are no others.</summary>
    /// <param name="isOpen">Whether the reader of the guide still decides something.</param>
    public static ImmutableArray<string> Of(Sheet sheet, bool isOpen)
    {
        bool Has(string id) => id switch
        {
            Wiring => sheet.Wiring is not null,
            Belts => !sheet.Belts.IsEmpty,
            Hoses => sheet.Hoses is not null,
            Figures => sheet.Gearbox is not null || sheet.Ecu is not null || sheet.Ledgers.Any(ledger => ledger.Id != "torques"),
            Otherwise => isOpen,
            _ => true,
        };
        return [.. s_kinds.Select(kind => kind.Id).Where(Has)];
    }

    public static ImmutableArray<BenchLink> Links(SiteKnowledge site, GuideEntry guide) =>
        [.. Kinds(site, guide).Select(kind => new BenchLink(new PageLink(kind.Kind, SitePaths.Bench(guide.Path, kind.Id)), kind.Words))];

    public static IEnumerable<PlannedPage> Pages(SiteKnowledge site, GuideEntry guide)
    {
        var plate = new Lazy<Plate>(() => new Plate(
            GuidePages.Title(guide),
            [.. GuidePages.Headline(site, guide), .. GuidePages.Decided(site, site.SheetOf(guide), guide)],
            [.. Kinds(site, guide).Select(kind => (kind.Id, new PageLink(kind.Kind, SitePaths.Bench(guide.Path, kind.Id))))]));
        return Kinds(site, guide).Select(kind => new PlannedPage(SitePaths.Bench(guide.Path, kind.Id), () => Build(site, guide, kind.Id, plate.Value)));
    }

    /// <summary>The tables for a spreadsheet that lie beside a guide's sheets, by the name that a sheet's part has.</summary>
    public static IEnumerable<string> Tables(SiteKnowledge site, GuideEntry guide) => Kinds(site, guide).Select(kind => Table(kind.Id)).OfType<string>().Distinct(StringComparer.Ordinal);

    private static IEnumerable<(string Id, string Kind, string Words)> Kinds(SiteKnowledge site, GuideEntry guide)
    {
        var sheets = site.BriefOf(guide).Sheets;
        return s_kinds.Where(kind => sheets.Contains(kind.Id));
    }

    /// <summary>The sheets that say the same of two combinations of one guide, whose worksheets are shared where they are equal.</summary>
    public static IEnumerable<string> Same(Sheet one, Sheet other)
    {
        var tables = one.Ledgers.Length == other.Ledgers.Length && one.Ledgers.Zip(other.Ledgers).All(pair => ReferenceEquals(pair.First, pair.Second));
        return new (string Id, bool IsSame)[]
        {
            (Wiring, ReferenceEquals(one.Wiring, other.Wiring)),
            (Belts, one.Belts == other.Belts),
            (Hoses, ReferenceEquals(one.Hoses, other.Hoses)),
            (Work, one.Tasks.SequenceEqual(other.Tasks) && ReferenceEquals(one.Ledger("torques"), other.Ledger("torques"))),
            (Shopping, Bought(one).SequenceEqual(Bought(other))),
            (Figures, tables && one.Gearbox == other.Gearbox && one.Ecu == other.Ecu),
            (Otherwise, true),
        }
            .Where(sheet => sheet.IsSame).Select(sheet => sheet.Id);
    }

    private static IEnumerable<(string Part, int Amount, string For)> Bought(Sheet sheet) =>
        sheet.Shopping.Select(line => (line.Part.Id, line.Amount, line.For.IsEmpty ? "" : line.For[0].Id));

    private static BenchPage Build(SiteKnowledge site, GuideEntry guide, string id, Plate plate)
    {
        var (kind, path) = plate.Sheets.First(one => one.Id == id).Link;
        var whole = plate.Title;
        var title = $"{kind}: {whole}";
        var sheet = site.SheetOf(guide);
        var head = new BenchHead
        {
            Kind = kind,
            Guide = new PageLink(whole, guide.Path),
            Chosen = plate.Chosen,
            Others = [.. plate.Sheets.Where(one => one.Id != id).Select(one => one.Link)],
        };
        var frame = site.Frame(path, title, $"{kind} for {whole}.", SiteKnowledge.Link(guide.Headline.Chassis), head.Guide) with
        {
            Downloads = Table(id) is { } table ? [new PageLink("CSV", SitePaths.Table(guide.Path, table))] : [],
        };
        var page = Content(site, guide, sheet, id, frame, title, head);
        return page is WorkPage work
            ? work with { Frame = work.Frame with { StructuredData = HowToData.Whole(work, sheet, site.Base.Settings, SitePaths.Address(site.Base.Settings.BaseAddress, path)) } }
            : page;
    }

    private static BenchPage Content(SiteKnowledge site, GuideEntry guide, Sheet sheet, string id, SiteFrame frame, string title, BenchHead head)
    {
        switch (id)
        {
            case Wiring:
                return new WiringPage { Frame = frame, Title = title, Head = head, Wiring = GuideWirings.Bench(site, sheet) is { } wiring ? [wiring] : [] };
            case Belts:
                return new BeltsPage { Frame = frame, Title = title, Head = head, Belts = GuideBelts.Cards(sheet) };
            case Hoses:
                return new HosesPage { Frame = frame, Title = title, Head = head, Hoses = GuideHoses.Of(site, sheet), Circuits = GuideHoses.Circuits(sheet), Bought = GuideHoses.Bought(site, sheet), Spare = SiteKnowledge.Number(site.Base.Settings.Hoses.SparePercent) };
            case Shopping:
                var list = new GuideWork(site, sheet, guide.Path);
                return new ShoppingPage
                {
                    Frame = frame,
                    Title = title,
                    Head = head,
                    Before = new GuideWork(site, sheet, frame.Path, SitePaths.Bench(guide.Path, Work)).OfPhase("assess"),
                    Ranges = list.MoneyDrawing(),
                    Shopping = list.Shopping(),
                    Note = GuidePages.MoneyNote(site, sheet),
                    HasFluids = sheet.Ledger("torques") is { } torques && torques.Tables.Any(table => table.Id == "fluids"),
                };
            case Figures:
                return new FiguresPage { Frame = frame, Title = title, Head = head, Facts = Facts(site, sheet, frame.Path), Ledgers = GuideLedgers.OfFigures(sheet) };
            case Work:
                var work = new GuideWork(site, sheet, frame.Path);
                return new WorkPage
                {
                    Frame = frame,
                    Title = title,
                    Head = head,
                    Work = work.Phases(),
                    Ledgers = GuideLedgers.Of(sheet, "torques"),
                    Drawing = work.Drawing(),
                    Ranges = work.HoursDrawing(),
                    Words = work.Words(),
                    Tools = work.Tools(),
                    Consumables = work.Consumables(),
                };
            default:
                // The regions belong to one store that grows while it is asked.
                lock (site.Store)
                {
                    var systems = new GuideSystems(site, guide, GuideConditions.Within(site, guide));
                    return new OtherwisePage
                    {
                        Frame = frame,
                        Title = title,
                        Head = head,
                        Exclusions = GuideChoices.Exclusions(site, guide, frame.Path),
                        Systems = systems.Otherwise(frame.Path),
                        Sources = site.Sources(systems.Sources),
                    };
                }
        }
    }

    private static ImmutableArray<FactGroup> Facts(SiteKnowledge site, Sheet sheet, string path)
    {
        var groups = ImmutableArray.CreateBuilder<FactGroup>();
        if (sheet.Gearbox is { } gearbox)
        {
            groups.Add(site.Pieces.Of(new MadeFrom([gearbox, SitePaths.PrefixOf(path)]), () => new FactGroup(gearbox.Title,
            [
                .. site.Facts("gearbox", gearbox, path).Select(fact => new NamedValue(fact.Title, fact.Value)),
                .. gearbox.OilLitres is { } litres ? [new NamedValue("Oil", $"{SiteKnowledge.Number(litres)} L{(gearbox.OilGrade.Length > 0 ? $", {gearbox.OilGrade}" : "")}")] : Array.Empty<NamedValue>(),
                .. gearbox.MassKg is { } mass ? [new NamedValue("Mass", $"{SiteKnowledge.Number(mass)} kg")] : Array.Empty<NamedValue>(),
            ])));
        }

        if (sheet.Ecu is { } ecu)
        {
            groups.Add(site.Pieces.Of(new MadeFrom([ecu, SitePaths.PrefixOf(path)]), () => new FactGroup(ecu.Title, [.. site.Facts("ecu", ecu, path).Select(fact => new NamedValue(fact.Title, fact.Value))])));
        }

        return groups.ToImmutable();
    }

    /// <summary>What all sheets of a guide say at their head.</summary>
    /// <param name="Title">Of the guide.</param>
    /// <param name="Sheets">All of them, by id.</param>
    private sealed record Plate(string Title, NamedValue[] Chosen, (string Id, PageLink Link)[] Sheets);
}
