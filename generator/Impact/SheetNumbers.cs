using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Sheets;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Impact;

/// <summary>A number of a sheet, as far as sheets print it: beyond that a difference is one of rounding.</summary>
internal sealed record SheetNumber(string Title, decimal Value, string Unit);

/// <summary>The numbers of a sheet by name.</summary>
internal static class SheetNumbers
{
    public static Dictionary<string, SheetNumber> Of(Sheet sheet, string currency)
    {
        var numbers = new Dictionary<string, SheetNumber>(StringComparer.Ordinal);
        foreach (var (name, number) in Money(sheet, currency).Concat(Catalogue(sheet)).Concat(sheet.Ledgers.SelectMany(Ledger)))
        {
            numbers.TryAdd(name, number);
        }

        return numbers;
    }

    private static IEnumerable<(string, SheetNumber)> Money(Sheet sheet, string currency) =>
        from of in new[] { (Id: "money", Title: "cost of parts", Range: sheet.Money, Unit: currency), (Id: "hours", Title: "hours of work", Range: sheet.Hours, Unit: "h") }
        from one in new[] { ("least", of.Range.Least), ("likely", of.Range.Likely), ("most", of.Range.Most) }
        select ($"{of.Id}.{one.Item1}", new SheetNumber($"{of.Title}, {one.Item1}", Math.Round(one.Item2, 2), of.Unit));

    private static IEnumerable<(string, SheetNumber)> Catalogue(Sheet sheet) =>
        from computed in ComputedValues.All
        from name in computed.Pattern.Split('*') is [var before, var after] ? sheet.Belts.Select(belt => before + belt.Loop.Id + after) : [computed.Pattern]
        let value = ComputedNumbers.Of(sheet, name)
        where value is not null
        select (name, new SheetNumber(computed.Title, Math.Round(value.Value, 1), computed.Unit.Symbol));

    private static IEnumerable<(string, SheetNumber)> Ledger(Ledger ledger)
    {
        var figures = ledger.Figures.Where(figure => !figure.IsStep)
            .Select(figure => ($"{ledger.Id}.{figure.Id}", new SheetNumber(InSentence.Lower(figure.Title), Rounded(figure.Value, figure.Decimals), figure.Unit)));
        var cells = from table in ledger.Tables
                    from row in table.Rows
                    where row.Length > 0 && row[0].Text.Length > 0
                    from cell in row.Zip(table.Columns)
                    where cell.First.Value is not null
                    select (
                        $"{ledger.Id}.{table.Id}.{row[0].Text}.{cell.Second.Id}",
                        new SheetNumber($"{row[0].Text}, {InSentence.Lower(cell.Second.Title)}", Rounded(cell.First.Value ?? 0, cell.Second.Decimals), cell.Second.Unit));
        return figures.Concat(cells);
    }

    private static decimal Rounded(double value, int decimals) => Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero);
}
