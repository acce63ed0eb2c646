using System.Text;

namespace Swapwright.Reports;

/// <summary>Comma-separated values after RFC 4180, with LF line ends.</summary>
internal static class CsvForm
{
    public static string Write(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows) => OfRows(header, rows.Select(Row));

    /// <param name="rows">As <see cref="Row"/> writes them.</param>
    public static string OfRows(IReadOnlyList<string> header, IEnumerable<string> rows) => string.Concat(rows.Prepend(Row(header)));

    public static string Row(IReadOnlyList<string> cells)
    {
        var text = new StringBuilder();
        for (var at = 0; at < cells.Count; at++)
        {
            text.Append(at == 0 ? "" : ",").Append(Cell(cells[at]));
        }

        return text.Append('\n').ToString();
    }

    private static string Cell(string value)
    {
        var tame = PlainText.Tame(value);

        // A spreadsheet would take such a cell for a formula, in some languages the wide forms too: the apostrophe makes it text.
        if (tame.TrimStart() is ['=' or '+' or '-' or '@' or '\uFF1D' or '\uFF0B' or '\uFF0D' or '\uFF20', ..])
        {
            tame = "'" + tame;
        }

        return tame.AsSpan().IndexOfAny(",\"\n") >= 0 || tame.StartsWith(' ') ? $"\"{tame.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : tame;
    }
}
