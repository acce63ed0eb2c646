namespace Swapwright.Knowledge;

/// <summary>Titles in the middle of a sentence.</summary>
public static class InSentence
{
    /// <summary>
    /// A title with its first letter small, as in "keep the chassis's gearbox". An initial that belongs to an
    /// abbreviation or a name in capitals (ECU, M 1992) stays.
    /// </summary>
    public static string Lower(string title) =>
        title.Length > 1 && char.IsUpper(title[0]) && (char.IsLower(title[1]) || title[1] == ' ') ? char.ToLowerInvariant(title[0]) + title[1..] : title;

    /// <summary>Words that begin a cell or a sentence.</summary>
    public static string Upper(string words) => words.Length > 0 ? char.ToUpperInvariant(words[0]) + words[1..] : words;
}
