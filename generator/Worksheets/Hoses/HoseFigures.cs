using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Hoses;

/// <summary>The numbers of the hoses with the way they were got, for who asks why.</summary>
public static class HoseFigures
{
    private const string Practice = "common practice, no source";

    public static void Add(LedgerBuilder ledger, HoseSheet sheet, HoseLimits limits)
    {
        foreach (var run in sheet.Runs)
        {
            Length(ledger, run, limits);
            Pressure(ledger, run, limits);
        }

        foreach (var total in sheet.Totals)
        {
            var circuit = HoseWords.Circuit(total.Circuit);
            var pieces = sheet.Runs.Where(run => run.Circuit == total.Circuit && run.LeastClass == total.LeastClass)
                .SelectMany(run => run.Pieces.Where(piece => piece.BoreMm.Equals(total.BoreMm) && piece.LengthMm is not null).Select(piece => new FigureInput(run.Title, piece.LengthMm!.Value, "mm", $"figure {run.Id}-length")));
            ledger.Add(new Figure(string.Create(CultureInfo.InvariantCulture, $"total-{circuit.Replace(' ', '-')}-{HoseWords.Number(total.BoreMm).Replace('.', '-')}{(total.LeastClass is { } known ? $"-{known.ToString().ToLowerInvariant()}" : "")}"), $"Hose to cut, {circuit}, {HoseWords.Number(total.BoreMm)} mm", total.LengthMm, "mm")
            {
                Decimals = 0,
                Formula = "Σ L of the pieces of that bore",
                Source = Practice,
                From = [.. pieces, new("pieces", total.Pieces, "", "hoses of the combination")],
            });
        }

        foreach (var purchase in sheet.Purchases)
        {
            var cut = sheet.Runs.SelectMany(run => run.Pieces.Where(piece => piece.Part == purchase.Part).Select(piece => new FigureInput(run.Title, piece.LengthMm ?? 0, "mm", $"figure {run.Id}-length"))).ToImmutableArray();
            var joined = sheet.Runs.Where(run => run.Joiner?.Part == purchase.Part).Select(run => new FigureInput(run.Title, 1, "", "hoses of the combination")).ToImmutableArray();
            ledger.Add(new Figure($"buy-{purchase.Part}", $"To buy of {purchase.Part}", purchase.Amount, "")
            {
                Decimals = 0,
                Formula = !joined.IsEmpty ? "one for each hose between two sizes" : cut.IsEmpty ? "one set" : "lengths as sold, filled with L (1 + z), longest piece first; by the metre, every metre begun",
                Source = cut.IsEmpty ? Practice : "first-fit decreasing, never more than 11 ∕ 9 of the fewest and 6 ∕ 9 (Dósa 2007, from memory)",
                From = !joined.IsEmpty ? joined : cut.IsEmpty ? [new("hoses from the set", sheet.Runs.Count(run => run.Set == purchase.Part), "", $"part {purchase.Part}")] : [.. cut, new("spare z for each piece", limits.SparePercent, "%", "setting of the base")],
                Remark = purchase.LeftMm is { } left ? $"{HoseWords.Length(left)} left over" : "",
            });
        }
    }

    private static void Length(LedgerBuilder ledger, HoseRun run, HoseLimits limits)
    {
        if (run.LengthMm is not { } length || run.From.Location is not { } from || run.To.Location is not { } to)
        {
            ledger.Gap($"Length of {run.Title}", "an end has not been measured", "Give both ports their place in the bay, or measure the hose on the car.");
            return;
        }

        ImmutableArray<CutInPart> cutIn = run.Action == HoseAction.Keep ? [] : run.CutIn;
        ledger.Add(new Figure($"{run.Id}-length", $"Length of {run.Title}", length, "mm")
        {
            Decimals = 0,
            Formula = (run.Joiner is null ? "L = ⌈k d + s⌉" : "L = ⌈k d_near + s⌉ + ⌈k d_far + s⌉, parted at the stepped joiner") + (cutIn.IsEmpty ? "" : "; s − c more for each part that is cut into it"),
            Source = Practice,
            From =
            [
                new("straight way d", from.DistanceTo(to), "mm", $"port {run.From.Id} to port {run.To.Id}"),
                new("routing factor k", limits.RoutingFactor, "", "setting of the base"),
                new("slack s for each piece", limits.SlackMm, "mm", "setting of the base"),
                .. run.Joiner is null ? (FigureInput[])[] : [new("joiner from the port", limits.StepMm, "mm", "setting of the base")],
                .. cutIn.Select(one => new FigureInput("cut into it c", one.LengthMm ?? 0, "mm", $"part {one.Part}")),
            ],
            Remark = run.Pieces.Length > 1 ? $"pieces of {string.Join(" and ", run.Pieces.Select(piece => HoseWords.Length(piece.LengthMm)))}" : "",
        });
    }

    private static void Pressure(LedgerBuilder ledger, HoseRun run, HoseLimits limits)
    {
        if (run.LeastClass is not { } least || run.PressureBar is not { } bar)
        {
            return;
        }

        ledger.Add(new Figure($"{run.Id}-pressure", $"Pressure in {run.Title}", bar, "bar")
        {
            Decimals = 2,
            Formula = "the higher of its two ends",
            Source = "classes by the scope of SAE J30 (June 1998), their pressures from memory",
            From =
            [
                .. run.From.PressureBar is { } one ? (FigureInput[])[new(run.From.Title, one, "bar", $"port {run.From.Id}")] : [],
                .. run.To.PressureBar is { } other ? (FigureInput[])[new(run.To.Title, other, "bar", $"port {run.To.Id}")] : [],
                new("pressure from which a class for injection is asked", limits.InjectionBar, "bar", "setting of the base"),
            ],
            Remark = $"class {HoseWords.Class(least)}",
        });
    }
}
