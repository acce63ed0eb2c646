using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>
/// Which rules may hold for a chassis and a donor: those whose condition leaves both some room. Of a large base they are few, and
/// the combinations of the two need to be asked of no others.
/// </summary>
internal sealed class RulesNearby
{
    // Guides of one chassis and donor are made close to each other, on few threads.
    private const int Remembered = 64;

    private readonly Resolution _resolution;
    private readonly Bounds[] _boxes;
    private readonly int[][] _answering;
    private readonly NearRules _all;
    private readonly Recent?[] _recent = new Recent?[Remembered];

    /// <param name="many">Whether many sheets are made, on several threads; for a few, looking would cost more than it saves.</param>
    public RulesNearby(Resolution resolution, bool many)
    {
        _resolution = resolution;
        var kb = resolution.Space.Base;
        _all = new NearRules([.. kb.Rules.All], [.. kb.PositionOrder.Select(position => (position, resolution.Applies(position.Id), resolution.At(position.Id)))]);
        _boxes = many ? [.. _all.Rules.Select(rule => resolution.Store.BoundsOf(resolution.When(rule)))] : [];
        var places = _all.Rules.Select((rule, at) => (rule.Id, at)).ToDictionary(pair => pair.Id, pair => pair.at, StringComparer.Ordinal);
        _answering = many ? [.. _all.Positions.Select(at => at.Answers.Select(answer => places[answer.Rule.Id]).ToArray())] : [];
    }

    /// <param name="chassis">As the variable of the space numbers it, and so the donor.</param>
    public NearRules To(int chassis, int donor)
    {
        if (_boxes.Length == 0)
        {
            return _all;
        }

        var place = ((chassis * 31) + donor) % Remembered;
        if (_recent[place] is { } recent && recent.Chassis == chassis && recent.Donor == donor)
        {
            return recent.Rules;
        }

        var near = Look(chassis, donor);
        _recent[place] = new Recent(chassis, donor, near);
        return near;
    }

    private NearRules Look(int chassis, int donor)
    {
        var space = _resolution.Space;
        var isNear = new bool[_boxes.Length];
        var rules = ImmutableArray.CreateBuilder<Rule>();
        for (var at = 0; at < isNear.Length; at++)
        {
            isNear[at] = _boxes[at].Has(space.Chassis, chassis) && _boxes[at].Has(space.Donor, donor);
            if (isNear[at])
            {
                rules.Add(_all.Rules[at]);
            }
        }

        var positions = ImmutableArray.CreateBuilder<(Position, Region, ImmutableArray<StandingAnswer>)>(_all.Positions.Length);
        for (var at = 0; at < _all.Positions.Length; at++)
        {
            var (position, applies, all) = _all.Positions[at];
            var answers = ImmutableArray.CreateBuilder<StandingAnswer>();
            for (var one = 0; one < all.Length; one++)
            {
                if (isNear[_answering[at][one]])
                {
                    answers.Add(all[one]);
                }
            }

            positions.Add((position, applies, answers.DrainToImmutable()));
        }

        return new NearRules(rules.DrainToImmutable(), positions.MoveToImmutable());
    }

    private sealed record Recent(int Chassis, int Donor, NearRules Rules);
}

/// <param name="Rules">In the order of the base.</param>
/// <param name="Positions">In the order of the guide: where each applies, and the answers that may stand there.</param>
internal sealed record NearRules(ImmutableArray<Rule> Rules, ImmutableArray<(Position Position, Region Applies, ImmutableArray<StandingAnswer> Answers)> Positions);
