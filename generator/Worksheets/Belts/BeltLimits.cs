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

    /// <summary>How far a belt on fixed centres may differ from the loop.</summary>
    public double FixedCentreToleranceMm { get; init; } = 2;

    /// <summary>
    /// Smallest effective diameter: ISO 9981:2020, 5.2, for grooved pulleys. Applied to rollers too, which common practice makes larger
    /// still.
    /// </summary>
    public double MinEffectiveDiameterMm { get; init; } = 45;
}
