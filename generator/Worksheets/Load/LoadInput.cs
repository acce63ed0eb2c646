using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Load;

/// <summary>Something whose mass or place changes. Masses in kilograms, places in metres behind the front axle, negative ahead of it.</summary>
/// <param name="Before">null where it was not there.</param>
/// <param name="After">null where it is left off.</param>
/// <param name="Place">Where it lay; null where that is not known.</param>
/// <param name="Offset">How much further back it comes to lie, metres.</param>
public sealed record MassChange(string Id, string Title, Given? Before, Given? After, Given? Place, double Offset = 0);

/// <summary>A dry clutch.</summary>
/// <param name="Clamp">N.</param>
/// <param name="Outer">Outer diameter of the friction face, m.</param>
/// <param name="Inner">Inner diameter, m.</param>
/// <param name="Faces">null for the usual two.</param>
public sealed record ClutchInput(Given? Clamp, Given? Outer, Given? Inner, Given? Friction, Given? Faces);

/// <summary>Two things that have to go together, in words.</summary>
/// <param name="Matches">null where one side is not known.</param>
public sealed record JointInput(string Title, string Has, string Wants, bool? Matches);

/// <summary>What carries the powertrain; places in metres from the crank nose along the crank axis, loads in N.</summary>
public sealed record MountInput(Given? TimingPlace, Given? GearboxPlace, Given? EngineCentre, Given? EngineLength, Given? GearboxCentre, Given? TimingLimit, Given? GearboxLimit)
{
    /// <summary>How far a plate sets engine and gearbox apart, m.</summary>
    public Given? Plate { get; init; }

    /// <summary>From the face that the engine is bolted to to the mount of a gearbox that brings its own, m; it goes where the gearbox goes.</summary>
    public Given? GearboxReach { get; init; }
}

/// <summary>What the load worksheet needs, in SI; null for what is not known.</summary>
public sealed record LoadInput
{
    /// <summary>Worksheet parts of whose quantities the base speaks at all; what it never speaks of is not missing.</summary>
    public ImmutableArray<string> Asked { get; init; } = [];

    public Given? KerbMass { get; init; }

    public Given? FrontShare { get; init; }

    public Given? Wheelbase { get; init; }

    public Given? PermittedFront { get; init; }

    public Given? PermittedRear { get; init; }

    /// <summary>Kilograms that people and luggage want of the front axle.</summary>
    public double FrontReserve { get; init; } = 80;

    /// <summary>Engine and gearbox first.</summary>
    public ImmutableArray<MassChange> Changes { get; init; } = [];

    public Given? PowerBefore { get; init; }

    public Given? Power { get; init; }

    public Given? Torque { get; init; }

    /// <summary>null for a gearbox without a clutch.</summary>
    public ClutchInput? Clutch { get; init; }

    public double ClutchMargin { get; init; } = 1.2;

    public ImmutableArray<JointInput> Joints { get; init; } = [];

    public Given? GearboxTorque { get; init; }

    /// <summary>Ratio of the lowest gear.</summary>
    public Given? FirstGear { get; init; }

    public Given? FinalDrive { get; init; }

    public Given? ShaftTorque { get; init; }

    /// <summary>Engine and gearbox lie along the car, and one propeller shaft goes to an axle with the final drive; else two half-shafts leave the gearbox.</summary>
    public bool HasPropellerShaft { get; init; }

    public MountInput? Mounts { get; init; }

    public Given? BonnetSpace { get; init; }

    /// <summary>How much a part that is fitted raises the bonnet or the lid, m.</summary>
    public Given? BonnetRaise { get; init; }

    public Given? EngineHeight { get; init; }

    /// <summary>From the radiator to the bulkhead, m.</summary>
    public Given? BayLength { get; init; }

    /// <summary>From the crank nose to the rear face of the block, m.</summary>
    public Given? BlockLength { get; init; }

    /// <summary>From the fan to the rear face of the block, m; null where the fan does not turn on the engine.</summary>
    public Given? FanLength { get; init; }

    public Given? AxisHeight { get; init; }

    public Given? GroundClearance { get; init; }

    public Given? SumpDepth { get; init; }

    /// <summary>Metres that are the least below the sump.</summary>
    public double LeastGround { get; init; } = 0.11;

    public Given? RadiatorPower { get; init; }

    public Given? RadiatorHeat { get; init; }

    /// <summary>Whether something of a part is worth telling when it is missing.</summary>
    public bool Asks(string part) => Asked.Contains(part);
}
