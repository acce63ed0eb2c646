using System.Globalization;
using System.Text.RegularExpressions;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Rules;

/// <summary>Drawn bases: what does nothing, what cannot be taken and what is wrongly recommended, held against every combination.</summary>
public sealed partial class IdleKnowledgeTests
{
    private const int Bases = 150;

    [Fact]
    public void ShadowedRule_DrawnBases_AgreesWithEveryCombination() => Every(Bases, drawn =>
    {
        var truth = drawn.Truth;
        var wanted = drawn.Base.Rules.All.Where(rule => drawn.Resolution.Overriders.ContainsKey(rule.Id) && !Gives(truth, rule) && WouldGive(drawn, rule));
        return (wanted.Select(rule => rule.Id), drawn.Found(ShadowedRule.Check).Select(finding => Path.GetFileNameWithoutExtension(finding.Place.File)));
    });

    [Fact]
    public void RedundantRule_DrawnBases_AgreesWithTakingTheRuleOut() => Every(60, drawn =>
    {
        var wanted = drawn.Truth.Domain.Length > 700 ? null : drawn.Base.Rules.All.Where(rule => !IsDead(drawn, rule)
            && (Gives(drawn.Truth, rule) || !drawn.Resolution.Overriders.ContainsKey(rule.Id) || !WouldGive(drawn, rule))
            && WithoutRule.ChangesNothing(drawn.Base, drawn.Truth, rule));
        var found = drawn.Found(RedundantRule.Check).Select(finding => Path.GetFileNameWithoutExtension(finding.Place.File)).ToList();
        return (wanted?.Select(rule => rule.Id) ?? found, found);
    });

    [Fact]
    public void IdleOverride_DrawnBases_AgreesWithEveryCombination() => Every(Bases, drawn =>
    {
        var wanted = from rule in drawn.Base.Rules.All
                     from named in rule.Overrides
                     let other = drawn.Base.Rules[named.Id]
                     let shares = rule.Answers.Any(answer => other.AnswerAt(answer.Position) is not null) || rule.Values.Any(value => other.Values.Any(one => one.Name == value.Name))
                         || other.Excludes || other.Requires is not null || (other.Answers.IsEmpty && other.Values.IsEmpty)
                     let apart = Met(rule) && Met(other) && !drawn.Truth.Domain.Any(at => drawn.Truth.Holds(rule.When, at) && drawn.Truth.Holds(other.When, at))
                     where !shares || apart
                     select named.Place.ToString();
        return (wanted, drawn.Found(IdleOverride.Check).Select(finding => finding.Place.ToString()));

        bool Met(Rule rule) => drawn.Truth.Domain.Any(at => drawn.Truth.Holds(rule.When, at));
    });

    [Fact]
    public void Options_DrawnBases_AgreeWithEveryCombination() => Every(Bases, drawn =>
    {
        var wanted = new List<string>();
        foreach (var choice in drawn.Base.Choices.All.Where(_ => !drawn.Truth.Buildable.IsEmpty))
        {
            var taken = drawn.Truth.Buildable.GroupBy(at => at.Options[choice.Id], StringComparer.Ordinal).Where(group => group.Key != Choice.None).ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
            wanted.AddRange(taken.Count == 0 ? [$"dead-option {choice.Place}"] : choice.Options.Where(option => !taken.ContainsKey(option.Id)).Select(option => $"dead-option {option.Place}"));
            if (taken.Count == 1)
            {
                wanted.Add($"forced-option {choice.Place} {taken.Values.Single().ToString(CultureInfo.InvariantCulture)}");
            }
        }

        var found = drawn.Found(DeadOption.Check).Select(finding => $"dead-option {finding.Place}")
            .Concat(drawn.Found(ForcedOption.Check).Select(finding => $"forced-option {finding.Place} {finding.Touches!.Value.ToString(CultureInfo.InvariantCulture)}"));
        return (wanted, found);
    });

    [Fact]
    public void DefaultClash_DrawnBases_AgreesWithEveryCombination() => Every(Bases, drawn =>
    {
        var truth = drawn.Truth;
        var followed = truth.Domain.Where(at => drawn.Base.Choices.All.All(choice => at.Options[choice.Id] == Default(drawn, choice, at))).ToList();
        var canBeBuilt = truth.Buildable.Select(at => (at.Chassis.Id, at.Donor.Id)).ToHashSet();
        var buildable = truth.Buildable.ToHashSet();
        var sound = followed.Where(buildable.Contains).Select(at => (at.Chassis.Id, at.Donor.Id)).ToHashSet();
        var clashing = canBeBuilt.Except(sound).ToHashSet();
        var overlaps = from choice in drawn.Base.Choices.All
                       from second in Enumerable.Range(0, choice.Recommendations.Length)
                       from first in Enumerable.Range(0, second)
                       let pair = (First: choice.Recommendations[first], Second: choice.Recommendations[second])
                       where pair.First.Option != pair.Second.Option
                       let both = truth.Buildable.Count(at => at.Options[choice.Id] != Choice.None && truth.Holds(pair.First.When, at) && truth.Holds(pair.Second.When, at))
                       where both > 0
                       select $"overlap {pair.Second.Place} {both.ToString(CultureInfo.InvariantCulture)}";
        var all = drawn.Found(DefaultClash.Check);
        var clashes = all.Where(finding => Pairs().IsMatch(finding.Message)).ToList();
        foreach (var clash in clashes)
        {
            Assert.Contains((clash.Witness!.Chassis, clash.Witness.Donor), clashing);
            Assert.Contains($" of {canBeBuilt.Count.ToString(CultureInfo.InvariantCulture)} pairs", clash.Message, StringComparison.Ordinal);
            Assert.True(clash.Witness.Choices.IsEmpty || followed.Any(at => drawn.Name(drawn.Values(at)) == DrawnBase.Name(clash.Witness)), clash.Message);
        }

        var count = clashes.Sum(clash => int.Parse(Pairs().Match(clash.Message).Groups["count"].Value, CultureInfo.InvariantCulture));
        return (overlaps.Append($"{clashing.Count.ToString(CultureInfo.InvariantCulture)} pairs"),
            all.Except(clashes).Select(finding => $"overlap {finding.Place} {finding.Touches!.Value.ToString(CultureInfo.InvariantCulture)}").Append($"{count.ToString(CultureInfo.InvariantCulture)} pairs"));
    });

    /// <summary>Chance has to have drawn enough of everything.</summary>
    [Fact]
    public void Draw_ManySeeds_CoversEveryFinding()
    {
        var drawn = Enumerable.Range(0, 60).Select(seed => new DrawnBase(seed)).ToList();
        Assert.All(
            new[] { ShadowedRule.Check, RedundantRule.Check, IdleOverride.Check, DeadOption.Check, ForcedOption.Check, DefaultClash.Check },
            check => Assert.Contains(drawn, one => !one.Found(check).IsEmpty));
    }

    private static string Default(DrawnBase drawn, Choice choice, Exhaustive.Case at) =>
        !drawn.Truth.Holds(choice.Applies, at) ? Choice.None
        : choice.Recommendations.FirstOrDefault(one => drawn.Truth.Holds(one.When, at))?.Option ?? choice.Options[0].Id;

    private static bool IsExclusion(Rule rule) => rule.Excludes || rule.Requires is not null;

    private static bool SpeaksOnly(Rule rule) =>
        rule.Answers.IsEmpty && rule.Values.IsEmpty && !(rule.Tasks.IsEmpty && rule.Cautions.IsEmpty && rule.Mistakes.IsEmpty && rule.Advises.IsEmpty);

    private static bool IsDead(DrawnBase drawn, Rule rule) => !(IsExclusion(rule) ? drawn.Truth.Domain : drawn.Truth.Buildable).Any(at => drawn.Truth.Holds(rule.When, at));

    private static bool Gives(Exhaustive truth, Rule rule) =>
        truth.Buildable.Any(at => rule.Answers.Any(answer => truth.Standing(answer.Position, at).Any(one => one.Rule == rule)) || rule.Values.Any(value => truth.Stands(rule, value, at)) || (SpeaksOnly(rule) && truth.Speaks(rule, at)))
        || truth.Domain.Any(at => truth.Excludes(rule, at));

    private static bool WouldGive(DrawnBase drawn, Rule rule) =>
        drawn.Truth.Buildable.Any(at => drawn.Truth.Holds(rule.When, at) && (!rule.Values.IsEmpty || SpeaksOnly(rule) || rule.Answers.Any(answer => drawn.Truth.Holds(drawn.Base.Positions[answer.Position].Applies, at))))
        || drawn.Truth.Domain.Any(at => drawn.Truth.Holds(rule.When, at) && (rule.Excludes || (rule.Requires is { } required && !drawn.Truth.Holds(required, at))));

    private static void Every(int bases, Func<DrawnBase, (IEnumerable<string> Wanted, IEnumerable<string> Found)> compare)
    {
        for (var seed = 0; seed < bases; seed++)
        {
            var (wanted, found) = compare(new DrawnBase(seed));
            Assert.Equal($"seed {seed.ToString(CultureInfo.InvariantCulture)}: {string.Join(", ", wanted.Order(StringComparer.Ordinal))}", $"seed {seed.ToString(CultureInfo.InvariantCulture)}: {string.Join(", ", found.Order(StringComparer.Ordinal))}");
        }
    }

    [GeneratedRegex(@"for (?<count>\d+) of \d+ pairs of chassis and donor$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Pairs();
}
