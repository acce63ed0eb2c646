using Swapwright.Diagnostics;
using Swapwright.Rules;

namespace Swapwright.Tests.Rules;

/// <summary>Single conditions whose drawing would be left to luck.</summary>
public class ConditionRegionsTests
{
    [Theory]
    [InlineData("chassis.year: {from: 1991}")]
    [InlineData("chassis.year: {to: 1992}")]
    [InlineData("chassis.year: {above: 1990}")]
    [InlineData("chassis.year: {below: 1993}")]
    [InlineData("chassis.year: 1990")]
    [InlineData("chassis.year: [1990, 1991]")]
    public void Resolve_YearCutsThroughAVariant_IsAFindingAndHoldsNowhere(string when)
    {
        var resolution = Resolve(when);
        var finding = Assert.Single(resolution.Findings);
        Assert.Equal(FindingKinds.Vocabulary, finding.Kind);
        Assert.Equal("rules/all/one.yaml:2:8", finding.Place.ToString());
        Assert.Equal("chassis/car.yaml", Assert.Single(finding.Related).Place.File);
        Assert.Equal(0, Donors(resolution));
    }

    [Theory]
    [InlineData("chassis.year: {from: 1990}", 2)]
    [InlineData("chassis.year: {from: 1990, to: 1993}", 2)]
    [InlineData("chassis.year: {above: 1989, below: 1994}", 2)]
    [InlineData("chassis.year: [1990, 1991, 1992, 1993]", 2)]
    [InlineData("chassis.year: {above: 1993}", 0)]
    [InlineData("chassis.year: {to: 1989}", 0)]
    [InlineData("donor.year: 1995", 2)]
    public void Resolve_YearOnOneSide_IsNoFinding(string when, int donors)
    {
        var resolution = Resolve(when);
        Assert.Empty(resolution.Findings);
        Assert.Equal(donors, Donors(resolution));
    }

    [Theory]
    [InlineData("donor.power: 90", 1)]
    [InlineData("donor.power: [60, 90]", 2)]
    [InlineData("donor.power: {from: 60}", 2)]
    [InlineData("donor.power: {above: 60}", 1)]
    [InlineData("donor.power: {to: 89.9}", 1)]
    [InlineData("donor.power: {from: 60, below: 90}", 1)]
    [InlineData("donor.power: 90000 W", 1)]
    [InlineData("donor.power: {from: 100, to: 50}", 0)]
    [InlineData("not: {donor.power: 90}", 1)]
    [InlineData("any: [{donor.power: 90}, {donor.power: 60}]", 2)]
    [InlineData("all: [{donor.power: 90}, {donor.power: 60}]", 0)]
    public void Resolve_Numbers_AreComparedAsNumbers(string when, int donors) => Assert.Equal(donors, Donors(Resolve(when)));

    private static Resolution Resolve(string when) =>
        Resolver.Resolve(TinyBase.With(("rules/all/one.yaml", $"title: One\nwhen: {{{when}}}\nthen: {{mistakes: [None.]}}\n")).Bind());

    private static int Donors(Resolution resolution) => (int)resolution.Store.Count(resolution.When(resolution.Space.Base.Rules["one"]));
}
