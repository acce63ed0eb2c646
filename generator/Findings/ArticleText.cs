using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Pictures;
using Swapwright.Knowledge.Texts;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>Links, pictures and headings of articles and of every other text that a reader would find broken.</summary>
public static class ArticleText
{
    public static readonly SourceCheck Check = new(FindingKinds.Article, Run);

    private static IEnumerable<Finding> Run(SourceTree tree, KnowledgeBase kb)
    {
        var targets = new LinkTargets(tree, kb);
        var shown = kb.Articles.All.Select(article => article.Body).Concat(kb.Pages.All.Select(page => page.Body)).Select(MarkdownForm.Parse).OfType<MarkdownDocument>().SelectMany(PictureLink.ShownIn).ToHashSet(StringComparer.Ordinal);
        foreach (var file in tree.Files)
        {
            var texts = TextFields.Of(file.Root).Select(scalar => WrittenText.Of(file, scalar));
            foreach (var finding in (file.Body is null ? texts : texts.Append(WrittenText.OfBody(file))).SelectMany(text => Text(text, targets)))
            {
                yield return finding;
            }

            foreach (var finding in file.Kind == "glossary" ? See(file, targets) : [])
            {
                yield return finding;
            }

            if (file.Kind == KnowledgeLayout.PictureKind && !shown.Contains(file.Id))
            {
                yield return About(Place.Of(file.Path), $"no article shows the picture `{file.Id}`", $"Show it as `![words](picture:{file.Id})`, or remove the file.");
            }
        }
    }

    private static IEnumerable<Finding> See(SourceFile file, LinkTargets targets) =>
        from term in (file.Root?["terms"] as MappingNode)?.Entries.Select(entry => entry.Value).OfType<MappingNode>() ?? []
        from link in (term["see"] as SequenceNode)?.Items.OfType<ScalarNode>() ?? []
        from finding in new TextLinks(WrittenText.Of(file, link), targets).See(link)
        select finding;

    private static IEnumerable<Finding> Text(WrittenText text, LinkTargets targets)
    {
        // Most texts have no mark that opens a link or a picture: they are not parsed.
        if (!text.IsArticle && text.Text.AsSpan().IndexOfAny('[', '<') < 0)
        {
            return [];
        }

        if (MarkdownForm.Parse(text.Text) is not { } document)
        {
            return [About(text.Whole, "the text is nested too deeply to be rendered", "Take quotes and lists out of one another.")];
        }

        var links = new TextLinks(text, targets);
        return document.Descendants<LinkInline>().SelectMany(links.Link)
            .Concat(document.Descendants<AutolinkInline>().Where(link => !link.IsEmail).SelectMany(links.Address))
            .Concat(text.IsArticle ? Headings(text, document) : []);
    }

    private static IEnumerable<Finding> Headings(WrittenText text, MarkdownDocument document)
    {
        // The title of the article is the page's heading of the first order.
        var above = 1;
        foreach (var heading in document.Descendants<HeadingBlock>())
        {
            var words = MarkdownForm.PlainText(heading.Inline);
            if (heading.Level == 1)
            {
                yield return About(text.Line(heading.Line), $"`{words}` is a heading of the first order, which is the article's title", "Begin with `##`.");
            }
            else if (heading.Level > above + 1)
            {
                yield return About(text.Line(heading.Line), FormattableString.Invariant($"`{words}` jumps from order {above} to order {heading.Level}"), $"Write it with `{new string('#', above + 1)}`.");
            }

            above = Math.Max(heading.Level, 2);
        }
    }

    internal static Finding About(Place place, string message, string mend) => new(FindingKinds.Article, message, place) { Mend = mend };
}
