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
        // Nearly every text is plain ASCII, and more than half of what is left holds only a dash or a sign.
        if (text.AsSpan().IndexOfAnyExceptInRange(' ', '~') < 0 || IsTame(text))
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

    private static bool IsTame(string text)
    {
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsUnruly(rune))
            {
                return false;
            }
        }

        return true;
    }

    // By code point, not by char: tag characters, which hide text, lie beyond the first plane.
    private static bool IsUnruly(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => true,
        UnicodeCategory.Format => rune.Value is not 0x200D and not 0x00AD,
        _ => false,
    };
}
