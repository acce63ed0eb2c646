using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Findings;

/// <summary>The ledgers of some combinations.</summary>
internal sealed record FittedLedger(ImmutableArray<Ledger> Ledgers, Region Region);

/// <summary>
/// Cuts a region by what ledgers depend on: chassis, donor, what the choices bind, and the answers at positions that facts
/// are declared <c>at</c>. Combinations are not looked at one by one.
/// </summary>
internal sealed class FittedLedgers
{
    /// <summary>A region that falls into more cases than these is not computed.</summary>
    public const int MostCases = 4096;

    private readonly Resolution _resolution;
    private readonly RegionStore _store;
    private readonly KnowledgeBase _kb;
    private readonly LedgerAssembly _ledgers;
    private readonly Dictionary<Region, ImmutableArray<FittedLedger>?> _found = [];
    private readonly ImmutableArray<string> _deciding;

    public FittedLedgers(Resolution resolution)
    {
        _resolution = resolution;
        _store = resolution.Store;
        _kb = resolution.Space.Base;
        _ledgers = new LedgerAssembly(_kb);
        _deciding = [.. _kb.Vocabulary.Facts.All.Select(fact => fact.At).OfType<string>().Where(_kb.Positions.Has).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }

    /// <summary>The cases of a region's buildable combinations; null where there are too many to compute.</summary>
    public ImmutableArray<FittedLedger>? In(Region region)
    {
        // Several values are often stated for the same combinations.
        if (!_found.TryGetValue(region, out var found))
        {
            found = Find(region);
            _found.Add(region, found);
        }

        return found;
    }

    private ImmutableArray<FittedLedger>? Find(Region region)
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
                cases.Add(new Case(_kb.Chassis.All[chassis], _kb.Donors.All[donor], [], [], pair));
            }
        }

        foreach (var choice in _kb.Choices.All.Where(choice => choice.Options.Any(option => option.Binds is not null)))
        {
            cases = Cut(cases, one => [.. choice.Options.Select(option => (option.Binds is { } binding ? space.Bound(binding, one.Chassis, one.Donor) : null, (Answer?)null, space.WhereChoice(choice.Id, [option.Id]))), (null, null, space.WhereChoice(choice.Id, [Choice.None]))]);
        }

        foreach (var position in _deciding)
        {
            cases = Cut(cases, _ => Answers(position));
        }

        return cases is null ? null : [.. cases.Select(one => new FittedLedger(_ledgers.Assemble(LedgerCase(one)), one.Region))];
    }

    private static LedgerCase LedgerCase(Case one) => new(
        one.Chassis, one.Donor, one.Bound.OfType<Gearbox>().FirstOrDefault(), one.Bound.OfType<Ecu>().FirstOrDefault(), position => one.Answers.FirstOrDefault(answer => answer.Position == position));

    private List<Case>? Cut(List<Case>? cases, Func<Case, IReadOnlyList<(FactHolder? Bound, Answer? Answer, Region Region)>> pieces)
    {
        if (cases is null)
        {
            return null;
        }

        var cut = new List<Case>();
        foreach (var one in cases)
        {
            foreach (var (bound, answer, where) in pieces(one))
            {
                var here = _store.And(one.Region, where);
                if (_resolution.BuildableParts.Intersects(here))
                {
                    cut.Add(one with { Bound = bound is null ? one.Bound : one.Bound.Add(bound), Answers = answer is null ? one.Answers : one.Answers.Add(answer), Region = here });
                }
            }

            if (cut.Count > MostCases)
            {
                return null;
            }
        }

        return cut;
    }

    private List<(FactHolder? Bound, Answer? Answer, Region Region)> Answers(string position)
    {
        var pieces = new List<(FactHolder? Bound, Answer? Answer, Region Region)>();
        var left = Region.All;
        foreach (var standing in _resolution.At(position))
        {
            var here = _store.And(standing.Region, left);
            left = _store.Minus(left, here);
            pieces.Add((null, standing.Answer, here));
        }

        pieces.Add((null, null, left));
        return pieces;
    }

    private sealed record Case(ChassisVariant Chassis, DonorVariant Donor, ImmutableArray<FactHolder> Bound, ImmutableArray<Answer> Answers, Region Region);
}
