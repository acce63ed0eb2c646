using Swapwright.Diagnostics;

namespace Swapwright.Tests.Findings;

public sealed class ArticleTextTests
{
    private const string Belts = "articles/belts.md";
    private const string Begin = "Lay the belt";

    [Theory]
    [InlineData("[the chassis](chassis:quillet), [the engine](donor:marn), [the rule](rule:water-pump), [the source](source:bench)")]
    [InlineData("[the task](task:fit-belt), [the plug](connector:two-way), [further down](#tension), <a@example.org>, <https://example.org/>")]
    [InlineData("`[code](article:nothing)` and \\[no link](article:nothing\\)")]
    public void Check_LinksThatLead_FindsNothing(string text) => Assert.Empty(ChangedBase.Prove("workshop", (Belts, Begin, text + "\n\n" + Begin)).Findings);

    [Fact]
    public void Check_PicturesAndTermsThatAreThere_FindsNothing()
    {
        const string picture = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 80 80\"><title>Belt</title><desc>A round belt.</desc><circle r=\"30\"/></svg>";
        const string glossary = "terms:\n  belt: {term: belt, short: It turns things., about: \"See [the plug](connector:two-way).\", see: [article:belts, term:belt]}\n";

        var proof = ChangedBase.Prove("workshop", ("pictures/round/belt.svg", "", picture), ("glossary.yaml", "", glossary), (Belts, Begin, "![The belt](picture:belt)\n\n[belt](term:belt)\n\n" + Begin));

        Assert.Empty(proof.Findings);
        var term = Assert.Single(proof.Base.Terms.All);
        Assert.Equal(("belt", "belt", "It turns things.", "article:belts"), (term.Id, term.Term, term.Short, term.See[0].Id));
        Assert.Equal("Belt", Assert.Single(proof.Base.Pictures.All).Title);
    }

    [Fact]
    public void Check_PictureOutsideAnArticle_IsFound() =>
        Assert.Equal(
            ["only articles show pictures", "no article shows the picture `belt`"],
            ChangedBase.Prove(
                "workshop",
                ("pictures/belt.svg", "", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 80 80\"><title>Belt</title><desc>A belt.</desc></svg>"),
                ("glossary.yaml", "", "terms:\n  belt: {term: belt, short: It turns., about: \"![x](picture:belt)\"}\n")).Messages(FindingKinds.Article));

    [Theory]
    [InlineData("[x](chassis:marn)", "there is no chassis `marn` to link to")]
    [InlineData("[x]()", "a link has no address")]
    [InlineData("[x](java&#115;cript:alert)", "a link to `javascript:alert` is not followed")]
    [InlineData("[x](../kb.yaml)", "a link to `../kb.yaml` is not followed")]
    [InlineData("[![Belt](picture:none)](article:belts)", "there is no picture `none`")]
    [InlineData("![Belt](pictures/none.svg)", "the picture `pictures/none.svg` is not named by its id")]
    [InlineData("[x](term:nothing)", "there is no term `nothing` to link to")]
    [InlineData("[x](picture:belt)", "a link to `picture:belt` is not followed")]
    [InlineData("[x][ref]\n\n[ref]: article:nowhere", "there is no article `nowhere` to link to")]
    [InlineData("| a |\n| --- |\n| [x](task:nothing) |", "there is no task `nothing` to link to")]
    public void Check_LinkThatLeadsNowhere_IsFound(string text, string message) =>
        Assert.Equal([message], ChangedBase.Prove("workshop", (Belts, Begin, text + "\n\n" + Begin)).Messages(FindingKinds.Article));

    /// <summary>A file that cannot be read is there all the same.</summary>
    [Fact]
    public void Check_LinkToAFileThatCannotBeRead_IsNoSecondFinding()
    {
        var proof = ChangedBase.Prove("workshop", (Belts, Begin, "[x](task:fit-engine)\n\n" + Begin), ("tasks/fit-engine.yaml", "steps: [", "steps: [["));

        Assert.True(proof.HasErrors);
        Assert.Empty(proof.Messages(FindingKinds.Article));
    }

    [Fact]
    public void Place_OfALinkNamedAlsoInItsWords_IsTheAddress()
    {
        var proof = ChangedBase.Prove("workshop", (Belts, Begin, "See [article:nil](article:nil).\n\n" + Begin));

        Assert.Equal(new Place(Belts, 11, 19, 11, 30), Assert.Single(proof.Findings).Place);
    }
}
