using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Rules;

/// <summary>Drawn bases: what is worked out over regions equals what is found by looking at every combination.</summary>
public class ResolutionTests
{
    private const int Bases = 360;

    [Fact]
    public void Resolve_DrawnBases_AgreesWithEveryCombination()
    {
        for (var seed = 0; seed < Bases; seed++)
        {
            var drawn = new DrawnBase(seed);
            Try(seed, () =>
            {
                Space(drawn);
                Standing(drawn);
                Needs(drawn);
                Contradictions(drawn);
                Gaps(drawn);
                DeadRules(drawn);
                NoBuilds(drawn);
                Descriptions(drawn);
            });
        }
    }

    /// <summary>The whole way, with the schemas: nothing is lost or added between the files and the findings.</summary>
    [Fact]
    public void ProofOf_DrawnBases_GivesTheFindingsOfTheChecks()
    {
        for (var seed = 0; seed < 24; seed++)
        {
            var drawn = new DrawnBase(seed);
            var proof = Proof.Of(drawn.Files.Tree());
            var wanted = Checks.OfEntities.SelectMany(check => check.Run(proof.Base)).Concat(Checks.OfSpace.SelectMany(check => drawn.Found(check))).Select(Summary).Order(StringComparer.Ordinal);
            Try(seed, () => Assert.Equal(wanted, proof.Findings.Select(Summary).Order(StringComparer.Ordinal)));
        }
    }

    /// <summary>Chance has to have drawn enough of everything, or the comparison would say little.</summary>
    [Fact]
    public void Draw_ManySeeds_CoversEveryFinding()
    {
        var drawn = Enumerable.Range(0, 60).Select(seed => new DrawnBase(seed)).ToList();
        // Drawn bases have no belts, wiring, ports, bolts and worksheets, and seldom a choice of one option.
        foreach (var check in Checks.OfSpace.Except([BeltLength.Check, BeltWrap.Check, BeltPlane.Check, BeltFace.Check, UnheldValue.Check, ForcedOption.Check, PortClash.Check, OpenPort.Check, IdleClosing.Check, HoseSize.Check, MissingInput.Check, TighteningWhere.Check, ToolWhere.Check, NoPlug.Check]))
        {
            var bases = drawn.Count(one => !one.Found(check).IsEmpty);
            Assert.True(bases >= 3, $"{bases.ToString(System.Globalization.CultureInfo.InvariantCulture)} bases with {check.Kind.Id}");
        }

        var roomy = drawn.Count(one => one.Truth.Buildable.Length > 100);
        Assert.True(roomy >= 10, $"{roomy.ToString(System.Globalization.CultureInfo.InvariantCulture)} bases with much to build");
        Assert.True(drawn.Count(one => one.Truth.Buildable.Length < one.Truth.Domain.Length) > 30);
        Assert.True(drawn.Sum(one => one.Base.Rules.All.Count(rule => rule.When.AnswerTests().Any())) > 50);
    }

    private static void Space(DrawnBase drawn)
    {
        Assert.Empty(drawn.Resolution.Findings);
        Assert.Equal(drawn.Truth.Domain.Length, drawn.Resolution.Store.Count(drawn.Resolution.Domain));
        Assert.Equal(drawn.Truth.Buildable.Length, drawn.Resolution.Store.Count(drawn.Resolution.Buildable));
        Assert.True(drawn.Truth.Buildable.All(at => drawn.Resolution.Store.Contains(drawn.Resolution.Buildable, drawn.Values(at))));
    }

    private static void Standing(DrawnBase drawn)
    {
        foreach (var at in drawn.Truth.Domain)
        {
            var values = drawn.Values(at);
            foreach (var position in drawn.Base.Positions.Ids)
            {
                var standing = drawn.Resolution.At(position).Where(one => drawn.Resolution.Store.Contains(one.Region, values)).Select(one => one.Rule.Id);
                var wanted = drawn.Truth.Standing(position, at).Select(one => one.Rule.Id);
                Assert.True(wanted.SequenceEqual(standing, StringComparer.Ordinal), $"{position} in {drawn.Name(values)}");
            }
        }
    }

    private static void Needs(DrawnBase drawn)
    {
        bool Appears(WorkTask task, Exhaustive.Case at) => (task.When is { } when && drawn.Truth.Holds(when, at)) || drawn.Base.Rules.All.Any(rule => rule.Tasks.Contains(task.Id) && drawn.Truth.Speaks(rule, at));
        bool Yields(string position, Exhaustive.Case at) => drawn.Truth.Standing(position, at).Any(one => (one.Answer.Source != "none" && one.Answer.Treatment != "blank") || one.Answer.Part is not null);
        var wanted =
            from task in drawn.Base.Tasks.All
            let cases = drawn.Truth.Buildable.Where(at => Appears(task, at)).ToList()
            where cases.Count > 0
            from need in task.Needs
            where !cases.Exists(at => Yields(need.Id, at))
            select need.Place;
        Assert.Equal(wanted.Order(), drawn.Found(TaskNeeds.Check).Select(finding => finding.Place).Order());
    }

    private static void Contradictions(DrawnBase drawn)
    {
        var wanted = new Dictionary<(Place, Place), List<Exhaustive.Case>>();
        void Add(Place one, Place other, Exhaustive.Case at)
        {
            var key = one < other ? (one, other) : (other, one);
            wanted.TryAdd(key, []);
            wanted[key].Add(at);
        }

        foreach (var at in drawn.Truth.Buildable)
        {
            foreach (var standing in drawn.Base.Positions.Ids.Select(position => drawn.Truth.Standing(position, at)))
            {
                foreach (var (one, other) in Pairs(standing).Where(pair => !Same(pair.One.Answer, pair.Other.Answer)))
                {
                    Add(one.Answer.Place, other.Answer.Place, at);
                }
            }

            var values = drawn.Base.Rules.All.SelectMany(rule => rule.Values.Where(value => drawn.Truth.Stands(rule, value, at))).ToList();
            foreach (var (one, other) in Pairs(values).Where(pair => pair.One.Name == pair.Other.Name && pair.One.Value != pair.Other.Value))
            {
                Add(one.Place, other.Place, at);
            }
        }

        var found = drawn.Found(Contradiction.Check).Select(finding => (Pair: Sorted(finding.Place, finding.Related[0].Place), Extent: Extent.Of(finding)));
        Equal(wanted.Select(pair => (pair.Key, Of(drawn, pair.Value))), found);
    }

    private static void Gaps(DrawnBase drawn)
    {
        var wanted = drawn.Base.Positions.All
            .Select(position => (position.Place, Of(drawn, drawn.Truth.Buildable.Where(at => drawn.Truth.Holds(position.Applies, at) && drawn.Truth.Standing(position.Id, at).Count == 0))))
            .Where(gap => !gap.Item2.Count.IsZero);
        Equal(wanted, drawn.Found(Gap.Check).Select(finding => (finding.Place, Extent.Of(finding))));
    }

    private static void DeadRules(DrawnBase drawn)
    {
        // A rule that excludes is held against all combinations: what it excludes is never buildable.
        var dead = drawn.Base.Rules.All.Where(rule => !(rule.Excludes || rule.Requires is not null ? drawn.Truth.Domain : drawn.Truth.Buildable).Any(at => drawn.Truth.Holds(rule.When, at)));
        Equal(dead.Select(rule => rule.Place.File), drawn.Found(DeadRule.Check).Select(finding => finding.Place.File));
    }

    private static void NoBuilds(DrawnBase drawn)
    {
        var wanted = from chassis in drawn.Base.Chassis.All
                     from donor in drawn.Base.Donors.All
                     let pair = drawn.Truth.Domain.Where(at => at.Chassis == chassis && at.Donor == donor).ToList()
                     where !drawn.Truth.Buildable.Any(at => at.Chassis == chassis && at.Donor == donor)
                     where !drawn.Base.Rules.All.Any(rule => pair.All(at => drawn.Truth.Excludes(rule, at)))
                     select new Extent(pair.Count, $"{chassis.Id} {donor.Id}");
        Equal(wanted, drawn.Found(NoBuild.Check).Select(Extent.Of));
    }

    private static void Descriptions(DrawnBase drawn)
    {
        var again = new Swapwright.Rules.RegionWords(drawn.Resolution);
        foreach (var rule in drawn.Base.Rules.All.Take(8))
        {
            var words = drawn.Words.Describe(drawn.Resolution.When(rule));
            Assert.Equal(words, again.Describe(drawn.Resolution.When(rule)));
            Assert.Equal(drawn.Truth.Buildable.All(at => drawn.Truth.Holds(rule.When, at)) && !drawn.Truth.Buildable.IsEmpty, words == "always" && !drawn.Truth.Buildable.IsEmpty);
        }
    }

    private static Extent Of(DrawnBase drawn, IEnumerable<Exhaustive.Case> cases)
    {
        var all = cases.ToList();
        return new Extent(all.Count, drawn.Smallest(all));
    }

    private static (Place, Place) Sorted(Place one, Place other) => one < other ? (one, other) : (other, one);

    private static IEnumerable<(T One, T Other)> Pairs<T>(IReadOnlyList<T> items) =>
        from one in Enumerable.Range(0, items.Count) from other in Enumerable.Range(one + 1, items.Count - one - 1) select (items[one], items[other]);

    private static bool Same(Swapwright.Knowledge.Answer one, Swapwright.Knowledge.Answer other) =>
        (one.Source, one.Treatment, one.Part) == (other.Source, other.Treatment, other.Part) && one.Also.ToHashSet(StringComparer.Ordinal).SetEquals(other.Also);

    /// <summary>The same things, in whatever order.</summary>
    private static void Equal<T>(IEnumerable<T> wanted, IEnumerable<T> found) =>
        Assert.Equal(wanted.Select(one => one!.ToString()).Order(StringComparer.Ordinal), found.Select(one => one!.ToString()).Order(StringComparer.Ordinal));

    private static string Summary(Finding finding) => $"{finding.Id} {finding.Place} {finding.Message} {Extent.Of(finding)} {finding.Region}";

    private static void Try(int seed, Action compare)
    {
        try
        {
            compare();
        }
        catch (Xunit.Sdk.XunitException problem)
        {
            throw new Xunit.Sdk.XunitException($"the base drawn from seed {seed.ToString(System.Globalization.CultureInfo.InvariantCulture)}: {problem.Message}", problem);
        }
    }
}
