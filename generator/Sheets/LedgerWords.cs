using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Sheets;

/// <summary>Numbers of a ledger as a reader sees them.</summary>
public static class LedgerWords
{
    public static string Value(Figure figure) => WithUnit(Grouped(figure.Value, figure.Decimals), figure.Unit);

    /// <summary>Words, or the number with its unit; empty where there is neither.</summary>
    public static string Cell(LedgerColumn column, LedgerCell cell) => cell.Value is { } value ? WithUnit(Grouped(value, column.Decimals), column.Unit) : cell.Text;

    /// <summary>Rounded, always with that many decimals, so that columns line up.</summary>
    public static string Number(double value, int decimals) => Written(value, decimals, "F");

    // As remarks and charts write theirs.
    private static string Grouped(double value, int decimals) => Signed(Written(value, decimals, "N"));

    // Readers see the sign of arithmetic, as remarks write it; programs get the letter of their tables.
    private static string Signed(string number) => number.Replace('-', '−');

    private static string Written(double value, int decimals, string form)
    {
        var text = Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString(form + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.TrimStart('-').All(letter => letter is '0' or '.') ? text.TrimStart('-') : text;
    }

    /// <summary>A number that went in: five digits that count, thousands grouped as everywhere.</summary>
    public static string Input(FigureInput input)
    {
        var decimals = Math.Clamp(4 - (int)Math.Floor(Math.Log10(Math.Max(Math.Abs(input.Value), 1))), 0, 4);
        return WithUnit(Signed(Math.Round(input.Value, decimals, MidpointRounding.AwayFromZero).ToString("#,0.####", CultureInfo.InvariantCulture)), input.Unit);
    }

    /// <summary>A title in the middle of a sentence.</summary>
    public static string InLine(string title) => InSentence.Lower(title);

    private static string WithUnit(string number, string unit) => unit.Length == 0 ? number : $"{number} {unit}";
}
