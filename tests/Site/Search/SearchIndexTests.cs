using System.Text;
using System.Text.Json;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Site.Search;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Site.Search;

public sealed class SearchIndexTests
{
    /// <summary>Fetched once, when somebody first searches; 170 kB take a third of a second on a slow line of 4 Mbit/s.</summary>
    private const int Budget = 170_000;

    [Fact]
    public void Index_Base_NamesEveryEntityOnceWithThePathOfItsPage()
    {
        var site = new SiteKnowledge(Proof.Of(KnowledgeBaseCase.GoodFolder("workshop")));
        using var index = Read(new SearchPages(site).Index());

        var kinds = index.RootElement.GetProperty("kinds").EnumerateArray().ToList();
        var paths = index.RootElement.GetProperty("entries").EnumerateArray()
            .Select(entry => kinds[entry[0].GetInt32()].GetProperty("before").GetString() + entry[2].GetString() + kinds[entry[0].GetInt32()].GetProperty("after").GetString()).ToList();
        Assert.Equal(paths.Distinct(StringComparer.Ordinal), paths);
        var kb = site.Base;
        var wanted = kb.Rules.Ids.Select(SitePaths.Rule).Concat(kb.Positions.Ids.Select(SitePaths.Position)).Concat(kb.Parts.Ids.Select(SitePaths.Part)).Concat(kb.Tasks.Ids.Select(SitePaths.Task))
            .Concat(kb.Connectors.Ids.Select(SitePaths.Connector)).Concat(kb.Articles.Ids.Select(SitePaths.Article)).Concat(kb.Terms.Ids.Select(SitePaths.Term))
            .Concat(kb.Chassis.Ids.Select(SitePaths.Chassis)).Concat(kb.Donors.Ids.Select(SitePaths.Donor)).Concat(Swapwright.Diagnostics.FindingKinds.All.Select(kind => SitePaths.Finding(kind.Id)));
        Assert.Equal(wanted.Order(StringComparer.Ordinal), paths.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Index_ShippedBase_StaysWithinItsBudgetAndGivesEachGuideItsPath()
    {
        var site = new SiteKnowledge(ShippedKnowledge.Proof());
        var file = new SearchPages(site).Index();
        using var index = Read(file);

        Assert.InRange(file.Bytes.Length, 1, Budget);
        var guides = index.RootElement.GetProperty("guides");
        string Id(string list, JsonElement number) => guides.GetProperty(list)[number.GetInt32()][0].GetString()!;
        Assert.Equal(
            site.Guides.Select(guide => guide.Path),
            guides.GetProperty("rows").EnumerateArray().Select(row => SitePaths.Guide(Id("chassis", row[0]), Id("donors", row[1]), row.EnumerateArray().Skip(2).Select(option => Id("options", option)))));
    }

    [Fact]
    public void File_HostileTitle_StaysInsideItsQuotes()
    {
        const string Hostile = "</script><!-- \u2028 \" ] ; alert(1)";
        var file = SearchIndex.File(
            [new SearchKind("Rules", "rule", "rule/", ".html", "rules.html", [new SearchEntry(Hostile, "x", Hostile, Hostile)])],
            new SearchGuides([], [], [], []));

        var text = Encoding.UTF8.GetString(file.Bytes.Span);
        Assert.DoesNotContain("<", text, StringComparison.Ordinal);
        Assert.DoesNotContain("\u2028", text, StringComparison.Ordinal);
        using var index = Read(file);
        Assert.All(new[] { 1, 3, 4 }, at => Assert.Equal(Hostile, index.RootElement.GetProperty("entries")[0][at].GetString()));
    }

    [Fact]
    public void List_Base_StandsByLettersThatTheSearchPageLeadsTo()
    {
        var pages = new SearchPages(new SiteKnowledge(ChangedBase.Prove("workshop", ("parts/belt.yaml", "title: ", "title: Ärmel "))));

        var list = pages.List();

        Assert.Equal(list.Groups.Select(group => group.Title).Order(StringComparer.Ordinal), list.Groups.Select(group => group.Title));
        Assert.Equal(list.Groups.Select(group => new PageLink(group.Title, $"a-z.html#{group.Anchor}")), pages.Page().Letters);
        var other = list.Groups.Single(group => group.Title == "Ä");
        Assert.Equal("letter-u00c4", other.Anchor);
        Assert.Contains(other.Items, item => item.Link.Text.StartsWith("Ärmel", StringComparison.Ordinal) && item.Mark == "part");
        Assert.Equal(pages.Kinds().Sum(kind => kind.Entries.Count), list.Groups.Sum(group => group.Items.Count));
    }

    /// <summary>The index without what makes a script of it.</summary>
    private static JsonDocument Read(SiteFile file)
    {
        var text = Encoding.UTF8.GetString(file.Bytes.Span);
        const string Before = "globalThis.swapwrightIndex=";
        Assert.StartsWith(Before, text, StringComparison.Ordinal);
        Assert.EndsWith(";\n", text, StringComparison.Ordinal);
        return JsonDocument.Parse(text[Before.Length..^2]);
    }
}
