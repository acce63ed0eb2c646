using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Site.Pages;

/// <summary>The worksheets of a guide that end in numbers.</summary>
internal static class GuideLedgers
{
    // Shown within the section of the gearbox, of the ECU, and of the work.
    private static readonly ImmutableArray<string> s_within = ["gearing", "fuel", "torques"];

    public static ImmutableArray<GuideLedger> Of(Sheet sheet, string id) => sheet.Ledger(id) is { } ledger ? [Whole(ledger)] : [];

    /// <summary>Every ledger except the one that is read beside the work.</summary>
    // A guide names this many figures that are as they should be; a longer list would only be skipped.
    private const int MostNamed = 4;

    public static ImmutableArray<GuideLedger> OfFigures(Sheet sheet) => [.. sheet.Ledgers.Where(ledger => ledger.Id != "torques").Select(Whole)];

    public static ImmutableArray<GuideFigures> Short(Sheet sheet, string id, string path) => sheet.Ledger(id) is { } ledger ? [Short(ledger, path)] : [];

    public static ImmutableArray<GuideFigures> Alone(Sheet sheet, string path) => [.. sheet.Ledgers.Where(ledger => !s_within.Contains(ledger.Id)).Select(ledger => Short(ledger, path))];

    private static GuideFigures Short(Ledger ledger, string path)
    {
        var figures = ledger.Figures.Where(figure => !figure.IsStep).ToList();
        var within = figures.Where(figure => figure.Weight == FigureWeight.Good).Select(figure => LedgerWords.InLine(figure.Title)).ToList();
        return new GuideFigures
        {
            Id = ledger.Id,
            Title = ledger.Title,
            Figures = [.. figures.Where(figure => figure.Weight != FigureWeight.Good).Select(Named)],
            Within = within.Count switch
            {
                0 => "",
                <= MostNamed => $"Within their limits: {string.Join(", ", within)}.",
                var count => string.Create(CultureInfo.InvariantCulture, $"The other {count} figures keep within their limits."),
            },
            Gaps = Gaps(ledger),
            Sheet = new PageLink("Tables, charts and how it was reckoned", $"{path}#{ledger.Id}"),
        };
    }

    private static ImmutableArray<string> Gaps(Ledger ledger) => [.. ledger.Gaps.Select(gap => $"{gap.About}: not computed, for {gap.Reason}.")];

    private static NamedValue Named(Figure figure) => new(figure.Title, LedgerWords.Value(figure), figure.Remark.Length > 0 ? figure.Remark : null, Weigh(figure.Weight));

    private static GuideLedger Whole(Ledger ledger) => new()
    {
        Id = ledger.Id,
        Title = ledger.Title,
        Figures = [.. ledger.Figures.Where(figure => !figure.IsStep).Select(Named)],
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
        Gaps = Gaps(ledger),
        Notes = ledger.Notes,
        Reasons = [.. ledger.Figures.Where(figure => figure.Formula.Length > 0).Select(Reason)],
    };

    private static NamedValue Reason(Figure figure)
    {
        var inputs = string.Join(", ", figure.From.Select(input => $"{(input.IsName ? input.Title : LedgerWords.InLine(input.Title))} {LedgerWords.Input(input)}"));
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
