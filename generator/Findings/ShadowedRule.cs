using Swapwright.Diagnostics;

namespace Swapwright.Findings;

/// <summary>A rule whose every answer, value and exclusion is overridden wherever it applies.</summary>
public static class ShadowedRule
{
    public static readonly SpaceCheck Check = new(FindingKinds.ShadowedRule, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        var effects = examination.Effects;
        foreach (var rule in examination.Base.Rules.All.Where(effects.IsShadowed))
        {
            var silencers = resolution.Overriders[rule.Id]
                .Where(over => effects.Of(rule).Any(effect => effect.SilencedBy(over) && effects.Meets(effect, resolution.Store.And(effect.Unsilenced, resolution.When(over)))))
                .ToList();
            yield return new Finding(FindingKinds.ShadowedRule, $"`{rule.Id}` is overridden wherever it applies", rule.Place)
            {
                Related = [.. silencers.Take(4).Select(over => new RelatedPlace($"`{over.Id}` overrides it here", over.Overrides.First(named => named.Id == rule.Id).Place))],
                Mend = $"Take the rule out, or narrow the `when` of {string.Join(" and ", silencers.Take(4).Select(over => $"`{over.Id}`"))}, which leave it nothing.",
            };
        }
    }
}
