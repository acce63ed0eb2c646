namespace Swapwright.Worksheets.Wiring;

/// <summary>Wires that are twisted with another over their whole length, as the two of a data bus.</summary>
public static class TwistedPairs
{
    /// <summary>The new wire that one is twisted with; null where its signal is of no pair, or where the other wire does not go the same way.</summary>
    public static WireRun? Beside(WiringSheet sheet, WireRun run)
    {
        var others = sheet.Data?.Signals.TwistedWith(run.Signal) ?? [];
        return !others.Any() ? null : sheet.Runs.FirstOrDefault(other =>
            other.Signal != run.Signal
            && others.Contains(other.Signal)
            && ((other.From.Place == run.From.Place && other.To.Place == run.To.Place) || (other.From.Place == run.To.Place && other.To.Place == run.From.Place)));
    }

    /// <summary>Either of the two signals may say it.</summary>
    internal static bool AreTwisted(WiringData data, string one, string other) =>
        one != other && data.Signals.TwistedWith(one).Contains(other);
}
