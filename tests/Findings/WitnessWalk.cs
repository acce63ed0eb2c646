using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Findings;

/// <summary>Confirms findings of the space by walking: the witness shows the finding, and just as many combinations do as it says.</summary>
internal static class WitnessWalk
{
    public static void Confirm(KnowledgeBase kb, Finding finding)
    {
        switch (finding.Id)
        {
            case "contradiction" when AnswerAt(kb, finding.Place) is { } answer:
                var second = AnswerAt(kb, finding.Related[0].Place)!;
                Assert.False(answer.Source == second.Source && answer.Treatment == second.Treatment && answer.Part == second.Part && answer.Also.ToHashSet().SetEquals(second.Also));
                Shown(kb, finding, one => one.IsBuildable && one.AnswersAt(answer.Position).Contains(answer) && one.AnswersAt(answer.Position).Contains(second));
                break;
            case "contradiction":
                var value = ValueAt(kb, finding.Place);
                var other = ValueAt(kb, finding.Related[0].Place);
                Assert.NotEqual(value.Value, other.Value);
                Shown(kb, finding, one => one.IsBuildable && one.ValuesOf(value.Name).Contains(value) && one.ValuesOf(value.Name).Contains(other));
                break;
            case "gap":
                var position = Assert.Single(kb.Positions.All, position => position.Place == finding.Place);
                Shown(kb, finding, one => one.IsBuildable && one.Applies(position) && !one.AnswersAt(position.Id).Any());
                break;
            case "no-build":
                var pair = OneCombination.Every(kb).Where(one => one.Chassis.Id == finding.Witness!.Chassis && one.Donor.Id == finding.Witness.Donor && one.IsSensible).ToList();
                Assert.Equal((BigInteger)pair.Count, finding.Touches);
                Assert.DoesNotContain(pair, one => one.IsBuildable);
                Assert.DoesNotContain(kb.Rules.All, rule => pair.All(one => one.IsExcludedBy(rule)));
                break;
            case "dead-rule":
                var rule = Assert.Single(kb.Rules.All, rule => rule.Place.File == finding.Place.File);
                var speaksOfAll = rule.Excludes || rule.Requires is not null;
                Assert.DoesNotContain(OneCombination.Every(kb), one => (speaksOfAll ? one.IsSensible : one.IsBuildable) && one.Holds(rule.When));
                break;
            case "port-clash" or "open-port" or "hose-size":
                HoseWalk.Confirm(kb, finding);
                break;
            default:
                Assert.True(finding.Witness is null, $"`{finding.Id}` has a witness that no walk confirms: add one here");
                break;
        }
    }

    private static void Shown(KnowledgeBase kb, Finding finding, Func<OneCombination, bool> shows)
    {
        Assert.True(shows(OneCombination.Of(kb, finding.Witness!)), $"the witness does not show: {finding.Message}");
        Assert.Equal((BigInteger)OneCombination.Every(kb).Count(shows), finding.Touches);
    }

    private static Answer? AnswerAt(KnowledgeBase kb, Place place) => kb.Rules.All.SelectMany(rule => rule.Answers).FirstOrDefault(answer => answer.Place == place);

    private static StatedValue ValueAt(KnowledgeBase kb, Place place) => Assert.Single(kb.Rules.All.SelectMany(rule => rule.Values), value => value.Place == place);
}
