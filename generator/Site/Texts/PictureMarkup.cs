using System.Globalization;
using System.Text;
using Swapwright.Knowledge.Pictures;
using Swapwright.Site.Rendering;

namespace Swapwright.Site.Texts;

/// <summary>
/// A picture as SVG inside a page. It is written from its tree, element by element; its classes and ids get names that no
/// page has, so that it takes its colours from the style sheet and can take nothing else of the page.
/// </summary>
internal static class PictureMarkup
{
    private const string Prefix = "pic-";

    // Between the picture's name and an id of its own, which may be called "title" or "2".
    private const string OwnId = "--at-";

    /// <param name="number">How often the page has shown it, from 1: ids are used once on a page.</param>
    public static string Svg(Picture picture, int number)
    {
        var name = number == 1 ? Prefix + picture.Id : string.Create(CultureInfo.InvariantCulture, $"{Prefix}{picture.Id}--{number}");
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg viewBox=\"0 0 {picture.Width} {picture.Height}\" role=\"img\" aria-labelledby=\"{name}--title {name}--desc\">");
        svg.Append(CultureInfo.InvariantCulture, $"<title id=\"{name}--title\">{HtmlText.Escape(picture.Title)}</title><desc id=\"{name}--desc\">{HtmlText.Escape(picture.Description)}</desc>");
        foreach (var node in picture.Content)
        {
            Append(svg, node, name);
        }

        return svg.Append("</svg>").ToString();
    }

    private static void Append(StringBuilder svg, PictureNode node, string name)
    {
        if (node is PictureWords words)
        {
            svg.Append(HtmlText.Escape(words.Text));
            return;
        }

        var element = (PictureElement)node;
        svg.Append('<').Append(element.Name);
        foreach (var (attribute, value) in element.Attributes)
        {
            svg.Append(' ').Append(attribute).Append("=\"").Append(HtmlText.Escape(Own(attribute, value, name))).Append('"');
        }

        if (element.Children.IsEmpty)
        {
            svg.Append("/>");
            return;
        }

        svg.Append('>');
        foreach (var child in element.Children)
        {
            Append(svg, child, name);
        }

        svg.Append("</").Append(element.Name).Append('>');
    }

    private static string Own(string attribute, string value, string name) => attribute switch
    {
        "class" => string.Join(' ', value.Split(' ').Select(one => Prefix + one)),
        "id" => $"{name}{OwnId}{value}",
        "marker-start" or "marker-mid" or "marker-end" when value != "none" => $"url(#{name}{OwnId}{value[5..]}",
        _ => value,
    };
}
