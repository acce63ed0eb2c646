using System.Collections.Immutable;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Site.Pages;

/// <summary>The worksheets of a guide that end in numbers.</summary>
internal static class GuideLedgers
{
    // Shown within the section of the gearbox, of the ECU, and of the work.
    private static readonly ImmutableArray<string> s_within = ["gearing", "fuel", "torques"];

    public static ImmutableArray<GuideLedger> Of(Sheet sheet, string id) => sheet.Ledger(id) is { } ledger ? [Ledger(ledger)] : [];

    public static ImmutableArray<GuideLedger> Alone(Sheet sheet) => [.. sheet.Ledgers.Where(ledger => !s_within.Contains(ledger.Id)).Select(Ledger)];

    private static GuideLedger Ledger(Ledger ledger) => new()
    {
        Id = ledger.Id,
        Title = ledger.Title,
        Figures = [.. ledger.Figures.Where(figure => !figure.IsStep).Select(figure => new NamedValue(figure.Title, LedgerWords.Value(figure), figure.Remark.Length > 0 ? figure.Remark : null, Weigh(figure.Weight)))],
        Tables =
        [
            .. ledger.Tables.Select(table => new GuideLedgerTable(
                table.Title,
                [.. table.Columns.Select(column => column.Unit.Length > 0 ? $"{column.Title}, {column.Unit}" : column.Title)],
                [.. table.Rows.Select(row => new GuideLedgerRow([.. table.Columns.Zip(row).Select(pair => LedgerWords.Cell(pair.First with { Unit = "" }, pair.Second))]))])
            {
                Words = [.. table.Columns.Select((_, at) => table.Rows.Any(row => !row[at].IsEmpty && row[at].Value is null))],
            }),
        ],
        Charts = [.. ledger.Charts.Select(chart => new HtmlString(ChartDrawing.Svg(chart, new ChartDrawingOptions($"chart-{ledger.Id}-{chart.Id}"))))],
        Gaps = [.. ledger.Gaps.Select(gap => $"{gap.About}: not computed, for {gap.Reason}.")],
        Notes = ledger.Notes,
        Reasons = [.. ledger.Figures.Where(figure => figure.Formula.Length > 0).Select(Reason)],
    };

    private static NamedValue Reason(Figure figure)
    {
        var inputs = string.Join(", ", figure.From.Select(input => $"{LedgerWords.InLine(input.Title)} {LedgerWords.Input(input)}"));
        return new NamedValue(figure.Title, $"{figure.Formula}{(inputs.Length > 0 ? $"; {inputs}" : "")}", figure.Source.Length > 0 ? figure.Source : null);
    }

    private static Weight Weigh(FigureWeight weight) => weight switch
    {
        FigureWeight.Good => Weight.Good,
        FigureWeight.Caution => Weight.Caution,
        FigureWeight.Bad => Weight.Bad,
        _ => Weight.Plain,
    };
}
