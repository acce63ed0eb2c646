using System.Globalization;
using System.Text.Json;
using Swapwright.Sheets;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Reports;

/// <summary>Ledgers as JSON, as lines, and as a table for a spreadsheet.</summary>
internal static class SheetLedgers
{
    public static void Write(Utf8JsonWriter json, string id, Ledger? ledger)
    {
        if (ledger is null)
        {
            json.WriteNull(id);
            return;
        }

        json.Object(id, () =>
        {
            json.Objects("figures", ledger.Figures, figure => Figure(json, figure));
            json.Objects("tables", ledger.Tables, table =>
            {
                json.WriteString("id", table.Id);
                json.WriteString("title", table.Title);
                json.Objects("rows", table.Rows, row =>
                {
                    foreach (var (column, cell) in table.Columns.Zip(row))
                    {
                        Cell(json, column, cell);
                    }
                });
            });
            json.Objects("charts", ledger.Charts, chart => Chart(json, chart));
            json.Objects("missing", ledger.Gaps, gap =>
            {
                json.WriteString("about", gap.About);
                json.WriteString("reason", gap.Reason);
                json.WriteString("mend", gap.Mend);
            });
            json.Texts("notes", ledger.Notes);
        });
    }

    public static void Figure(Utf8JsonWriter json, Figure figure)
    {
        json.WriteString("id", figure.Id);
        json.WriteString("title", figure.Title);
        json.Quantity("value", figure.Value, figure.Unit, figure.Decimals);
        json.Text("formula", figure.Formula);
        json.Text("source", figure.Source);
        json.Objects("from", figure.From, input =>
        {
            json.WriteString("title", input.Title);
            json.Quantity("value", input.Value, input.Unit, 4);
            json.WriteString("origin", input.Origin);
        });
        json.Text("remark", figure.Remark);
        json.WriteString("weight", figure.Weight.ToString().ToLowerInvariant());
        json.WriteBoolean("step", figure.IsStep);
    }

    /// <summary>Figures, then tables, for reading.</summary>
    public static void Print(Action<string> heading, Action<string> item, Action<string> detail, Action<string> paragraph, IEnumerable<Ledger> ledgers)
    {
        foreach (var ledger in ledgers)
        {
            heading(ledger.Title);
            foreach (var figure in ledger.Figures.Where(figure => !figure.IsStep))
            {
                item($"{figure.Title}: {LedgerWords.Value(figure)}");
                if (figure.Remark.Length > 0)
                {
                    detail(figure.Remark);
                }
            }

            foreach (var table in ledger.Tables)
            {
                paragraph($"{table.Title}:");
                foreach (var row in table.Rows)
                {
                    item(string.Join(", ", table.Columns.Zip(row).Where(pair => !pair.Second.IsEmpty).Select(pair => pair.First == table.Columns[0] ? LedgerWords.Cell(pair.First, pair.Second) : $"{LedgerWords.InLine(pair.First.Title)} {LedgerWords.Cell(pair.First, pair.Second)}")));
                }
            }

            foreach (var gap in ledger.Gaps)
            {
                item($"{gap.About}: not computed, for {gap.Reason}. {gap.Mend}");
            }

            foreach (var note in ledger.Notes)
            {
                paragraph(note);
            }
        }
    }

    /// <summary>One row a figure, then one a cell of the tables, then one a point of the charts (RFC 4180).</summary>
    public static string Csv(params IEnumerable<Ledger> ledgers) => CsvForm.Write(
        ["ledger", "item", "title", "value", "unit", "formula", "source", "remark"],
        ledgers.SelectMany(Rows));

    private static IEnumerable<IReadOnlyList<string>> Rows(Ledger ledger) =>
        [
            .. ledger.Figures.Select(figure => (IReadOnlyList<string>)[ledger.Id, figure.Id, figure.Title, LedgerWords.Number(figure.Value, figure.Decimals), figure.Unit, figure.Formula, figure.Source, figure.Remark]),
            .. from table in ledger.Tables
               from row in table.Rows
               from pair in table.Columns.Zip(row).Skip(1)
               where !pair.Second.IsEmpty
               select (IReadOnlyList<string>)[ledger.Id, $"{table.Id}.{pair.First.Id}", $"{LedgerWords.Cell(table.Columns[0], row[0])}: {pair.First.Title}", pair.Second.Value is { } value ? LedgerWords.Number(value, pair.First.Decimals) : pair.Second.Text, pair.First.Unit, "", "", ""],
            .. from chart in ledger.Charts
               from series in chart.Series
               from point in series.Points
               select (IReadOnlyList<string>)[ledger.Id, chart.Id, $"{series.Title} at {Coordinate(point.Across)} {chart.Across.Unit}".TrimEnd(), Coordinate(point.Up), chart.Up.Unit, "", "", ""],
        ];

    private static void Chart(Utf8JsonWriter json, LedgerChart chart)
    {
        json.WriteString("id", chart.Id);
        json.WriteString("title", chart.Title);
        json.WriteString("words", chart.Words);
        Axis(json, "across", chart.Across);
        Axis(json, "up", chart.Up);
        json.Objects("series", chart.Series, series =>
        {
            json.WriteString("title", series.Title);
            json.WriteBoolean("reference", series.IsReference);
            json.Objects("points", series.Points, point =>
            {
                json.Plain("across", point.Across);
                json.Plain("up", point.Up);
            });
        });
    }

    private static void Axis(Utf8JsonWriter json, string name, ChartAxis axis) => json.Object(name, () =>
    {
        json.WriteString("title", axis.Title);
        json.WriteString("unit", axis.Unit);
        json.Plain("from", axis.From);
        json.Plain("to", axis.To);
    });

    private static string Coordinate(double value) => Math.Round(value, 4, MidpointRounding.AwayFromZero).ToString("0.####", CultureInfo.InvariantCulture);

    private static void Cell(Utf8JsonWriter json, LedgerColumn column, LedgerCell cell)
    {
        var name = JsonNamingPolicy.CamelCase.ConvertName(Camel(column.Id));
        if (cell.Value is { } value)
        {
            json.Quantity(name, value, column.Unit, column.Decimals);
        }
        else
        {
            json.Text(name, cell.Text);
        }
    }

    // ratio-before → ratioBefore
    private static string Camel(string id) => string.Concat(id.Split('-').Select((part, at) => at == 0 ? part : char.ToUpper(part[0], CultureInfo.InvariantCulture) + part[1..]));
}
