using Swapwright.Site;
using Swapwright.Site.Models;

namespace Swapwright.Tests.Site;

/// <summary>A guide with every section filled.</summary>
internal static class SampleGuide
{
    private static readonly GuideCondition Kept = new("where the alternator is kept");
    private static readonly GuideCondition Donors = new("where the donor's alternator is fitted");

    private static readonly string Path = SitePaths.Guide("quillet-c", "marn-16", ["own"]);

    public static GuidePage Page() => new()
    {
        Frame = SamplePages.Frame(Path, "Marn 16 in Quillet C"),
        Title = "Marn 16 (1992–94) in Quillet C (1986–88) with its own gearbox",
        Chassis = new("Quillet C, 1986–88", SitePaths.Chassis("quillet-c")),
        Donor = new("Marn 16, 1992–94", SitePaths.Donor("marn-16")),
        Headline = [new("Gearbox", "the chassis's own four-speed")],
        Summary = Summary(),
        Choices = Choices(),
        Sheets = [new(new("Wiring sheet", SitePaths.Bench(Path, "wiring")), "every plug by cavity")],
        Switches = "bench/quillet-c/marn-16--own/choices.js",
        Otherwise = new("What the other options change", SitePaths.Bench(Path, "otherwise")),
        Advice = [new(Words("The donor's five-speed drops engine speed at 100 km/h by a fifth."), new("Guide with the donor's gearbox", SitePaths.Guide("quillet-c", "marn-16", ["donor"])), new("Ratios", SitePaths.Rule("ratios")))],
        Systems = Systems(),
        Shopping = [new(new("Machine shop", SitePaths.Bench(Path, "shopping") + "#from-machine-shop"), "2 things", "249 EUR")],
        Gearbox = Gearbox(),
        Belts = [new() { Title = "Accessory belt", Designation = "5PK1195", Words = "Five ribs: the water pump has no more.", Trim = "No belt with 5 ribs is stocked: trim one with 6.", Drawing = Belt().Drawing }],
        Wiring = new([new("straight in", 9), new("extended", 4, "2.9 m of wire")], [new("Gauge sender", "add a plug", ""), new("Alternator", "lengthen the wires", "wires longer by 240 mm")]),
        Hoses = [new("Fuel", "1 cut to length, 2 kept")],
        Ecu = Ecu(),
        Figures = [Figures("load", "Mass and cooling")],
        Work = [new(new("Prepare", SitePaths.Bench(Path, "work") + "#phase-prepare"), new("6", "9", "14", "hours"), [new(new("Have the adapter plate machined", SitePaths.Bench(Path, "work") + "#task-machine-plate"), "0.5–2 h, practised hands")])],
        Checks = [Task("turn-by-hand", "Turn the engine twice by hand"), Task("fuel-pressure", "Hold fuel pressure for ten minutes")],
        FirstStart = [Task("first-start", "Start with the extinguisher at hand")],
        Mistakes = [Words("The charge lamp is left out, and the alternator never wakes.")],
        MistakesAbove = "One mistake stands above, beside the line that it spoils.",
        Cautions =
        [
            new("Fuel", [Words("Injection lines hold pressure after the engine is off: relieve it before you open one.")], [new(Words("Catch every drop."), "Open the fuel line")]),
            new("Law", [Words("Ask an inspector before you buy anything.")], []),
        ],
        Confidence = new()
        {
            Words = "38 of 52 answers were built and driven; none that matters for safety rests on a report alone.",
            Figures = [new("Oldest check", "14 September 2024")],
            OpenPoints = [Words("The heater step is known from one build only.")],
            Sources = [SamplePages.Source("build-log-3", "Build log of a 1987 C", "build log")],
        },
    };

    /// <summary>Its sheets for the bench.</summary>
    public static IReadOnlyList<BenchPage> Sheets() =>
    [
        Sheet(new WiringPage { Frame = Page().Frame, Title = "", Head = Head("Wiring sheet"), Wiring = [Wiring()] }, "wiring"),
        Sheet(new BeltsPage { Frame = Page().Frame, Title = "", Head = Head("Belt card"), Belts = [Belt()] }, "belts"),
        Sheet(
            new HosesPage
            {
                Frame = Page().Frame,
                Title = "",
                Head = Head("Hose card"),
                Hoses = [new("Fuel feed", "tank pump", "rail", "8 mm", "2,900 mm", "new line, clips every 300 mm", "injection, 10 bar")],
                Circuits = [new() { Title = "Fuel", Drawing = Belt().Drawing, Totals = [new("8 mm", "2.9 m", "one piece")] }],
                Bought = [new("Injection hose 8 mm, 2 m", "2", "2,900 mm to cut, 1,100 mm left over")],
                Spare = "10",
            },
            "hoses"),
        Sheet(
            new WorkPage
            {
                Frame = Page().Frame,
                Title = "",
                Head = Head("Work sheet"),
                Work = [new() { Id = "prepare", Title = "Prepare", Hours = new("6", "9", "14", "hours"), Tasks = [Task("machine-plate", "Have the adapter plate machined"), Task("spacer", "Fit the alternator's spacer")] }],
                Ledgers = [Gearing()],
                Drawing = Belt().Drawing,
                Words = "Drawn for two people.",
                Tools = ["torque wrench"],
                Consumables = ["thread lock"],
            },
            "work"),
        Sheet(new ShoppingPage { Frame = Page().Frame, Title = "", Head = Head("Shopping list"), Before = [Task("fuel-pressure", "Ask the inspection")], Ranges = Belt().Drawing, Note = "Invented prices.", Shopping = [new("machine-shop", "Machine shop", [new(new("Bracket spacer 8 mm", SitePaths.Part("bracket-spacer")), "2", "9 EUR", new("Alternator", Path + "#at-alternator"))], "9 EUR")] }, "shopping"),
        Sheet(new FiguresPage { Frame = Page().Frame, Title = "", Head = Head("Sheet of figures"), Facts = [new("Quillet four-speed", [new("Oil", "75W-80, 2.1 L")])], Ledgers = [Gearing()] }, "figures"),
        Sheet(
            new OtherwisePage
            {
                Frame = Page().Frame,
                Title = "",
                Head = Head("Other choices"),
                Exclusions = [new(Words("An ECU that controls the alternator rules out keeping the chassis's."), new("ECU-controlled alternator", SitePaths.Rule("ecu-alternator")), Kept)],
                Systems = [new("ancillaries", "Ancillaries", [new(new("Alternator", Path + "#at-alternator"), [new("or-alternator-1", Line(Verb.Take, "Take the donor's", Donors, Standing.Reported, "reported") with { Notes = SamplePages.Html("Its plug is changed for the chassis's oval one.", SitePaths.Bench(Path, "otherwise")), Reason = Reason(Standing.Reported, "reported", SitePaths.Bench(Path, "otherwise")) })])])],
                Sources = [SamplePages.Source("build-log-3", "Build log of a 1987 C", "build log")],
            },
            "otherwise"),
    ];

    private static BenchPage Sheet(BenchPage page, string id) => page with
    {
        Frame = SamplePages.Frame(SitePaths.Bench(Path, id), page.Head.Kind),
        Title = $"{page.Head.Kind}: Marn 16 in Quillet C",
    };

    private static BenchHead Head(string kind) => new()
    {
        Kind = kind,
        Guide = new("Marn 16 in Quillet C", Path),
        Chosen = [new("Gearbox", "the chassis's own four-speed")],
        Others = [new("Work sheet", SitePaths.Bench(Path, "work"))],
    };

    private static HtmlString Words(string text) => SamplePages.Words(text);

    private static GuideSummary Summary() => new()
    {
        Verdict = "Yes. It needs a machined adapter plate and a new fuel supply.",
        BasedOn = "Worked out for the recommended choices; see below what else is offered.",
        Positions =
        [
            new(Verb.Keep, "Keep", 17), new(Verb.Take, "Take", 14), new(Verb.Buy, "Buy", 9), new(Verb.Make, "Make", 3),
            new(Verb.Modify, "Modify", 5), new(Verb.Move, "Move", 1), new(Verb.LeaveOff, "Leave off", 3),
        ],
        Plugs = [new("straight in", 9), new("plug changed", 3), new("extended", 4, "2.9 m of wire"), new("added", 1)],
        Belts = [new("Accessory belt", "5PK1195", "5PK1210 with the donor's alternator")],
        Hours = new("34", "48", "70", "hours"),
        Money = new("1,480", "1,950", "2,720", "EUR"),
        MoneyNote = "invented prices of 15 January 2026",
        Skill = "practised",
        People = "two for a day, else one",
        Figures = [new("Elapsed", "9 days", "one person, six hours a day"), new("Power to mass", "118 W/kg", "was 74 W/kg")],
    };

    private static GuideChoice[] Choices() =>
    [
        new()
        {
            Id = "alternator",
            Title = "Alternator",
            Question = "Which alternator charges the battery?",
            Options =
            [
                new() { Id = "keep", Title = "The chassis's own", IsRecommended = true, Because = Words("Its plug goes straight in."), About = Words("55 A; enough without air conditioning.") },
                new() { Id = "donor", Title = "The donor's", About = Words("70 A, its plug has to be changed.") },
            ],
        },
        new()
        {
            Id = "ecu",
            Title = "ECU",
            Question = "What runs the engine?",
            Options =
            [
                new() { Id = "donor", Title = "The donor's", IsRecommended = true },
                new() { Id = "standalone", Title = "A programmable one" },
                new() { Id = "own", Title = "The chassis's own", IsOffered = false, Because = Words("A carburetted chassis has none.") },
            ],
        },
    ];

    private static GuideReason Reason(Standing standing, string words, string path = "guide/x/y.html") => new()
    {
        Because = SamplePages.Html("Both ears have the same spacing; only the belt plane differs, by **8 mm**. See [extending wires](article:extending-wires).", path),
        Rule = new("alternator-kept", SitePaths.Rule("alternator-kept")),
        Standing = standing,
        StandingText = words,
        Checked = "2025-04-01",
        By = "M. Ostrander",
        Sources = [new("1", "#source-1")],
    };

    private static GuideLine Line(Verb verb, string words, GuideCondition? condition, Standing standing, string standingWords) => new()
    {
        Verb = verb,
        VerbText = words,
        Condition = condition,
        Reason = Reason(standing, standingWords),
    };

    private static GuideLine KeptAlternator() => Line(Verb.Move, "Keep the chassis's own, moved to the donor's bracket", Kept, Standing.Built, "built and driven") with
    {
        Parts = [new(new("Bracket spacer 8 mm", SitePaths.Part("bracket-spacer")), "9 EUR", "machine shop")],
        Cautions = [new("Electrics", Words("Battery off first."))],
        Steps = [Words("Fit the spacer between ear and bracket."), Words("Check that the pulleys stand in one plane within 1 mm.")],
        Articles = [new("Sizing the main cable", SitePaths.Article("main-cable"))],
    };

    private static GuideSystem[] Systems() =>
    [
        new()
        {
            Id = "mounts",
            Title = "Mounts and structure",
            Positions =
            [
                new() { Id = "timing-side-mount", Position = new("Timing-side mount", SitePaths.Position("timing-side-mount")), Lines = [Line(Verb.Take, "Take the donor's bracket, with the chassis's rubber", null, Standing.Built, "built and driven")] },
                new() { Id = "torque-arm", Position = new("Torque arm", SitePaths.Position("torque-arm")), Lines = [Line(Verb.Make, "Make a bracket from 6 mm plate", null, Standing.Measured, "measured") with { Parts = [new(new("Plate 6 mm, 120 × 80", SitePaths.Part("plate-6")), "12 EUR", "machine shop")], Steps = [Words("Bolt the template to the subframe's two free holes."), Words("Weld with the engine in place and the weight on all mounts.")], Mistakes = [Words("One of the two arms is left out; the downpipe cracks within a month.")] }] },
            ],
        },
        new()
        {
            Id = "ancillaries",
            Title = "Ancillaries",
            Positions =
            [
                new()
                {
                    Id = "alternator",
                    Position = new("Alternator", SitePaths.Position("alternator")),
                    Lines = [KeptAlternator()],
                    Others = [new("or-alternator-1", Verb.Take, new("Take the donor's", SitePaths.Bench(Path, "otherwise") + "#or-alternator-1"), Donors)],
                },
                new() { Id = "power-steering", Position = new("Power-steering pump", SitePaths.Position("power-steering")), Lines = [Line(Verb.LeaveOff, "Leave the donor's off and blank its bracket", null, Standing.Built, "built and driven")] },
                new() { Id = "sender", Position = new("Gauge sender", SitePaths.Position("sender")), Lines = [Line(Verb.Keep, "Keep the chassis's own and renew its wear parts", null, Standing.Built, "built and driven")] },
                new() { Id = "outlet", Position = new("Water outlet", SitePaths.Position("outlet")), Lines = [Line(Verb.Modify, "Modify the donor's: tap M12 × 1.5 for the sender", null, Standing.Measured, "measured"), Line(Verb.Buy, "Buy a radiator hose, 32 mm, cut to 410 mm", null, Standing.Built, "built and driven")] },
            ],
        },
    ];

    private static GuideFigures Figures(string id, string title) => new()
    {
        Id = id,
        Title = title,
        Figures = [new("Engine speed at 100 km/h", "3472 rpm"), new("Speedometer", "reads 1.2 % high", "beyond what the law allows", Weight.Caution)],
        Within = "Within their limits: injector duty.",
        Gaps = ["Shift points: not computed, for the power curve is not known."],
        Sheet = new("Tables, charts and how it was reckoned", SitePaths.Bench(Path, "figures") + "#" + id),
    };

    private static GuideGearbox Gearbox() => new()
    {
        Title = "Quillet four-speed",
        About = Words("The car's own."),
        Figures = [Figures("gearing", "Gearing")],
        Systems = [new() { Id = "driveline", Title = "Driveline", Positions = [new() { Id = "bell-housing", Position = new("Bell housing", SitePaths.Position("bell-housing")), Lines = [Line(Verb.Make, "Make an adapter plate, 12 mm", null, Standing.Built, "built and driven")] }] }],
    };

    private static GuideLedger Gearing() => new()
    {
        Id = "gearing",
        Title = "Gearing",
        Figures = [new("Engine speed at 100 km/h", "3472 rpm"), new("Speedometer", "reads 1.2 % high", "within what the law allows")],
        Tables = [new("Road speed at 1,000 engine revolutions a minute", ["Gear", "Ratio", "Speed, km/h"], [new(["first", "3.550", "7.9"]), new(["second", "1.950", "14.3"])])],
        Gaps = ["Shift points: not computed, for the power curve is not known."],
        Notes = ["Slip of the tyre is left out."],
        Reasons = [new("Tyre diameter", "D = d + 2 W A; tyre width 165 mm", "UN Regulation No. 30")],
    };

    private static BeltCard Belt() => new()
    {
        Title = "Accessory belt",
        Designation = "5PK1195",
        Words = "Five ribs: the water pump has no more.",
        RunnersUp = [new("5PK1200", "fits, 2 mm nearer the end of the slot")],
        Tone = [new("Pluck here", "Crankshaft to Alternator", "the longest free span, 255 mm"), new("New belt", "138 to 152 Hz")],
        Shims = ["Bring Alternator 1.5 mm out, away from the gearbox."],
        Trim = "No belt with 5 ribs is stocked: trim one with 6.",
        Drawing = new HtmlString("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-90 -330 400 430\" role=\"img\" aria-label=\"Belt path\"><circle class=\"belt-pulley\" cx=\"0\" cy=\"0\" r=\"70\" stroke-width=\"2\"/><circle class=\"belt-pulley\" cx=\"230\" cy=\"-120\" r=\"32\" stroke-width=\"2\"/><circle class=\"belt-pulley\" cx=\"20\" cy=\"-240\" r=\"58\" stroke-width=\"2\"/><circle class=\"belt-pulley-back\" cx=\"115\" cy=\"-90\" r=\"28\" stroke-width=\"2\"/><line class=\"belt-adjuster\" x1=\"210\" y1=\"-140\" x2=\"255\" y2=\"-95\" stroke-width=\"2\"/><path class=\"belt-path\" d=\"M-70 0L-38 -240M20 -298L240 -150M245 -92L35 60\" stroke-width=\"4\"/><text class=\"belt-label\" x=\"0\" y=\"4\" font-size=\"13\" text-anchor=\"middle\">crank</text><text class=\"belt-label\" x=\"230\" y=\"-70\" font-size=\"13\" text-anchor=\"middle\">alternator</text></svg>"),
        DrawingText = "Looking at the timing side: crank below, water pump above, alternator towards the front.",
        Pulleys =
        [
            new() { Name = "Crankshaft", From = "donor", Side = "grooved", Diameter = "138.0", Ribs = "5", Wrap = "173.2", WrapLimit = "140", Span = "241.6", PlaneOffset = "0.0" },
            new() { Name = "Alternator", From = "chassis", Side = "grooved", Diameter = "62.5", Ribs = "5", Wrap = "112.4", WrapLimit = "120", Span = "255.0", PlaneOffset = "0.6", Weight = Weight.Bad, Remark = "wraps less than it should" },
            new() { Name = "Water pump", From = "donor", Side = "grooved", Diameter = "116.0", Ribs = "5", Wrap = "88.1", WrapLimit = "60", Span = "243.3", PlaneOffset = "0.2" },
        ],
        Window = [new("Loop at the slot's short end", "1,176 mm"), new("Loop at the slot's long end", "1,221 mm"), new("Room to slip on", "1.6 %", "0.5 % needed", Weight.Good), new("Room to take up", "0.8 %", "1 % needed", Weight.Caution)],
        Stated = [new("belt.accessory.length", "1,195 mm", "1,193.4 mm", "agrees within 5 mm", Weight.Good, new("Belt with own alternator", SitePaths.Rule("belt-own")))],
    };

    private static WiringBench Wiring() => new()
    {
        Counts = [new("straight in", 9), new("plug changed", 3), new("extended", 4, "2.9 m of wire"), new("added", 1)],
        Devices =
        [
            new() { Title = "Alternator", Connector = new("Oval three-way", SitePaths.Connector("oval-3")), Action = "lengthen the wires", Detail = "wires longer by 240 mm", IsOpen = true, Pins = SamplePages.Pins() },
            new() { Title = "Gauge sender", Connector = new("Single blade", SitePaths.Connector("blade-1")), Action = "add a plug", Weight = Weight.Caution },
        ],
        Cuts = [new("1", new WireColour("RD/YE"), "2.5", "310 mm", "Battery feed", "harness, splice 1", "alternator 1", "plug is 240 mm away", "5", "0.09", "its current asks for 0.5 mm²", "screened"), new("2", new WireColour("WH/BK"), "0.75", "310 mm", "Charge lamp", "harness, splice 2", "alternator 3")],
        Sizing = "Each size is the smallest that does.",
        Protection = [new("Cooling fan: a 20 A blade fuse in its new feed.", "yellow", "YE")],
        Joints = [new("end to end", "0.75 mm²", "4", "3 mm", "35 mm")],
        Grounds = [new("Sensor ground", "Coolant sensor 2", "ends at the ECU's reference pin", "nothing else", "power ground")],
        Loose = [new("Purge valve", "harness side of the bulkhead plug, 4", "cap", "the other side has no use for it")],
        Wire = [new(new WireColour("RD/YE"), "2.5", "0.31 m", 1), new(new WireColour("WH/BK"), "0.75", "0.31 m", 1), new(new WireColour("GN"), "0.75", "2.28 m", 4)],
        Terminals = [new("blade 2.8", "0.5 to 1.0", 6, "green", "sender, ECU"), new("ring M6", "2.5 to 6", 1)],
        Consumables = [new("Splices", "5"), new("Heat-shrink, 6 mm", "0.4 m")],
        Signals = [new("Tachometer", "donor ECU, coil signal", "the gauge asks for coil-negative: converter", Weight.Caution, new("Tachometer", SitePaths.Rule("tachometer"))), new("Oil lamp", "chassis's switch in the donor's block")],
        Adapter = new()
        {
            Title = "Adapter lead, harness to ECU",
            Words = "24 cavities on the harness, 32 on the ECU.",
            Drawing = new HtmlString("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 300 90\" role=\"img\" aria-label=\"Adapter\"><rect class=\"plug-box\" x=\"10\" y=\"10\" width=\"60\" height=\"70\"/><rect class=\"plug-box\" x=\"230\" y=\"10\" width=\"60\" height=\"70\"/><path class=\"wire joined base-rd\" d=\"M70 30C150 30 150 60 230 60M70 60C150 60 150 30 230 30\"/></svg>"),
            DrawingText = "Each line is a wire from a cavity on the left to one on the right.",
            Rows = [new("Injector 1", "A 4", "B 17", "join", new WireColour("BN/WH"), "0.75"), new("Knock sensor", "A 11", "none", "run a new shielded wire", null, "0.5", Weight.Caution)],
        },
    };

    private static GuideEcu Ecu() => new()
    {
        Title = "Marn 16 ECU, manual",
                Figures = [Figures("fuel", "Fuel and ignition")],
        Systems = [new() { Id = "control", Title = "Control", Positions = [new() { Id = "ecu", Position = new("ECU", SitePaths.Position("ecu")), Lines = [Line(Verb.Take, "Take the donor's with its harness", null, Standing.Built, "built and driven")] }] }],
    };

    private static GuideTask Task(string id, string title) => new()
    {
        Id = id,
        Title = title,
        Hours = new("0.5", "1", "2", "hours"),
        Skill = "careful",
        People = "1 person",
        After = id == "machine-plate" ? [] : [new("Have the adapter plate machined", "#task-machine-plate")],
        Tools = ["torque wrench", "13 mm socket"],
        Consumables = ["thread lock"],
        Steps = [Words("Clean both faces."), Words("Tighten crosswise to **45 Nm**.")],
        Cautions = id == "fuel-pressure" ? [new("Fuel", Words("No flame, no heat, no sparks within reach."))] : [],
        Mistakes = [Words("Dowels are forgotten.")],
        WhyNow = Words("The seal cannot be reached later."),
    };
}
