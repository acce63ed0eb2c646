using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A vehicle or engine in one range of years with one set of facts.</summary>
public abstract record Variant(string Id, string Title, Place Place) : FactHolder(Id, Title, Place)
{
    public string Maker { get; init; } = "";

    public string Family { get; init; } = "";

    public YearSpan Years { get; init; }

    public Place YearsPlace { get; init; }

    public ImmutableArray<Accessory> Accessories { get; init; } = [];

    public ImmutableArray<DeviceEntry> Devices { get; init; } = [];

    public HarnessEntry? Harness { get; init; }

    /// <summary>Where hoses go on it.</summary>
    public ImmutableArray<PortEntry> Ports { get; init; } = [];

    public Accessory? AccessoryAt(string position) => Accessories.FirstOrDefault(accessory => accessory.Position == position);

    public DeviceEntry? Device(string role) => DeviceEntry.Of(Devices, role);

    /// <summary>What it is filled with.</summary>
    public ImmutableArray<FluidEntry> Fluids { get; init; } = [];

    /// <summary>What its fuel pump gives, by rising pressure; empty where one point at most is known, which facts then say.</summary>
    public ImmutableArray<PumpPoint> PumpCurve { get; init; } = [];

    public PortEntry? Port(string role) => Ports.FirstOrDefault(port => port.Role == role);
}

/// <summary>The receiving vehicle: one year range and trim.</summary>
public sealed record ChassisVariant(string Id, string Title, Place Place) : Variant(Id, Title, Place)
{
    public string Trim { get; init; } = "";

    /// <summary>The cabin side of the bulkhead plug.</summary>
    public PlugEntry? Body { get; init; }

    /// <summary>Where this car has room for devices of a role, whatever part or donor they come from.</summary>
    public ImmutableDictionary<string, BayPoint> Places { get; init; } = ImmutableDictionary<string, BayPoint>.Empty;

    /// <summary>Where a new feed is taken from the battery; null where nobody says.</summary>
    public BatteryEntry? Battery { get; init; }

    /// <summary>Signals that the cabin must get.</summary>
    public ImmutableArray<string> Needs { get; init; } = [];
}

/// <summary>An engine as it left its own vehicle: one year range, origin gearbox and emission level.</summary>
public sealed record DonorVariant(string Id, string Title, Place Place) : Variant(Id, Title, Place)
{
    public ImmutableArray<BeltDrive> BeltDrives { get; init; } = [];
}

public sealed record Gearbox(string Id, string Title, Place Place) : FactHolder(Id, Title, Place)
{
    /// <summary>Gear name to ratio, in written order, <c>final</c> included.</summary>
    public ImmutableArray<KeyValuePair<string, decimal>> Ratios { get; init; } = [];

    public decimal? MassKg { get; init; }

    public string OilGrade { get; init; } = "";

    public decimal? OilLitres { get; init; }
}

public sealed record Part(string Id, string Title, Place Place) : FactHolder(Id, Title, Place)
{
    public string Category { get; init; } = "";

    public Range3? Price { get; init; }

    /// <summary>breaker, dealer, parts-shop, wire-shop, machine-shop, hose-shop, workshop, office or make.</summary>
    public string From { get; init; } = "";

    public decimal? MassKg { get; init; }

    /// <summary>The vehicle had nothing in its place: its mass is all in addition.</summary>
    public bool IsAddition { get; init; }

    public PulleyEntry? Pulley { get; init; }

    /// <summary>What the part puts in place electrically, by role.</summary>
    public ImmutableArray<DeviceEntry> Devices { get; init; } = [];

    public (string From, string To)? Lead { get; init; }

    /// <summary>For what new wiring is made of.</summary>
    public WiringGoods? Wiring { get; init; }

    public Place LeadPlace { get; init; }

    /// <summary>Signals whose wires are part of it, as of a battery cable: the harness's own are left out of the work.</summary>
    public ImmutableArray<string> OwnWires { get; init; } = [];

    /// <summary>Wires of devices that it brings, by role.</summary>
    public ImmutableArray<BroughtWires> Brings { get; init; } = [];

    /// <summary>It has a say in what is done to the harness.</summary>
    public bool ChangesWiring => Lead is not null || !OwnWires.IsEmpty || !Brings.IsEmpty;

    /// <summary>The part whose properties it takes over, where it is written as like another.</summary>
    public string? Like { get; init; }

    public BeltStock? Belt { get; init; }

    /// <summary>Where hoses go on the part.</summary>
    public ImmutableArray<PortEntry> Ports { get; init; } = [];

    /// <summary>What is tightened when it is fitted.</summary>
    public ImmutableArray<FastenerEntry> Fasteners { get; init; } = [];

    /// <summary>What it is filled with.</summary>
    public ImmutableArray<FluidEntry> Fluids { get; init; } = [];

    /// <inheritdoc cref="Variant.PumpCurve"/>
    public ImmutableArray<PumpPoint> PumpCurve { get; init; } = [];

    public HoseGoods? Hose { get; init; }

    public ReducerGoods? Reducer { get; init; }

    /// <summary>Ends of a tee in millimetres; empty for what is none.</summary>
    public ImmutableArray<decimal> Tee { get; init; } = [];

    /// <summary>Hoses that it is cut into, where they are there.</summary>
    public ImmutableArray<string> CutInto { get; init; } = [];

    /// <summary>How long it is from one outer end to the other; null where nobody says.</summary>
    public decimal? CutIntoLengthMm { get; init; }

    public PortEntry? Port(string role) => Ports.FirstOrDefault(port => port.Role == role);
}
