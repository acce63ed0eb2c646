using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Knowledge.Pictures;
using Swapwright.Knowledge.Texts;

namespace Swapwright.Site.Texts;

/// <summary>A picture with the words that stand under it, in place of the paragraph that names it.</summary>
internal sealed class PictureFigure(Picture picture, int number, ContainerInline words) : LeafBlock(null)
{
    public Picture Picture => picture;

    public int Number => number;

    /// <summary>The words between the square brackets, with their own marks.</summary>
    public ContainerInline Words => words;

    /// <summary>Puts a figure in the place of every paragraph that is a picture which can be shown.</summary>
    public static void Apply(MarkdownDocument document, Func<string, Picture?> find)
    {
        var shown = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var link in document.Descendants<LinkInline>().Where(link => link.IsImage).ToList())
        {
            if (PictureLink.IdOf(MarkdownForm.AddressOf(link)) is not { } id || find(id) is not { } picture || PictureLink.ParagraphOf(link) is not { Parent: { } parent } paragraph)
            {
                continue;
            }

            shown[id] = shown.GetValueOrDefault(id) + 1;
            var words = new ContainerInline();
            while (link.FirstChild is { } child)
            {
                child.Remove();
                words.AppendChild(child);
            }

            parent[parent.IndexOf(paragraph)] = new PictureFigure(picture, shown[id], words);
        }
    }
}

/// <summary>Writes a <see cref="PictureFigure"/>.</summary>
internal sealed class PictureFigureRenderer : HtmlObjectRenderer<PictureFigure>
{
    protected override void Write(HtmlRenderer renderer, PictureFigure obj)
    {
        renderer.EnsureLine();
        renderer.Write("<figure class=\"picture\">").Write(PictureMarkup.Svg(obj.Picture, obj.Number)).Write("<figcaption>");
        renderer.WriteChildren(obj.Words);
        renderer.WriteLine("</figcaption></figure>");
    }
}
