using System.Globalization;
using System.Text;

namespace Swapwright.Site.Search;

/// <summary>
/// Words as the index holds them: letters and digits, in lower case. Accents stay on, since a program without cultures cannot
/// take them off; the script does so when it reads the index.
/// </summary>
internal static class SearchWords
{
    /// <summary>The words of the further texts that the title does not have, each once, in order.</summary>
    public static string Besides(string title, params IEnumerable<string> further)
    {
        var known = Of(title).ToHashSet(StringComparer.Ordinal);
        return string.Join(' ', further.SelectMany(Of).Where(known.Add));
    }

    public static IEnumerable<string> Of(string text)
    {
        var word = new StringBuilder();
        foreach (var c in text)
        {
            if (char.IsLetterOrDigit(c))
            {
                word.Append(char.ToLowerInvariant(c));
            }
            else if (word.Length > 0 && !IsMark(c))
            {
                yield return word.ToString();
                word.Clear();
            }
        }

        if (word.Length > 0)
        {
            yield return word.ToString();
        }
    }

    /// <summary>The letter under which a title stands in a list from A to Z; "0–9" for what begins with none.</summary>
    public static string Letter(string title) =>
        Of(title).FirstOrDefault() is { } first && char.IsLetter(first[0]) ? char.ToUpperInvariant(first[0]).ToString(CultureInfo.InvariantCulture) : "0–9";

    private static bool IsMark(char c) => char.GetUnicodeCategory(c) is UnicodeCategory.NonSpacingMark or UnicodeCategory.SpacingCombiningMark or UnicodeCategory.EnclosingMark;
}
