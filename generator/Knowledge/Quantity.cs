using System.Globalization;

namespace Swapwright.Knowledge;

/// <summary>A number with its unit.</summary>
public readonly record struct Quantity(decimal Value, Unit Unit)
{
    public override string ToString() => Unit.Symbol.Length == 0
        ? Value.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{Value} {Unit.Symbol}");

    /// <summary>
    /// Reads <c>12.5</c> (in <paramref name="expected"/>), <c>12.5 mm</c> or <c>0.5 in</c> and converts to <paramref name="expected"/>.
    /// </summary>
    /// <returns>null and the quantity, or what is wrong with the text.</returns>
    public static string? Read(string text, Unit expected, out decimal value)
    {
        var trimmed = text.AsSpan().Trim();
        var digits = 0;
        while (digits < trimmed.Length && (char.IsAsciiDigit(trimmed[digits]) || trimmed[digits] is '.' or '-' or '+'))
        {
            digits++;
        }

        value = 0;
        if (!decimal.TryParse(trimmed[..digits], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
        {
            return $"`{text}` is not a number";
        }

        var symbol = trimmed[digits..].Trim().ToString();
        if (symbol.Length == 0)
        {
            value = number;
            return null;
        }

        var unit = Unit.Find(symbol);
        if (unit is null)
        {
            return $"`{symbol}` is not a unit that is known here";
        }

        if (unit.Dimension != expected.Dimension)
        {
            return expected.Dimension == Dimension.None
                ? $"`{text}` carries a unit where a plain number is wanted"
                : $"`{text}` is of the wrong dimension: a quantity in {expected.Symbol} is wanted";
        }

        try
        {
            value = unit.Convert(number, expected);
            return null;
        }
        catch (OverflowException)
        {
            return $"`{text}` is too large a number";
        }
    }
}
