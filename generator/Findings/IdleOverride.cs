using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>An override that silences nothing: the two rules never meet, or speak of nothing in common.</summary>
public static class IdleOverride
{
    public static readonly SpaceCheck Check = new(FindingKinds.IdleOverride, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var rule in examination.Base.Rules.All)
        {
            foreach (var named in rule.Overrides)
            {
                if (examination.Base.Rules.Find(named.Id) is not { } other)
                {
                    continue;
                }

                var related = new RelatedPlace($"`{other.Id}` stands here", other.Place);
                if (!Share(rule, other))
                {
                    yield return new Finding(FindingKinds.IdleOverride, $"`{rule.Id}` overrides `{other.Id}`, but the two have no position, value or exclusion in common", named.Place)
                    {
                        Related = [related],
                        Mend = "Take the override out, or name the rule that answers the same position.",
                    };
                }
                else if (!Meets(rule, other))
                {
                    yield return new Finding(FindingKinds.IdleOverride, $"`{rule.Id}` overrides `{other.Id}`, but no combination meets both", named.Place)
                    {
                        Related = [related],
                        Mend = "Take the override out, or correct the `when` of one of the two.",
                    };
                }
            }
        }

        // A rule that nothing meets is told as dead.
        bool Meets(Rule rule, Rule other) =>
            resolution.DomainParts.Intersects([resolution.When(rule), resolution.When(other)], [])
            || !resolution.DomainParts.Intersects(resolution.When(rule))
            || !resolution.DomainParts.Intersects(resolution.When(other));
    }

    // An exclusion, and a rule that only names tasks and cautions, is lifted by whatever overrides it.
    private static bool Share(Rule rule, Rule other) =>
        other.Excludes || other.Requires is not null
        || (other.Answers.IsEmpty && other.Values.IsEmpty)
        || other.Answers.Any(answer => rule.AnswerAt(answer.Position) is not null)
        || other.Values.Any(value => rule.Values.Any(own => own.Name == value.Name));
}
