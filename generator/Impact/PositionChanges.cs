using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>What a reader is told at a position.</summary>
/// <param name="Asked">The position applies.</param>
/// <param name="Answers">One in a sound base; none is a gap, several are a contradiction.</param>
public sealed record Told(bool Asked, ImmutableArray<Answer> Answers);

/// <summary>Combinations that can be built on both sides and get another answer at a position.</summary>
public sealed record AnswerChange(Position Position, Told From, Told To, Extent Extent);

/// <summary>The same answer, in other words or on another word: <paramref name="What"/> is because, steps, notes, article, closes, standing or sources.</summary>
public sealed record WordChange(Position Position, string What, string From, string To, Extent Extent);

/// <summary>What changes at one position.</summary>
/// <param name="Answered">Where the answer changes; it may reach beyond what can be built.</param>
/// <param name="Worded">Where only words about it do.</param>
internal sealed record PositionChange(ImmutableArray<AnswerChange> Answers, ImmutableArray<WordChange> Words, Region Answered, Region Worded);

/// <summary>Compares the answers of two bases, position by position.</summary>
internal sealed class PositionChanges(SharedSpace shared)
{
    // Stands for the question itself beside the answers to it; no answer has this key.
    private const string Asked = "";

    private static readonly ImmutableArray<(string Name, Func<Rule, Answer, string> Value)> s_words =
    [
        ("because", (rule, _) => rule.Because),
        ("steps", (_, answer) => string.Join('\n', answer.Steps)),
        ("notes", (_, answer) => answer.Notes),
        ("article", (_, answer) => answer.Article ?? ""),
        ("closes", (_, answer) => string.Join(", ", answer.Closes)),
        ("standing", (rule, _) => rule.Standing),
        ("sources", (rule, _) => string.Join(", ", rule.Sources)),
    ];

    private readonly Ruler _ruler = new(shared, shared.Both, shared.New);

    /// <summary>The changes of every position of either base: in the order of the new guide, then those that are gone.</summary>
    public IEnumerable<PositionChange> All() =>
        shared.New.Base.PositionOrder.Concat(shared.Old.Base.PositionOrder.Where(position => !shared.New.Base.Positions.Has(position.Id))).Select(At);

    private PositionChange At(Position position)
    {
        var store = shared.Store;
        var (before, now) = (Spoken(shared.Old, position.Id), Spoken(shared.New, position.Id));
        var (old, @new) = (Answers(shared.Old, position.Id, before), Answers(shared.New, position.Id, now));
        var answered = Differences.Of(store, old, @new);
        ImmutableArray<AnswerChange> answers = answered.IsNone ? [] : [.. Changed(position, answered, old, @new, Agreeing(before.Concat(now)))];
        var (words, worded) = Words(position, before, now, answered);
        return new PositionChange(answers, words, answers.IsEmpty ? Region.None : answered, worded);
    }

    private IEnumerable<AnswerChange> Changed(
        Position position, Region answered, Dictionary<string, Region> old, Dictionary<string, Region> @new, Dictionary<string, Answer> answers)
    {
        Told Of(ImmutableArray<string> said) => new(said.Contains(Asked), [.. said.Where(key => key != Asked).Select(key => answers[key])]);
        return from shift in Differences.Within(shared.Store, shared.Both.Narrow(answered), old, @new)
               let extent = _ruler.Measure(shift.Region)
               where extent is not null
               select new AnswerChange(position, Of(shift.Old), Of(shift.New), extent);
    }

    private (ImmutableArray<WordChange> Changes, Region Region) Words(
        Position position, ImmutableArray<(StandingAnswer Standing, Region Region)> old, ImmutableArray<(StandingAnswer Standing, Region Region)> @new, Region answered)
    {
        if (old.Length == @new.Length && old.Zip(@new).All(pair => pair.First.Region == pair.Second.Region && SameWords(pair.First.Standing, pair.Second.Standing)))
        {
            return ([], Region.None);
        }

        var (before, now) = (First(old), First(@new));
        var changes = ImmutableArray.CreateBuilder<WordChange>();
        var regions = new List<Region>();
        foreach (var (name, value) in s_words)
        {
            var (oldWords, newWords) = (By(before, value), By(now, value));
            var region = shared.Both.Narrow(shared.Store.Minus(Differences.Of(shared.Store, oldWords, newWords), answered));
            foreach (var shift in region.IsNone ? [] : Differences.Within(shared.Store, region, oldWords, newWords))
            {
                if (_ruler.Measure(shift.Region) is { } extent)
                {
                    changes.Add(new WordChange(position, name, string.Concat(shift.Old), string.Concat(shift.New), extent));
                    regions.Add(shift.Region);
                }
            }
        }

        return (changes.ToImmutable(), shared.Store.OrAll(regions));
    }

    private static ImmutableArray<(StandingAnswer Standing, Region Region)> Spoken(Side side, string position) =>
        side.Base.Positions.Has(position) ? [.. side.Resolution.At(position).Select(standing => (standing, side.Of(standing.Region)))] : [];

    /// <summary>Of rules that say the same in one combination, a guide shows the reason of the first.</summary>
    private List<(StandingAnswer Standing, Region Region)> First(ImmutableArray<(StandingAnswer Standing, Region Region)> spoken)
    {
        var first = new List<(StandingAnswer, Region)>(spoken.Length);
        var said = Region.None;
        foreach (var (standing, region) in spoken)
        {
            first.Add((standing, shared.Store.Minus(region, said)));
            said = shared.Store.Or(said, region);
        }

        return first;
    }

    private Dictionary<string, Region> Answers(Side side, string position, ImmutableArray<(StandingAnswer Standing, Region Region)> spoken)
    {
        var answers = By(spoken, (_, answer) => Key(answer));
        if (side.Base.Positions.Has(position))
        {
            answers.Add(Asked, side.Of(side.Resolution.Applies(position)));
        }

        return answers;
    }

    private Dictionary<string, Region> By(IEnumerable<(StandingAnswer Standing, Region Region)> spoken, Func<Rule, Answer, string> value) =>
        spoken.GroupBy(one => value(one.Standing.Rule, one.Standing.Answer), StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => shared.Store.OrAll(group.Select(one => one.Region)), StringComparer.Ordinal);

    private static Dictionary<string, Answer> Agreeing(IEnumerable<(StandingAnswer Standing, Region Region)> spoken) =>
        spoken.DistinctBy(one => Key(one.Standing.Answer), StringComparer.Ordinal).ToDictionary(one => Key(one.Standing.Answer), one => one.Standing.Answer, StringComparer.Ordinal);

    /// <summary>Equal for answers that agree, see <see cref="Answer.Agrees"/>.</summary>
    private static string Key(Answer answer) => $"{answer.Source}|{answer.Treatment}|{answer.Part}|{string.Join(' ', answer.Also.Order(StringComparer.Ordinal))}";

    private static bool SameWords(StandingAnswer one, StandingAnswer other) =>
        s_words.All(word => word.Value(one.Rule, one.Answer) == word.Value(other.Rule, other.Answer));
}
