using System.Globalization;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Cavities in the order a reader expects: numbers by value, then texts; "2" before "10", "a2" before "a10".</summary>
internal sealed class CavityOrder : IComparer<string?>
{
    public static readonly CavityOrder Instance = new();

    public int Compare(string? x, string? y)
    {
        var left = Split(x ?? "", out var leftNumber);
        var right = Split(y ?? "", out var rightNumber);
        var byPrefix = left.SequenceCompareTo(right);
        var order = byPrefix != 0 ? byPrefix : leftNumber.CompareTo(rightNumber);
        return order != 0 ? order : string.CompareOrdinal(x, y);
    }

    private static ReadOnlySpan<char> Split(string name, out long number)
    {
        var digits = name.Length;
        while (digits > 0 && char.IsAsciiDigit(name[digits - 1]))
        {
            digits--;
        }

        if (long.TryParse(name.AsSpan(digits), NumberStyles.None, CultureInfo.InvariantCulture, out number))
        {
            return name.AsSpan(0, digits);
        }

        number = -1;
        return name;
    }
}
