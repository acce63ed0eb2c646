using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using System.Text;

namespace Swapwright.Site.Pages;

/// <summary>Small bars that stand beside the same in words, and so are hidden from those who listen.</summary>
internal static class HealthBars
{
    private const int Length = 1000;

    /// <summary>Parts of one whole, each in the class that belongs to its place: <c>part-1</c>, <c>part-2</c> and so on.</summary>
    public static HtmlString Parts(ImmutableArray<BigInteger> parts)
    {
        var whole = parts.Aggregate(BigInteger.Zero, (sum, part) => sum + part);
        var shapes = new StringBuilder();
        var before = BigInteger.Zero;
        for (var i = 0; i < parts.Length && !whole.IsZero; i++)
        {
            var (from, to) = ((int)(before * Length / whole), (int)((before + parts[i]) * Length / whole));
            before += parts[i];
            if (to > from)
            {
                shapes.Append(CultureInfo.InvariantCulture, $"<rect class=\"part-{i + 1}\" x=\"{from}\" width=\"{to - from}\" height=\"20\"/>");
            }
        }

        return Frame(shapes.ToString());
    }

    /// <summary>One length against the longest of several.</summary>
    public static HtmlString Single(int count, int longest) =>
        Frame(string.Create(CultureInfo.InvariantCulture, $"<rect class=\"part-1\" width=\"{(longest == 0 ? 0 : Math.Max(count > 0 ? 4 : 0, count * Length / longest))}\" height=\"20\"/>"));

    private static HtmlString Frame(string shapes) => new($"<svg class=\"bar\" viewBox=\"0 0 {Length.ToString(CultureInfo.InvariantCulture)} 20\" preserveAspectRatio=\"none\" aria-hidden=\"true\">{shapes}</svg>");
}
