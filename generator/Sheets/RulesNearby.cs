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
    private readonly NearRules _all;
    private readonly Recent?[] _recent = new Recent?[Remembered];

    /// <param name="speaks">Where a rule speaks.</param>
    /// <param name="many">Whether many sheets are made, on several threads; for a few, looking would cost more than it saves.</param>
    public RulesNearby(Resolution resolution, Func<Rule, Region> speaks, bool many)
    {
        _resolution = resolution;
        var kb = resolution.Space.Base;
        ImmutableArray<NearRule> rules = [.. kb.Rules.All.Select((rule, at) => new NearRule(at, rule, resolution.When(rule), () => speaks(rule)))];
        var byId = rules.ToDictionary(rule => rule.Rule.Id, StringComparer.Ordinal);
        ImmutableArray<NearRule> Over(StandingAnswer answer, string position) =>
            resolution.Overriders.TryGetValue(answer.Rule.Id, out var over) ? [.. over.Where(rule => rule.AnswerAt(position) is not null).Select(rule => byId[rule.Id])] : [];
        _all = new NearRules(
            rules,
            [.. kb.PositionOrder.Select(position => new NearPosition(
                position,
                resolution.Applies(position.Id),
                [.. resolution.At(position.Id).Select(answer => new NearAnswer(position, answer, byId[answer.Rule.Id], Over(answer, position.Id)))]))],
            [.. resolution.Values.Select(value => new NearValue(value, byId[value.Rule.Id]))]);
        _boxes = many ? [.. rules.Select(rule => resolution.Store.BoundsOf(rule.When))] : [];
        foreach (var rule in many ? rules : [])
        {
            _ = rule.Speaks;
        }
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
        bool IsNear(NearRule rule) => _boxes[rule.Number].Has(space.Chassis, chassis) && _boxes[rule.Number].Has(space.Donor, donor);
        return new NearRules(
            [.. _all.Rules.Where(IsNear)],
            [.. _all.Positions.Select(position => position with { Answers = [.. position.Answers.Where(answer => IsNear(answer.Rule))] })],
            [.. _all.Values.Where(value => IsNear(value.Rule))]);
    }

    private sealed record Recent(int Chassis, int Donor, NearRules Rules);
}

/// <param name="Rules">In the order of the base.</param>
/// <param name="Positions">In the order of the guide.</param>
/// <param name="Values">In the order of the base.</param>
internal sealed record NearRules(ImmutableArray<NearRule> Rules, ImmutableArray<NearPosition> Positions, ImmutableArray<NearValue> Values);

/// <summary>A rule with the regions that every combination is held against, so that none has to look them up by its id.</summary>
/// <param name="number">Its place in the base.</param>
/// <param name="when">Where its condition holds. It stands nowhere else; asking that first spares working out where it stands.</param>
internal sealed class NearRule(int number, Rule rule, Region when, Func<Region> speaks)
{
    private Region? _speaks;

    public int Number => number;

    public Rule Rule => rule;

    public Region When => when;

    /// <summary>Where it speaks; worked out when first asked.</summary>
    public Region Speaks => _speaks ??= speaks();
}

/// <param name="Applies">Where it has to be settled.</param>
/// <param name="Answers">Those that may stand there.</param>
internal sealed record NearPosition(Position Position, Region Applies, ImmutableArray<NearAnswer> Answers);

/// <param name="over">The rules that override it and answer the same position.</param>
internal sealed class NearAnswer(Position position, StandingAnswer standing, NearRule rule, ImmutableArray<NearRule> over)
{
    private SheetAnswer? _alone;

    public StandingAnswer Standing => standing;

    public NearRule Rule => rule;

    public ImmutableArray<NearRule> Over => over;

    /// <summary>What holds at the position where this answer stands and no other rule applies.</summary>
    public SheetAnswer Alone => _alone ??= new SheetAnswer(position, [standing], []);
}

internal sealed record NearValue(StandingValue Standing, NearRule Rule);
