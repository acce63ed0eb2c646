using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Site.Models;
using Swapwright.Space;

namespace Swapwright.Site.Pages;

/// <summary>Where, within one guide, a line holds: in words, and as cases that switches can follow.</summary>
internal sealed class GuideConditions(SiteKnowledge site, Region slice)
{
    // A condition in more cases than these is better read from the rule's page.
    private const int MostCases = 12;

    /// <summary>Whether a region holds somewhere in the guide.</summary>
    public bool Meets(Region region) => site.Store.Intersects(slice, region);

    /// <summary>null where the region holds in the whole guide.</summary>
    public GuideCondition? Of(Region region)
    {
        if (site.Store.Implies(slice, region))
        {
            return null;
        }

        var part = site.Store.And(slice, region);
        var cases = site.Store.Cover(part, MostCases, slice).Cubes.Select(Case).ToList();
        return new GuideCondition($"where {site.Words.Describe(part, slice)}", cases);
    }

    private ConditionCase Case(Cube cube) => new(
    [
        .. cube.Constraints.Where(constraint => site.Resolution.Space.ChoiceAt[constraint.Variable] is not null)
            .Select(constraint => new ConditionTerm(
                site.Resolution.Space.ChoiceAt[constraint.Variable]!.Id,
                [.. constraint.Values.Select(value => site.Store.Variables[constraint.Variable].Values[value])])),
    ]);
}
