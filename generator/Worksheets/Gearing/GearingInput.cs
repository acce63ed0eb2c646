using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Gearing;

/// <summary>A gear and its ratio: input turns for one turn of the output.</summary>
public sealed record GearRatio(string Name, double Ratio);

/// <param name="Final">Ratio of the final drive.</param>
public sealed record GearSet(string Title, ImmutableArray<GearRatio> Gears, double Final)
{
    /// <summary>Kind and id, as a reader is told where a ratio comes from.</summary>
    public string Origin { get; init; } = "";

    /// <summary>Whose the final drive is: the gearbox's own, or an axle's.</summary>
    public string FinalOrigin { get; init; } = "";

    /// <summary>It drives through a converter, which may slip.</summary>
    public bool HasConverter { get; init; }

    /// <summary>What turns the speedometer; null where it is not known.</summary>
    public SpeedDrive? Speed { get; init; }

    /// <summary>The gear with the lowest ratio.</summary>
    public GearRatio Highest => Gears.MinBy(gear => gear.Ratio)!;

    /// <summary>Engine turns for one turn of the wheel.</summary>
    public double Overall(GearRatio gear) => gear.Ratio * Final;

    /// <summary>Whether ratios and final drive are positive numbers, and so a road speed can be worked out.</summary>
    public bool IsSound => !Gears.IsEmpty && Gears.All(gear => IsRatio(gear.Ratio)) && IsRatio(Final);

    // No gear of a vehicle is longer or shorter by far.
    private static bool IsRatio(double ratio) => ratio is > 1e-3 and < 1e3;
}

/// <summary>The drive of a speedometer in a gearbox.</summary>
/// <param name="BeforeFinal">It is turned by the shaft before the final drive, and so changes with it; behind it, with the wheels alone.</param>
/// <param name="DriveTeeth">Teeth of the wheel on that shaft.</param>
/// <param name="PinionTeeth">Teeth of the pinion it turns, the gearbox's own.</param>
/// <param name="Pulses">Pulses for one turn of the pinion; null for a cable.</param>
public sealed record SpeedDrive(bool BeforeFinal, double DriveTeeth, double? PinionTeeth, double? Pulses)
{
    /// <summary>Whether what it says are numbers of teeth and pulses.</summary>
    public bool IsSound => IsCount(DriveTeeth) && IsCount(PinionTeeth ?? 1) && IsCount(Pulses ?? 1);

    private static bool IsCount(double count) => count is >= 1 and < 1e6;
}

/// <summary>A gearbox that may be chosen in place of the one that is.</summary>
/// <param name="IsChosen">It is the one this ledger is about.</param>
/// <param name="Buildable">Whether it can be built with everything else as it is; null where that was not asked.</param>
public sealed record GearboxAlternative(string Option, GearSet Set, bool IsChosen, bool? Buildable);

/// <summary>What the gearing worksheet needs; null for what is not known.</summary>
public sealed record GearingInput
{
    public required GearSet Gearbox { get; init; }

    /// <summary>The gearbox the chassis was built with.</summary>
    public GearSet? Before { get; init; }

    /// <summary>Every gearbox that an option of the choice brings, the chosen one among them.</summary>
    public ImmutableArray<GearboxAlternative> Alternatives { get; init; } = [];

    public TyreSize? Tyre { get; init; }

    /// <summary>The tyre the chassis was built with; null where it stays.</summary>
    public TyreSize? TyreBefore { get; init; }

    /// <summary>Engine speed at greatest power, rad/s.</summary>
    public Given? PowerSpeed { get; init; }

    /// <summary>Teeth of the pinion that the chassis's own speedometer drive has.</summary>
    public Given? PinionBefore { get; init; }

    /// <summary>Teeth of the pinion that the answers put in place.</summary>
    public Given? Pinion { get; init; }

    /// <summary>Whether something in the drive can be set to any ratio, such as a converter from pulses to a cable.</summary>
    public bool SpeedIsAdjustable { get; init; }

    /// <summary>Whether the base says how speedometers are driven, so that what is missing of it is worth telling.</summary>
    public bool AsksForSpeedometer { get; init; }

    /// <summary>Speeds at which the engine speed is told, m/s.</summary>
    public ImmutableArray<double> Cruise { get; init; } = [];

    /// <summary>Share of the engine speed that may be lost at a shift.</summary>
    public double WidestDrop { get; init; } = 0.48;
}
