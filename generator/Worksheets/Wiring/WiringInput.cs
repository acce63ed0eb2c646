using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A point in the engine bay, millimetres: from the crank's nose, x to the right of somebody who looks at the belts, y up, z along the crank towards the gearbox.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct BayPoint(double X, double Y, double Z)
{
    /// <summary>Straight distance in millimetres; 0 where a coordinate is not a finite number (the input check reports it).</summary>
    public double DistanceTo(BayPoint other)
    {
        var (x, y, z) = (X - other.X, Y - other.Y, Z - other.Z);
        var distance = Math.Sqrt((x * x) + (y * y) + (z * z));
        return double.IsFinite(distance) ? distance : 0;
    }

    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);
}

/// <summary>A connector family, described by its harness plug.</summary>
/// <param name="Cavities">Cavity names of the face.</param>
/// <param name="Terminal">Terminal that the plug takes.</param>
/// <param name="Sealed">Whether each wire takes a seal and each empty cavity a blanking plug.</param>
/// <param name="Mates">Families that it mates with besides itself; read both ways.</param>
public sealed record ConnectorFamily(
    string Id, string Title, ImmutableArray<string> Cavities, string Terminal, bool Sealed, ImmutableArray<string> Mates)
{
    /// <summary>Smallest conductor that its terminals take, mm²; null where nobody says.</summary>
    public double? FromMm2 { get; init; }

    /// <summary>Greatest conductor that its terminals take, mm²; null where nobody says.</summary>
    public double? ToMm2 { get; init; }
}

/// <summary>What a wire carries, electrically. Grounds of different class are different kinds and are never merged.</summary>
public enum SignalKind
{
    Power,
    Ground,
    SensorSupply,
    SensorGround,
    Analogue,
    Switch,
    LowSide,
    Frequency,
    Logic,
    Ignition,
    Data,
    Shield,
}

/// <summary>A signal of the vocabulary.</summary>
/// <param name="CurrentA">Steady current in ampere, where it matters.</param>
/// <param name="SizeMm2">Conductor of a new wire, mm².</param>
/// <param name="Colour">Colour of a new wire, house notation (see <see cref="WireColour"/>).</param>
/// <param name="Shared">The same potential anywhere: a missing wire is joined to the nearest existing one.</param>
public sealed record Signal(
    string Id, string Title, SignalKind Kind, double? CurrentA, double SizeMm2, string Colour, bool Shared, bool Shielded)
{
    /// <summary>Role of the device that the wire passes where it is fitted; null for most.</summary>
    public string? Through { get; init; }

    /// <summary>The feed that the wire branches from inside the loom where it passes no device; null for most.</summary>
    public string? BranchOf { get; init; }

    /// <summary>The signal whose wire it is twisted with; null for most.</summary>
    public string? TwistedWith { get; init; }

    /// <summary>The reserved id of an empty cavity.</summary>
    public const string Unused = "unused";
}

public sealed record Pin(string Cavity, string Signal, string Colour, double SizeMm2);

public sealed record Plug(string Connector, BayPoint Location, ImmutableArray<Pin> Pins)
{
    /// <summary>What a reader calls the device that it was made for; null where its role's id has to do.</summary>
    public string? Title { get; init; }
}

/// <summary>A device that is fitted in the combination.</summary>
/// <param name="Pins">Cavity to signal.</param>
public sealed record Device(
    string Role, string Title, string Connector, BayPoint Location, ImmutableArray<KeyValuePair<string, string>> Pins)
{
    /// <summary>Current at full load, A: its feeds, power grounds and driven wires carry it. Null where the signals' currents count.</summary>
    public double? CurrentA { get; init; }

    /// <summary>A load (fan, pump, heater) that gets a fuse of its own where its feed is new.</summary>
    public bool OwnFuse { get; init; }

    /// <summary>A load that is on for seconds at a time: a wire that was there before is not judged by it, a new one carries it all the same.</summary>
    public bool IsBrief { get; init; }

    /// <summary>Current that it draws while it is cold, A; null where that is no more than at full load.</summary>
    public double? ColdA { get; init; }

    /// <summary>Whose answer decides that it is fitted; null where it is not told.</summary>
    public string? Position { get; init; }

    /// <summary>It lives behind the dash: fed from the cabin's side and grounded to the body beside it.</summary>
    public bool InCabin { get; init; }

    /// <summary>Cavities at which it gives the cabin a signal, past which nothing is joined.</summary>
    public ImmutableArray<string> ToCabin { get; init; } = [];

    /// <summary>Signals that it gives to others.</summary>
    public ImmutableArray<string> Supplies { get; init; } = [];

    /// <summary>Bought leads that bring wires of its own plug.</summary>
    public ImmutableArray<DeviceLead> Leads { get; init; } = [];

    /// <summary>The lead that brings the wire of a cavity; null for most.</summary>
    public DeviceLead? LeadOf(string cavity) => Leads.FirstOrDefault(lead => lead.Cavities.Contains(cavity));
}

/// <summary>A part that brings wires of a device, crimped at the device's end: they are laid, but neither cut nor bought again.</summary>
/// <param name="HasPlug">The device's plug comes with it.</param>
/// <param name="HasFarEnds">Its wires are crimped at the other end as well.</param>
public sealed record DeviceLead(string PartId, string Title, ImmutableArray<string> Cavities, bool HasPlug = false, bool HasFarEnds = false);

public sealed record EcuPlug(string Id, string Connector, ImmutableArray<Pin> Pins);

public sealed record Ecu(string Id, string Title, ImmutableArray<EcuPlug> Plugs)
{
    /// <summary>Current that one of its outputs can switch, A; null where nobody knows.</summary>
    public double? DriverA { get; init; }
}

/// <summary>The harness in use.</summary>
/// <param name="MadeFor">The ECU its ECU plugs were made for; null for a harness without an ECU side.</param>
/// <param name="Trunk">Where the branches leave for the ECU; every run to the ECU passes it.</param>
/// <param name="Plugs">Device role to plug.</param>
/// <param name="Body">Its own bulkhead plug.</param>
public sealed record Harness(
    string Title, Ecu? MadeFor, BayPoint Trunk, BayPoint EcuPlace, ImmutableArray<KeyValuePair<string, Plug>> Plugs, Plug? Body);

/// <summary>A part that joins a harness plug of one family to a device of another, signal to signal.</summary>
public sealed record AdapterLead(string PartId, string FromConnector, string ToConnector);

/// <summary>Where a new feed is taken from the battery: at its post, or where its main cable has a joint.</summary>
/// <param name="Title">What a reader calls it, as in "the battery".</param>
public sealed record BatteryPoint(string Title, BayPoint Location)
{
    public const string Post = "the battery";
}

/// <summary>House rules of the sheet. All are common practice without a source.</summary>
public sealed record WiringSettings
{
    public static readonly WiringSettings Default = new();

    /// <summary>Length along the loom divided by the straight distance.</summary>
    public double RoutingFactor { get; init; } = 1.2;

    /// <summary>Length added to every new piece for the ends, mm.</summary>
    public double SlackMm { get; init; } = 60;

    /// <summary>How far a plug may be away from its device before its wires count as short, mm.</summary>
    public double ReachMm { get; init; } = 40;

    /// <summary>Length of an adapter harness between two plugs that lie side by side, mm.</summary>
    public double AdapterLengthMm { get; init; } = 300;

    /// <summary>
    /// Splices of one lengthened wire. Two, because the piece goes between the wire and the plug (or a new plug's tail);
    /// whoever crimps the new terminals straight onto the pieces may save one.
    /// </summary>
    public int SplicesPerExtension { get; init; } = 2;

    /// <summary>Voltage that a new wire may lose at its signal's current, V.</summary>
    public double AllowedDropV { get; init; } = 0.3;

    /// <summary>Straight way from a device in the cabin to the metal that it is grounded to, mm.</summary>
    public double GroundWayMm { get; init; } = 200;

    /// <summary>Temperature that a conductor is reckoned at: what the insulation of ordinary thin-wall wire stands for long, °C.</summary>
    public double ConductorCelsius { get; init; } = 85;

    /// <summary>Thinnest wire that is run anew or let in, mm²: thinner ones break where they are handled.</summary>
    public double LeastMm2 { get; init; } = 0.5;

    /// <summary>Current that an ECU's output switches where the ECU does not say, A.</summary>
    public double DriverA { get; init; } = 2;
}

/// <summary>Everything that the sheet is computed from.</summary>
/// <param name="Devices">The devices fitted in this combination.</param>
/// <param name="Harness">The harness in use.</param>
/// <param name="Ecu">The ECU in use.</param>
/// <param name="Body">The cabin side of the bulkhead plug.</param>
/// <param name="Needs">Signals that the cabin must get.</param>
public sealed record WiringInput(
    ImmutableArray<Device> Devices,
    Harness Harness,
    Ecu? Ecu,
    Plug? Body,
    ImmutableArray<string> Needs,
    ImmutableDictionary<string, ConnectorFamily> Connectors,
    ImmutableDictionary<string, Signal> Signals,
    ImmutableArray<AdapterLead> Leads,
    WiringSettings Settings)
{
    /// <summary>Signals that the car's own devices gave its cabin, whether these devices are fitted in this build or not.</summary>
    public ImmutableArray<string> CabinHears { get; init; } = [];

    /// <summary>Sizes that screened wire is sold in, mm²; empty where nobody says.</summary>
    public ImmutableArray<double> ScreenedMm2 { get; init; } = [];

    /// <summary>Where a new feed is taken from the battery; null where nobody says.</summary>
    public BatteryPoint? Battery { get; init; }
}
