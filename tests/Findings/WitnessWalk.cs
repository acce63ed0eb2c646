using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Wiring;

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
            case "forced-option":
                var choice = Assert.Single(kb.Choices.All, choice => choice.Place == finding.Place);
                Shown(kb, finding, one => one.IsBuildable && one.Options[choice.Id] != Choice.None);
                Assert.Single(OneCombination.Every(kb).Where(one => one.IsBuildable).Select(one => one.Options[choice.Id]).Where(option => option != Choice.None).Distinct());
                break;
            case "default-clash" when kb.Choices.All.FirstOrDefault(asked => asked.Recommendations.Any(two => two.Place == finding.Place)) is { } asked && finding.Message.StartsWith($"`{asked.Id}` recommends", StringComparison.Ordinal):
                var here = asked.Recommendations.Single(two => two.Place == finding.Place);
                var before = asked.Recommendations.Single(two => two.Place == finding.Related[0].Place);
                Assert.NotEqual(here.Option, before.Option);
                Shown(kb, finding, one => one.IsBuildable && one.Options[asked.Id] != Choice.None && one.Holds(here.When) && one.Holds(before.When));
                break;
            case "default-clash":
                var clash = OneCombination.Every(kb).Where(one => one.Chassis.Id == finding.Witness!.Chassis && one.Donor.Id == finding.Witness.Donor).ToList();
                Assert.Contains(clash, one => one.IsBuildable);
                Assert.DoesNotContain(clash, one => one.IsBuildable && one.FollowsRecommendations);
                Assert.True(finding.Witness!.Choices.IsEmpty ? !clash.Any(one => one.FollowsRecommendations) : OneCombination.Of(kb, finding.Witness).FollowsRecommendations);
                break;
            case "belt-length":
                var loops = Sheets(kb)(OneCombination.Of(kb, finding.Witness!)).Belts.Where(belt => belt.Result.Problems.Any(problem => problem.Weight == BeltProblemWeight.Blocking) || Lacking(kb.Donors[finding.Witness!.Donor], belt)).Select(Pulleys).ToList();
                Assert.NotEmpty(loops);
                Computed(kb, finding, sheet => sheet.Belts.Any(belt => loops.Contains(Pulleys(belt))));
                break;
            case "belt-wrap":
                Computed(kb, finding, sheet => sheet.Belts.Any(belt => belt.Result.Pulleys.Any(pulley => !pulley.WrapWithinLimit && StationPlace(sheet, belt, pulley.StationId) == finding.Place)));
                break;
            case "belt-plane":
                Computed(kb, finding, sheet => sheet.Belts.Any(belt => belt.Result.Pulleys.Any(pulley => !pulley.PlaneWithinLimit
                    && StationPlace(sheet, belt, pulley.StationId) == finding.Place && StationPlace(sheet, belt, pulley.NextId) == finding.Related[0].Place)));
                break;
            case "belt-face":
                Computed(kb, finding, sheet => sheet.Belts.Any(belt => belt.Result.Problems.OfType<FaceMismatch>().Any(face => StationPlace(sheet, belt, face.StationId) == finding.Place)));
                break;
            case "stated-value":
                Computed(kb, finding, sheet => sheet.Values.Any(one => one.Stated.Value.Place == finding.Place && !one.Agrees));
                break;
            case "port-clash" or "open-port" or "hose-size":
                HoseWalk.Confirm(kb, finding);
                break;
            case "idle-closing":
                HoseWalk.ConfirmIdle(kb, finding, AnswerAt(kb, finding.Place)!);
                break;
            case "no-plug":
                // What the finding is for, in the wiring itself: something is fitted, and every plug for it is capped.
                Computed(kb, finding, sheet => sheet.Wiring is { } wiring && sheet.Answers.Any(at => at.Answer?.Place == finding.Place
                    && wiring.Plugs.Where(plug => kb.Vocabulary.Devices.Find(plug.Role)?.Position == at.Position.Id).ToList() is { Count: > 0 } plugs && plugs.All(plug => plug.Outcome == PlugOutcome.Capped)));
                break;
            case "missing-input":
                Computed(kb, finding, sheet => Holders(kb, sheet).Any(holder => holder.Place.File == finding.Place.File));
                break;
            default:
                Assert.True(finding.Witness is null, $"`{finding.Id}` has a witness that no walk confirms: add one here");
                break;
        }
    }

    // Whose facts the worksheets of a combination ask for: the vehicles, what the choices bind, and the parts that answers bring.
    private static IEnumerable<FactHolder> Holders(KnowledgeBase kb, Sheet sheet) =>
        new FactHolder?[] { sheet.Chassis, sheet.Donor, sheet.Gearbox, sheet.Ecu }.OfType<FactHolder>()
            .Concat(sheet.Answers.SelectMany(at => at.Answer?.PartIds ?? []).Select(id => kb.Parts.Find(id)).OfType<Part>());

    private static void Shown(KnowledgeBase kb, Finding finding, Func<OneCombination, bool> shows)
    {
        Assert.True(shows(OneCombination.Of(kb, finding.Witness!)), $"the witness does not show: {finding.Message}");
        Assert.Equal((BigInteger)OneCombination.Every(kb).Count(shows), finding.Touches);
    }

    /// <summary>As <see cref="Shown"/>, by the sheet of each buildable combination.</summary>
    private static void Computed(KnowledgeBase kb, Finding finding, Func<Sheet, bool> shows)
    {
        var sheetOf = Sheets(kb);
        Shown(kb, finding, one => one.IsBuildable && shows(sheetOf(one)));
    }

    private static Func<OneCombination, Sheet> Sheets(KnowledgeBase kb)
    {
        var resolution = Resolver.Resolve(kb);
        var builder = new SheetBuilder(resolution);
        return one => builder.Build(
        [
            .. resolution.Store.Variables.Select((variable, level) => variable.Values.IndexOf(
                level == resolution.Space.Chassis ? one.Chassis.Id : level == resolution.Space.Donor ? one.Donor.Id : one.Options[resolution.Space.ChoiceAt[level]!.Id])),
        ]);
    }

    private static string Pulleys(FittedBelt belt) => string.Join(", ", belt.Loop.Pulleys.Select(pulley => (pulley with { Title = belt.Loop.Id }).ToString()));

    private static bool Lacking(DonorVariant donor, FittedBelt belt) =>
        donor.BeltDrives.Single(drive => drive.Id == belt.Loop.Id).Stations.Any(station => !station.CanBeLeftOut && belt.Loop.Pulleys.All(pulley => pulley.Id != station.Id));

    private static Place StationPlace(Sheet sheet, FittedBelt belt, string station) =>
        sheet.Donor.BeltDrives.Single(drive => drive.Id == belt.Loop.Id).Stations.Single(one => one.Id == station).Place;

    private static Answer? AnswerAt(KnowledgeBase kb, Place place) => kb.Rules.All.SelectMany(rule => rule.Answers).FirstOrDefault(answer => answer.Place == place);

    private static StatedValue ValueAt(KnowledgeBase kb, Place place) => Assert.Single(kb.Rules.All.SelectMany(rule => rule.Values), value => value.Place == place);
}
