using System.Collections.Immutable;

namespace Swapwright.Worksheets.Fuel;

/// <summary>What resistors are made in. The E24 series is that of IEC 60063; power ratings are what wire-wound ones in finned cases are sold with (common practice, no source).</summary>
public static class PreferredValues
{
    public static readonly ImmutableArray<double> E24 = [1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1];

    private static readonly ImmutableArray<double> s_watts = [5, 10, 15, 20, 25, 50, 75, 100, 150, 200];

    // Slack for binary fractions: 6.8 asked for has to give 6.8.
    private const double Slack = 1e-9;

    /// <summary>The nearest value of the series that is not below the one asked for; null for what is no resistance.</summary>
    public static double? AtLeast(double ohms)
    {
        if (!double.IsFinite(ohms) || ohms <= 0)
        {
            return null;
        }

        var decade = Math.Pow(10, Math.Floor(Math.Log10(ohms)));
        var wanted = (ohms / decade) - Slack;
        foreach (var step in E24)
        {
            if (step >= wanted)
            {
                return Math.Round(step * decade, 12);
            }
        }

        return 10 * decade;
    }

    /// <summary>The smallest rating on sale that is not below the one asked for; null beyond the largest.</summary>
    public static double? Watts(double watts) => s_watts.Cast<double?>().FirstOrDefault(rating => rating >= watts - Slack);
}
