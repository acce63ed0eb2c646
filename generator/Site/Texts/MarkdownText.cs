using System.Collections.Concurrent;
using Markdig;
using Markdig.Renderers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Knowledge.Pictures;
using Swapwright.Knowledge.Texts;
using Swapwright.Site.Models;
using Swapwright.Site.Rendering;

namespace Swapwright.Site.Texts;

/// <summary>
/// The knowledge base's Markdown as HTML: raw HTML is shown as text, links and pictures pass <see cref="MarkdownLinks"/>.
/// A text is rendered once for each depth of page and kept. Safe for use by several workers.
/// </summary>
/// <param name="resolve">
/// Path from the site's root for a kind and an id ("article", "extending-wires"), or null where nothing carries the id.
/// </param>
/// <param name="pictures">The picture of an id, or null where there is none; articles show them.</param>
/// <param name="explain">A line about a term of the glossary, shown where a link to it is pointed at.</param>
public sealed class MarkdownText(Func<string, string, string?> resolve, Func<string, Picture?>? pictures = null, Func<string, string?>? explain = null)
{
    private readonly ConcurrentDictionary<(Mode Mode, string Prefix, string Text), MarkdownResult> _rendered = new();

    private enum Mode
    {
        Inline,
        Block,
        Article,
    }

    /// <summary>A few words inside a line: the paragraphs' contents run together, without any block element.</summary>
    /// <param name="prefix">Way up from the page to the site's root, <see cref="SitePaths.PrefixOf"/>.</param>
    public MarkdownResult Inline(string? text, string prefix) => Render(Mode.Inline, text, prefix);

    /// <summary>Paragraphs, lists and tables inside a page; a heading becomes an emphasised paragraph, the page has its own.</summary>
    public MarkdownResult Block(string? text, string prefix) => Render(Mode.Block, text, prefix);

    /// <summary>A whole article: headings from the second order down, each with an anchor.</summary>
    public MarkdownResult Article(string? text, string prefix) => Render(Mode.Article, text, prefix);

    private MarkdownResult Render(Mode mode, string? text, string prefix) =>
        _rendered.GetOrAdd((mode, prefix, text ?? ""), key => Convert(key.Mode, key.Text, key.Prefix));

    private MarkdownResult Convert(Mode mode, string text, string prefix)
    {
        if (MarkdownForm.Parse(text) is not { } document)
        {
            return new MarkdownResult(
                new HtmlString(HtmlText.Escape(text)), [new MarkdownProblem("", "text is nested too deeply to be rendered", 1)]);
        }

        var problems = new List<MarkdownProblem>();
        if (mode == Mode.Article && pictures is not null)
        {
            PictureFigure.Apply(document, pictures);
        }

        new MarkdownLinks(resolve, explain ?? (_ => null), prefix, problems).Apply(document);
        MarkdownTables.Apply(document);

        using var writer = new StringWriter { NewLine = "\n" };
        var renderer = new HtmlRenderer(writer);
        MarkdownForm.Pipeline.Setup(renderer);
        renderer.ObjectRenderers.ReplaceOrAdd<Markdig.Extensions.Tables.HtmlTableRenderer>(new ScrollingTableRenderer());
        renderer.ObjectRenderers.Add(new PictureFigureRenderer());
        IReadOnlyList<PageLink> contents = [];
        switch (mode)
        {
            case Mode.Inline:
                WriteInlines(document, renderer);
                break;
            case Mode.Block:
                renderer.ObjectRenderers.ReplaceOrAdd<Markdig.Renderers.Html.HeadingRenderer>(new EmphasisedHeadingRenderer());
                renderer.Render(document);
                break;
            default:
                contents = ArticleContents(document);
                renderer.Render(document);
                break;
        }

        return new MarkdownResult(new HtmlString(writer.ToString().Trim()), problems) { Contents = contents };
    }

    private static void WriteInlines(MarkdownDocument document, HtmlRenderer renderer)
    {
        var first = true;
        foreach (var leaf in document.Descendants<LeafBlock>())
        {
            if (leaf is LinkReferenceDefinition)
            {
                continue;
            }

            if (!first)
            {
                renderer.Write(' ');
            }

            first = false;
            if (leaf is CodeBlock)
            {
                renderer.Write("<code>").WriteLeafRawLines(leaf, writeEndOfLines: false, escape: true).Write("</code>");
            }
            else
            {
                renderer.WriteLeafInline(leaf);
            }
        }
    }

    private static List<PageLink> ArticleContents(MarkdownDocument document)
    {
        var contents = new List<PageLink>();
        foreach (var heading in document.Descendants<HeadingBlock>())
        {
            // The first order is the page's own.
            heading.Level = Math.Max(heading.Level, 2);
            if (heading.Level == 2 && MarkdownForm.AnchorOf(heading) is { } id)
            {
                contents.Add(new PageLink(MarkdownForm.PlainText(heading.Inline), "#" + id));
            }
        }

        return contents;
    }
}
