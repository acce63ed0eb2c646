using System.Globalization;
using System.Numerics;
using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Rules;
using Swapwright.Tests.Rules;
using Extent = Swapwright.Impact.Extent;

namespace Swapwright.Tests.Impact;

/// <summary>Impacts of edits to drawn bases, held against going through every combination of both.</summary>
public class DrawnImpactTests
{
    private const int FirstSeed = 70_000;
    private const int Pairs = 200;

    [Fact]
    public void Between_EditedBases_TellsWhatEveryCombinationDoes()
    {
        var (answered, moved, worded, worked) = (0, 0, 0, 0);
        foreach (var (name, impact, truth) in Drawn())
        {
            Answers(name, impact, truth);
            Combinations(name, impact, truth);
            WordsAndWork(name, impact, truth);
            answered += impact.Answers.Length;
            moved += impact.Lost.All.IsZero && impact.Gained.All.IsZero ? 0 : 1;
            worded += impact.Words.Length;
            worked += impact.Work.Length;
        }

        // The draw has to be worth its time.
        Assert.True(answered > 150 && moved > 50 && worded > 20 && worked > 50, FormattableString.Invariant($"{answered} {moved} {worded} {worked}"));
    }

    [Fact]
    public void Between_DrawnBaseAndItself_ChangesNothing()
    {
        for (var seed = FirstSeed; seed < FirstSeed + 40; seed++)
        {
            var impact = KnowledgeImpact.Between(Prove(RandomBase.Draw(seed)), Prove(RandomBase.Draw(seed)));
            Assert.False(impact.Changed);
            Assert.Equal(impact.New.Resolution!.BuildableParts.Size, impact.Compared);
        }
    }

    internal static Proof Prove(MemoryBase @base)
    {
        var kb = @base.Bind();
        var resolution = Resolver.Resolve(kb);
        return new Proof(@base.Tree(), kb, resolution, new RegionWords(resolution), [], []);
    }

    private static void Answers(string name, KnowledgeImpact impact, TrueImpact truth)
    {
        Assert.Equal((name, (BigInteger)truth.Pairs.Length), (name, impact.Compared));
        Same(name, truth.Answers(), impact.Answers.Select(change => ($"{change.Position.Id}: {Words(change.From)} > {Words(change.To)}", change.Extent)));
        Assert.Equal((name, (BigInteger)truth.Answered()), (name, impact.Answered));
        Assert.Equal(truth.Guides(), impact.Guides.Changed.Where(guide => guide.Kinds.Contains("answers")).Select(guide => guide.Guide.Id).Order(StringComparer.Ordinal));
        Assert.All(impact.Answers, change => Assert.True(truth.Tells(change.Position.Id, change.Extent.Witness, Words(change.From), Words(change.To)), name));
    }

    private static void Combinations(string name, KnowledgeImpact impact, TrueImpact truth)
    {
        Assert.Equal((name, (BigInteger)truth.Lost.Length), (name, impact.Lost.All));
        Assert.Equal((name, (BigInteger)truth.Gained.Length), (name, impact.Gained.All));
        Same(name, truth.Excluded(), impact.Lost.Exclusions.Select(one => (one.Rule.Id, one.Extent)));
        Same(name, truth.Lifted(), impact.Gained.Exclusions.Select(one => (one.Rule.Id, one.Extent)));
        var (gained, lost) = truth.HeadlineSets();
        Assert.Equal(gained, impact.Guides.Gained.Select(guide => guide.Id).Order(StringComparer.Ordinal));
        Assert.Equal(lost, impact.Guides.Lost.Select(guide => guide.Id).Order(StringComparer.Ordinal));
    }

    private static void WordsAndWork(string name, KnowledgeImpact impact, TrueImpact truth)
    {
        (string What, Func<Swapwright.Knowledge.Rule, Swapwright.Knowledge.Answer, string> Value)[] words =
            [("because", (rule, _) => rule.Because), ("notes", (_, answer) => answer.Notes), ("standing", (rule, _) => rule.Standing)];
        foreach (var (what, value) in words)
        {
            Same(name, truth.Words(what, value), impact.Words.Where(word => word.What == what).Select(word => ($"{word.Position.Id} {what}: {word.From} > {word.To}", word.Extent)));
        }

        Same(name, truth.Work(), impact.Work.SelectMany(Work));
    }

    private static IEnumerable<(string Name, KnowledgeImpact Impact, TrueImpact Truth)> Drawn() =>
        from seed in Enumerable.Range(FirstSeed, Pairs)
        let edited = EditedBase.Draw(seed)
        let impact = KnowledgeImpact.Between(Prove(edited.Old), Prove(edited.New))
        select (string.Create(CultureInfo.InvariantCulture, $"{seed}: {edited}"), impact, new TrueImpact(impact.Old.Base, impact.New.Base));

    private static void Same(string name, SortedDictionary<string, int> wanted, IEnumerable<(string What, Extent Extent)> found) => Assert.Equal(
        wanted.Select(one => (name, one.Key, (BigInteger)one.Value)),
        found.OrderBy(one => one.What, StringComparer.Ordinal).Select(one => (name, one.What, one.Extent.Combinations)));

    private static string Words(Told told) => told.Asked
        ? $"[{string.Join("; ", told.Answers.Select(TrueImpact.Words).Order(StringComparer.Ordinal))}]"
        : "not asked";

    private static IEnumerable<(string What, Extent Extent)> Work(WorkChange change)
    {
        var text = change.Kind == "task" ? change.About : change.Text;
        return change.Change switch
        {
            "gained" => [($"+{change.Kind} {text}", change.Extent)],
            "lost" => [($"-{change.Kind} {text}", change.Extent)],
            _ => [($"+{change.Kind} {text}", change.Extent), ($"-{change.Kind} {change.Was}", change.Extent)],
        };
    }
}
