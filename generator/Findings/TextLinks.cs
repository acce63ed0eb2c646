using Markdig.Syntax.Inlines;
using Swapwright.Diagnostics;
using Swapwright.Knowledge.Pictures;
using Swapwright.Knowledge.Texts;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>The links and pictures of one text, held against what there is.</summary>
internal sealed class TextLinks(WrittenText text, LinkTargets targets)
{
    public IEnumerable<Finding> Link(LinkInline link)
    {
        var written = MarkdownForm.AddressOf(link);
        var place = text.Find(written, link.UrlSpan.IsEmpty ? link.Span.Start : link.UrlSpan.Start, link.Line);
        if (!link.IsImage)
        {
            return Address(written, place);
        }

        return Picture(link, written, place).Concat(string.IsNullOrWhiteSpace(MarkdownForm.PlainText(link))
            ? [ArticleText.About(place, $"the picture `{Quoted(written)}` has no text for those who do not see it", "Say between the square brackets what the picture shows.")]
            : []);
    }

    public IEnumerable<Finding> Address(AutolinkInline link) => Address(link.Url, text.Find(link.Url, link.Span.Start, link.Line));

    /// <summary>A link of the list that stands behind a word of the glossary: only what the base itself holds is named there.</summary>
    public IEnumerable<Finding> See(ScalarNode written) => OwnLink.Parse(written.Text) is { } own
        ? Own(own, written.Place)
        : [ArticleText.About(written.Place, $"`{Quoted(written.Text)}` names nothing of this base", $"Write a kind and an id, as in `term:splice` or `article:extending-wires`; kinds are {string.Join(", ", OwnLink.Kinds.Select(kind => $"`{kind}`"))}.")];

    private IEnumerable<Finding> Picture(LinkInline link, string written, Place place)
    {
        if (PictureLink.IdOf(written) is not { } id)
        {
            yield return ArticleText.About(place, $"the picture `{Quoted(written)}` is not named by its id", "Put an SVG file into the folder `pictures/` and name it by its id: `picture:plug` is `pictures/plug.svg`.");
        }
        else if (!targets.Pictures.Contains(id))
        {
            var near = NearestName.Of(id, targets.Pictures);
            yield return ArticleText.About(place, $"there is no picture `{Quoted(id)}`{(near is null ? "" : $"; did you mean `{near}`?")}", near is null ? "Add the file to `pictures/`, or name one that is there." : $"Write `picture:{near}`.");
        }
        else if (!text.IsArticle)
        {
            yield return ArticleText.About(place, "only articles show pictures", "Link to an article that shows it.");
        }
        else if (PictureLink.ParagraphOf(link) is null)
        {
            yield return ArticleText.About(place, $"the picture `{Quoted(id)}` does not stand alone", "Give it a paragraph of its own, with an empty line before and after it.");
        }
    }

    private IEnumerable<Finding> Address(string written, Place place)
    {
        if (OwnLink.Parse(written) is { } own)
        {
            return Own(own, place);
        }

        if (written.Length == 0)
        {
            return [ArticleText.About(place, "a link has no address", "Write the address between the round brackets, or take the brackets off.")];
        }

        if (written.StartsWith('#'))
        {
            return Anchor(text.Article, written[1..], place);
        }

        if (SafeUrl.Resolve(written, "") is null)
        {
            var scheme = written.IndexOf(':', StringComparison.Ordinal) is var mark and > 0 ? NearestName.Of(written[..mark], OwnLink.Kinds) : null;
            return [ArticleText.About(place, $"a link to `{Quoted(written)}` is not followed", scheme is null ? "Link to https, http or mailto, or to something of this base, as in `article:extending-wires`." : $"Write `{scheme}:`, if that is what is meant.")];
        }

        return written.Contains(':', StringComparison.Ordinal)
            ? []
            : [ArticleText.About(place, $"the link to `{Quoted(written)}` names a page by its path, which nothing holds in place", "Name what the page is about, as in `position:alternator`: then the link is checked and stays right.")];
    }

    private IEnumerable<Finding> Own(OwnLink own, Place place)
    {
        var ids = targets.Ids(own.Kind);
        if (!ids.Contains(own.Id))
        {
            var near = NearestName.Of(own.Id, ids);
            return
            [
                ArticleText.About(
                    place,
                    $"there is no {own.Kind} `{Quoted(own.Id)}` to link to{(near is null ? "" : $"; did you mean `{near}`?")}",
                    near is null ? $"Name {(own.Kind == "article" ? "an" : "a")} {own.Kind} that exists, or take the link out." : $"Write `{own.Kind}:{near}`."),
            ];
        }

        return own.Anchor is null ? [] : Anchor(own.Kind == "article" ? own.Id : null, own.Anchor, place);
    }

    private IEnumerable<Finding> Anchor(string? article, string anchor, Place place)
    {
        if (article is null)
        {
            return [ArticleText.About(place, $"`#{Quoted(anchor)}` names a heading, and only articles have headings to link to", "Take what follows `#` out, or link to an article.")];
        }

        if (targets.Anchors(article) is not { } known || known.Contains(anchor))
        {
            return [];
        }

        var near = NearestName.Of(anchor, known);
        return
        [
            ArticleText.About(
                place,
                $"`{article}` has no heading `#{Quoted(anchor)}`{(near is null ? "" : $"; did you mean `#{near}`?")}",
                near is not null ? $"Write `#{near}`." : known.Count == 0 ? "Take what follows `#` out: the article has no headings." : $"Its headings are {string.Join(", ", known.Order(StringComparer.Ordinal).Select(one => $"`#{one}`"))}."),
        ];
    }

    /// <summary>An address may hold anything; in a message it is quoted in back-ticks, on one line.</summary>
    private static string Quoted(string written) => written.ReplaceLineEndings(" ").Replace('`', '\'');
}
