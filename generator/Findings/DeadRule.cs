using System.Collections.Immutable;
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
            var clashing = met.IsNone ? ClashingTerms.Of(resolution, rule.When) : [];
            yield return new Finding(FindingKinds.DeadRule, met.IsNone ? $"no combination meets the `when` of `{rule.Id}`" : $"every combination that meets `{rule.Id}` is excluded", WhenPlace(rule))
            {
                Related = [.. excluders.Take(4).Select(exclusion => new RelatedPlace($"`{exclusion.Rule.Id}` excludes them", exclusion.Rule.Place)), .. clashing.Where(term => term.Place != default).Select(term => new RelatedPlace($"`{ClashingTerms.Name(term)}` is asked here", term.Place))],
                Mend = met.IsNone ? Correction([.. clashing.Select(ClashingTerms.Name)]) : $"Take the rule out, or correct {string.Join(" and ", excluders.Take(4).Select(exclusion => $"`{exclusion.Rule.Id}`"))}.",
            };
        }
    }

    private static string Correction(ImmutableArray<string> terms) => terms.Length switch
    {
        1 => $"Correct `{terms[0]}`, which nothing meets. If the rule was for a variant that is gone, take it out.",
        _ => $"Correct one of {string.Join(", ", terms.SkipLast(1).Select(term => $"`{term}`"))} and `{terms[^1]}`, which never hold together. If the rule was for a variant that is gone, take it out.",
    };

    private static Place WhenPlace(Rule rule) => rule.When == Condition.Always || rule.When.Place == default ? rule.Place : rule.When.Place;
}
