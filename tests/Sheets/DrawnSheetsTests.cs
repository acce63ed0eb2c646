using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Sheets;

/// <summary>Sheets of drawn bases, held against what every combination says for itself.</summary>
public class DrawnSheetsTests
{
    // One in so many combinations of a base gets a sheet.
    private const int Every = 17;

    [Fact]
    public void All_DrawnBases_ListsEveryHeadlineOnce()
    {
        foreach (var drawn in Drawn(1000, 60))
        {
            var named = drawn.Base.Settings.Headline.Select(one => one.Id).ToList();
            var wanted = drawn.Truth.Buildable.GroupBy(at => string.Join('/', named.Select(choice => at.Options[choice]).Prepend(at.Donor.Id).Prepend(at.Chassis.Id)), StringComparer.Ordinal)
                .ToDictionary(group => group.Key, group => group.ToList(), StringComparer.Ordinal);
            var found = new Headlines(drawn.Resolution).All().ToList();
            Assert.Equal(wanted.Keys.Order(StringComparer.Ordinal), found.Select(headline => headline.Id).Order(StringComparer.Ordinal));
            foreach (var headline in found)
            {
                var cases = wanted[headline.Id];
                Assert.Equal(cases.Count, drawn.Resolution.Store.Count(headline.Slice));
                Assert.True(cases.All(at => drawn.Resolution.Store.Contains(headline.Slice, drawn.Values(at))));
            }
        }
    }

    [Fact]
    public void Default_DrawnBases_FollowsTheRecommendationsChoiceByChoice()
    {
        foreach (var drawn in Drawn(2000, 120))
        {
            var headlines = new Headlines(drawn.Resolution);
            foreach (var headline in headlines.All())
            {
                var left = drawn.Truth.Buildable.Where(at => drawn.Resolution.Store.Contains(headline.Slice, drawn.Values(at))).ToList();
                foreach (var choice in drawn.Base.Choices.All.OrderBy(choice => choice.Order).ThenBy(choice => choice.Id, StringComparer.Ordinal))
                {
                    left = Followed(drawn, choice, left);
                }

                Assert.Equal(drawn.Name(drawn.Values(Assert.Single(left))), drawn.Name(headlines.Default(headline.Slice)));
            }
        }
    }

    [Fact]
    public void At_DrawnBases_GivesTheFewestChangesToEveryOtherAnswer()
    {
        var (alternatives, memories) = (0, new Dictionary<Resolution, AlternativesMemory>());
        foreach (var (drawn, builder, at) in Sampled(3000, 60))
        {
            var memory = memories.GetValueOrDefault(drawn.Resolution) ?? (memories[drawn.Resolution] = new AlternativesMemory());
            var sheet = builder.Build(drawn.Values(at));
            var pair = drawn.Truth.Buildable.Where(other => other.Chassis == at.Chassis && other.Donor == at.Donor).ToList();
            foreach (var answer in sheet.Answers)
            {
                var wanted = drawn.Base.Rules.All.Where(rule => rule.AnswerAt(answer.Position.Id) is { } other && (answer.Answer is null || !other.Agrees(answer.Answer)))
                    .Select(rule => (rule.Id, Cases: pair.Where(other => drawn.Truth.Standing(answer.Position.Id, other).Any(one => one.Rule == rule)).ToList()))
                    .Where(other => other.Cases.Count > 0)
                    .ToDictionary(other => other.Id, other => other.Cases, StringComparer.Ordinal);
                var found = new Alternatives(drawn.Resolution, sheet).At(answer);
                Assert.Equal(found.Select(Told), new Alternatives(drawn.Resolution, sheet, memory).At(answer).Select(Told));
                Assert.Equal(wanted.Keys, found.Select(one => one.Rule.Id));
                foreach (var one in found)
                {
                    Nearest(at, wanted[one.Rule.Id], one.Changes);
                    alternatives++;
                }
            }
        }

        Assert.True(alternatives > 500, FormattableString.Invariant($"{alternatives}"));
    }

    [Fact]
    public void NearestBuildable_DrawnBases_GivesTheFewestChanges()
    {
        var mended = 0;
        foreach (var drawn in Drawn(4000, 60))
        {
            var builder = new SheetBuilder(drawn.Resolution);
            var buildable = drawn.Truth.Buildable.ToHashSet();
            foreach (var at in drawn.Truth.Domain.Where((one, index) => index % 3 == 0 && !buildable.Contains(one)))
            {
                var sheet = builder.Build(drawn.Values(at));
                Assert.False(sheet.Buildable);
                Assert.Equal(drawn.Base.Rules.All.Where(rule => drawn.Truth.Excludes(rule, at)).Select(rule => rule.Id), sheet.ExcludedBy.Select(rule => rule.Id));
                var pair = drawn.Truth.Buildable.Where(other => other.Chassis == at.Chassis && other.Donor == at.Donor).ToList();
                var changes = Alternatives.NearestBuildable(drawn.Resolution, sheet);
                Assert.Equal(pair.Count == 0, changes is null);
                if (changes is { } found)
                {
                    Nearest(at, pair, found);
                    mended++;
                }
            }
        }

        Assert.True(mended > 100, FormattableString.Invariant($"{mended}"));
    }

    [Fact]
    public void ByOption_DrawnBases_GivesWhatTheOptionLeavesOneWayOf()
    {
        var settled = 0;
        foreach (var drawn in Drawn(6000, 60))
        {
            foreach (var pair in drawn.Truth.Buildable.GroupBy(at => (Chassis: at.Chassis.Id, Donor: at.Donor.Id)))
            {
                var within = PairSpace.Buildable(drawn.Resolution, pair.Key.Chassis, pair.Key.Donor);
                Assert.Equal(pair.Count(), drawn.Resolution.Store.Count(within));
                foreach (var (choice, option) in drawn.Base.Choices.All.SelectMany(choice => choice.Options.Select(option => (choice.Id, option.Id))))
                {
                    var taken = pair.Where(at => at.Options[choice] == option).ToList();
                    var wanted = drawn.Base.Choices.All.Where(other => other.Id != choice)
                        .Select(other => (other.Id, Left: Options(taken, other.Id), Before: Options(pair, other.Id)))
                        .Where(other => other.Left.Count == 1 && other.Left[0] != Choice.None && other.Before.Count > 1)
                        .Select(other => KeyValuePair.Create(other.Id, other.Left[0]));
                    var found = Forced.ByOption(drawn.Resolution, within, choice, option);
                    Assert.Equal(wanted, found);
                    settled += found.Length;
                }
            }
        }

        Assert.True(settled > 50, FormattableString.Invariant($"{settled}"));
    }

    [Fact]
    public void NearestPairs_DrawnBases_AreBuildableAndNoneIsNearer()
    {
        var (found, none) = (0, 0);
        foreach (var drawn in Drawn(7000, 60))
        {
            var choice = drawn.Base.Choices.All[0];
            var option = choice.Options[0].Id;
            var reached = drawn.Truth.Buildable.Where(at => at.Options[choice.Id] == option).Select(at => (Chassis: at.Chassis.Id, Donor: at.Donor.Id)).ToHashSet();
            var wanted = drawn.Resolution.Space.WhereChoice(choice.Id, [option]);
            foreach (var (chassis, donor) in drawn.Base.Chassis.All.SelectMany(chassis => drawn.Base.Donors.All.Select(donor => (chassis, donor))))
            {
                var donors = drawn.Base.Donors.All.Where(other => other != donor && reached.Contains((chassis.Id, other.Id))).ToList();
                Held(donors, NearestPairs.Donor(drawn.Resolution, chassis, donor, wanted), donor);
                var bodies = drawn.Base.Chassis.All.Where(other => other != chassis && reached.Contains((other.Id, donor.Id))).ToList();
                Held(bodies, NearestPairs.Chassis(drawn.Resolution, chassis, donor, wanted), chassis);
                found += donors.Count > 0 ? 1 : 0;
                none += donors.Count == 0 ? 1 : 0;
            }
        }

        Assert.True(found > 50 && none > 5, FormattableString.Invariant($"{found} {none}"));
    }

    [Theory]
    [InlineData(5000)]
    [InlineData(5001)]
    public void Build_DrawnBases_SaysWhatStandsIsOverriddenAndIsToBeDone(int firstSeed)
    {
        foreach (var (drawn, builder, at) in Sampled(firstSeed, 60))
        {
            var sheet = builder.Build(drawn.Values(at));
            var applying = drawn.Base.PositionOrder.Where(position => drawn.Truth.Holds(position.Applies, at)).Select(position => position.Id);
            Assert.Equal(applying, sheet.Answers.Select(answer => answer.Position.Id));
            foreach (var answer in sheet.Answers)
            {
                var id = answer.Position.Id;
                var standing = drawn.Truth.Standing(id, at).Select(one => one.Rule.Id).ToList();
                Assert.Equal(standing, answer.Standing.Select(one => one.Rule.Id));
                Assert.Equal(
                    drawn.Base.Rules.All.Where(rule => rule.AnswerAt(id) is not null && !standing.Contains(rule.Id) && drawn.Truth.Holds(rule.When, at)).Select(rule => rule.Id),
                    answer.Overridden.Select(over => over.Rule.Id));
                Assert.All(answer.Overridden, over => Assert.NotEmpty(over.By));
            }

            var speaking = drawn.Base.Rules.All.Where(rule => drawn.Truth.Speaks(rule, at)).ToList();
            Assert.Equal(speaking.Select(rule => rule.Id), sheet.Speaking.Select(rule => rule.Id));
            var tasks = drawn.Base.Tasks.All.Where(task => speaking.Any(rule => rule.Tasks.Contains(task.Id)) || (task.When is { } when && drawn.Truth.Holds(when, at)));
            Assert.Equal(tasks.Select(task => task.Id), sheet.Tasks.Select(task => task.Id).Order(StringComparer.Ordinal));
            Assert.Equal((drawn.Base.Choices.Has("gearbox") ? drawn.Truth.Bound("gearbox", at)?.Id : null), sheet.Gearbox?.Id);
        }
    }

    private static List<Exhaustive.Case> Followed(DrawnBase drawn, Choice choice, List<Exhaustive.Case> left)
    {
        foreach (var recommendation in choice.Recommendations)
        {
            var taken = left.Where(at => at.Options[choice.Id] == recommendation.Option && drawn.Truth.Holds(recommendation.When, at)).ToList();
            if (taken.Count > 0)
            {
                return taken;
            }
        }

        var first = choice.Options.Select(option => option.Id).Append(Choice.None).First(option => left.Any(at => at.Options[choice.Id] == option));
        return [.. left.Where(at => at.Options[choice.Id] == first)];
    }

    /// <summary>The changes lead to one of the cases, and no other case is nearer.</summary>
    private static void Nearest(Exhaustive.Case from, List<Exhaustive.Case> cases, IReadOnlyCollection<KeyValuePair<string, string>> changes)
    {
        var changed = from.Options.SetItems(changes);
        Assert.Contains(cases, other => other.Options.All(option => changed[option.Key] == option.Value));
        Assert.Equal(cases.Min(other => other.Options.Count(option => from.Options[option.Key] != option.Value)), changes.Count);
    }

    private static List<string> Options(IEnumerable<Exhaustive.Case> cases, string choice) => [.. cases.Select(at => at.Options[choice]).Distinct(StringComparer.Ordinal)];

    private static void Held<T>(List<T> possible, T? found, T from)
        where T : Variant
    {
        Assert.Equal(possible.Count == 0, found is null);
        if (found is not null)
        {
            Assert.Contains(found, possible);
            Assert.True(found.Family == from.Family || possible.TrueForAll(other => other.Family != from.Family));
        }
    }

    private static IEnumerable<DrawnBase> Drawn(int firstSeed, int bases) => Enumerable.Range(firstSeed, bases).Select(seed => new DrawnBase(seed));

    private static IEnumerable<(DrawnBase, SheetBuilder, Exhaustive.Case)> Sampled(int firstSeed, int bases) =>
        from drawn in Drawn(firstSeed, bases)
        let builder = new SheetBuilder(drawn.Resolution, many: firstSeed % 2 == 0)
        from at in drawn.Truth.Buildable.Where((_, index) => index % Every == 0)
        select (drawn, builder, at);

    private static string Told(Alternative one) => $"{one.Rule.Id}: {string.Join(", ", one.Changes)}";
}
