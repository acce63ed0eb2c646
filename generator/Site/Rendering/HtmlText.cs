using System.Buffers;

namespace Swapwright.Site.Rendering;

/// <summary>Escapes text for HTML, in content and in quoted attributes alike.</summary>
public static class HtmlText
{
    private static readonly SearchValues<char> Special = SearchValues.Create("<>&\"'\0");

    public static string Escape(string text)
    {
        if (text.AsSpan().IndexOfAny(Special) < 0)
        {
            return text;
        }

        var result = new PageBuffer(text.Length + 16);
        result.WriteEscaped(text);
        return result.ToString();
    }

    /// <summary>Writes the escaped text piece by piece: unchanged stretches straight from the text.</summary>
    internal static void Append(ReadOnlySpan<char> text, PageBuffer to)
    {
        for (var next = text.IndexOfAny(Special); next >= 0; next = text.IndexOfAny(Special))
        {
            to.Write(text[..next]);
            to.Write(Entity(text[next]));
            text = text[(next + 1)..];
        }

        to.Write(text);
    }

    private static string Entity(char c) => c switch
    {
        '<' => "&lt;",
        '>' => "&gt;",
        '&' => "&amp;",
        '"' => "&quot;",
        '\'' => "&#39;",
        // HTML has no way to write this character.
        _ => "\uFFFD",
    };
}
