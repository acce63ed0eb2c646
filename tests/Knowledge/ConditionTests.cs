using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Knowledge;

/// <summary>Conditions as written in a rule of the base <c>crossings</c> against what is bound.</summary>
public sealed class ConditionTests
{
    [Theory]
    [InlineData("{}", "all()")]
    [InlineData("{choice.alternator: keep}", "choice alternator in keep")]
    [InlineData("{choice.alternator: [keep, donor]}", "choice alternator in keep|donor")]
    [InlineData("{choice.air: none}", "choice air in none")]
    [InlineData("{chassis.fuel-delivery: [carburettor, single-point]}", "chassis.fuel-delivery in carburettor|single-point")]
    [InlineData("{donor.air-injected: true}", "donor.air-injected in yes")]
    [InlineData("{donor.power: 66}", "donor.power in 66")]
    [InlineData("{donor.power: 90 PS}", "donor.power in 66.1948875")]
    [InlineData("{donor.power: {from: 60, below: 90}}", "donor.power >= 60 < 90")]
    [InlineData("{donor.power: {above: 60, to: 90}}", "donor.power > 60 <= 90")]
    [InlineData("{donor.power: {above: chassis.radiator-power}}", "donor.power > chassis.radiator-power")]
    [InlineData("{donor.emission-level: {from: stage-1}}", "donor.emission-level >= stage-1")]
    [InlineData("{donor.emission-level: {from: chassis.emission-level}}", "donor.emission-level >= chassis.emission-level")]
    [InlineData("{chassis.fuel-delivery: {equals: donor.fuel-delivery}}", "chassis.fuel-delivery = donor.fuel-delivery")]
    [InlineData("{chassis.year: 1986}", "chassis.year in 1986")]
    [InlineData("{donor.year: {from: 1986, to: 1988}}", "donor.year >= 1986 <= 1988")]
    [InlineData("{donor.year: {above: 1985, below: 1989}}", "donor.year > 1985 < 1989")]
    [InlineData("{chassis.family: quillet}", "chassis.family in quillet")]
    [InlineData("{donor.variant: [marn-16, marn-18]}", "donor.variant in marn-16|marn-18")]
    [InlineData("{gearbox.control: cable}", "gearbox.control in cable")]
    [InlineData("{gearbox.torque: {below: donor.torque}}", "gearbox.torque < donor.torque")]
    [InlineData("{answer.radiator: {source: [chassis, new], treatment: as-is, part: wide-radiator}}", "answer radiator chassis|new/as-is/wide-radiator")]
    [InlineData("{answer.radiator: {}}", "answer radiator //", "schema")]
    [InlineData("{any: [{choice.alternator: keep}, {donor.power: 66}]}", "any(choice alternator in keep; donor.power in 66)")]
    [InlineData("{not: {choice.alternator: keep, donor.power: 66}}", "not all(choice alternator in keep; donor.power in 66)")]
    [InlineData("{all: [{donor.power: {from: 60}}, {donor.power: {to: 90}}], choice.alternator: keep}", "all(all(donor.power >= 60; donor.power <= 90); choice alternator in keep)")]
    public void When_Written_IsBound(string when, string expected, string? finding = null)
    {
        var (rule, findings) = Bound(when);

        Assert.Equal(expected, Words(rule.When));
        Assert.Equal(finding is null ? [] : [finding], findings.Select(one => one.Id));
    }

    [Theory]
    [InlineData("{donor.powr: 66}", "vocabulary", "no fact of `donor` `powr`; did you mean `power`?")]
    [InlineData("{donor.power: 66 mm}", "unit", "`66 mm` is of the wrong dimension: a quantity in kW is wanted")]
    [InlineData("{donor.power: 5}", "unit", "`5` is not plausible: it is below 20 kW")]
    [InlineData("{donor.power: {from: 66, above: 70}}", "vocabulary", "`from` and `above` cannot stand in one test")]
    [InlineData("{donor.fuel-delivery: {equals: chassis.fuel-delivery, from: carburettor}}", "vocabulary", "`equals` and `from` cannot stand in one test")]
    [InlineData("{donor.air-injected: {from: 1}}", "vocabulary", "`donor.air-injected` has no order, so it has no range")]
    [InlineData("{donor.air-injected: maybe}", "vocabulary", "`donor.air-injected` is a yes-or-no fact, not `maybe`")]
    [InlineData("{donor.power: {to: gearbox.torque}}", "unit", "`gearbox.torque` is not a number")]
    [InlineData("{donor.year: nineties}", "vocabulary", "`donor.year` is held against years, not against `nineties`")]
    [InlineData("{donor.year: {equals: chassis.year}}", "vocabulary", "`donor.year` is held against years, not against `chassis.year`")]
    [InlineData("{chassis.family: {from: quillet}}", "vocabulary", "a family of chassis is asked for by its id, not by a range or by another fact")]
    [InlineData("{chassis.family: quilet}", "reference", "no family of chassis `quilet`; did you mean `quillet`?")]
    [InlineData("{choice.alternater: keep}", "reference", "no choice `alternater`; did you mean `alternator`?")]
    [InlineData("{choice.alternator: kepp}", "reference", "no option of `alternator` `kepp`; did you mean `keep`?")]
    [InlineData("{answer.radiatro: {source: chassis}}", "reference", "no position `radiatro`; did you mean `radiator`?")]
    [InlineData("{answer.radiator: {part: wide}}", "reference", "no part `wide`")]
    [InlineData("{alternator.control: rod}", "vocabulary", "no fact of `alternator` `control`")]
    public void When_AsksWhatIsNotThere_IsRefusedWithTheNearestName(string when, string id, string message)
    {
        var finding = Assert.Single(Bound(when).Findings);

        Assert.Equal((id, message), (finding.Id, finding.Message));
        Assert.Equal("rules/drive/asked.yaml", finding.Place.File);
    }

    /// <summary>Where no name is near, a newcomer has to be told where names come from.</summary>
    [Theory]
    [InlineData("{engine.power: 66}", "no subject or choice `engine`", "`chassis`, `donor`")]
    [InlineData("{alternator.control: rod}", "no fact of `alternator` `control`", "`vocabulary.yaml`")]
    public void When_NoNameIsNear_TheMendSaysWhereToLook(string when, string message, string mend)
    {
        var finding = Assert.Single(Bound(when).Findings);

        Assert.Equal(message, finding.Message);
        Assert.Contains(mend, finding.Mend, StringComparison.Ordinal);
    }

    /// <summary>Nothing stops at the first mistake.</summary>
    [Fact]
    public void When_SeveralMistakes_AreAllTold()
    {
        var (_, findings) = Bound("{donor.powr: 66, choice.alternator: [keep, kepp, doner], any: [{gearbox.contrl: rod}, {answer.fann: {source: new}}]}");

        Assert.Equal(5, findings.Count);
        Assert.Equal(findings.OrderBy(finding => finding.Place), findings);
    }

    private static (Rule Rule, List<Finding> Findings) Bound(string when)
    {
        using var folder = KnowledgeBaseCase.CopyOf("crossings");
        File.WriteAllText(Path.Combine(folder.Path, "rules", "drive", "asked.yaml"), $"title: Asked\nwhen: {when}\nthen:\n  mistakes: [None.]\n");
        var proof = Proof.Of(folder.Path);
        return (proof.Base.Rules["asked"], [.. proof.Findings.Where(finding => finding.Id is not ("dead-rule" or "contradiction") && !finding.Message.Contains("cuts through", StringComparison.Ordinal))]);
    }

    private static string Words(Condition condition) => condition switch
    {
        AllOf all => $"all({string.Join("; ", all.Terms.Select(Words))})",
        AnyOf any => $"any({string.Join("; ", any.Terms.Select(Words))})",
        NotOf not => $"not {Words(not.Term)}",
        ChoiceTest choice => $"choice {choice.Choice} in {string.Join('|', choice.Options)}",
        AnswerTest answer => $"answer {answer.Position} {string.Join('|', answer.Sources)}/{string.Join('|', answer.Treatments)}/{string.Join('|', answer.Parts)}",
        FactTest { Test: OneOfTest list } fact => $"{fact.Name} in {string.Join('|', list.Values.Select(value => value.Text))}",
        FactTest { Test: EqualsFactTest same } fact => $"{fact.Name} = {same.Fact}",
        FactTest { Test: RangeTest range } fact => $"{fact.Name}{Words(range.Lower, ">")}{Words(range.Upper, "<")}",
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private static string Words(Bound? bound, string sign) => bound is null
        ? ""
        : $" {sign}{(bound.Inclusive ? "=" : "")} {bound.Fact?.ToString() ?? bound.Value?.Text.ToString(CultureInfo.InvariantCulture)}";
}
