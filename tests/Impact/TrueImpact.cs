using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Impact;

/// <summary>What changes between two bases, found by going through all combinations of both.</summary>
internal sealed class TrueImpact
{
    private readonly KnowledgeBase _oldBase;
    private readonly KnowledgeBase _newBase;
    private readonly Exhaustive _old;
    private readonly Exhaustive _new;
    private readonly ImmutableArray<string> _common;

    public TrueImpact(KnowledgeBase old, KnowledgeBase @new)
    {
        (_oldBase, _newBase) = (old, @new);
        (_old, _new) = (new Exhaustive(old), new Exhaustive(@new));
        _common = [.. old.Choices.Ids.Intersect(@new.Choices.Ids, StringComparer.Ordinal)];
        var before = _old.Buildable.ToLookup(Key, StringComparer.Ordinal);
        var now = _new.Buildable.ToLookup(Key, StringComparer.Ordinal);
        Lost = [.. _old.Buildable.Where(at => !now.Contains(Key(at)))];
        Gained = [.. _new.Buildable.Where(at => !before.Contains(Key(at)))];
        Pairs = [.. _new.Buildable.SelectMany(at => before[Key(at)].Select(was => (was, at)))];
    }

    public ImmutableArray<Exhaustive.Case> Lost { get; }

    public ImmutableArray<Exhaustive.Case> Gained { get; }

    /// <summary>Combinations of both bases that agree in chassis, donor and the choices that both ask for.</summary>
    public ImmutableArray<(Exhaustive.Case Old, Exhaustive.Case New)> Pairs { get; }

    /// <summary>How many pairs get another answer, by position, from and to.</summary>
    public SortedDictionary<string, int> Answers() => Counted(
        from pair in Pairs
        from position in _oldBase.Positions.Ids.Union(_newBase.Positions.Ids, StringComparer.Ordinal)
        let was = Told(_oldBase, _old, position, pair.Old)
        let now = Told(_newBase, _new, position, pair.New)
        where was != now
        select $"{position}: {was} > {now}");

    public int Answered() => Pairs.Count(pair => _oldBase.Positions.Ids.Union(_newBase.Positions.Ids, StringComparer.Ordinal)
        .Any(position => Told(_oldBase, _old, position, pair.Old) != Told(_newBase, _new, position, pair.New)));

    /// <summary>Whether a pair of combinations, named by its choices on either side, is told this before and that now.</summary>
    public bool Tells(string position, Witness witness, string from, string to)
    {
        var options = witness.Choices.ToDictionary(StringComparer.Ordinal);
        bool Named(Exhaustive.Case at) => at.Chassis.Id == witness.Chassis && at.Donor.Id == witness.Donor && at.Options.All(option => options[option.Key] == option.Value);
        return Pairs.Any(pair => Named(pair.Old) && Named(pair.New) && Told(_oldBase, _old, position, pair.Old) == from && Told(_newBase, _new, position, pair.New) == to);
    }

    /// <summary>How many pairs get other words about the same answer, by position and word.</summary>
    public SortedDictionary<string, int> Words(string what, Func<Rule, Answer, string> value) => Counted(
        from pair in Pairs
        from position in _oldBase.Positions.Ids.Intersect(_newBase.Positions.Ids, StringComparer.Ordinal)
        where Told(_oldBase, _old, position, pair.Old) == Told(_newBase, _new, position, pair.New)
        let was = _old.Standing(position, pair.Old)
        let now = _new.Standing(position, pair.New)
        where was.Count > 0
        let before = value(was[0].Rule, was[0].Answer)
        let after = value(now[0].Rule, now[0].Answer)
        where before != after
        select $"{position} {what}: {before} > {after}");

    /// <summary>How many pairs gain or lose a task, a caution, a mistake.</summary>
    public SortedDictionary<string, int> Work() => Counted(
        from pair in Pairs
        let was = Work(_oldBase, _old, pair.Old)
        let now = Work(_newBase, _new, pair.New)
        from change in now.Except(was).Select(item => $"+{item}").Concat(was.Except(now).Select(item => $"-{item}"))
        select change);

    /// <summary>The combinations of the old base that a rule of the new one excludes, by rule.</summary>
    public SortedDictionary<string, int> Excluded() => Excluded(_newBase, _new, _old);

    public SortedDictionary<string, int> Lifted() => Excluded(_oldBase, _old, _new);

    /// <summary>The guides of pairs that get another answer.</summary>
    public IEnumerable<string> Guides() => Pairs.Where(pair => _oldBase.Positions.Ids.Union(_newBase.Positions.Ids, StringComparer.Ordinal)
            .Any(position => Told(_oldBase, _old, position, pair.Old) != Told(_newBase, _new, position, pair.New)))
        .Select(pair => Guide(_newBase, pair.New)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);

    public (IEnumerable<string> Gained, IEnumerable<string> Lost) HeadlineSets()
    {
        var before = _old.Buildable.Select(at => Guide(_oldBase, at)).ToHashSet(StringComparer.Ordinal);
        var now = _new.Buildable.Select(at => Guide(_newBase, at)).ToHashSet(StringComparer.Ordinal);
        return (now.Except(before).Order(StringComparer.Ordinal), before.Except(now).Order(StringComparer.Ordinal));
    }

    private SortedDictionary<string, int> Excluded(KnowledgeBase kb, Exhaustive excluding, Exhaustive other)
    {
        var buildable = other.Buildable.Select(Key).ToHashSet(StringComparer.Ordinal);
        return Counted(
            from at in excluding.Domain
            where buildable.Contains(Key(at))
            from rule in kb.Rules.All
            where excluding.Excludes(rule, at)
            select rule.Id);
    }

    private string Key(Exhaustive.Case at) => $"{at.Chassis.Id} {at.Donor.Id} {string.Join(' ', _common.Select(choice => at.Options[choice]))}";

    private static string Guide(KnowledgeBase kb, Exhaustive.Case at) =>
        string.Join('/', kb.Settings.Headline.Select(named => at.Options[named.Id]).Prepend(at.Donor.Id).Prepend(at.Chassis.Id));

    private static string Told(KnowledgeBase kb, Exhaustive truth, string position, Exhaustive.Case at) =>
        kb.Positions.Has(position) && truth.Holds(kb.Positions[position].Applies, at)
            ? $"[{string.Join("; ", truth.Standing(position, at).Select(one => Words(one.Answer)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))}]"
            : "not asked";

    public static string Words(Answer answer) => $"{answer.Source} {answer.Treatment} {answer.Part} {string.Join(' ', answer.Also.Order(StringComparer.Ordinal))}";

    private static HashSet<string> Work(KnowledgeBase kb, Exhaustive truth, Exhaustive.Case at)
    {
        var speaking = kb.Rules.All.Where(rule => truth.Speaks(rule, at)).ToList();
        var tasks = kb.Tasks.All.Where(task => speaking.Exists(rule => rule.Tasks.Contains(task.Id)) || (task.When is { } when && truth.Holds(when, at)));
        return
        [
            .. tasks.Select(task => $"task {task.Id}"),
            .. speaking.SelectMany(rule => rule.Cautions.Select(caution => $"caution {caution.Text}")),
            .. speaking.SelectMany(rule => rule.Mistakes.Select(mistake => $"mistake {mistake}")),
        ];
    }

    private static SortedDictionary<string, int> Counted(IEnumerable<string> items) =>
        new(items.CountBy(item => item, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal), StringComparer.Ordinal);
}
