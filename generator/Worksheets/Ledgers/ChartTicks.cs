using System.Collections.Immutable;

namespace Swapwright.Worksheets.Ledgers;

/// <summary>Round numbers along an axis.</summary>
internal static class ChartTicks
{
    /// <summary>
    /// Multiples of 1, 2 or 5 times a power of ten, from the first at or below <paramref name="from"/> to the first at or above
    /// <paramref name="to"/>: about <paramref name="wanted"/> of them. An axis without extent gets one step.
    /// </summary>
    public static ImmutableArray<double> Of(double from, double to, int wanted)
    {
        var span = to > from ? to - from : Math.Max(Math.Abs(from), 1);
        var power = Math.Pow(10, Math.Floor(Math.Log10(span / wanted)));
        var step = power * (span / wanted / power) switch
        {
            <= 1.000001 => 1,
            <= 2.000001 => 2,
            <= 5.000001 => 5,
            _ => 10,
        };
        var first = (long)Math.Floor((from / step) + 1e-9);
        var last = Math.Max((long)Math.Ceiling(((from + span) / step) - 1e-9), first + 1);
        return [.. Enumerable.Range(0, (int)(last - first) + 1).Select(at => (first + at) * step)];
    }

    /// <summary>Decimals that the multiples of a step have.</summary>
    public static int Decimals(double step) => Math.Clamp((int)-Math.Floor(Math.Log10(step) + 1e-9), 0, 6);
}
