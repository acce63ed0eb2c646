using System.Collections.Immutable;

namespace Swapwright.Worksheets.Fuel;

/// <summary>What a pump gives at a pressure at which nobody measured it.</summary>
/// <remarks>Common practice, no source: a pump's flow falls along a straight line between two measurements, and at less pressure it gives no less.</remarks>
public static class PumpDelivery
{
    /// <summary>Up to this multiple of the pressure at which a pump was measured the usual fall is believed; a pump for a carburettor gives nothing at a rail's pressure, whatever a line says.</summary>
    public const double FurthestBeyond = 1.5;

    /// <summary>The two points that a pressure lies between, twice the first below it; null beyond the last, and where the points are no curve.</summary>
    public static (PumpFlowPoint Before, PumpFlowPoint After)? Between(ImmutableArray<PumpFlowPoint> curve, double pressure)
    {
        if (curve.IsDefaultOrEmpty || !double.IsFinite(pressure) || curve.Any(point => !(point.Flow > 0 && double.IsFinite(point.Flow) && point.Pressure >= 0 && double.IsFinite(point.Pressure))))
        {
            return null;
        }

        var points = curve.Sort((one, other) => one.Pressure.CompareTo(other.Pressure));
        var after = points.ToList().FindIndex(point => point.Pressure >= pressure);
        return after < 0 ? null : (points[Math.Max(0, after - 1)], points[after]);
    }

    /// <summary>V̇ = V̇₁ + (V̇₂ − V̇₁) (p − p₁) ∕ (p₂ − p₁), m³/s; the flow of the one where both points are the same.</summary>
    public static double On((PumpFlowPoint Before, PumpFlowPoint After) line, double pressure) => line.After.Pressure > line.Before.Pressure && pressure > line.Before.Pressure
        ? line.Before.Flow + ((line.After.Flow - line.Before.Flow) * (pressure - line.Before.Pressure) / (line.After.Pressure - line.Before.Pressure))
        : Math.Min(line.Before.Flow, line.After.Pressure <= line.Before.Pressure ? line.After.Flow : line.Before.Flow);

    /// <summary>
    /// V̇ = V̇₀ (1 − a (p − p₀)) above the pressure p₀ at which the pump was measured, V̇₀ below; null too far above, or where nothing is left.
    /// </summary>
    /// <param name="fall">a, share for each pascal.</param>
    public static double? Falling(double flow, double measuredAt, double fall, double pressure)
    {
        if (pressure <= measuredAt)
        {
            return flow;
        }

        var left = flow * (1 - (fall * (pressure - measuredAt)));
        return pressure <= measuredAt * FurthestBeyond && left > 0 ? left : null;
    }
}
