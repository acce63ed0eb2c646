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
        var ofTightening = ledger == TighteningSources.Ledger;
        List<Case>? cases = [];
        var space = _resolution.Space;
        var left = _resolution.BuildableParts.Narrow(region);
        foreach (var chassis in _store.AllowedValues(left, space.Chassis))
        {
            var ofChassis = _store.And(left, _store.Where(space.Chassis, ValueSet.Of(_kb.Chassis.Count, chassis)));
            foreach (var donor in _store.AllowedValues(ofChassis, space.Donor))
            {
                var pair = _store.And(ofChassis, _store.Where(space.Donor, ValueSet.Of(_kb.Donors.Count, donor)));
                cases.Add(new Case(_kb.Chassis.All[chassis], _kb.Donors.All[donor], [], [], [], pair));
            }
        }

        foreach (var choice in _kb.Choices.All.Where(choice => choice.Options.Any(option => option.Binds is not null)))
        {
            cases = Cut(cases, one => [.. choice.Options.Select(option => (option.Binds is { } binding ? space.Bound(binding, one.Chassis, one.Donor) : null, (Answer?)null, (WorkTask?)null, space.WhereChoice(choice.Id, [option.Id]))), (null, null, null, space.WhereChoice(choice.Id, [Choice.None]))]);
        }

        foreach (var position in ofTightening ? TighteningSources.Positions(_kb, name) : _declaredAt)
        {
            cases = Cut(cases, _ => Answers(position));
        }

        foreach (var task in ofTightening ? TighteningSources.Tasks(_kb, name) : [])
        {
            var wanted = Wanted(task);
            cases = Cut(cases, _ => [(null, null, task, wanted), (null, null, null, _store.Not(wanted))]);
        }

        return cases is null ? null : [.. cases.Select(one => new FittedLedger(_ledgers.Assemble(LedgerCase(one), ledger) is { } found ? [found] : [], one.Region))];
    }

    private static LedgerCase LedgerCase(Case one) =>
        new(one.Chassis, one.Donor, one.Bound.OfType<Gearbox>().FirstOrDefault(), one.Bound.OfType<Ecu>().FirstOrDefault(), position => one.Answers.FirstOrDefault(answer => answer.Position == position)) { Tasks = one.Tasks };

    private Region Wanted(WorkTask task) => _store.OrAll(
        _kb.Rules.All.Where(rule => rule.Tasks.Contains(task.Id)).Select(_resolution.Speaks).Append(task.When is { } when ? _resolution.RegionOf(when) : Region.None));

    private List<Case>? Cut(List<Case>? cases, Func<Case, IReadOnlyList<(FactHolder? Bound, Answer? Answer, WorkTask? Task, Region Region)>> pieces)
    {
        if (cases is null)
        {
            return null;
        }

        var cut = new List<Case>();
        foreach (var one in cases)
        {
            foreach (var (bound, answer, task, where) in pieces(one))
            {
                var here = _store.And(one.Region, where);
                if (_resolution.BuildableParts.Intersects(here))
                {
                    cut.Add(one with { Bound = bound is null ? one.Bound : one.Bound.Add(bound), Answers = answer is null ? one.Answers : one.Answers.Add(answer), Tasks = task is null ? one.Tasks : one.Tasks.Add(task), Region = here });
                }
            }

            if (cut.Count > MostCases)
            {
                return null;
            }
        }

        return cut;
    }

    private List<(FactHolder? Bound, Answer? Answer, WorkTask? Task, Region Region)> Answers(string position)
    {
        var pieces = new List<(FactHolder? Bound, Answer? Answer, WorkTask? Task, Region Region)>();
        var left = Region.All;
        foreach (var standing in _resolution.At(position))
        {
            var here = _store.And(standing.Region, left);
            left = _store.Minus(left, here);
            pieces.Add((null, standing.Answer, null, here));
        }

        pieces.Add((null, null, null, left));
        return pieces;
    }

    private sealed record Case(ChassisVariant Chassis, DonorVariant Donor, ImmutableArray<FactHolder> Bound, ImmutableArray<Answer> Answers, ImmutableArray<WorkTask> Tasks, Region Region);
}
