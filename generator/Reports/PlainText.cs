using System.Globalization;
using System.Text;
using Spectre.Console;

namespace Swapwright.Reports;

/// <summary>Text of a knowledge base on its way to a terminal.</summary>
internal static class PlainText
{
    /// <summary>Takes out what a terminal would obey: control characters and marks that turn the direction of writing.</summary>
    public static string Tame(string text)
    {
        if (!text.EnumerateRunes().Any(IsUnruly))
        {
            return text;
        }

        var tame = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            tame.Append(IsUnruly(rune) ? (Rune.IsWhiteSpace(rune) ? " " : "\uFFFD") : rune.ToString());
        }

        return tame.ToString();
    }

    /// <summary>Tame, and escaped for the console's markup.</summary>
    public static string Markup(string text) => Spectre.Console.Markup.Escape(Tame(text));

    // By code point, not by char: tag characters, which hide text, lie beyond the first plane.
    private static bool IsUnruly(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => true,
        UnicodeCategory.Format => rune.Value is not 0x200D and not 0x00AD,
        _ => false,
    };
}
