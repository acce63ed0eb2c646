using System.Globalization;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Swapwright.Knowledge;
using Swapwright.Knowledge.Texts;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>The glossary, with the articles that use each word.</summary>
internal sealed class GlossaryPages(SiteKnowledge site)
{
    private const string Intro = "Words of the trade as these pages use them, each said once.";

    public GlossaryPage Page()
    {
        var users = (
            from article in site.Articles
            from term in TermsIn(article).Distinct(StringComparer.Ordinal)
            select (term, article)).ToLookup(pair => pair.term, pair => pair.article, StringComparer.Ordinal);
        return new GlossaryPage
        {
            Frame = site.Frame(SitePaths.Glossary, "Glossary", Intro),
            Title = "Glossary",
            Intro = site.Inline(Intro, SitePaths.Glossary),
            Letters =
            [
                .. site.Base.Terms.All.OrderBy(term => term.Term, StringComparer.OrdinalIgnoreCase).ThenBy(term => term.Id, StringComparer.Ordinal)
                    .GroupBy(Letter, StringComparer.Ordinal)
                    .Select(letter => new GlossaryLetter(letter.Key, [.. letter.Select(term => Entry(term, users[term.Id]))])),
            ],
        };
    }

    private GlossaryEntry Entry(GlossaryTerm term, IEnumerable<Article> users)
    {
        var see = term.See.Select(named => OwnLink.Parse(named.Id) is { } own ? site.LinkTo(own.Kind, own.Id) : null).OfType<PageLink>().ToList();
        return new GlossaryEntry
        {
            Id = term.Id,
            Term = term.Term,
            Also = term.Also,
            Short = term.Short,
            About = site.Block(term.About, SitePaths.Glossary),
            See = see,
            UsedIn = [.. users.Select(SiteKnowledge.Link).Where(link => !see.Contains(link))],
        };
    }

    private static string Letter(GlossaryTerm term) => term.Term.Length > 0 && char.IsAsciiLetter(term.Term[0]) ? char.ToUpperInvariant(term.Term[0]).ToString(CultureInfo.InvariantCulture) : "#";

    private static IEnumerable<string> TermsIn(Article article) =>
        MarkdownForm.Parse(article.Body)?.Descendants<LinkInline>().Select(link => OwnLink.Parse(MarkdownForm.AddressOf(link))).OfType<OwnLink>().Where(link => link.Kind == "term").Select(link => link.Id) ?? [];
}
