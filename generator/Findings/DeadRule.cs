using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>A rule whose <c>when</c> no buildable combination meets.</summary>
public static class DeadRule
{
    public static readonly SpaceCheck Check = new(FindingKinds.DeadRule, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var rule in examination.Base.Rules.All)
        {
            // What a rule excludes is never buildable: such a rule is held against all combinations.
            var within = rule.Excludes || rule.Requires is not null ? resolution.DomainParts : resolution.BuildableParts;
            if (within.Intersects(resolution.When(rule)))
            {
                continue;
            }

            var met = resolution.DomainParts.Narrow(resolution.When(rule));
            var excluders = resolution.Exclusions.Where(exclusion => resolution.DomainParts.Intersects(resolution.Store.And(exclusion.Region, met))).ToList();
            yield return new Finding(FindingKinds.DeadRule, met.IsNone ? $"no combination meets the `when` of `{rule.Id}`" : $"every combination that meets `{rule.Id}` is excluded", WhenPlace(rule))
            {
                Related = [.. excluders.Take(4).Select(exclusion => new RelatedPlace($"`{exclusion.Rule.Id}` excludes them", exclusion.Rule.Place))],
                Mend = met.IsNone ? "Correct the `when`: its terms never hold together. If the rule was for a variant that is gone, take it out." : "Take the rule out, or correct the exclusion.",
            };
        }
    }

    private static Place WhenPlace(Rule rule) => rule.When == Condition.Always || rule.When.Place == default ? rule.Place : rule.When.Place;
}
