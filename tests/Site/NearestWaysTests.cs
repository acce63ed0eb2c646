using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Pages;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Site;

/// <summary>What pages say of what cannot be built: by which rules, and what comes nearest.</summary>
public class NearestWaysTests
{
    private const string Sourced = "because: Tried once.\nsources: [bench]\n";

    [Fact]
    public void Chassis_PairThatOneRuleExcludes_NamesTheRuleAndTheNearestGuides()
    {
        var page = Chassis(("rules/front/no-pair.yaml", "title: The large engine stays out\nwhen: {chassis.variant: hazel-90, donor.variant: alder-16}\nthen: {exclude: It meets the bonnet.}\n" + Sourced));

        var pair = Assert.Single(page.NotBuildable);
        var reason = Assert.Single(pair.Reasons);
        Assert.Equal(("It meets the bonnet.", SitePaths.Rule("no-pair")), (reason.Text.ToString(), reason.Rule.Href));
        Assert.Equal(
            [("this chassis with", "Alder 14", SitePaths.Guide("hazel-90", "alder-14", ["keep"])), ("this donor in", "Hazel 1993–95", SitePaths.Guide("hazel-93", "alder-16", ["keep"]))],
            pair.Ways.Select(way => (way.Words, way.Guide.Text, way.Guide.Href)));
    }

    [Fact]
    public void Chassis_PairThatTakesSeveralRules_NamesThoseThatCannotBeSpared()
    {
        var page = Chassis(
            ("rules/front/no-keep.yaml", "title: Kept box\nwhen: {chassis.variant: hazel-90, donor.variant: alder-16, choice.gearbox: keep}\nthen: {exclude: It is too weak.}\n" + Sourced),
            ("rules/front/no-wide.yaml", "title: Wide radiator\nwhen: {chassis.variant: hazel-90, choice.gearbox: keep, choice.cooling: wide}\nthen: {exclude: It meets the lever.}\n" + Sourced));

        Assert.Equal([SitePaths.Rule("no-donor-box-early"), SitePaths.Rule("no-keep")], Assert.Single(page.NotBuildable).Reasons.Select(reason => reason.Rule.Href));
    }

    [Fact]
    public void Choices_OptionThatTheHeadlineClosesOrSettles_SaysWhatToChange()
    {
        using var folder = SmallBase.Copy(("rules/cooling/no-wide.yaml", "title: Wide radiator\nwhen: {choice.gearbox: donor, choice.cooling: wide}\nthen: {exclude: It meets the donor's box.}\n" + Sourced));
        var site = new SiteKnowledge(Proof.Of(folder.Path));
        var guide = site.Guides.Single(one => one.Path == SitePaths.Guide("hazel-93", "alder-16", ["donor"]));

        var option = new GuideChoices(site, guide, GuideConditions.Within(site, guide)).Choices().Single(choice => choice.Id == "cooling").Options.Single(one => one.Id == "wide");
        Assert.False(option.IsOffered);
        var way = Assert.Single(option.Ways);
        Assert.Equal(("this chassis and this donor with", "gearbox: keep the car's", SitePaths.Guide("hazel-93", "alder-16", ["keep"])), (way.Words, way.Guide.Text, way.Guide.Href));
        Assert.Empty(option.Settles);
    }

    [Fact]
    public void Choices_OptionThatLeavesOneWay_SaysWhatItSettles()
    {
        using var folder = SmallBase.Copy(
            ("choices/lever.yaml", "title: Lever\norder: 3\noptions:\n  short: {title: Short lever}\n  long: {title: Long lever}\n"),
            ("rules/cooling/no-wide.yaml", "title: Wide radiator\nwhen: {choice.lever: long, choice.cooling: wide}\nthen: {exclude: It meets the lever.}\n" + Sourced));
        var site = new SiteKnowledge(Proof.Of(folder.Path));
        var guide = site.Guides.Single(one => one.Path == SitePaths.Guide("hazel-93", "alder-16", ["keep"]));

        var settled = new GuideChoices(site, guide, GuideConditions.Within(site, guide)).Choices().SelectMany(choice => choice.Options.SelectMany(option => option.Settles.Select(one => $"{choice.Id}={option.Id}: {one.Choice}, {one.Option}")));
        Assert.Equal(["cooling=wide: lever, short lever", "lever=long: cooling, donor's radiator"], settled);
    }

    private static ChassisPage Chassis(params (string Path, string Text)[] changes)
    {
        using var folder = SmallBase.Copy(changes);
        var site = new SiteKnowledge(Proof.Of(folder.Path));
        return new VariantPages(site, new ClosedWays(site)).Chassis(site.Base.Chassis["hazel-90"]);
    }
}
