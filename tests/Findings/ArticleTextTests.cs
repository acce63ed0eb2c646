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

    [Theory]
    [InlineData("[x](chassis:marn)", "there is no chassis `marn` to link to")]
    [InlineData("[x]()", "a link has no address")]
    [InlineData("[x](java&#115;cript:alert)", "a link to `javascript:alert` is not followed")]
    [InlineData("[x](../kb.yaml)", "a link to `../kb.yaml` is not followed")]
    [InlineData("[![Belt](pictures/none.svg)](article:belts)", "there is no picture `pictures/none.svg`")]
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
