using System.Numerics;
using Swapwright.Findings;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Site;

public sealed class HealthPagesTests
{
    [Fact]
    public void Page_ShippedBase_WeighsEveryPositionByCombinations()
    {
        var site = new SiteKnowledge(ShippedKnowledge.Proof());

        var page = new HealthPages(site).Page();

        Assert.Equal(site.Base.PositionOrder.Length, page.Systems.Sum(system => system.Positions.Count));
        // A base that is rendered has no gap, so whatever has to be settled is.
        Assert.All(page.Systems.SelectMany(system => system.Positions), position => Assert.Equal("100 %", position.Answered));
        Assert.Equal(site.Base.Rules.Count, page.Checked.Sum(year => int.Parse(year.Count, System.Globalization.CultureInfo.InvariantCulture)));
    }

    [Fact]
    public void Page_SmallBase_CountsStandingsByHand()
    {
        // One position, two options of one choice, one rule each: half of the combinations rests on each.
        var page = Page(("rules/charging/alternator-donor.yaml", "standing: ", "standing: reported # "));

        var alternator = page.Systems.SelectMany(system => system.Positions).Single(position => position.Link.Href == "position/alternator.html");
        Assert.Equal(("2", "0", "100 %", "100 %"), (alternator.Answers, alternator.Exceptions, alternator.Where, alternator.Answered));
        Assert.Equal(("50 %", "0 %", "50 %"), (alternator.Built, alternator.Measured, alternator.Reported));
    }

    [Fact]
    public void Page_UnsourcedRule_IsNamedWithItsFindingAndPlace()
    {
        var page = Page(("rules/charging/alternator-own.yaml", "sources: [bench]\n", ""));

        foreach (var list in new[] { List(page, "findings"), List(page, "unsourced") })
        {
            var line = Assert.Single(list.Lines, line => line.Finding?.Href == "finding/unsourced.html");
            Assert.StartsWith("rules/charging/alternator-own.yaml:", line.Place, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Page_AcceptedFinding_StandsWithItsReason()
    {
        var page = Page(("rules/charging/alternator-own.yaml", "sources: [bench]\n", "accept: [{finding: unsourced, because: Everybody can see it.}]\n"));

        var line = Assert.Single(List(page, "accepted").Lines);
        Assert.Equal(("Everybody can see it.", "finding/unsourced.html", "rule/alternator-own.html"), (line.Words, line.Finding!.Href, line.About!.Href));
        Assert.DoesNotContain(List(page, "findings").Lines, found => found.Finding!.Href == "finding/unsourced.html");
        Assert.Single(List(page, "unsourced").Lines);
    }

    [Fact]
    public void Page_ArticleThatNothingNames_IsListedUntilATextLinksToIt()
    {
        const string Article = "---\ntitle: Alone\nsummary: Nobody comes here.\n---\nSee [itself](article:alone).\n";

        var alone = Page(("articles/alone.md", "", Article));
        var linked = Page(("articles/alone.md", "", Article), ("articles/belts.md", "Ninety degrees", "Read [this](article:alone). Ninety degrees"));

        Assert.Equal(["article/alone.html"], List(alone, "unlinked").Lines.Select(line => line.About!.Href));
        Assert.Empty(List(linked, "unlinked").Lines);
    }

    [Theory]
    [InlineData(0, 0, "–")]
    [InlineData(0, 5, "0 %")]
    [InlineData(1, 1000, "under 1 %")]
    [InlineData(999, 1000, "over 99 %")]
    [InlineData(1, 3, "33 %")]
    [InlineData(7, 7, "100 %")]
    public void Share_OfCounts_NeverRoundsToNothingOrAll(int part, int whole, string words) => Assert.Equal(words, HealthSystems.Share(part, whole));

    [Fact]
    public void Parts_OfABar_FillItWithoutGaps()
    {
        var bar = HealthBars.Parts([BigInteger.One, BigInteger.One, BigInteger.One]).Value;

        Assert.Contains("<rect class=\"part-1\" x=\"0\" width=\"333\" height=\"20\"/><rect class=\"part-2\" x=\"333\" width=\"333\" height=\"20\"/><rect class=\"part-3\" x=\"666\" width=\"334\" height=\"20\"/>", bar, StringComparison.Ordinal);
        Assert.DoesNotContain("rect", HealthBars.Parts([BigInteger.Zero, BigInteger.Zero]).Value, StringComparison.Ordinal);
    }

    private static HealthPage Page(params ReadOnlySpan<(string File, string Old, string New)> changes) => new HealthPages(new SiteKnowledge(ChangedBase.Prove("workshop", changes))).Page();

    private static HealthList List(HealthPage page, string id) => page.Lists.Single(list => list.Id == id);
}
