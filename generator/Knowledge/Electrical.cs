using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>What a wire shop sells for new wiring; the worksheet counts how much of it is wanted.</summary>
/// <param name="Kind">One of <see cref="Kinds"/>. Wire goes by the metre, the rest by the piece.</param>
/// <param name="SizeMm2">Conductor size of wire; null where one thing serves all sizes.</param>
public sealed record WiringGoods(string Kind, decimal? SizeMm2)
{
    public static readonly ImmutableArray<string> Kinds = ["wire", "screened-wire", "twisted-pair", "screened-pair", "terminal", "seal", "blanking-plug", "splice", "heat-shrink", "housing", "relay", "relay-base", "fuse-holder", "wire-cap", PlugSet];

    /// <summary>A harness that is bought to be cut up: it gives the housings of the donor's own plugs.</summary>
    public const string PlugSet = "plug-set";
}

/// <summary>Millimetres in the one bay frame: origin at the face of the crankshaft nose, x to the right of somebody who looks at the belts, y up, z to the gearbox.</summary>
public readonly record struct BayPoint(decimal X, decimal Y, decimal Z);

/// <summary>Where a new feed is taken from the battery of a car.</summary>
/// <param name="Title">What a reader calls it; null for the battery's post.</param>
public sealed record BatteryEntry(string? Title, BayPoint Location);

/// <summary>A signal as the vocabulary declares it.</summary>
/// <param name="Kind">power, ground, sensor-supply, sensor-ground, analogue, switch, low-side, frequency, logic, ignition, data or shield.</param>
/// <param name="CurrentA">Steady current in ampere, where it is known.</param>
/// <param name="SizeMm2">Default conductor cross-section.</param>
public sealed record SignalDeclaration(string Id, string Title, string Kind, decimal? CurrentA, decimal SizeMm2, string Colour, bool Shared, bool Shielded, Place Place)
{
    /// <summary>The device role that the wire passes where such a device is fitted; null for most.</summary>
    public string? Through { get; init; }

    /// <summary>The feed that the wire branches from inside the loom where it passes no device; null for most.</summary>
    public string? BranchOf { get; init; }

    /// <summary>The signal whose wire it is twisted with, as the two of a data bus; null for most.</summary>
    public string? TwistedWith { get; init; }

    /// <summary>The reserved id for a cavity that is left empty.</summary>
    public const string Unused = "unused";
}

/// <summary>A role that an electrical device plays, whichever vehicle the device comes from.</summary>
/// <param name="Position">The position whose answer says which device is fitted; null: the engine's own.</param>
public sealed record DeviceRole(string Id, string Title, string? Position, string? System, Place Place)
{
    /// <summary>A load such as a fan, a pump or a heater, which gets a fuse of its own where its feed is new.</summary>
    public bool OwnFuse { get; init; }

    /// <summary>A load that is on for seconds at a time: wires that were there before are not judged by it.</summary>
    public bool IsBrief { get; init; }

    /// <summary>Current at full load of such a device that does not say its own, A; null where the signals' currents count.</summary>
    public decimal? CurrentA { get; init; }

    /// <summary>Current that a heater draws while it is cold, A; null for everything else.</summary>
    public decimal? ColdCurrentA { get; init; }

    /// <summary>It lives behind the dash: what feeds and grounds it is there, not on the engine.</summary>
    public bool InCabin { get; init; }

    /// <summary>Signals that the device gives to others, as a relay box gives a feed: its new wire carries all that hangs on them.</summary>
    public ImmutableArray<string> Supplies { get; init; } = [];
}

/// <summary>A wire end in a cavity of a plug.</summary>
public sealed record PinEntry(string Cavity, string Signal, string Colour, decimal SizeMm2, Place Place);

/// <summary>A plug on a harness or a socket in the bay, with its place and what each cavity carries.</summary>
public sealed record PlugEntry(string Connector, BayPoint? Location, ImmutableArray<PinEntry> Pins, Place Place);

/// <summary>An electrical device with the connector it shows.</summary>
/// <param name="CurrentA">Current at full load; null where the signals' currents count.</param>
public sealed record DeviceEntry(string Role, string? Title, string Connector, BayPoint Location, ImmutableArray<PinEntry> Pins, Place Place, decimal? CurrentA = null)
{
    /// <summary>Cavities at which it gives the cabin a signal, as a pulse divider does; the harness's own wire is then not joined to the cabin's.</summary>
    public ImmutableArray<string> ToCabin { get; init; } = [];

    /// <summary>The first of a role; null where there is none.</summary>
    public static DeviceEntry? Of(ImmutableArray<DeviceEntry> devices, string role)
    {
        foreach (var device in devices)
        {
            if (device.Role == role)
            {
                return device;
            }
        }

        return null;
    }
}

/// <summary>Wires of a device that a part brings, crimped at the device's end.</summary>
/// <param name="HasPlug">The device's plug is part of it.</param>
/// <param name="HasFarEnds">The other ends are crimped as well.</param>
public sealed record BroughtWires(string Role, ImmutableArray<string> Cavities, bool HasPlug, bool HasFarEnds);

/// <summary>An engine-bay harness.</summary>
/// <param name="Ecu">The ECU whose plugs it ends in; null for a harness without one.</param>
/// <param name="Trunk">Where branches leave for the ECU.</param>
public sealed record HarnessEntry(string? Ecu, BayPoint Trunk, BayPoint EcuPlace, ImmutableArray<KeyValuePair<string, PlugEntry>> Plugs, PlugEntry? Body, Place Place);

/// <summary>A connector family: both halves of it carry the same id.</summary>
public sealed record Connector(string Id, string Title, Place Place) : Entity(Id, Title, Place)
{
    /// <summary>The face, row by row, as cavity labels.</summary>
    public ImmutableArray<ImmutableArray<string>> Rows { get; init; } = [];

    public string Terminal { get; init; } = "";

    public bool Sealed { get; init; }

    public string Keying { get; init; } = "";

    /// <summary>The other families that it is said to go together with.</summary>
    public ImmutableArray<Named> Mates { get; init; } = [];

    public decimal? WireFromMm2 { get; init; }

    public decimal? WireToMm2 { get; init; }

    public decimal? MaxCurrentA { get; init; }

    public Range3? Price { get; init; }

    /// <summary>Whether the two go together: halves of one family, or said to mate by either.</summary>
    public bool MatesWith(Connector other) =>
        Id == other.Id || Mates.Any(named => named.Id == other.Id) || other.Mates.Any(named => named.Id == Id);

    public IEnumerable<string> Cavities => Rows.SelectMany(row => row);
}

/// <summary>An engine control unit with its full pin-out.</summary>
public sealed record Ecu(string Id, string Title, Place Place) : FactHolder(Id, Title, Place)
{
    public ImmutableArray<KeyValuePair<string, PlugEntry>> Plugs { get; init; } = [];

    /// <summary>Current that one of its outputs can switch; null where nobody knows.</summary>
    public decimal? OutputCurrentA { get; init; }
}
