using System.Net;

namespace Swapwright.Tests.Site;

/// <summary>
/// The ids and the addresses of a page, read off its tags. A page is built into a document for it nowhere else but in the test that holds
/// the two against each other: for every page of a large site that takes a minute.
/// </summary>
internal static class PageLinks
{
    public static (HashSet<string> Ids, HashSet<string> Links) Of(string html)
    {
        var (ids, links) = (new HashSet<string>(StringComparer.Ordinal), new HashSet<string>(StringComparer.Ordinal));
        for (var at = html.IndexOf('<', StringComparison.Ordinal); at >= 0 && at + 1 < html.Length; at = html.IndexOf('<', at))
        {
            at++;
            if (html.AsSpan(at).StartsWith("!--", StringComparison.Ordinal))
            {
                at = html.IndexOf("-->", at, StringComparison.Ordinal);
            }
            else if (char.IsAsciiLetter(html[at]))
            {
                at = Tag(html, at, ids, links);
            }
        }

        return (ids, links);
    }

    /// <summary>Reads a tag from its name on. What a script holds is none of the page's text.</summary>
    private static int Tag(string html, int at, HashSet<string> ids, HashSet<string> links)
    {
        var name = Name(html, ref at);
        string? href = null, src = null;
        while (html[at] != '>')
        {
            if (char.IsWhiteSpace(html[at]) || html[at] == '/')
            {
                at++;
                continue;
            }

            var attribute = Name(html, ref at);
            var value = html[at] == '=' ? Value(html, ref at) : "";
            switch (attribute)
            {
                case "id":
                    ids.Add(value);
                    break;
                case "href":
                    href = value;
                    break;
                case "src":
                    src = value;
                    break;
            }
        }

        if ((href ?? src) is { } link)
        {
            links.Add(link);
        }

        return name is "script" or "style" ? html.IndexOf($"</{name}", at, StringComparison.Ordinal) : at;
    }

    private static string Name(string html, ref int at)
    {
        var from = at;
        while (html[at] is not ('=' or '>' or '/') && !char.IsWhiteSpace(html[at]))
        {
            at++;
        }

        return html[from..at];
    }

    /// <summary>From the equals sign on; the pages quote every value.</summary>
    private static string Value(string html, ref int at)
    {
        var quote = html[at + 1];
        Assert.True(quote is '"' or '\'', $"a value without quotes: {html.AsSpan(at, Math.Min(40, html.Length - at))}");
        var end = html.IndexOf(quote, at + 2);
        var value = html[(at + 2)..end];
        at = end + 1;
        return value.Contains('&', StringComparison.Ordinal) ? WebUtility.HtmlDecode(value) : value;
    }
}
