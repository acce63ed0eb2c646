using System.Globalization;
using System.Text;
using System.Text.Json;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Pages;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Site;

/// <summary>What pages say of several guides together: comparison, differences, the finder's data.</summary>
public sealed class ComparingPagesTests
{
    private const string NoPair = "title: The large engine stays out\nwhen: {chassis.variant: hazel-90, donor.variant: alder-16}\nthen: {exclude: It <b>meets</b> the bonnet.}\nbecause: Tried once.\nsources: [bench]\n";

    private const string HardInOne = "title: Cut the shafts\nphase: fit\nwhen: {donor.variant: alder-16}\nskill: specialist\nhours: 1\n";

    private static readonly SiteKnowledge Small = new(SmallBase.Proof);

    [Fact]
    public void Comparison_OfAChassis_HasEveryGuideAndMarksWhomNoOtherBeats()
    {
        foreach (var chassis in Small.Base.Chassis.All)
        {
            var compared = Comparisons.Of(Small, [.. Small.GuidesOfChassis[chassis.Id]], guide => guide.Headline.Donor)!;

            Assert.Equal(Small.GuidesOfChassis[chassis.Id].Select(guide => guide.Path).Order(StringComparer.Ordinal), compared.Rows.Select(row => row.Guide.Href).Order(StringComparer.Ordinal));
            Assert.Contains(compared.Rows, row => row.IsUnbeaten);
            foreach (var row in compared.Rows)
            {
                var mine = Counts(row);
                var beaten = compared.Rows.Any(other => Counts(other) is var theirs && theirs.Zip(mine).All(pair => pair.First <= pair.Second) && !theirs.SequenceEqual(mine));
                Assert.Equal(!beaten, row.IsUnbeaten);
            }
        }
    }

    /// <summary>Where every guide asks for the same, a column would say it over and over: the sentence above says it once.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Comparison_WhatIsHardIsTheSameInAll_HasNoColumnForIt(bool differs)
    {
        using var folder = differs ? SmallBase.Copy(("tasks/cut-shafts.yaml", HardInOne)) : SmallBase.Copy();
        var site = new SiteKnowledge(Proof.Of(folder.Path));
        var chassis = site.Base.Chassis["hazel-90"];
        var compared = Comparisons.Of(site, [.. site.GuidesOfChassis[chassis.Id]], guide => guide.Headline.Donor)!;
        var table = ParsedPage.Of(BuiltIn.Templates.Render(new VariantPages(site, new ClosedWays(site)).Chassis(chassis))).Document.QuerySelector("table.compare")!;

        Assert.True(compared.Rows.Count > 1);
        Assert.Equal(differs, compared.Rows.Select(row => row.Hard.Text).Distinct(StringComparer.Ordinal).Count() > 1);
        Assert.Equal(differs, compared.HasHard);
        Assert.Equal(differs, table.QuerySelectorAll("thead th").Any(head => head.TextContent == "What is hard"));
        Assert.All(table.QuerySelectorAll("tbody tr"), row => Assert.Equal(table.QuerySelectorAll("thead th").Length, row.Children.Length));
        Assert.Equal(!differs, compared.Words.Contains(" Hard in all of them (plain work): ", StringComparison.Ordinal));
    }

    [Fact]
    public void Chart_OfManyPoints_SaysInWordsWhichNoOtherBeats()
    {
        var svg = CompareChart.Svg([new ComparePoint("1", "A & B", 100, 20, true), new ComparePoint("2", "C", 120, 25, false), new ComparePoint("3", "D", 120, 25, false)], "EUR", "chart");

        var document = ParsedPage.Of(svg).Document;
        Assert.Contains("No other beats: 1, A & B: 100 EUR, 20 hours.", document.QuerySelector("desc")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(3, document.QuerySelectorAll("path.offer").Length);
        Assert.Single(document.QuerySelectorAll("path.unbeaten"));
    }

    [Fact]
    public void Chart_PointsCrowdedAtBothEnds_NumbersKeepOffTheWordsOfTheAxes()
    {
        ComparePoint Point(int number, double hours) => new(number.ToString(CultureInfo.InvariantCulture), "one", 2000 + (number * 8), hours, false);
        var svg = CompareChart.Svg([.. Enumerable.Range(10, 30).Select(number => Point(number, 20)), .. Enumerable.Range(40, 30).Select(number => Point(number, 40))], "EUR", "chart");

        var document = ParsedPage.Of(svg).Document;
        double Y(AngleSharp.Dom.IElement text) => double.Parse(text.GetAttribute("y")!, CultureInfo.InvariantCulture);
        var numbers = document.QuerySelectorAll("text.number");
        var lowest = document.QuerySelectorAll("text.tick").Max(Y);
        var highest = document.QuerySelectorAll("text.axis").Min(Y);
        Assert.InRange(numbers.Length, 10, 59);
        // A digit of a text of 12 units is about 9 high (three quarters of the type's size, from memory).
        Assert.All(numbers, number => Assert.InRange(Y(number), highest + 10, lowest - 10));
    }

    [Fact]
    public void Differences_OfAChassis_GiveEveryGuideOneAnswerAtEachPosition()
    {
        var page = new DifferPages(Small).Of(Small.Base.Chassis["hazel-93"]);

        Assert.NotEmpty(page.Systems);
        var numbers = page.Guides.Select(guide => guide.Number).Order(StringComparer.Ordinal).ToList();
        Assert.All(page.Systems.SelectMany(system => system.Positions), position =>
        {
            Assert.True(position.Answers.Count > 1);
            Assert.Equal(numbers, position.Answers.SelectMany(answer => answer.Guides.Split(' ')).Order(StringComparer.Ordinal));
        });
    }

    [Fact]
    public void FinderData_OfABaseWithAnExcludedPair_NamesTheRuleAndCarriesNoMarkup()
    {
        using var folder = SmallBase.Copy(("rules/front/no-pair.yaml", NoPair));
        var site = new SiteKnowledge(Proof.Of(folder.Path));

        var text = Encoding.UTF8.GetString(new FinderData(site, new ClosedWays(site), new WhichPages(site)).File().Bytes.Span);
        Assert.DoesNotContain('<', text);
        using var data = JsonDocument.Parse(text["globalThis.swapwrightFinder = ".Length..].TrimEnd('\n', ';'));
        var root = data.RootElement;
        Assert.Equal(site.Guides.Select(guide => guide.Path), root.GetProperty("guides").EnumerateArray().Select(guide => guide.GetProperty("path").GetString()));
        var pair = Assert.Single(root.GetProperty("pairs").EnumerateArray());
        var rules = pair[2].EnumerateArray().Select(at => root.GetProperty("rules")[at.GetInt32()]).ToList();
        Assert.Equal((SitePaths.Rule("no-pair"), "It <b>meets</b> the bonnet."), (rules[0][1].GetString(), rules[0][2].GetString()));
        foreach (var side in new[] { "chassis", "donor" })
        {
            var steps = root.GetProperty(side).GetProperty("steps").EnumerateArray().ToList();
            var all = root.GetProperty(side).GetProperty("roots").EnumerateArray().Single(one => one[0].GetString()!.Length == 0)[1].GetInt32();
            Assert.Equal(root.GetProperty(side).GetProperty("variants").GetArrayLength(), steps[all].GetProperty("variants").GetArrayLength());
        }
    }

    private static List<decimal> Counts(Swapwright.Site.Models.ComparisonRow row) =>
        [decimal.Parse(row.Money.Sort, CultureInfo.InvariantCulture), decimal.Parse(row.Hours.Sort, CultureInfo.InvariantCulture), row.Power.Sort.Length == 0 ? 0 : -decimal.Parse(row.Power.Sort, CultureInfo.InvariantCulture)];
}
