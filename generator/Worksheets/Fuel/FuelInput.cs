using System.Collections.Immutable;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Fuel;

/// <summary>A number with its origin.</summary>
/// <param name="Si">In the coherent SI unit.</param>
public sealed record FuelValue(double Si, FigureInput Input);

/// <summary>A word of the base with the title a reader sees.</summary>
public sealed record FuelWord(string Id, string Title, string Holder);

/// <summary>What is reckoned with where nothing is measured. SI: kg/J, kg/m³, shares of one, volts.</summary>
public sealed record FuelAssumptions(double Consumption, double Density, double Duty, double PumpMargin, double Supply)
{
    /// <summary>Share of its measured delivery by which a pump gives less for each pascal more, where one pressure only was measured.</summary>
    public double PumpFall { get; init; } = 1e-6;
}

public enum InjectorDriver
{
    /// <summary>A switch: resistance alone limits the current.</summary>
    Saturated,

    /// <summary>Limits the current itself.</summary>
    PeakHold,
}

/// <summary>What is done about the series resistors in the injectors' feed.</summary>
public enum BallastWork
{
    /// <summary>The question does not arise.</summary>
    None,
    LeftOff,
    Kept,
    Added,
}

/// <summary>The injectors that the answers put in place.</summary>
public sealed record InjectorSet(FuelValue? Flow, FuelValue? FlowPressure, FuelValue? Resistance, FuelValue? Count);

/// <param name="MadeFor">Family of the engine its maps were made for; <c>any</c> for one that is programmed.</param>
/// <param name="Flow">Flow of the injectors its maps were made for.</param>
public sealed record EngineControl(string Title, InjectorDriver? Driver, FuelValue? DriverCurrent, FuelValue? Channels, FuelWord? MadeFor, FuelValue? Flow, FuelWord? Trigger, FuelValue? SparkOutputs, FuelWord? Drive);

/// <param name="Pressure">What the regulator holds above the manifold, or above the air where it is at the tank.</param>
/// <param name="AtTank">Regulated at the tank: one pipe to the engine, and no reference to the manifold.</param>
/// <param name="MadeForTank">The engine was built so, and its ECU counts on a pressure that does not follow the manifold's.</param>
/// <param name="HoseClasses">Title and class of the fuel hose that is bought.</param>
/// <param name="HoseKept">Some hose of the feed stays.</param>
/// <param name="FilterRating">Of the filter that is bought; null where it stays or does not say.</param>
public sealed record FuelLine(FuelValue? Pressure, bool AtTank, bool MadeForTank, FuelValue? PumpFlow, FuelValue? PumpFlowPressure, ImmutableArray<(string Title, FuelHoseClass Class)> HoseClasses, bool HoseKept, FuelValue? FilterRating, double InjectionBar)
{
    /// <summary>What the pump gives at several pressures, by rising pressure; empty where one point at most is known.</summary>
    public ImmutableArray<PumpFlowPoint> PumpCurve { get; init; } = [];

    /// <summary>Whose the points are.</summary>
    public string PumpHolder { get; init; } = "";
}

/// <param name="Pressure">Pa.</param>
/// <param name="Flow">m³/s.</param>
public readonly record struct PumpFlowPoint(double Pressure, double Flow);

/// <param name="Trigger">The pattern that the pick-ups give as fitted.</param>
/// <param name="SparkOutputs">Of a driver that is fitted between ECU and coils.</param>
public sealed record IgnitionSet(FuelWord? Kind, FuelWord? Trigger, FuelValue? Coils, FuelValue? SparkOutputs, FuelWord? Stage, FuelValue? CoilResistance, FuelValue? CoilInductance, FuelValue? CoilCurrent);

/// <summary>What the fuel worksheet needs.</summary>
public sealed record FuelInput
{
    public required FuelAssumptions Assumptions { get; init; }

    public required EngineControl Ecu { get; init; }

    public required InjectorSet Injectors { get; init; }

    public required FuelLine Line { get; init; }

    public required IgnitionSet Ignition { get; init; }

    public FuelValue? Power { get; init; }

    public FuelValue? PowerSpeed { get; init; }

    public FuelValue? Cylinders { get; init; }

    /// <summary>Family of the engine, as the base names it.</summary>
    public string Family { get; init; } = "";

    /// <summary>What works the throttle plate as fitted: cable or electronic.</summary>
    public FuelWord? Throttle { get; init; }

    /// <summary>Whether the ECU works a throttle motor; null where nobody says.</summary>
    public bool? EcuDrivesThrottle { get; init; }

    /// <summary>A part that is fitted works it in the ECU's place.</summary>
    public string ThrottleController { get; init; } = "";

    public BallastWork Ballast { get; init; }

    public FuelValue? BallastResistance { get; init; }

    public FuelValue? BallastPower { get; init; }
}
