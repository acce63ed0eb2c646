using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Torques;

/// <summary>
/// Fasteners whose torque a manual states come first, then those for which one is computed, then those that only a manual can
/// answer. A stated torque is never replaced by a computed one.
/// </summary>
internal static class TorqueTables
{
    private const string TorqueSource = "Mechanical Fastening, Joining and Assembly, page 85, T = K F d; stress area and proof strength of ISO 898-1, the latter partly from memory";

    public static void Add(LedgerBuilder ledger, TorquesInput input)
    {
        var stated = input.Fasteners.Where(IsStated).ToList();
        var computed = input.Fasteners.Where(one => !IsStated(one) && !one.ToYield && !one.LookUp).Select(one => (Fastener: one, Torque: Compute(ledger, input.Assumptions, one))).Where(pair => pair.Torque is not null).ToList();
        var manual = input.Fasteners.Where(one => !IsStated(one) && (one.ToYield || one.LookUp)).ToList();
        if (stated.Count > 0)
        {
            stated.ForEach(one => ledger.Add(new Figure($"bolt-{one.Id}", one.Title, one.Stated!.Value, "N m") { Decimals = 0, IsStep = true, Remark = "stated by a manual" }));
            ledger.Add(new LedgerTable(
                "stated",
                "Tightening torques that a manual states",
                [new("fastener", "Fastener"), new("for", "For"), new("thread", "Thread"), new("torque", "Torque", "N m", 0), new("then", "Then, and with what"), new("word", "On whose word")],
                [.. stated.Select(one => Row(LedgerCell.Words(Name(one)), LedgerCell.Words(one.For), LedgerCell.Words(Thread(one)), LedgerCell.Number(one.Stated), LedgerCell.Words(Then(one)), LedgerCell.Words(one.StatedBy.Length > 0 ? one.StatedBy : "a manual that is not named")))]));
        }

        if (computed.Count > 0)
        {
            ledger.Add(new LedgerTable(
                "computed",
                "Tightening torques computed where no manual's is known",
                [new("fastener", "Fastener"), new("for", "For"), new("thread", "Thread"), new("torque", "Torque", "N m", 0), new("range", "With friction between", ""), new("preload", "Preload", "kN"), new("how", "How")],
                [.. computed.Select(pair => Row(LedgerCell.Words(Name(pair.Fastener)), LedgerCell.Words(pair.Fastener.For), LedgerCell.Words(Thread(pair.Fastener)), LedgerCell.Number(pair.Torque!.Value.Nominal), LedgerCell.Words(pair.Torque.Value.Range), LedgerCell.Number(pair.Torque.Value.Preload / 1000), LedgerCell.Words(How(pair.Fastener))))]));
        }

        if (manual.Count > 0)
        {
            ledger.Add(new LedgerTable(
                "manual",
                "The manual's figure only: look it up",
                [new("fastener", "Fastener"), new("for", "For"), new("thread", "Thread"), new("what", "What to do")],
                [.. manual.Select(one => Row(LedgerCell.Words(Name(one)), LedgerCell.Words(one.For), LedgerCell.Words(Thread(one)), LedgerCell.Words(Ask(one))))]));
        }

        Notes(ledger, stated.Count > 0, computed.Count > 0, input.Fasteners.Any(one => one.ToYield));
    }

    private static void Notes(LedgerBuilder ledger, bool stated, bool computed, bool toYield)
    {
        if (stated || computed)
        {
            ledger.Note("A torque that the maker's manual states always wins over a computed one, whatever the difference; have the manual of the part that the bolt goes into at hand.");
        }

        if (computed)
        {
            ledger.Note("Computed torques are for a steel bolt in sound steel or iron, with threads engaged over their whole diameter at least. In aluminium, on a gasket, on rubber or with a soft washer less is right, and only the manual says how much. Nine tenths of a torque go into friction, so oil on a thread that is reckoned dry overloads the bolt.");
        }

        if (toYield)
        {
            ledger.Note("A bolt tightened to yield has stretched for good: it is used once, and no torque is computed for it.");
        }
    }

    private static (double Nominal, string Range, double Preload)? Compute(LedgerBuilder ledger, TighteningAssumptions assumptions, Fastener one)
    {
        if (MetricThread.Read(one.Thread) is not { } thread)
        {
            ledger.Gap($"Torque of {one.Title}", $"the pitch of {one.Thread} is not known", "Write the pitch with the thread, such as M10x1.25.");
            return null;
        }

        if (StrengthClass.Proof(one.Class, thread.Diameter) is not { } proof)
        {
            ledger.Gap($"Torque of {one.Title}", one.Class.Length == 0 ? "its strength class is not known" : $"class {one.Class} has no proof strength in this size", "Read the class on the head, or look the torque up in the manual.");
            return null;
        }

        var factor = one.NutFactor ?? (one.Lubricated ? assumptions.NutFactorLubricated : assumptions.NutFactor);
        var preload = TighteningTorque.Preload(thread, proof, assumptions.ProofShare);
        var torque = TighteningTorque.Torque(factor, preload, thread.Diameter);
        var (least, most) = (torque * (1 - assumptions.Scatter), torque * (1 + assumptions.Scatter));
        if (!(torque > 0 && Soundness.IsNumber(torque) && assumptions.Scatter is >= 0 and < 1))
        {
            ledger.Gap($"Torque of {one.Title}", "its inputs give no positive number", "Check thread, class and the settings of tightening.");
            return null;
        }

        ledger.Add(new Figure($"bolt-{one.Id}", one.Title, torque, "N m")
        {
            Decimals = 0,
            IsStep = true,
            Formula = "T = K F d, F = s σₚ Aₛ",
            Source = TorqueSource,
            From =
            [
                new("Diameter", thread.Diameter * 1000, "mm", one.Origin),
                new("Stress area", thread.StressArea * 1e6, "mm²", $"thread {thread}"),
                new("Proof strength", proof / 1e6, "MPa", $"class {one.Class}"),
                new("Share of proof", assumptions.ProofShare * 100, "%", "setting of the base"),
                new("K", factor, "", one.NutFactor is null ? "setting of the base" : one.Origin),
            ],
        });
        return (torque, $"{Number(least)} to {Number(most)} N m", preload);
    }

    private static bool IsStated(Fastener one) => one.Stated is > 0 and var torque && Soundness.IsNumber(torque);

    private static string Name(Fastener one) => one.Count > 1 ? string.Create(CultureInfo.InvariantCulture, $"{one.Title}, {one.Count}") : one.Title;

    private static string Thread(Fastener one) => $"{MetricThread.Read(one.Thread)?.ToString() ?? one.Thread}{(one.Class.Length > 0 ? $", {one.Class}" : "")}";

    private static string Then(Fastener one) => Join(
        one.AngleDeg is { } angle ? $"{Number(angle)}° further" : "",
        one.ToYield ? "to yield: new ones" : one.Once ? "new ones" : "",
        one.Lubricated ? "oiled" : "",
        one.Into == "aluminium" ? "into aluminium" : "");

    private static string Ask(Fastener one)
    {
        var manual = one.StatedBy.Length > 0 ? one.StatedBy : "the manual of what the bolt goes into";
        return one.ToYield
            ? $"tightened to yield: new ones, to the torque and angle of {manual}; a figure from a table is wrong for them"
            : $"{(one.Once ? "new ones, to the" : "the")} torque that {manual} gives; a figure from a table will not do here";
    }

    private static string How(Fastener one) => Join(
        one.Lubricated ? "oiled" : "dry",
        one.Once ? "new ones" : "",
        one.Into is "aluminium" or "plastic" ? $"into {one.Into}: this is the bolt's limit, the thread may stand less; ask the manual" : "");

    private static string Join(params ReadOnlySpan<string> words) => string.Join("; ", words.ToArray().Where(word => word.Length > 0));

    private static string Number(double value) => Math.Round(value, value < 10 ? 1 : 0, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture);

    private static ImmutableArray<LedgerCell> Row(params ReadOnlySpan<LedgerCell> cells) => [.. cells];
}
