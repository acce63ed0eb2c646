using System.Collections.Immutable;

namespace Swapwright.Worksheets.Gearing;

/// <summary>A gear and its ratio: input turns for one turn of the output.</summary>
public sealed record GearRatio(string Name, double Ratio);

/// <param name="Final">Ratio of the final drive.</param>
public sealed record GearSet(string Title, ImmutableArray<GearRatio> Gears, double Final);

/// <summary>What the gearing worksheet needs; lengths in metres, the aspect as a share of one.</summary>
public sealed record GearingInput
{
    public required GearSet Gearbox { get; init; }

    /// <summary>The gearbox the chassis was built with; null where it is not known.</summary>
    public GearSet? Before { get; init; }

    public double? TyreWidth { get; init; }

    public double? TyreAspect { get; init; }

    public double? RimDiameter { get; init; }
}
