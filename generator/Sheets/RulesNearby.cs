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
    private readonly Resolution _resolution;
    private readonly Dictionary<string, Bounds>? _boxes;
    private readonly NearRules _all;

    /// <param name="many">Whether many sheets are made, on several threads; for a few, looking would cost more than it saves.</param>
    public RulesNearby(Resolution resolution, bool many)
    {
        _resolution = resolution;
        var kb = resolution.Space.Base;
        _boxes = many ? kb.Rules.All.ToDictionary(rule => rule.Id, rule => resolution.Store.BoundsOf(resolution.When(rule)), StringComparer.Ordinal) : null;
        _all = new NearRules([.. kb.Rules.All], [.. kb.PositionOrder.Select(position => (position, resolution.Applies(position.Id), resolution.At(position.Id)))]);
    }

    /// <param name="chassis">As the variable of the space numbers it, and so the donor.</param>
    public NearRules To(int chassis, int donor)
    {
        if (_boxes is null)
        {
            return _all;
        }

        var space = _resolution.Space;
        bool IsNear(Rule rule) => _boxes[rule.Id] is var box && box.Has(space.Chassis, chassis) && box.Has(space.Donor, donor);
        return new NearRules(
            [.. _all.Rules.Where(IsNear)],
            [.. _all.Positions.Select(at => (at.Position, at.Applies, at.Answers.Where(answer => IsNear(answer.Rule)).ToImmutableArray()))]);
    }
}

/// <param name="Rules">In the order of the base.</param>
/// <param name="Positions">In the order of the guide: where each applies, and the answers that may stand there.</param>
internal sealed record NearRules(ImmutableArray<Rule> Rules, ImmutableArray<(Position Position, Region Applies, ImmutableArray<StandingAnswer> Answers)> Positions);
