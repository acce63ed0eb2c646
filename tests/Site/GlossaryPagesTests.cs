using Swapwright.Findings;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Site;

public sealed class GlossaryPagesTests
{
    private const string Terms = """
        terms:
          wrap: {term: wrap, short: An arc., see: [term:belt, position:alternator, article:belts]}
          belt: {term: Belt, also: [strap], short: It turns., about: "Not a [wrap](term:wrap)."}
          three: {term: 3-way plug, short: It has three cavities.}
          bare: {term: bare wire, short: Copper.}

        """;

    [Fact]
    public void Page_WordsOfABase_StandByLettersWithWhatLeadsOn()
    {
        var proof = ChangedBase.Prove("workshop", ("glossary.yaml", "", Terms), ("articles/belts.md", "Lay the belt", "Mind the [wrap](term:wrap) of the [belt](term:belt).\n\nLay the belt"));
        Assert.Empty(proof.Findings);

        var page = new GlossaryPages(new SiteKnowledge(proof)).Page();

        Assert.Equal(["#: three", "B: bare belt", "W: wrap"], page.Letters.Select(letter => $"{letter.Letter}: {string.Join(' ', letter.Entries.Select(entry => entry.Id))}"));
        var belt = page.Letters[1].Entries[1];
        Assert.Equal(["strap"], belt.Also);
        Assert.Equal("<p>Not a <a href=\"glossary.html#term-wrap\" class=\"term\" title=\"An arc.\">wrap</a>.</p>", belt.About.Value);
        Assert.Equal(new PageLink("Belts", "article/belts.html"), Assert.Single(belt.UsedIn));
        var wrap = page.Letters[2].Entries[0];
        Assert.Equal(["glossary.html#term-belt", "position/alternator.html", "article/belts.html"], wrap.See.Select(link => link.Href));
        Assert.Empty(wrap.UsedIn);
    }

    [Fact]
    public void Page_BaseWithoutGlossary_IsEmpty() =>
        Assert.Empty(new GlossaryPages(new SiteKnowledge(Proof.Of(KnowledgeBaseCase.GoodFolder("workshop")))).Page().Letters);
}
