namespace Swapwright.Site.Models;

/// <summary>A link to a sheet with what is on it.</summary>
public sealed record BenchLink(PageLink Sheet, string Words);

/// <summary>What stands at the head and the foot of every sheet.</summary>
public sealed record BenchHead
{
    /// <summary>The guide it belongs to, called by its combination.</summary>
    public required PageLink Guide { get; init; }

    /// <summary>As in "Wiring sheet".</summary>
    public required string Kind { get; init; }

    /// <summary>What is chosen: "Gearbox" → "the donor's five-speed".</summary>
    public IReadOnlyList<NamedValue> Chosen { get; init; } = [];

    /// <summary>The guide's other sheets.</summary>
    public IReadOnlyList<PageLink> Others { get; init; } = [];
}

/// <summary>A sheet that is printed for itself and taken to the bench: one piece of a guide, whole.</summary>
public abstract record BenchPage : Page
{
    public required BenchHead Head { get; init; }

    public override IReadOnlyList<string> Styles => ["assets/guide.css"];
}

/// <summary>Plug by plug, the cut list and what lies on the bench for it.</summary>
public sealed record WiringPage : BenchPage
{
    /// <summary>One, or none where neither vehicle brings a harness.</summary>
    public IReadOnlyList<WiringBench> Wiring { get; init; } = [];

    internal override string Template => "bench-wiring";
}

/// <summary>Each belt with its path, its pulleys, the adjuster's window and its tension.</summary>
public sealed record BeltsPage : BenchPage
{
    public IReadOnlyList<BeltCard> Belts { get; init; } = [];

    internal override string Template => "bench-belts";
}

/// <summary>Each hose from end to end, circuit by circuit.</summary>
public sealed record HosesPage : BenchPage
{
    public IReadOnlyList<GuideHose> Hoses { get; init; } = [];

    public IReadOnlyList<GuideHoseCircuit> Circuits { get; init; } = [];

    /// <summary>Hose as it is sold → how many.</summary>
    public IReadOnlyList<NamedValue> Bought { get; init; } = [];

    /// <summary>By how many per cent each piece is counted longer there.</summary>
    public string Spare { get; init; } = "";

    internal override string Template => "bench-hoses";
}

/// <summary>The order of work with every step.</summary>
public sealed record WorkPage : BenchPage
{
    public IReadOnlyList<WorkPhase> Work { get; init; } = [];

    /// <summary>Worksheets that are read beside the work: torques and fluids.</summary>
    public IReadOnlyList<GuideLedger> Ledgers { get; init; } = [];

    /// <summary>The work as bars over days.</summary>
    public HtmlString Drawing { get; init; } = HtmlString.Empty;

    /// <summary>Hours by phase as ranges.</summary>
    public HtmlString Ranges { get; init; } = HtmlString.Empty;

    /// <summary>Which chain of work decides how long it takes.</summary>
    public string Words { get; init; } = "";

    /// <summary>Tools of all tasks.</summary>
    public IReadOnlyList<string> Tools { get; init; } = [];

    /// <summary>What all tasks use up.</summary>
    public IReadOnlyList<string> Consumables { get; init; } = [];

    internal override string Template => "bench-work";
}

/// <summary>What to get, by where it comes from.</summary>
public sealed record ShoppingPage : BenchPage
{
    /// <summary>What is settled before any money is spent.</summary>
    public IReadOnlyList<GuideTask> Before { get; init; } = [];

    /// <summary>Money by source as ranges.</summary>
    public HtmlString Ranges { get; init; } = HtmlString.Empty;

    public IReadOnlyList<ShoppingGroup> Shopping { get; init; } = [];

    public string Note { get; init; } = "";

    /// <summary>Something is filled in that the list has not.</summary>
    public bool HasFluids { get; init; }

    internal override string Template => "bench-shopping";
}

/// <summary>The parts of one kind of place.</summary>
public sealed record ShoppingGroup(string Id, string Source, IReadOnlyList<ShoppingItem> Items, string Total);

/// <param name="Amount">Null for one.</param>
/// <param name="For">The line of the guide that asks for it.</param>
public sealed record ShoppingItem(PageLink Part, string? Amount = null, string? Price = null, PageLink? For = null)
{
    /// <summary>Which ones to ask for, where a part is sold in several sizes.</summary>
    public string Sizes { get; init; } = "";
}

/// <summary>Every computed figure with its table, chart, formula and source.</summary>
public sealed record FiguresPage : BenchPage
{
    /// <summary>What the gearbox and the ECU are, fact by fact.</summary>
    public IReadOnlyList<FactGroup> Facts { get; init; } = [];

    public IReadOnlyList<GuideLedger> Ledgers { get; init; } = [];

    internal override string Template => "bench-figures";
}

public sealed record FactGroup(string Title, IReadOnlyList<NamedValue> Facts) : Repeated;

/// <summary>What the guide would say with other choices: every line in full, and what cannot be combined.</summary>
public sealed record OtherwisePage : BenchPage
{
    public IReadOnlyList<GuideExclusion> Exclusions { get; init; } = [];

    public IReadOnlyList<OtherwiseSystem> Systems { get; init; } = [];

    /// <summary>On whose word, numbered as in the reasons.</summary>
    public IReadOnlyList<SourceLine> Sources { get; init; } = [];

    internal override string Template => "bench-otherwise";
}

public sealed record OtherwiseSystem(string Id, string Title, IReadOnlyList<OtherwisePosition> Positions);

/// <param name="Position">Linked to its place in the guide.</param>
public sealed record OtherwisePosition(PageLink Position, IReadOnlyList<OtherwiseLine> Lines);

/// <param name="Id">Anchor of the line.</param>
public sealed record OtherwiseLine(string Id, GuideLine Line);
