using System.Buffers;
using System.Text;

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

        var result = new StringBuilder(text.Length + 16);
        Append(text, (value, start, length) => result.Append(value, start, length));
        return result.ToString();
    }

    /// <summary>Writes the escaped text piece by piece: unchanged stretches straight from the text.</summary>
    public static void Append(string text, Action<string, int, int> write)
    {
        var start = 0;
        while (start < text.Length)
        {
            var next = text.AsSpan(start).IndexOfAny(Special);
            if (next < 0)
            {
                write(text, start, text.Length - start);
                return;
            }

            if (next > 0)
            {
                write(text, start, next);
            }

            var entity = Entity(text[start + next]);
            write(entity, 0, entity.Length);
            start += next + 1;
        }
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
