using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>One thing that a rule gives: where it stands, and where it would if no rule overrode it.</summary>
/// <param name="SilencedBy">Whether a rule that overrides this one silences the effect where it applies.</param>
/// <param name="Excludes">It takes combinations away, so it is held against all of them and not against the buildable ones.</param>
internal sealed record RuleEffect(Region Standing, Region Unsilenced, Func<Rule, bool> SilencedBy, bool Excludes = false);

/// <summary>Everything that rules give, by rule.</summary>
internal sealed class RuleEffects(Resolution resolution)
{
    private readonly Dictionary<(string Rule, string Position), bool> _stands = [];
    private readonly ILookup<string, Exclusion> _exclusions = resolution.Exclusions.ToLookup(exclusion => exclusion.Rule.Id, StringComparer.Ordinal);

    public static bool HasSpeech(Rule rule) => !(rule.Tasks.IsEmpty && rule.Cautions.IsEmpty && rule.Mistakes.IsEmpty && rule.Advises.IsEmpty);

    public Region Exclusion(Rule rule) => _exclusions[rule.Id].Select(exclusion => exclusion.Region).FirstOrDefault(Region.None);

    /// <summary>What a rule would exclude if no rule overrode it.</summary>
    public Region Unlifted(Rule rule) => rule switch
    {
        { Excludes: true } => resolution.When(rule),
        { Requires: { } required } => resolution.Store.Minus(resolution.When(rule), resolution.RegionOf(required)),
        _ => Region.None,
    };

    public Region Standing(Rule rule, string position) =>
        resolution.At(position).Where(standing => standing.Rule.Id == rule.Id).Select(standing => standing.Region).FirstOrDefault(Region.None);

    /// <summary>Whether an answer of a rule stands in some buildable combination. <see cref="Standing"/> is not worked out.</summary>
    public bool Stands(Rule rule, string position)
    {
        if (!_stands.TryGetValue((rule.Id, position), out var stands))
        {
            stands = StandsBeside(rule, position, []);
            _stands.Add((rule.Id, position), stands);
        }

        return stands;
    }

    /// <summary>Whether an answer of a rule stands in some buildable combination in which none of other rules applies.</summary>
    public bool StandsBeside(Rule rule, string position, IEnumerable<Rule> others)
    {
        var silencers = resolution.Overriders.GetValueOrDefault(rule.Id, []).Where(over => over.AnswerAt(position) is not null);
        return resolution.BuildableParts.Intersects([resolution.When(rule), resolution.Applies(position)], silencers.Concat(others).Select(resolution.When));
    }

    public IEnumerable<RuleEffect> Of(Rule rule)
    {
        var when = resolution.When(rule);
        foreach (var position in rule.Answers.Select(answer => answer.Position).Where(resolution.Space.Base.Positions.Has))
        {
            yield return new RuleEffect(Standing(rule, position), resolution.Store.And(when, resolution.Applies(position)), over => over.AnswerAt(position) is not null);
        }

        foreach (var value in resolution.ValuesOf(rule))
        {
            yield return new RuleEffect(value.Region, when, over => over.Values.Any(other => other.Name == value.Value.Name));
        }

        if (rule.Excludes || rule.Requires is not null)
        {
            yield return new RuleEffect(Exclusion(rule), Unlifted(rule), _ => true, Excludes: true);
        }

        // Tasks and cautions of a rule that answers go with its answers.
        if (rule.Answers.IsEmpty && rule.Values.IsEmpty && HasSpeech(rule))
        {
            yield return new RuleEffect(resolution.Speaks(rule), when, _ => true);
        }
    }

    /// <summary>Whether a region of an effect holds anything that could be built or, for one that excludes, anything at all.</summary>
    public bool Meets(RuleEffect effect, Region region) => (effect.Excludes ? resolution.DomainParts : resolution.BuildableParts).Intersects(region);

    public bool IsDead(Rule rule) => !(rule.Excludes || rule.Requires is not null ? resolution.DomainParts : resolution.BuildableParts).Intersects(resolution.When(rule));

    /// <summary>Whether other rules silence everything that a rule gives, while something of it would stand without them.</summary>
    public bool IsShadowed(Rule rule)
    {
        if (!resolution.Overriders.ContainsKey(rule.Id) || rule.Answers.Any(answer => resolution.Space.Base.Positions.Has(answer.Position) && Stands(rule, answer.Position)))
        {
            return false;
        }

        var effects = Of(rule).ToImmutableArray();
        return !effects.Any(effect => Meets(effect, effect.Standing)) && effects.Any(effect => Meets(effect, effect.Unsilenced));
    }
}
