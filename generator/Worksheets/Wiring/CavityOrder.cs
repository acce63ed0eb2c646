using System.Globalization;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Cavities in the order a reader expects: numbers by value, then texts; "2" before "10", "a2" before "a10".</summary>
internal sealed class CavityOrder : IComparer<string?>
{
    public static readonly CavityOrder Instance = new();

    public int Compare(string? x, string? y)
    {
        var (left, right) = (Split(x ?? ""), Split(y ?? ""));
        var byPrefix = string.CompareOrdinal(left.Prefix, right.Prefix);
        var order = byPrefix != 0 ? byPrefix : left.Number.CompareTo(right.Number);
        return order != 0 ? order : string.CompareOrdinal(x, y);
    }

    private static (string Prefix, long Number) Split(string name)
    {
        var digits = name.Length;
        while (digits > 0 && char.IsAsciiDigit(name[digits - 1]))
        {
            digits--;
        }

        return long.TryParse(name.AsSpan(digits), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? (name[..digits], number)
            : (name, -1);
    }
}
