using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Texts;

namespace Swapwright.Tests.Site;

/// <summary>One page of every kind with the sort of content that a knowledge base gives; the vehicles are invented.</summary>
internal static class SamplePages
{
    public static IReadOnlyList<Page> All() =>
    [
        Start(), Chassis(), Donor(), Which(), Differ(), SampleGuide.Page(), .. SampleGuide.Sheets(), Position(), Rule(), Article(), Glossary(), Finding(), Connector(), Index(), About(), NotFound(), Own(), Search(), Changes(), Health(),
    ];

    public static SiteFrame Frame(string path, string title) => new()
    {
        Path = path,
        SiteTitle = "Quillet transplants",
        PageTitle = title,
        Label = Html("**Invented scenario:** no vehicle, engine or price on this page exists.", path),
        AsOf = "1 March 2026",
        Description = title + ", worked out from rules",
        Navigation =
        [
            new("Builds", SitePaths.Start, path == SitePaths.Start), new("Positions", SitePaths.Positions), new("Rules", SitePaths.Rules),
            new("Connectors", SitePaths.Connectors), new("Articles", SitePaths.Articles), new("Findings", SitePaths.Findings), new("About", SitePaths.About),
        ],
        Breadcrumb = path == SitePaths.Start ? [] : [new("Builds", SitePaths.Start)],
        Downloads = path.StartsWith("guide/", StringComparison.Ordinal) ? [new("JSON", path[..^5] + ".json"), new("CSV", path[..^5] + ".csv")] : [],
    };

    public static HtmlString Html(string text, string path = "rule/x.html") =>
        new MarkdownText(Resolve).Block(text, SitePaths.PrefixOf(path)).Html;

    public static HtmlString Words(string text, string path = "guide/x/y.html") =>
        new MarkdownText(Resolve).Inline(text, SitePaths.PrefixOf(path)).Html;

    public static SourceLine Source(string id, string title, string kind) =>
        new(id, title, kind, "2024-09-14", "M. Ostrander (invented)", null, new PageLink(title, SitePaths.Source(id)));

    public static GuidePin[] Pins() =>
    [
        new("1", "Battery feed", "goes straight in", new WireColour("RD/YE"), "2.5"),
        new("2", "Charge lamp", "move to cavity 3", new WireColour("WH/BK"), "0.75"),
        new("3", "Field control", "leave empty and cap", new WireColour("GN"), "0.75"),
    ];

    private static string? Resolve(string kind, string id) => kind switch
    {
        "article" => SitePaths.Article(id),
        "position" => SitePaths.Position(id),
        "rule" => SitePaths.Rule(id),
        _ => null,
    };

    private static StartPage Start() => new()
    {
        Frame = Frame(SitePaths.Start, "Find your build"),
        Title = "Which engine goes into your Quillet?",
        Intro = Html("Each guide settles every place on the vehicle: **what to keep, take, buy, make, modify or leave off**, and why.", SitePaths.Start),
        Figures = [new("Guides", "18"), new("Combinations proved", "41,472"), new("Rules", "164"), new("Answers built and driven", "61 %")],
        Which = [new("Which chassis do I have?", SitePaths.WhichChassis)],
        Chassis =
        [
            new("Quillet", new("Which one is it?", SitePaths.WhichChassis + "#family-quillet"),
            [
                new(new("Quillet C", SitePaths.Chassis("quillet-c")), "1986–1988", "carburettor", "5 guides", [new(new("Marn", SitePaths.Chassis("quillet-c") + "#with-marn"), "5")], [new("Orrel", SitePaths.Chassis("quillet-c") + "#not-buildable")]),
                new(new("Quillet M", SitePaths.Chassis("quillet-m")), "1992–1995", "multi-point injection", "4 guides", [new(new("Marn", SitePaths.Chassis("quillet-m") + "#with-marn"), "4")], []),
            ]),
        ],
        Donors = [new("Marn", new("Which one is it?", SitePaths.WhichDonor + "#family-marn"), [new(new("Marn 18V", SitePaths.Donor("marn-18v")), "1995–1997", "", "3 guides", [new(new("Quillet", SitePaths.Donor("marn-18v") + "#with-quillet"), "3")], [])])],
        Articles = [new(new("Extending a wire so that it lasts", SitePaths.Article("extending-wires")), "Splice, seal, support: in that order.")],
    };

    private static ComparisonRow Row(string number, string other, string guide, string headline) => new()
    {
        Number = number,
        Other = new(other, SitePaths.Donor("marn-16")),
        Guide = new(headline, guide),
        Family = number == "1" ? SitePaths.With("marn") : null,
        IsUnbeaten = number == "1",
        Money = new("1,950 EUR (1,480–2,720)", "1950"),
        Hours = new("48 h (34–70)", "48"),
        Power = new("96 kW, 117 W/kg", "117"),
        Plugs = new("9 of 17", "9"),
        Wires = new("12", "12"),
        Parts = new("31", "31"),
        Standing = new("73 % built", "73.1"),
        Hard = new("Practised hands: make the exhaust downpipe", "2"),
    };

    private static ChassisPage Chassis() => new()
    {
        Frame = Frame(SitePaths.Chassis("quillet-c"), "Quillet C"),
        Title = "Quillet C",
        Years = "1986 to 1988",
        Detail = "three-door, carburettor, cable clutch",
        About = Html("The lightest of the family. Its **fuel pump is mechanical**: every injected donor needs a new supply."),
        Facts = [new("Fuel delivery", "carburettor", Words("Round air filter on top of the engine.")), new("Radiator, rated for", "70 kW", Words("Core 28 mm thick; measure without the shroud."))],
        Donors = new(HtmlString.Empty, "A filled square marks a guide that no other beats.", [Row("1", "Marn 16, 1992–94", "guide/quillet-c/marn-16--own.html", "own gearbox"), Row("2", "Marn 16, 1992–94", "guide/quillet-c/marn-16--donor.html", "donor gearbox")]),
        Differ = new("What differs between them", SitePaths.Differ("quillet-c")),
        Which = new("Not sure that it is yours?", SitePaths.WhichChassis + "#family-quillet"),
        NotBuildable = [new(new("Marn 18V, 1995–97", SitePaths.Donor("marn-18v")), [new(Words("The intake stands 22 mm above the hood's inner skin."), new("Tall intake and the standard hood", SitePaths.Rule("tall-intake")))], [new("this chassis with", new("Marn 16, 1992–94", "guide/quillet-c/marn-16--own.html"))])],
        Siblings = [new("Quillet M", SitePaths.Chassis("quillet-m"))],
        Devices = [new("Alternator", new("Oval three-way", SitePaths.Connector("oval-3")), Pins())],
        Notes = [new("2025-03-01", Words("Trim names checked against two vehicles."))],
    };

    private static DonorPage Donor() => new()
    {
        Frame = Frame(SitePaths.Donor("marn-16"), "Marn 16"),
        Title = "Marn 16",
        Years = "1992 to 1994",
        Detail = "distributor ignition, low-resistance injectors",
        About = Html("The usual choice: plain electrics and a bell pattern that an adapter plate meets."),
        Facts = [new("Power", "96 kW", Words("Plate on the slam panel."))],
        Chassis = new(HtmlString.Empty, "Worked out for each guide's recommended choices.", [Row("1", "Quillet C", "guide/quillet-c/marn-16--own.html", "own gearbox")]),
        Siblings = [new("Marn 16, 1990–91", SitePaths.Donor("marn-16-early"))],
    };

    private static WhichPage Which() => new()
    {
        Frame = Frame(SitePaths.WhichChassis, "Which chassis do I have?"),
        Title = "Which chassis do I have?",
        Intro = Html("Stand before the car and answer from the top.", SitePaths.WhichChassis),
        Sections =
        [
            new("Quillet", "family-quillet", "3 variants; 1.7 questions on average, 2 at most.",
            [
                new("1", "family-quillet-1", null, 0, "Fuel delivery", Words("A choke cable means a carburettor."), [new("Year of manufacture", Words("From the papers."))],
                [new("Carburettor", null, new([new("Quillet C", SitePaths.Chassis("quillet-c"))], [])), new("Injection", new("go to 2", "#family-quillet-2"), null)]),
                new("2", "family-quillet-2", new("1, injection", "#family-quillet-1"), 1, "Gearbox", HtmlString.Empty, [],
                [new("Manual", null, new([new("Quillet M", SitePaths.Chassis("quillet-m")), new("Quillet S", SitePaths.Chassis("quillet-s"))], [new("Tachometer", "Quillet M: logic; Quillet S: coil", "Look for a violet wire.")])), new("Automatic", null, new([new("Quillet A", SitePaths.Chassis("quillet-a"))], []))]),
            ], null),
            new("Sorrel", "family-sorrel", "", [], new([new("Sorrel", SitePaths.Chassis("sorrel"))], [])),
        ],
        Method = Html("The order is the one with the fewest questions on average.", SitePaths.WhichChassis),
    };

    private static DifferPage Differ() => new()
    {
        Frame = Frame(SitePaths.Differ("quillet-c"), "Quillet C: what differs"),
        Title = "Quillet C: what differs between its guides",
        Chassis = new("Quillet C", SitePaths.Chassis("quillet-c")),
        Words = "All 2 guides ask the same at 40 of 52 positions.",
        Guides =
        [
            new("1", new("Marn 16, own gearbox", "guide/quillet-c/marn-16--own.html"), [new("1,950 EUR", "1950"), new("48 h", "48"), new("9", "9"), new("12", "12"), new("31", "31")]),
            new("2", new("Marn 16, donor gearbox", "guide/quillet-c/marn-16--donor.html"), [new("2,150 EUR", "2150"), new("44 h", "44"), new("9", "9"), new("10", "10"), new("33", "33")]),
        ],
        Systems = [new("Ancillaries", [new(new("Alternator", SitePaths.Position("alternator")), [new(Verb.Keep, "Keep the chassis's own", "1", "1"), new(null, "Does not arise", "2", "2")])])],
    };

    private static PositionPage Position() => new()
    {
        Frame = Frame(SitePaths.Position("alternator"), "Alternator"),
        Title = "Alternator",
        System = "Ancillaries",
        About = Html("Sits low at the front. If its plug is oval with three cavities it is the chassis's own kind."),
        Applies = "where the engine drives an alternator by the accessory belt",
        Safety = "electric",
        Answers =
        [
            new(Verb.Move, "Keep the chassis's own on the donor's bracket", "choice of alternator is keep", "20,736", new("Alternator kept", SitePaths.Rule("alternator-kept")), Standing.Built, "built and driven", [new(new("Bracket spacer 8 mm", SitePaths.Part("bracket-spacer")), "9 EUR", "machine shop")]),
            new(Verb.Take, "Take the donor's", "choice of alternator is donor", "20,736", new("Alternator of the donor", SitePaths.Rule("alternator-donor")), Standing.Measured, "measured", []),
        ],
        Articles = [new("Sizing the main cable", SitePaths.Article("main-cable"))],
        Tasks = [new("Fit the alternator", SitePaths.Task("fit-alternator"))],
    };

    private static RulePage Rule() => new()
    {
        Frame = Frame(SitePaths.Rule("alternator-kept"), "Alternator kept"),
        Title = "The chassis's alternator fits the donor's bracket with a spacer",
        Id = "alternator-kept",
        System = "Ancillaries",
        Place = "rules/ancillaries/alternator-kept.yaml:3",
        When = ["the alternator is kept", "the donor's year is 1992 to 1997"],
        Combinations = "20,736",
        CombinationsShare = "half of all",
        Answers = [new() { Position = new("Alternator", SitePaths.Position("alternator")), Verb = Verb.Move, VerbText = "Keep the chassis's own, moved to the donor's bracket", Parts = [new(new("Bracket spacer 8 mm", SitePaths.Part("bracket-spacer")), "9 EUR", "machine shop")], Steps = [Words("Fit the spacer between ear and bracket."), Words("Check that the pulleys stand in one plane within 1 mm.")], Notes = Html("The fan blades clear the bracket by 6 mm.") }],
        Excludes = [Words("An alternator that the ECU controls cannot be kept with the chassis's ECU.")],
        Requires = ["the ECU does not control the alternator"],
        Values = [new("belt.accessory.length", "1,195 mm", "1,193.4 mm", "agrees within 5 mm", Weight.Good), new("belt.accessory.ribs", "5", "4", "differs", Weight.Bad)],
        Tasks = [new("Fit the alternator", SitePaths.Task("fit-alternator"))],
        Cautions = [new("Electric", Words("Disconnect the battery first."))],
        Mistakes = [Words("The exciter lamp is left out, and nothing charges.")],
        Advice = [Words("The donor's alternator gives 20 A more at idle.")],
        Because = Html("Both ears have the same spacing; only the belt plane differs, by **8 mm**."),
        Standing = Standing.Built,
        StandingText = "built and driven",
        Checked = "2025-04-01",
        By = "M. Ostrander",
        Sources = [Source("build-log-3", "Build log of a 1987 C", "build log")],
        Overrides = [new("Every donor brings its alternator", SitePaths.Rule("alternator-general"))],
        OverriddenBy = [new("No alternator on the early bracket", SitePaths.Rule("early-bracket"))],
        Guides = [new("Marn 16 in Quillet C, own gearbox", "guide/quillet-c/marn-16--own.html")],
        Notes = [new("2025-04-02", Words("Spacer measured again."))],
    };

    private static ArticlePage Article()
    {
        var body = new MarkdownText(Resolve).Article(
            """
            Most faults of a transplant's wiring are splices. See also [the alternator](position:alternator).

            ## Cut

            Stagger the cuts by 30 mm so that the bundle stays round.

            | Wire mm² | Sleeve | Pull, at least N |
            | --- | --- | ---: |
            | 0.5 | red | 60 |
            | 1.5 | blue | 150 |

            ## Join

            1. Crimp, do not twist.
            2. Shrink the sleeve from its middle.

            > A soldered joint breaks beside the solder.

            ![Staggered cuts](picture:staggered)

            ### Support

            Tie the bundle within `50 mm` of the splice.
            """,
            "../");
        return new ArticlePage
        {
            Frame = Frame(SitePaths.Article("extending-wires"), "Extending wires"),
            Title = "Extending a wire so that it lasts",
            Summary = "Splice, seal, support: in that order.",
            Body = body.Html,
            Contents = body.Contents,
            Positions = [new("Engine harness", SitePaths.Position("engine-harness"))],
            Tasks = [new("Extend the harness", SitePaths.Task("extend-harness"))],
            Sources = [Source("bench-1", "Bench pulls of forty splices", "measurement")],
            Standing = Standing.Measured,
            StandingText = "measured",
            Checked = "2025-04-01",
            Topic = "Wiring",
            More = [new("Re-pinning a plug", SitePaths.Article("re-pinning-a-plug"))],
        };
    }

    private static GlossaryPage Glossary() => new()
    {
        Frame = Frame(SitePaths.Glossary, "Glossary"),
        Title = "Glossary",
        Intro = Words("Words of the trade.", SitePaths.Glossary),
        Letters =
        [
            new("S",
            [
                new() { Id = "sensor", Term = "sensor", Short = "Tells the ECU." },
                new()
                {
                    Id = "splice", Term = "splice", Also = ["joint"], Short = "Where two wires meet.", About = Html("Made by *crimping*."),
                    See = [new("seal", "#term-seal")], UsedIn = [new("Extending wires", SitePaths.Article("extending-wires"))],
                },
            ]),
        ],
    };

    private static FindingPage Finding() => new()
    {
        Frame = Frame(SitePaths.Finding("contradiction"), "contradiction"),
        Title = "Two rules give different answers",
        Id = "contradiction",
        Severity = "error",
        SeverityWeight = Weight.Bad,
        Meaning = Html("In at least one buildable combination two rules stand at the same position and **differ**, and neither names the other."),
        Example = "when: { chassis.fuel-delivery: carburettor }\nthen:\n  answers:\n    fuel-pump: { source: new, treatment: as-is }\n",
        Message = "error contradiction: `pump-new` and `pump-kept` differ at `fuel-pump`\n  --> rules/fuel/pump-new.yaml:4:5\n",
        Mend = Html("Narrow one `when`, or say which rule wins:"),
        MendedExample = "overrides: [pump-kept]\n",
        WhenToAccept = Html("Never."),
    };

    private static ConnectorPage Connector() => new()
    {
        Frame = Frame(SitePaths.Connector("oval-3"), "Oval three-way"),
        Title = "Oval three-way",
        About = Html("Black, oval, one latch on the long side."),
        Face = new HtmlString("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 120 60\" width=\"240\" height=\"120\" role=\"img\" aria-label=\"Face\"><rect class=\"face-shell\" x=\"5\" y=\"5\" width=\"110\" height=\"50\" rx=\"25\"/><rect class=\"face-cavity\" x=\"28\" y=\"24\" width=\"12\" height=\"12\"/><rect class=\"face-cavity\" x=\"54\" y=\"24\" width=\"12\" height=\"12\"/><rect class=\"face-cavity\" x=\"80\" y=\"24\" width=\"12\" height=\"12\"/><text x=\"34\" y=\"50\" font-size=\"9\" text-anchor=\"middle\">1</text></svg>"),
        FaceText = "Seen from the wire side: cavities 1 to 3 from left to right, latch on top.",
        Facts = [new("Terminal", "blade 2.8"), new("Wire", "0.5 to 2.5 mm²"), new("Most current", "16 A a cavity", "from memory"), new("Sealed", "yes")],
        Mates = [new("Oval three-way, grey", SitePaths.Connector("oval-3-grey"))],
        Uses = [new(new("Quillet C", SitePaths.Chassis("quillet-c")), "Alternator", Pins())],
    };

    private static IndexPage Index() => new()
    {
        Frame = Frame(SitePaths.Rules, "Rules"),
        Title = "All rules",
        Intro = Html("By system, in the order of the guides.", SitePaths.Rules),
        Groups = [new("Ancillaries", [new(new("Alternator kept", SitePaths.Rule("alternator-kept")), "The chassis's alternator fits with a spacer.", "built", Weight.Good, "rule-alternator-kept")])],
    };

    private static AboutPage About() => new()
    {
        Frame = Frame(SitePaths.About, "About"),
        Title = "Cautions and how this is made",
        About = Html("A knowledge base of engine transplants, checked by a program.", SitePaths.About),
        Scenario = Html("Makers, vehicles, engines and prices are invented. The engineering is meant to be right.", SitePaths.About),
        Cautions = [new("Law", Words("Ask an inspector before you buy anything.", SitePaths.About)), new("Fuel", Words("Relieve the pressure before you open a line.", SitePaths.About))],
        HowMade = Html("Every number is computed or held against a computed one.", SitePaths.About),
        Figures = [new("Rules", "164")],
        Sources = [new("build-log-3", "Build log of a 1987 C", "build log", "2024-09-14", "M. Ostrander (invented)", "A whole winter, day by day.")],
    };

    private static SearchPage Search() => new()
    {
        Frame = Frame(SitePaths.Search, "Search"),
        Title = "Search",
        Intro = "Everything by its name.",
        Letters = [new("A", $"{SitePaths.AtoZ}#letter-a"), new("0–9", $"{SitePaths.AtoZ}#letter-other")],
        Kinds = [new(new("Rules", SitePaths.Rules), "164"), new(new("Parts", SitePaths.Parts), "88")],
    };

    private static ChangesPage Changes() => new()
    {
        Frame = Frame(SitePaths.Changes, "What changed"),
        Title = "What changed",
        Intro = "Newest first.",
        Feed = new("feed", "feed.xml"),
        Days = [new("2025-04-02", [new("Rule", new("Alternator kept", SitePaths.Rule("alternator-kept")), Words("Spacer **measured** again.", SitePaths.Changes)), new("Choice", new("Alternator", ""), Words("Third option added.", SitePaths.Changes))])],
    };

    private static HealthPage Health() => new()
    {
        Frame = Frame(SitePaths.Health, "State of the knowledge"),
        Title = "State of the knowledge",
        Intro = "For those who keep it.",
        Counts = [new("Rules", "164"), new("Warnings", "2", null, Weight.Caution)],
        Systems =
        [
            new("ancillaries", "Ancillaries", "34 answers at 9 positions", new HtmlString("<svg class=\"bar\" viewBox=\"0 0 1000 20\" preserveAspectRatio=\"none\" aria-hidden=\"true\"><rect class=\"part-1\" x=\"0\" width=\"620\" height=\"20\"/></svg>"), "built and driven 62 %, measured 30 %, reported 8 %",
                [new(new("Alternator", SitePaths.Position("alternator")), "5", "2", "100 %", "100 %", "62 %", "30 %", "8 %")]),
        ],
        Checked = [new("2025", "41", new HtmlString("<svg class=\"bar\" viewBox=\"0 0 1000 20\" preserveAspectRatio=\"none\" aria-hidden=\"true\"><rect class=\"part-1\" width=\"1000\" height=\"20\"/></svg>"))],
        Lists =
        [
            new("findings", "What the check finds", "1", "Warnings and notes.", "Nothing.", [new("`alternator-kept` names no source", null, new("Rule without a source", SitePaths.Finding("unsourced")), "rules/charging/alternator-kept.yaml:1:1", "Add `sources`.", Weight.Caution)], "And 3 more."),
            new("overridden", "Most overridden rules", "0", "General rules.", "No rule overrides another.", []),
        ],
    };

    private static OwnPage Own() => new()
    {
        Frame = Frame(SitePaths.Page("meetings"), "Meetings"),
        Title = "Meetings",
        Summary = "Where builders meet.",
        Body = new HtmlString("<p>Every first Sunday.</p>"),
    };

    private static NotFoundPage NotFound() => new()
    {
        Frame = Frame(SitePaths.NotFound, "Not found"),
        Title = "There is no such page",
        Words = "The address may have changed when a variant was split.",
        Links = [new("Find your build", SitePaths.Start)],
    };
}
