using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Findings;

/// <summary>A ledger of some combinations; empty where they have none.</summary>
internal sealed record FittedLedger(ImmutableArray<Ledger> Ledgers, Region Region);

/// <summary>
/// Cuts a region by what a figure of a ledger depends on: chassis, donor, what the choices bind, and the answers at positions
/// that facts are declared <c>at</c>; for tightening and fluids the answers whose parts bring them, and the tasks.
/// Combinations are not looked at one by one.
/// </summary>
internal sealed class FittedLedgers
{
    /// <summary>A region that falls into more cases than these is not computed.</summary>
    public const int MostCases = 4096;

    private readonly Resolution _resolution;
    private readonly RegionStore _store;
    private readonly KnowledgeBase _kb;
    private readonly LedgerAssembly _ledgers;
    private readonly ImmutableArray<string> _declaredAt;

    // What each ledger has asked so far: a region is cut by no answer that its ledger never looks at.
    private readonly Dictionary<string, SortedSet<string>> _asked = new(StringComparer.Ordinal);
    private readonly Dictionary<(Region Region, string Asked), ImmutableArray<FittedLedger>?> _found = [];

    public FittedLedgers(Resolution resolution)
    {
        _resolution = resolution;
        _store = resolution.Store;
        _kb = resolution.Space.Base;
        _ledgers = new LedgerAssembly(_kb);
        _declaredAt = [.. _kb.Vocabulary.Facts.All.Select(fact => fact.At).OfType<string>().Where(_kb.Positions.Has).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    /// <summary>The cases of a region's buildable combinations that differ in what a figure depends on; null where there are too many to compute.</summary>
    /// <param name="name">The figure as <c>values</c> name it.</param>
    public ImmutableArray<FittedLedger>? In(Region region, string name)
    {
        var ledger = name.Split('.')[0];
        // Several values are often stated for the same combinations.
        var key = (region, ledger == TighteningSources.Ledger ? name : ledger);
        if (!_found.TryGetValue(key, out var found))
        {
            found = Find(region, name, ledger);
            _found.Add(key, found);
        }

        return found;
    }

    private ImmutableArray<FittedLedger>? Find(Region region, string name, string ledger)
    {
        if (ledger == TighteningSources.Ledger)
        {
            return OfTightening(region, name) is { } tightened ? [.. tightened.Select(one => Fitted(one, ledger, null))] : null;
        }

        if (!_asked.TryGetValue(ledger, out var asked))
        {
            asked = new(StringComparer.Ordinal);
            _asked.Add(ledger, asked);
        }

        // An answer may lead to further questions, so the cut is made again until it answers all of them.
        while (true)
        {
            if (Cut(Bound(region), asked) is not { } cases)
            {
                return null;
            }

            var further = new HashSet<string>(StringComparer.Ordinal);
            ImmutableArray<FittedLedger> found = [.. cases.Select(one => Fitted(one, ledger, position => further.Add(position)))];
            further.IntersectWith(_declaredAt);
            further.ExceptWith(asked);
            if (further.Count == 0)
            {
                return found;
            }

            asked.UnionWith(further);
        }
    }

    private FittedLedger Fitted(Case one, string ledger, Action<string>? ask) =>
        new(_ledgers.Assemble(LedgerCase(one, ask), ledger) is { } found ? [found] : [], one.Region);

    /// <summary>A region's buildable combinations by chassis, donor and what the choices bind.</summary>
    private List<Case>? Bound(Region region)
    {
        List<Case>? cases = [];
        var space = _resolution.Space;
        var left = _resolution.BuildableParts.Narrow(region);
        foreach (var chassis in _store.AllowedValues(left, space.Chassis))
        {
            var ofChassis = _store.And(left, _store.Where(space.Chassis, ValueSet.Of(_kb.Chassis.Count, chassis)));
            foreach (var donor in _store.AllowedValues(ofChassis, space.Donor))
            {
                var pair = _store.And(ofChassis, _store.Where(space.Donor, ValueSet.Of(_kb.Donors.Count, donor)));
                cases.Add(new Case(_kb.Chassis.All[chassis], _kb.Donors.All[donor], [], [], [], [], pair));
            }
        }

        foreach (var choice in _kb.Choices.All.Where(choice => choice.Options.Any(option => option.Binds is not null)))
        {
            cases = Cut(cases, one => [.. choice.Options.Select(option => new Piece(space.WhereChoice(choice.Id, [option.Id])) { Bound = option.Binds is { } binding ? space.Bound(binding, one.Chassis, one.Donor) : null }), new Piece(space.WhereChoice(choice.Id, [Choice.None]))]);
        }

        return cases;
    }

    private List<Case>? Cut(List<Case>? cases, IEnumerable<string> positions)
    {
        foreach (var position in positions)
        {
            var answers = Answers(position);
            cases = Cut(cases, _ => answers);
        }

        return cases;
    }

    private List<Case>? OfTightening(Region region, string name)
    {
        var cases = Cut(Bound(region), TighteningSources.Positions(_kb, name));
        foreach (var task in TighteningSources.Tasks(_kb, name))
        {
            var wanted = _resolution.Wanted(task);
            cases = Cut(cases, _ => [new Piece(wanted) { Task = task }, new Piece(_store.Not(wanted))]);
        }

        foreach (var fastener in TighteningSources.Conditional(_kb, name))
        {
            var where = _resolution.RegionOf(fastener.When!);
            cases = Cut(cases, _ => [new Piece(where) { Fastener = fastener }, new Piece(_store.Not(where))]);
        }

        return cases;
    }

    private static LedgerCase LedgerCase(Case one, Action<string>? ask)
    {
        Answer? At(string position)
        {
            ask?.Invoke(position);
            return one.Answers.FirstOrDefault(answer => answer.Position == position);
        }

        return new(one.Chassis, one.Donor, one.Bound.OfType<Gearbox>().FirstOrDefault(), one.Bound.OfType<Ecu>().FirstOrDefault(), At)
        {
            Tasks = one.Tasks,
            IsTightened = fastener => fastener.When is null || one.Fasteners.Contains(fastener),
        };
    }

    private List<Case>? Cut(List<Case>? cases, Func<Case, IReadOnlyList<Piece>> pieces)
    {
        if (cases is null)
        {
            return null;
        }

        var cut = new List<Case>();
        foreach (var one in cases)
        {
            foreach (var piece in pieces(one))
            {
                var here = _store.And(one.Region, piece.Region);
                if (_resolution.BuildableParts.Intersects(here))
                {
                    cut.Add(new Case(
                        one.Chassis,
                        one.Donor,
                        piece.Bound is { } bound ? one.Bound.Add(bound) : one.Bound,
                        piece.Answer is { } answer ? one.Answers.Add(answer) : one.Answers,
                        piece.Task is { } task ? one.Tasks.Add(task) : one.Tasks,
                        piece.Fastener is { } fastener ? one.Fasteners.Add(fastener) : one.Fasteners,
                        here));
                }
            }

            if (cut.Count > MostCases)
            {
                return null;
            }
        }

        return cut;
    }

    private List<Piece> Answers(string position)
    {
        var pieces = new List<Piece>();
        var left = Region.All;
        foreach (var standing in _resolution.At(position))
        {
            var here = _store.And(standing.Region, left);
            left = _store.Minus(left, here);
            pieces.Add(new Piece(here) { Answer = standing.Answer });
        }

        pieces.Add(new Piece(left));
        return pieces;
    }

    private sealed record Case(ChassisVariant Chassis, DonorVariant Donor, ImmutableArray<FactHolder> Bound, ImmutableArray<Answer> Answers, ImmutableArray<WorkTask> Tasks, ImmutableArray<FastenerEntry> Fasteners, Region Region);

    /// <summary>One way in which a case may go on, with what it brings.</summary>
    private sealed record Piece(Region Region)
    {
        public FactHolder? Bound { get; init; }

        public Answer? Answer { get; init; }

        public WorkTask? Task { get; init; }

        public FastenerEntry? Fastener { get; init; }
    }
}
