using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Torques;

/// <summary>What is filled in: a line for each fluid and grade, with the total and what to buy.</summary>
internal static class FluidTable
{
    private const string Licensed = "not bought: recovered, charged and proved tight by a licensed person only";

    public static void Add(LedgerBuilder ledger, TorquesInput input)
    {
        // An amount that cannot be is one that is not known.
        var fillings = input.Fillings.Select(filling => filling.Amount is { } amount && (amount <= 0 || !double.IsFinite(amount)) ? filling with { Amount = null } : filling).ToList();
        foreach (var (filling, _) in input.Fillings.Zip(fillings).Where(pair => pair.First.Amount is not null && pair.Second.Amount is null))
        {
            ledger.Gap($"{filling.Title} into {filling.Holder}", "its amount is no positive number", "Measure what was drained, or look the filling up in the manual.");
        }

        var lines = fillings.GroupBy(filling => (filling.Kind, filling.Grade)).ToList();
        if (lines.Count == 0)
        {
            return;
        }

        foreach (var kind in fillings.GroupBy(filling => filling.Kind, StringComparer.Ordinal).Where(kind => kind.Any(filling => filling.Amount is not null)))
        {
            ledger.Add(new Figure($"fluid-{kind.Key}", kind.First().Title, kind.Sum(filling => filling.Amount ?? 0), Unit(kind.First()))
            {
                IsStep = true,
                Formula = "sum of the fillings",
                Source = "stated by the base",
                From = [.. kind.Where(filling => filling.Amount is not null).Select(filling => new FigureInput(filling.Holder, filling.Amount!.Value, Unit(filling), filling.Origin) { IsName = true })],
            });
        }

        ledger.Add(new LedgerTable(
            "fluids",
            "What is filled in",
            [new("fluid", "Fluid"), new("grade", "Grade"), new("amount", "Amount"), new("holder", "Into"), new("buy", "Buy")],
            [.. lines.Select(line => Line([.. line]))]));
        if (input.Fillings.Any(filling => filling.IsLicensed))
        {
            ledger.Note("Refrigerant is never let out and never charged at home: both are for a licensed person, and the law of most countries says so.");
        }

        ledger.Note("Amounts are for a first filling; the dipstick, the filler plug or the mark decides. Fluids of two kinds are not mixed, and old ones are handed in.");
    }

    private static ImmutableArray<LedgerCell> Line(ImmutableArray<Filling> line)
    {
        var first = line[0];
        var known = line.All(filling => filling.Amount is not null);
        var sum = line.Sum(filling => filling.Amount ?? 0);
        var unit = Unit(first);
        var total = sum > 0 ? $"{Number(sum)} {unit}{(known ? "" : " and what is not known")}" : "not known";
        return
        [
            LedgerCell.Words(first.Title),
            LedgerCell.Words(first.Grade.Length > 0 ? first.Grade : "as the manual says"),
            LedgerCell.Words(total),
            LedgerCell.Words(string.Join("; ", line.Select(filling => filling.Amount is { } amount ? $"{filling.Holder}: {Number(amount)} {unit}" : filling.Holder))),
            LedgerCell.Words(first.IsLicensed ? Licensed : sum > 0 ? $"{Containers(sum)}{(known ? "" : " or more")}" : "as the manual says"),
        ];
    }

    private static string Unit(Filling filling) => filling.IsLicensed ? "kg" : "L";

    // Sold by the litre; half a litre where no more is wanted.
    private static string Containers(double litres) => litres <= 0.5 ? "0.5 L" : $"{Number(Math.Ceiling(litres - 1e-9))} L";

    private static string Number(double value) => Math.Round(value, 2, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture);
}
