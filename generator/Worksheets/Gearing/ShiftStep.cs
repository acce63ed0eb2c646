using System.Collections.Immutable;

namespace Swapwright.Worksheets.Gearing;

/// <summary>A shift to the next higher gear.</summary>
/// <param name="Step">Ratio of the lower gear over that of the higher.</param>
/// <param name="IsGap">More of the engine speed is lost than the limit allows, or more than at the shift before.</param>
public sealed record ShiftStep(GearRatio From, GearRatio To, double Step, bool IsGap)
{
    /// <summary>Share of the engine speed that is lost: 1 − i_high ∕ i_low; the road speed stays.</summary>
    public double Drop => 1 - (1 / Step);
}

public static class ShiftSteps
{
    // Steps of a set that was designed as even differ by this much from rounding the ratios to two places.
    private const double Even = 1.02;

    /// <summary>
    /// The shifts of a gearbox from its lowest gear up. A step that is wider than the one before it is a gap too, for steps of a road gearbox
    /// narrow upwards (common practice, no source).
    /// </summary>
    /// <param name="widestDrop">Share of the engine speed, 0 to 1, that may be lost.</param>
    public static ImmutableArray<ShiftStep> Of(GearSet set, double widestDrop)
    {
        var gears = set.Gears.OrderByDescending(gear => gear.Ratio).ToList();
        var steps = ImmutableArray.CreateBuilder<ShiftStep>();
        for (var at = 1; at < gears.Count; at++)
        {
            var step = gears[at - 1].Ratio / gears[at].Ratio;
            var wider = at > 1 && step > steps[at - 2].Step * Even;
            steps.Add(new ShiftStep(gears[at - 1], gears[at], step, wider || 1 - (1 / step) > widestDrop));
        }

        return steps.ToImmutable();
    }
}
