namespace Swapwright.Site.Models;

public sealed record GuideGearbox
{
    public required string Title { get; init; }

    public HtmlString About { get; init; } = HtmlString.Empty;

    /// <summary>Road speeds, engine speed at cruise, speedometer error.</summary>
    public IReadOnlyList<GuideFigures> Figures { get; init; } = [];

    /// <summary>The systems of the driveline: gearbox, clutch, shafts, shifter.</summary>
    public IReadOnlyList<GuideSystem> Systems { get; init; } = [];
}

/// <summary>A belt as the guide shows it; the belt card has pulleys, window and tension.</summary>
public sealed record GuideBelt
{
    public required string Title { get; init; }

    /// <summary>Rib count, profile and length in one; empty where no stocked belt fits.</summary>
    public required string Designation { get; init; }

    /// <summary>Why no belt fits, or what to watch.</summary>
    public string Words { get; init; } = "";

    /// <summary>How to trim a wider belt; empty where the right one is stocked.</summary>
    public string Trim { get; init; } = "";

    public HtmlString Drawing { get; init; } = HtmlString.Empty;
}

public sealed record BeltCard
{
    public required string Title { get; init; }

    /// <summary>Rib count, profile and length in one; empty where no stocked belt fits.</summary>
    public required string Designation { get; init; }

    /// <summary>Why no belt fits, or what to watch.</summary>
    public string Words { get; init; } = "";

    public IReadOnlyList<NamedValue> RunnersUp { get; init; } = [];

    /// <summary>Which span to pluck and how it sounds; empty where nothing is tightened by hand.</summary>
    public IReadOnlyList<NamedValue> Tone { get; init; } = [];

    /// <summary>Which pulleys to move into plane, and which way.</summary>
    public IReadOnlyList<string> Shims { get; init; } = [];

    /// <summary>How to trim a wider belt; empty where the right one is stocked.</summary>
    public string Trim { get; init; } = "";

    public HtmlString Drawing { get; init; } = HtmlString.Empty;

    /// <summary>The drawing in words, for those who cannot see it.</summary>
    public string DrawingText { get; init; } = "";

    public IReadOnlyList<GuideBeltPulley> Pulleys { get; init; } = [];

    /// <summary>Shortest and longest loop, room to slip on, room to take up.</summary>
    public IReadOnlyList<NamedValue> Window { get; init; } = [];

    public IReadOnlyList<GuideStatedValue> Stated { get; init; } = [];
}

/// <summary>A pulley in belt order; numbers display-ready, millimetres and degrees in the headings.</summary>
public sealed record GuideBeltPulley
{
    public required string Name { get; init; }

    /// <summary>Whose pulley it is: chassis, donor, a part.</summary>
    public string From { get; init; } = "";

    public string Side { get; init; } = "";

    public string Diameter { get; init; } = "";

    public string Ribs { get; init; } = "";

    public string Wrap { get; init; } = "";

    public string WrapLimit { get; init; } = "";

    /// <summary>Free span to the next pulley.</summary>
    public string Span { get; init; } = "";

    public string PlaneOffset { get; init; } = "";

    public Weight Weight { get; init; } = Weight.Plain;

    public string Remark { get; init; } = "";
}

/// <summary>A number that a rule states beside the one computed.</summary>
public sealed record GuideStatedValue(string Name, string Stated, string Computed, string Verdict, Weight Weight, PageLink? Rule = null);

/// <summary>The wiring as the guide shows it; the wiring sheet has the wires.</summary>
public sealed record GuideWiring(IReadOnlyList<NamedCount> Counts, IReadOnlyList<GuidePlug> Plugs);

/// <summary>A plug that there is work on.</summary>
public sealed record GuidePlug(string Title, string Action, string Detail);

public sealed record WiringBench
{
    /// <summary>Plugs by what they need.</summary>
    public IReadOnlyList<NamedCount> Counts { get; init; } = [];

    /// <summary>Numbered from 1 in this order, as on the plan.</summary>
    public IReadOnlyList<GuideDevice> Devices { get; init; } = [];

    /// <summary>Where each device lies in the bay, and which wires grow.</summary>
    public HtmlString Plan { get; init; } = HtmlString.Empty;

    public IReadOnlyList<GuideWireCut> Cuts { get; init; } = [];

    public IReadOnlyList<GuideWireTotal> Wire { get; init; } = [];

    public IReadOnlyList<GuideTerminal> Terminals { get; init; } = [];

    /// <summary>How new wires are sized, in a sentence.</summary>
    public string Sizing { get; init; } = "";

    /// <summary>Fuses and relays for loads that the harness did not have.</summary>
    public IReadOnlyList<GuideProtection> Protection { get; init; } = [];

    public IReadOnlyList<GuideJoint> Joints { get; init; } = [];

    public IReadOnlyList<GuideGround> Grounds { get; init; } = [];

    public IReadOnlyList<GuideLooseEnd> Loose { get; init; } = [];

    /// <summary>Splices, seals, heat-shrink.</summary>
    public IReadOnlyList<NamedValue> Consumables { get; init; } = [];

    /// <summary>Signals the chassis still needs and who supplies them now.</summary>
    public IReadOnlyList<GuideSignalSupply> Signals { get; init; } = [];

    public GuideAdapter? Adapter { get; init; }
}

/// <summary>A device on the engine or in the bay and what its plug needs.</summary>
public sealed record GuideDevice
{
    public required string Title { get; init; }

    public PageLink? Connector { get; init; }

    /// <summary>In a few words: "plugs straight in", "change the plug".</summary>
    public required string Action { get; init; }

    /// <summary>What there is to know besides: the plug found on the harness, by how much the wires grow.</summary>
    public string Detail { get; init; } = "";

    public Weight Weight { get; init; } = Weight.Plain;

    /// <summary>Whether the wires are shown without asking, because something is to be done to them.</summary>
    public bool IsOpen { get; init; }

    public IReadOnlyList<GuidePin> Pins { get; init; } = [];

    /// <summary>The plug's face with the colour of each wire, where something is to be done to it.</summary>
    public HtmlString Face { get; init; } = HtmlString.Empty;

    /// <summary>From the device's cavities to where each wire ends, where something is to be done to it.</summary>
    public HtmlString Wires { get; init; } = HtmlString.Empty;
}

public sealed record GuidePin(string Cavity, string Signal, string Action = "", WireColour? Colour = null, string Size = "");

/// <summary>One piece of wire to cut, with its ends.</summary>
public sealed record GuideWireCut(
    string Number, WireColour Colour, string Size, string Length, string Signal, string From, string To, string Why = "", string Current = "", string Drop = "", string SizeWhy = "", string Screen = "");

/// <summary>A fuse or a relay in a sentence.</summary>
/// <param name="Colour">Of the fuse's body, in a word; empty for a relay.</param>
/// <param name="Swatch">The colour's code by IEC 60757, for its patch.</param>
public sealed record GuideProtection(string Words, string Colour = "", string Swatch = "");

/// <summary>A splice of a kind with the sleeve that it takes.</summary>
public sealed record GuideJoint(string Name, string Sizes, string Count, string Sleeve, string SleeveLength);

/// <summary>A ground and what may be joined with it.</summary>
public sealed record GuideGround(string Name, string Members, string Point, string Meets, string Apart);

/// <summary>A signal without a counterpart, what to do with it and why.</summary>
public sealed record GuideLooseEnd(string Signal, string Place, string Action, string Reason, Weight Weight = Weight.Plain);

public sealed record GuideWireTotal(WireColour Colour, string Size, string Length, int Pieces)
{
    public int Screened { get; init; }
}

public sealed record GuideTerminal(string Name, string WireSize, int Count, string Seal = "", string Use = "");

public sealed record GuideSignalSupply(string Signal, string Supplier, string Remark = "", Weight Weight = Weight.Plain, PageLink? Rule = null);

/// <summary>The lead between a harness and an ECU that were not made for each other.</summary>
public sealed record GuideAdapter
{
    public required string Title { get; init; }

    public string Words { get; init; } = "";

    public HtmlString Drawing { get; init; } = HtmlString.Empty;

    public string DrawingText { get; init; } = "";

    public IReadOnlyList<GuideAdapterRow> Rows { get; init; } = [];
}

public sealed record GuideAdapterRow(
    string Signal, string From, string To, string Action, WireColour? Colour = null, string Size = "", Weight Weight = Weight.Plain)
{
    /// <summary>On the cut list; empty where nothing is cut.</summary>
    public string Number { get; init; } = "";
}

/// <summary>A circuit of hoses in short.</summary>
public sealed record GuideHoseSum(string Circuit, string Words);

public sealed record GuideHose(
    string Circuit, string From, string To, string Size, string Length, string Action, string Class = "");

/// <summary>One circuit of the hoses, drawn, with the hose it needs.</summary>
public sealed record GuideHoseCircuit
{
    public required string Title { get; init; }

    public HtmlString Drawing { get; init; } = HtmlString.Empty;

    /// <summary>Size → metres.</summary>
    public IReadOnlyList<NamedValue> Totals { get; init; } = [];
}

public sealed record GuideEcu
{
    public required string Title { get; init; }

    public HtmlString About { get; init; } = HtmlString.Empty;

    /// <summary>Injector duty, ballast, pump flow: computed values of fuel and ignition.</summary>
    public IReadOnlyList<GuideFigures> Figures { get; init; } = [];

    public IReadOnlyList<GuideSystem> Systems { get; init; } = [];
}
