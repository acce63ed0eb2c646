using System.Globalization;
using System.Text;

namespace Swapwright.Reports;

/// <summary>
/// Text of a knowledge base on its way into Markdown: it shows as it is written. It can start neither markup nor HTML,
/// addresses are not turned into links, and nobody is called by name (a code host looks for @name and #number in what
/// is left after rendering, so a backslash would not keep it from them; code does).
/// </summary>
internal static class MarkdownForm
{
    /// <summary>Text within a line. Names in back-ticks, as findings write them, become code.</summary>
    public static string Sentence(string text)
    {
        var pieces = PlainText.Tame(text).Split('`');
        var sentence = new StringBuilder();
        for (var at = 0; at < pieces.Length; at++)
        {
            // A back-tick without a partner is one that somebody wrote into a title.
            var closed = at < pieces.Length - 1;
            sentence.Append(at % 2 == 0 ? Escape(pieces[at]) : closed && pieces[at].Trim().Length > 0 ? Code(pieces[at]) : "\\`" + Escape(pieces[at]) + (closed ? "\\`" : ""));
        }

        return sentence.ToString();
    }

    /// <summary>Text as code: nothing in it means anything.</summary>
    public static string Code(string text)
    {
        var tame = PlainText.Tame(text);
        if (tame.Trim().Length == 0)
        {
            return "";
        }

        var fence = new string('`', 1 + LongestRun(tame));
        var inner = tame[0] is '`' or ' ' || tame[^1] is '`' or ' ' ? $" {tame} " : tame;
        return fence + inner + fence;
    }

    /// <summary>Text in which every character stands for itself.</summary>
    public static string Escape(string text)
    {
        var tame = PlainText.Tame(text);
        var escaped = new StringBuilder(tame.Length + 8);
        for (var at = 0; at < tame.Length; at++)
        {
            escaped.Append(tame[at] switch
            {
                '<' => "&lt;",
                '>' => "&gt;",
                '&' => "&amp;",
                '@' or '#' => $"`{tame[at]}`",
                '\\' or '`' or '*' or '_' or '[' or ']' or '~' or '|' or '$' or '!' => $"\\{tame[at]}",
                ':' when at + 1 < tame.Length && tame[at + 1] == '/' => "\\:",
                '.' when EndsInWww(tame, at) => "\\.",
                '-' or '+' or '=' when at == 0 => $"\\{tame[at]}",
                '.' or ')' when at > 0 && tame.AsSpan(0, at).IndexOfAnyExceptInRange('0', '9') < 0 => $"\\{tame[at]}",
                var other => other.ToString(CultureInfo.InvariantCulture),
            });
        }

        return escaped.ToString();
    }

    /// <summary>Text that contributors write as Markdown, on one line: it stays what it is, but for HTML.</summary>
    public static string Written(string text)
    {
        var pieces = PlainText.Tame(text).Trim().Split('`');
        for (var at = 0; at < pieces.Length; at += 2)
        {
            pieces[at] = pieces[at].Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal).Replace("@", "&#64;", StringComparison.Ordinal);
        }

        return string.Join('`', pieces);
    }

    private static int LongestRun(string text)
    {
        var (longest, run) = (0, 0);
        foreach (var character in text)
        {
            run = character == '`' ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }

    private static bool EndsInWww(string text, int at) => text.AsSpan(0, at).EndsWith("www", StringComparison.OrdinalIgnoreCase);
}
