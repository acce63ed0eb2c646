using System.Collections.Immutable;
using System.Numerics;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>What changes for readers from one knowledge base to another.</summary>
/// <remarks>
/// Worked out over the space that both share; combinations are never gone through one by one. Only guides whose recommended
/// combination may have other numbers get a sheet on either side.
/// </remarks>
public sealed record KnowledgeImpact
{
    public required Proof Old { get; init; }

    public required Proof New { get; init; }

    /// <summary>Pairs of corresponding combinations that can be built on both sides: what answers are compared over.</summary>
    public required BigInteger Compared { get; init; }

    /// <summary>Those among them that get another answer at some position.</summary>
    public required BigInteger Answered { get; init; }

    public required Unmatched Gained { get; init; }

    public required Unmatched Lost { get; init; }

    public required GuideChanges Guides { get; init; }

    public required ImmutableArray<AnswerChange> Answers { get; init; }

    /// <summary>Changes of because, steps, notes, article, closes, standing and sources where the answer stays.</summary>
    public required ImmutableArray<WordChange> Words { get; init; }

    public required ImmutableArray<WorkChange> Work { get; init; }

    public required NumberChanges Numbers { get; init; }

    public required EntryChanges Entries { get; init; }

    public required FindingChanges Findings { get; init; }

    /// <summary>Whether readers are told anything else. Findings speak to contributors and do not count.</summary>
    public bool Changed =>
        !(Gained.All.IsZero && Lost.All.IsZero && Guides is { Gained.IsEmpty: true, Lost.IsEmpty: true, Changed.IsEmpty: true }
            && Answers.IsEmpty && Words.IsEmpty && Work.IsEmpty && Numbers is { Moved.IsEmpty: true, Defaults.IsEmpty: true } && Entries.None);

    /// <exception cref="ArgumentException">The space of one of the bases was not examined.</exception>
    public static KnowledgeImpact Between(Proof old, Proof @new)
    {
        var shared = SharedSpace.Of(old, @new);
        var entries = EntryChanges.Between(old.Base, @new.Base);
        List<PositionChange> positions = [.. new PositionChanges(shared).All()];
        var answered = shared.Store.OrAll(positions.Select(position => position.Answered));
        var (work, worked) = new WorkChanges(shared).All();
        Dictionary<string, Region> touched = new(StringComparer.Ordinal)
        {
            ["combinations"] = CombinationChanges.Touched(shared),
            ["answers"] = answered,
            ["work"] = worked,
            ["words"] = shared.Store.OrAll(positions.Select(position => position.Worded)),
            ["entries"] = new EntryReach(shared, entries).Shown(),
        };
        var (guides, numbers) = Guide(shared, entries, touched);
        return new KnowledgeImpact
        {
            Old = old,
            New = @new,
            Compared = shared.Both.Size,
            Answered = answered.IsNone ? 0 : shared.Both.Count(answered),
            Gained = CombinationChanges.Between(shared, shared.New, shared.Old),
            Lost = CombinationChanges.Between(shared, shared.Old, shared.New),
            Guides = guides,
            Answers = [.. positions.SelectMany(position => position.Answers)],
            Words = [.. positions.SelectMany(position => position.Words)],
            Work = work,
            Numbers = numbers,
            Entries = entries,
            Findings = FindingChanges.Between(old, @new),
        };
    }

    private static (GuideChanges Guides, NumberChanges Numbers) Guide(SharedSpace shared, EntryChanges entries, Dictionary<string, Region> touched)
    {
        var before = GuideWalk.Of(shared.Old.Resolution).ToHashSet();
        ImmutableArray<GuideName> now = [.. GuideWalk.Of(shared.New.Resolution)];
        var current = now.ToHashSet();
        var kinds = new Dictionary<GuideName, HashSet<string>>();
        void Mark(string kind, IEnumerable<GuideName> guides)
        {
            foreach (var guide in guides.Where(guide => before.Contains(guide) && current.Contains(guide)))
            {
                if (!kinds.TryGetValue(guide, out var marks))
                {
                    kinds.Add(guide, marks = new HashSet<string>(StringComparer.Ordinal));
                }

                marks.Add(kind);
            }
        }

        foreach (var (kind, region) in touched.Where(one => !one.Value.IsNone))
        {
            Mark(kind, kind == "combinations"
                ? GuideWalk.Meeting(shared, region, shared.Old.Buildable, shared.New.Buildable)
                : GuideWalk.Meeting(shared, region, shared.Both));
        }

        var moving = new EntryReach(shared, entries).Moving(shared.Store.OrAll([touched["combinations"], touched["answers"], touched["work"], touched["words"]]));
        var candidates = moving.IsNone ? [] : GuideWalk.Meeting(shared, moving, shared.Old.Buildable, shared.New.Buildable).ToHashSet();
        var numbers = NumberChanges.Between(shared, [.. now.Where(guide => candidates.Contains(guide) && before.Contains(guide))], SameNumbers(shared, moving));
        Mark("defaults", numbers.Defaults.Select(one => one.Guide));
        Mark("numbers", numbers.Moved.Select(one => one.Guide));
        return (
            new GuideChanges(
                [.. now.Where(guide => !before.Contains(guide))],
                [.. GuideWalk.Of(shared.Old.Resolution).Where(guide => !current.Contains(guide))],
                [.. now.Where(kinds.ContainsKey).Select(guide => new ChangedGuide(guide, [.. GuideChanges.Kinds.Where(kinds[guide].Contains)]))]),
            numbers);
    }

    private static Func<Combination, bool> SameNumbers(SharedSpace shared, Region moving)
    {
        // The region is asked in the words of the new base: a combination that only it knows is not told apart there.
        var own = shared.New.Own(moving);
        return combination => !shared.New.Resolution.Store.Contains(own, combination.Values.AsSpan());
    }
}
