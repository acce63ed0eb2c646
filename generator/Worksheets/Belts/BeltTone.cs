namespace Swapwright.Worksheets.Belts;

/// <summary>Frequencies between which a plucked belt is tight enough, Hz.</summary>
public sealed record ToneRange(double LowHz, double MiddleHz, double HighHz);

/// <summary>
/// How a belt that is tightened by hand sounds: the note of its longest free span when it is plucked in the middle, as a telephone or a
/// guitar tuner reads it.
/// </summary>
/// <remarks>
/// A string of length L under the tension T with the mass m a metre swings at f = sqrt(T/m)/(2L): Mersenne's law, as in N. H. Fletcher and
/// T. D. Rossing, The Physics of Musical Instruments, chapter 2 (chapter from memory). A belt is stiffer than a string and sounds a few percent higher, the
/// more so the shorter the span; that is why the longest one is plucked. Tension and mass both go by the rib, so the note does not
/// depend on how many there are.
/// </remarks>
/// <param name="FromId">The span leaves this pulley.</param>
/// <param name="ToId">The span arrives at this one.</param>
public sealed record BeltTone(string FromId, string ToId, double SpanMm, ToneRange New, ToneRange RunIn)
{
    /// <summary>Frequency of the lowest note of a string, Hz; 0 for a tension of 0.</summary>
    /// <param name="spanMm">Free length, mm, above 0.</param>
    /// <param name="tensionN">Tension, N, at least 0.</param>
    /// <param name="massKgPerM">Mass a metre, kg/m, above 0.</param>
    public static double Frequency(double spanMm, double tensionN, double massKgPerM)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spanMm);
        ArgumentOutOfRangeException.ThrowIfNegative(tensionN);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(massKgPerM);
        return Math.Sqrt(tensionN / massKgPerM) / (2 * spanMm / 1000);
    }

    /// <summary>Null where the masses or tensions given are of no use.</summary>
    internal static BeltTone? Of(BeltPath path, StockedBelt? belt, BeltLimits limits)
    {
        var mass = belt?.RibMassKgPerM ?? limits.RibMassKgPerM;
        var longest = path.Runs.MaxBy(run => run.SpanToNextMm)!;
        if (!(mass > 0 && limits.NewTensionN >= 0 && limits.RunInTensionN >= 0 && longest.SpanToNextMm > 0 && limits.TensionSpreadPercent is >= 0 and <= 100))
        {
            return null;
        }

        ToneRange Range(double tension)
        {
            double At(double percent) => Frequency(longest.SpanToNextMm, tension * percent / 100, mass);
            return new(At(100 - limits.TensionSpreadPercent), At(100), At(100 + limits.TensionSpreadPercent));
        }

        var next = path.Runs[(path.Runs.IndexOf(longest) + 1) % path.Runs.Length];
        return new(longest.StationId, next.StationId, longest.SpanToNextMm, Range(limits.NewTensionN), Range(limits.RunInTensionN));
    }
}
