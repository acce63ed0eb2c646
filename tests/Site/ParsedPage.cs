using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace Swapwright.Tests.Site;

/// <summary>A page as a browser's parser reads it, with the parse errors.</summary>
internal sealed record ParsedPage(IHtmlDocument Document, IReadOnlyList<string> Errors)
{
    public static ParsedPage Of(string html)
    {
        var errors = new List<string>();
        var parser = new HtmlParser(new HtmlParserOptions { IsStrictMode = false });
        parser.Error += (_, raised) =>
        {
            if (raised is AngleSharp.Html.Dom.Events.HtmlErrorEvent error)
            {
                errors.Add(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{error.Position.Line}: {error.Message}"));
            }
        };
        return new ParsedPage(parser.ParseDocument(html), errors);
    }
}
