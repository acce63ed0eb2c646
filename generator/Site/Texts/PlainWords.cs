using System.Net;
using System.Text;

namespace Swapwright.Site.Texts;

/// <summary>Words of a rendered text without its elements, for places that hold no markup.</summary>
internal static class PlainWords
{
    /// <summary>Only for HTML that <see cref="MarkdownText"/> made: there every "&lt;" begins an element and every "&gt;" in an attribute is escaped.</summary>
    public static string Of(HtmlString html)
    {
        var words = new StringBuilder(html.Value.Length);
        var inside = false;
        foreach (var character in html.Value)
        {
            if (character is '<' or '>')
            {
                inside = character == '<';
            }
            else if (!inside)
            {
                words.Append(character);
            }
        }

        return WebUtility.HtmlDecode(words.ToString()).Trim();
    }
}
