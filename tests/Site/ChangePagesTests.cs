using System.Text;
using System.Xml.Linq;
using Swapwright.Findings;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Site;

public sealed class ChangePagesTests
{
    private static readonly (string File, string Old, string New)[] s_notes =
    [
        ("rules/charging/alternator-own.yaml", "checked: 2025-06-01\n", "checked: 2025-06-01\nnotes:\n  - {date: 2025-03-01, text: Bracket measured.}\n  - {date: 2025-06-01, text: \"See [belts](article:belts).\"}\n"),
        ("choices/alternator.yaml", "title: Alternator\n", "title: Alternator\nnotes: [{date: 2025-06-01, text: One option more.}]\n"),
    ];

    [Fact]
    public void Page_DatedNotes_StandByDayNewestFirst()
    {
        var page = Pages().Page();

        Assert.Equal(["2025-06-01: Choice, Rule", "2025-03-01: Rule"], page.Days.Select(day => $"{day.Day}: {string.Join(", ", day.Changes.Select(change => change.Kind))}"));
        Assert.Equal(new PageLink("The car's alternator moves over", "rule/alternator-own.html"), page.Days[1].Changes[0].About);
        Assert.Equal("", page.Days[0].Changes[0].About.Href);
        Assert.Contains("href=\"article/belts.html\"", page.Days[0].Changes[1].Text.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Feed_DatedNotes_AreItsEntriesInTheOrderOfThePage()
    {
        XNamespace atom = "http://www.w3.org/2005/Atom";
        var feed = XDocument.Parse(Encoding.UTF8.GetString(Pages().Feed().Bytes.Span)).Root!;

        Assert.Equal(["Choice", "Rule", "Rule"], feed.Elements(atom + "entry").Select(entry => entry.Element(atom + "title")!.Value.Split(':')[0]));
        Assert.Equal("2025-06-01T00:00:00Z", feed.Element(atom + "updated")!.Value);
        Assert.Equal("https://swaps.example/rule/alternator-own.html", feed.Elements(atom + "entry").Last().Element(atom + "link")!.Attribute("href")!.Value);
    }

    [Fact]
    public void Page_NoNotes_IsEmptyAndTheFeedSpeaksOfTheDayTheBaseIsJudgedBy()
    {
        var pages = new ChangePages(new SiteKnowledge(Proof.Of(KnowledgeBaseCase.GoodFolder("workshop"))));

        Assert.Empty(pages.Page().Days);
        Assert.Contains("<updated>2026-03-01T00:00:00Z</updated>", Encoding.UTF8.GetString(pages.Feed().Bytes.Span), StringComparison.Ordinal);
    }

    private static ChangePages Pages()
    {
        var proof = ChangedBase.Prove("workshop", s_notes);
        Assert.Empty(proof.Findings);
        return new ChangePages(new SiteKnowledge(proof));
    }
}
