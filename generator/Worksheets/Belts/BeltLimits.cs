namespace Swapwright.Worksheets.Belts;

/// <summary>
/// The limits that a loop is judged by. Only the smallest diameter has a published source (ISO 9981:2020, 5.2); all the
/// others are common practice, no source, and therefore settings.
/// </summary>
public sealed record BeltLimits
{
    public static readonly BeltLimits Default = new();

    public double CrankWrapDeg { get; init; } = 140;

    public double AlternatorWrapDeg { get; init; } = 120;

    /// <summary>Least wrap of any other driven pulley, whichever face drives it.</summary>
    public double OtherWrapDeg { get; init; } = 60;

    /// <summary>Least wrap of an idler or roller, which drives nothing.</summary>
    public double BackWrapDeg { get; init; } = 30;

    /// <summary>Allowed offset between the planes of neighbouring pulleys for each 100 mm of the span between them.</summary>
    public double PlaneOffsetMmPer100Mm { get; init; } = 1;

    /// <summary>How much shorter than the belt the loop must become for the belt to slip on, in percent of the belt.</summary>
    public double InstallSlackPercent { get; init; } = 0.5;

    /// <summary>How much longer than the belt the loop must be able to become, in percent of the belt.</summary>
    public double TakeUpPercent { get; init; } = 1.0;

    /// <summary>The middle part of a spring's travel, about its nominal mark, in percent of the travel: there the arm has to stand.</summary>
    public double SpringMiddlePercent { get; init; } = 50;

    /// <summary>Most ribs that may be cut off a wider belt; 0 where nobody trims.</summary>
    public int MostTrimmedRibs { get; init; } = 1;

    /// <summary>Mass of a belt a metre and rib, kg/m, where the belt says nothing.</summary>
    public double RibMassKgPerM { get; init; } = 0.02;

    /// <summary>Tension a rib of a belt that is fitted new, N.</summary>
    public double NewTensionN { get; init; } = 110;

    /// <summary>Tension a rib of a belt that has run, N.</summary>
    public double RunInTensionN { get; init; } = 80;

    /// <summary>How far either way of it a tension is still good, in percent.</summary>
    public double TensionSpreadPercent { get; init; } = 10;

    /// <summary>How far a belt on fixed centres may differ from the loop.</summary>
    public double FixedCentreToleranceMm { get; init; } = 2;

    /// <summary>
    /// Smallest effective diameter: ISO 9981:2020, 5.2, for grooved pulleys. Applied to rollers too, which common practice makes larger
    /// still.
    /// </summary>
    public double MinEffectiveDiameterMm { get; init; } = 45;
}
