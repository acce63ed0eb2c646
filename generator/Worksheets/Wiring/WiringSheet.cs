using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>What becomes of one harness plug or of one device's missing plug. Exactly one holds.</summary>
public enum PlugOutcome
{
    /// <summary>Mates, the same signal in every cavity that the device uses, within reach.</summary>
    StraightIn,

    /// <summary>Mates with the same signals, but is beyond reach: only lengthened.</summary>
    Extended,

    /// <summary>Mates, but at least one cavity that the device uses holds another wire or none: wires move, join or are run anew.</summary>
    RePinned,

    /// <summary>Does not mate: a new housing of the device's family, wires moved by signal.</summary>
    Changed,

    /// <summary>Does not mate, and an adapter lead covers it.</summary>
    Lead,

    /// <summary>The harness has no plug for this device: a new plug.</summary>
    Added,

    /// <summary>A harness plug whose device is not fitted.</summary>
    Capped,
}

/// <summary>How one cavity of a device gets its signal.</summary>
public enum WireAction
{
    /// <summary>The plug's wire is in the right cavity.</summary>
    Stays,

    /// <summary>A wire of the plug comes from another cavity, or from the old housing.</summary>
    Moves,

    /// <summary>A new wire to the ECU or to the bulkhead plug.</summary>
    Runs,

    /// <summary>A new wire spliced to an existing one of the same, shared signal.</summary>
    Joins,

    /// <summary>A new wire that goes on from one which is cut out of its plug, because nothing there takes it any more.</summary>
    TakesOver,

    /// <summary>No wire: the screen of a screened wire that stays at the plug, drawn out and sleeved.</summary>
    Screen,

    /// <summary>No wire: the cabin has a device of its own on the signal.</summary>
    Empty,

    /// <summary>Nothing carries the signal, or the data cannot be used; a problem says which.</summary>
    Unreached,
}

/// <summary>One cavity of a device.</summary>
/// <param name="FromCavity">Cavity of the harness plug as found, for a wire that stays or moves.</param>
/// <param name="ExtensionMm">Length to insert; 0 where the wire is long enough or new.</param>
/// <param name="Run">Label of the piece to cut (new wire or extension); null where none.</param>
public sealed record WireRow(
    string Cavity, string Signal, WireAction Action, string? FromCavity, string Colour, double SizeMm2, double ExtensionMm, string? Run)
{
    /// <summary>Too short and too heavy to be spliced: a cable in one piece takes its place, longer by the extension.</summary>
    public bool IsRenewed { get; init; }
}

/// <summary>A harness wire that nothing takes.</summary>
/// <param name="StaysInHousing">The housing stays and the device leaves this cavity empty: the wire may stay where it is.</param>
public sealed record CappedWire(string Role, string Cavity, string Signal, string Colour, double SizeMm2, bool StaysInHousing)
{
    /// <summary>Where it is led instead, for a wire that is cut out of its plug; empty for one that is capped.</summary>
    public ImmutableArray<WireEnd> Takers { get; init; } = [];
}

/// <summary>A plug that would go in as found and put the wrong wire on a cavity.</summary>
public sealed record CavityClash(string Cavity, string DeviceSignal, string WireSignal, bool KindsDiffer);

/// <summary>The work on one plug.</summary>
/// <param name="HarnessConnector">Family of the harness plug; null where the harness has none.</param>
/// <param name="DeviceConnector">Family of the device; null for a capped plug.</param>
/// <param name="DistanceMm">Straight distance from plug to device; 0 where one is missing.</param>
/// <param name="Extended">At least one wire is lengthened.</param>
/// <param name="LeadPart">The adapter lead that is used.</param>
/// <param name="Wires">One row a used cavity of the device, in cavity order.</param>
/// <param name="Clashes">Why a plug that mates must not be pushed on as found.</param>
public sealed record PlugWork(
    string Role,
    string Title,
    PlugOutcome Outcome,
    string? HarnessConnector,
    string? DeviceConnector,
    double DistanceMm,
    bool Extended,
    string? LeadPart,
    ImmutableArray<WireRow> Wires,
    ImmutableArray<CappedWire> Capped,
    ImmutableArray<CavityClash> Clashes)
{
    public bool Joined => Wires.Any(wire => wire.Action is WireAction.Joins or WireAction.TakesOver);

    /// <summary>Its new housing comes with a bought lead.</summary>
    public bool IsPlugBrought { get; init; }

    /// <summary>A new housing is bought for it.</summary>
    public bool WantsHousing => Outcome is PlugOutcome.Changed or PlugOutcome.Added && !IsPlugBrought;

    /// <summary>Wires that change their cavity.</summary>
    public IEnumerable<WireRow> Moves => Wires.Where(wire => wire.Action == WireAction.Moves);

    /// <summary>What is in the harness already and gets a new terminal: wires that change their housing, and a screen that is drawn out.</summary>
    internal IEnumerable<WireRow> Recrimped => Wires.Where(wire => wire.Action == WireAction.Screen || (wire.Action == WireAction.Moves && Outcome == PlugOutcome.Changed));
}

/// <summary>
/// Plugs by outcome. <see cref="StraightIn"/>, <see cref="RePinned"/>, <see cref="Changed"/>, <see cref="Lead"/>,
/// <see cref="Added"/> and <see cref="ExtendedOnly"/> add up to the devices; <see cref="Capped"/> counts harness plugs without
/// a device. <see cref="Extended"/> (every plug with a lengthened wire, the ones only lengthened included) and
/// <see cref="Joined"/> (every plug with a wire spliced to an existing one) are counted besides.
/// </summary>
public sealed record PlugCounts(
    int StraightIn, int RePinned, int Changed, int Lead, int Added, int ExtendedOnly, int Extended, int Joined, int Capped)
{
    public static PlugCounts Of(ImmutableArray<PlugWork> plugs)
    {
        int Count(PlugOutcome outcome) => plugs.Count(plug => plug.Outcome == outcome);
        return new(
            Count(PlugOutcome.StraightIn),
            Count(PlugOutcome.RePinned),
            Count(PlugOutcome.Changed),
            Count(PlugOutcome.Lead),
            Count(PlugOutcome.Added),
            Count(PlugOutcome.Extended),
            plugs.Count(plug => plug.Extended),
            plugs.Count(plug => plug.Joined),
            Count(PlugOutcome.Capped));
    }
}

/// <summary>What a new piece of wire is for.</summary>
public enum WirePurpose
{
    Extension,

    /// <summary>A cable that takes the whole place of one that is too short.</summary>
    Renewal,
    Device,
    EcuAdapter,
    BodyAdapter,
}

public enum WireEndKind
{
    /// <summary>A new terminal in a plug.</summary>
    Terminal,

    /// <summary>A splice to another wire.</summary>
    Splice,

    /// <summary>A ring terminal under a screw.</summary>
    Ring,

    /// <summary>A pin of the counterpart that the harness's own plug goes into.</summary>
    Counterpart,
}

/// <summary>Where a piece of wire ends.</summary>
/// <param name="Place">Device role, ECU id, "body" or "harness body".</param>
/// <param name="Connector">Connector family at that place; null where it does not matter.</param>
public sealed record WireEnd(WireEndKind Kind, string Place, string Cavity, string? Connector);

/// <summary>One piece of new wire.</summary>
/// <param name="Label">Role, cavity and signal, as on the cutting list; unique in a sheet.</param>
/// <param name="SizeMm2">Conductor chosen, mm².</param>
/// <param name="AskedSizeMm2">Conductor of the signal or of the wire as found; smaller than <see cref="SizeMm2"/> where the current asked for more.</param>
/// <param name="DropV">Voltage lost along this piece at its current and the temperature of the settings, where the current is known.</param>
public sealed record WireRun(
    string Label,
    WirePurpose Purpose,
    string Role,
    string Cavity,
    string Signal,
    WireEnd From,
    WireEnd To,
    double LengthMm,
    double SizeMm2,
    double AskedSizeMm2,
    string Colour,
    double? DropV,
    bool Shielded,
    int Splices)
{
    /// <summary>How the size was chosen; null where no current is known.</summary>
    public ConductorChoice? Conductor { get; init; }

    /// <summary>Conductor of the harness wire that it is spliced to, mm²; 0 where it ends at none.</summary>
    public double JoinedMm2 { get; init; }

    /// <summary>It goes on where a wire was cut out of a plug that nothing takes.</summary>
    public bool TakesOver { get; init; }

    /// <summary>The straight way that its length follows from, mm; null where an adapter's length does not go by a way.</summary>
    public double? WayMm { get; init; }

    /// <summary>The part that brings it; null for most.</summary>
    public DeviceLead? Lead { get; init; }

    /// <summary>Label of the screened piece whose screen it is; null for a wire.</summary>
    public string? ScreenOf { get; init; }

    /// <summary>It comes off a reel, and not with a lead or as the screen of another piece.</summary>
    public bool IsCut => Lead is null && ScreenOf is null;

    /// <summary>Ends that are crimped here.</summary>
    internal IEnumerable<WireEnd> Crimped() =>
        new[] { Lead is null ? From : null, Lead is { HasFarEnds: true } ? null : To }.OfType<WireEnd>().Where(end => end.Kind is WireEndKind.Terminal or WireEndKind.Ring);
}

public enum AdapterAction
{
    Join,
    AddWire,
    Cap,

    /// <summary>Nothing joins it on the other side; a device of this build hangs on it.</summary>
    Branch,
    Missing,
}

/// <summary>One row of an adapter harness.</summary>
/// <param name="FromPlug">Plug id of that cavity; empty for a bulkhead plug.</param>
/// <param name="From">Cavity on the harness's side, as in "a5"; null where it has none.</param>
/// <param name="To">Cavity on the side in use, as in "b12"; null where it has none.</param>
/// <param name="Optional">For a row without a counterpart: the build runs without it.</param>
/// <param name="SizeMm2">Conductor of the piece, or of the wire as found where none is cut, mm².</param>
/// <param name="Run">Label of the piece of wire; null where none is cut.</param>
public sealed record AdapterRow(
    string Signal,
    string Title,
    SignalKind? Kind,
    string? FromPlug,
    string? From,
    string? ToPlug,
    string? To,
    AdapterAction Action,
    bool Shielded,
    string Note,
    string? FromColour,
    string? ToColour,
    double SizeMm2,
    bool Optional,
    string? Run)
{
    /// <summary>Colour of the piece that is cut; null where none is.</summary>
    public string? CutColour { get; init; }

    /// <summary>The wire that a builder has in hand: the piece that is cut, else the one that is found there.</summary>
    public string? Colour => CutColour ?? FromColour ?? ToColour;
}

/// <summary>One side of an adapter harness: a title and its plugs (id, connector family).</summary>
public sealed record AdapterSide(string Title, ImmutableArray<KeyValuePair<string, string>> Plugs);

/// <summary>An adapter harness, signal by signal.</summary>
/// <param name="From">The harness's side; no plugs where the harness has none.</param>
/// <param name="To">The side in use.</param>
/// <param name="PlugsTogether">The two sides mate: nothing is made, the rows are moves and new wires in the harness's own plug.</param>
public sealed record AdapterHarness(AdapterSide From, AdapterSide To, bool PlugsTogether, ImmutableArray<AdapterRow> Rows);

public enum NeedSupply
{
    HarnessBody,
    Device,
    Ecu,
    Unsupplied,
}

/// <summary>Who gives the cabin a signal that it needs.</summary>
/// <param name="Place">Device role or ECU id, or the harness's bulkhead plug; null where nobody does.</param>
/// <param name="Behind">For the harness's bulkhead plug: the device or ECU in use that has the signal; null where none has.</param>
public sealed record NeedTrace(string Signal, NeedSupply Supply, string? Place, string? Cavity, string? Behind);

public sealed record CountLine(string Name, int Count);

/// <summary>Terminals of one kind for one family's plugs; as many seals where the family is sealed.</summary>
public sealed record TerminalLine(string Connector, string Terminal, int Count, int Seals);

/// <summary>Wire of one size and colour.</summary>
public sealed record WireLine(double SizeMm2, string Colour, double LengthMm, int Pieces)
{
    /// <summary>Pieces that are screened, and so come off another reel.</summary>
    public int Screened { get; init; }
}

/// <summary>One piece to cut.</summary>
public sealed record CutPiece(double SizeMm2, string Colour, double LengthMm, string Label, string Role, string Cavity, string Signal);

/// <summary>What to buy and cut.</summary>
/// <param name="BlankingPlugs">For the empty cavities of new sealed housings.</param>
/// <param name="HeatShrink">Sleeves, one a splice.</param>
/// <param name="Housings">New plug housings by family.</param>
/// <param name="Counterparts">Halves that the harness's own plugs go into (adapter harnesses), by family.</param>
/// <param name="Caps">Wire ends that are capped outside a housing.</param>
/// <param name="Cuts">Sorted by size, colour and length (longest first).</param>
/// <param name="Uncut">What is laid and not cut, since a lead brings it or it is the screen of another piece; sorted alike.</param>
public sealed record WiringBill(
    ImmutableArray<TerminalLine> Terminals,
    int Seals,
    int BlankingPlugs,
    int Splices,
    int HeatShrink,
    ImmutableArray<CountLine> Housings,
    ImmutableArray<CountLine> Counterparts,
    ImmutableArray<CountLine> Leads,
    int Caps,
    ImmutableArray<WireLine> Wire,
    ImmutableArray<CutPiece> Cuts,
    ImmutableArray<CutPiece> Uncut)
{
    public double TotalLengthMm => Wire.Sum(line => line.LengthMm);

    /// <summary>The cutting list as it is numbered, from 1.</summary>
    public IEnumerable<CutPiece> Listed => Cuts.Concat(Uncut);
}

public enum WiringProblemKind
{
    UnknownConnector,
    UnknownCavity,
    UnknownSignal,
    UnknownColour,
    BadNumber,
    DuplicateCavity,
    DuplicateRole,
    SignalNowhere,
    KindConflict,
    ThinWire,
    CurrentBeyondTable,
    NeedUnsupplied,
    NeedUnfed,
}

/// <summary>Something in the data that keeps the sheet from being complete or right.</summary>
/// <param name="Subject">Device role, plug, ECU id or signal it is about.</param>
/// <param name="Message">What is wrong: lower case, no full stop, names in back-ticks.</param>
public sealed record WiringProblem(WiringProblemKind Kind, string Subject, string? Cavity, string? Signal, string Message);

/// <summary>The wiring of one combination.</summary>
/// <param name="Plugs">By role; capped plugs among them.</param>
/// <param name="EcuAdapter">Between the harness's ECU side and the ECU in use; null where they are the same or neither exists.</param>
/// <param name="BodyAdapter">Between the harness's bulkhead plug and the cabin's; null where they plug together or the cabin has none.</param>
/// <param name="Runs">Every piece of new wire, by label.</param>
public sealed record WiringSheet(
    ImmutableArray<PlugWork> Plugs,
    PlugCounts Counts,
    AdapterHarness? EcuAdapter,
    AdapterHarness? BodyAdapter,
    ImmutableArray<NeedTrace> Needs,
    ImmutableArray<WireRun> Runs,
    WiringBill Bill,
    ImmutableArray<WiringProblem> Problems)
{
    /// <summary>What is bought for it; empty where that was not asked.</summary>
    public ImmutableArray<WiringPurchase> Purchases { get; init; } = [];

    /// <summary>Wires of the harness that more would hang on than they carry; each gets a relay.</summary>
    public ImmutableArray<SharedFeed> Overloads { get; init; } = [];

    /// <summary>Feeds of the cabin that more hangs on than their wires at the bulkhead carry.</summary>
    public ImmutableArray<BulkheadFeed> BulkheadFeeds { get; init; } = [];

    /// <summary>Pieces that come off a reel.</summary>
    public IEnumerable<WireRun> Pieces => Runs.Where(run => run.IsCut);

    /// <summary>What it was computed from, for what is only asked of a sheet that is shown: traces, grounds, fuses.</summary>
    internal WiringData? Data { get; init; }
}
