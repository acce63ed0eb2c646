using System.Globalization;

namespace Swapwright.Worksheets.Torques;

/// <summary>A metric thread of ISO 68-1: nominal diameter and pitch in metres.</summary>
public readonly record struct MetricThread(double Diameter, double Pitch)
{
    /// <summary>Coarse pitches of ISO 261 in millimetres, from memory.</summary>
    private static readonly (double Diameter, double Pitch)[] s_coarse =
        [(3, 0.5), (4, 0.7), (5, 0.8), (6, 1), (7, 1), (8, 1.25), (10, 1.5), (12, 1.75), (14, 2), (16, 2), (18, 2.5), (20, 2.5), (22, 2.5), (24, 3), (27, 3), (30, 3.5), (33, 3.5), (36, 4)];

    /// <summary>Reads <c>M10x1.25</c>, or <c>M10</c> for the coarse pitch. Null where it is no such thread, or its pitch is not known.</summary>
    public static MetricThread? Read(string text)
    {
        var parts = text.Replace(" ", "", StringComparison.Ordinal).Replace('×', 'x').Split('x');
        if (parts.Length > 2 || !parts[0].StartsWith('M') || Number(parts[0][1..]) is not { } diameter)
        {
            return null;
        }

        var pitch = parts.Length == 2 ? Number(parts[1]) : s_coarse.Where(one => Math.Abs(one.Diameter - diameter) < 1e-9).Select(one => (double?)one.Pitch).FirstOrDefault();
        return pitch is { } some && some < diameter / 2 ? new MetricThread(diameter / 1000, some / 1000) : null;
    }

    /// <summary>
    /// Stress area in m²: Aₛ = π∕4 (d − 0.9382 P)² (ISO 898-1; Jindal, Machine Design, example 9-1: M16 × 2 has 156.7 mm²).
    /// </summary>
    public double StressArea => Math.PI / 4 * Math.Pow(Diameter - (0.9382 * Pitch), 2);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"M{Diameter * 1000:0.##}×{Pitch * 1000:0.##}");

    private static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value > 0 ? value : null;
}
