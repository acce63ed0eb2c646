using System.Text;

namespace Swapwright.Reports;

/// <summary>Text of a knowledge base on its way into Markdown of our own: it reads as written, marks nothing up, links nowhere and calls nobody.</summary>
internal static class MarkdownSafe
{
    // What begins or ends markup in CommonMark, in its tables or in a formula.
    private const string Marks = "\\`*_[]~|$!";

    public static string Text(string text)
    {
        var safe = new StringBuilder(text.Length + 16);
        var tame = PlainText.Tame(text);
        for (var at = 0; at < tame.Length; at++)
        {
            var sign = tame[at];
            _ = sign switch
            {
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '&' => safe.Append("&amp;"),
                // A name or a number behind these is taken for a person or a discussion; an empty remark in between keeps them apart.
                '@' or '#' => safe.Append(sign).Append("<!-- -->"),
                // Addresses begin with `www.` or hold `://`.
                '.' when safe.Length >= 3 && safe.ToString(safe.Length - 3, 3).Equals("www", StringComparison.OrdinalIgnoreCase) => safe.Append("\\."),
                ':' when at + 1 < tame.Length && tame[at + 1] == '/' => safe.Append("\\:"),
                _ when Marks.Contains(sign, StringComparison.Ordinal) => safe.Append('\\').Append(sign),
                _ => safe.Append(sign),
            };
        }

        return safe.ToString();
    }

    /// <summary>Text in a code span; a back-tick inside becomes an apostrophe.</summary>
    public static string Code(string text) => $"`{PlainText.Tame(text).Replace('`', '\'')}`";
}
