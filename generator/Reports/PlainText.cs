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
        if (!text.Any(IsUnruly))
        {
            return text;
        }

        var tame = new StringBuilder(text.Length);
        foreach (var character in text)
        {
            tame.Append(IsUnruly(character) ? (char.IsWhiteSpace(character) ? ' ' : '\uFFFD') : character);
        }

        return tame.ToString();
    }

    /// <summary>Tame, and escaped for the console's markup.</summary>
    public static string Markup(string text) => Spectre.Console.Markup.Escape(Tame(text));

    private static bool IsUnruly(char character) => char.IsControl(character)
        || (CharUnicodeInfo.GetUnicodeCategory(character) == UnicodeCategory.Format && character is not '\u200D' and not '\u00AD')
        || character is '\u2028' or '\u2029';
}
