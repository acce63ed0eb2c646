using Swapwright.Diagnostics;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>A chassis and a donor that cannot be built in any way, while no one rule says so of the whole pair.</summary>
public static class NoBuild
{
    public static readonly SpaceCheck Check = new(FindingKinds.NoBuild, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        var store = resolution.Store;
        var open = store.Not(resolution.BuildableParts.Possible);
        if (open.IsNone)
        {
            yield break;
        }

        // A rule gives the reason for a pair where it excludes every combination of it.
        var choices = Enumerable.Range(0, store.Variables.Length).Where(level => level != resolution.Space.Chassis && level != resolution.Space.Donor).ToList();
        open = store.Minus(open, store.OrAll(resolution.Exclusions.Select(exclusion => store.Not(store.Project(resolution.DomainParts.Narrow(store.Not(exclusion.Region)), choices)))));
        while (!open.IsNone)
        {
            var pair = store.Witness(open);
            var chassis = examination.Base.Chassis.All[pair[resolution.Space.Chassis]];
            var donor = examination.Base.Donors.All[pair[resolution.Space.Donor]];
            var reasons = resolution.Exclusions.Where(exclusion => resolution.DomainParts.Intersects(store.And(exclusion.Region, Only(resolution, pair)))).ToList();
            yield return new Finding(FindingKinds.NoBuild, $"`{donor.Id}` cannot be built into `{chassis.Id}` in any way, and no one rule says why", chassis.Place)
            {
                Related = [new RelatedPlace("the donor", donor.Place), .. reasons.Take(6).Select(exclusion => new RelatedPlace($"`{exclusion.Rule.Id}` excludes part of the combinations", exclusion.Rule.Place))],
                Witness = new Witness(chassis.Id, donor.Id, []),
                Touches = resolution.DomainParts.Count(Only(resolution, pair)),
                Region = examination.Words.Describe(Only(resolution, pair), Region.All),
                Mend = "Lift one of the exclusions for this pair, or add a rule that excludes the pair and says why.",
            };
            open = store.Minus(open, Only(resolution, pair));
        }
    }

    private static Region Only(Rules.Resolution resolution, int[] pair) => resolution.Store.And(
        resolution.Space.WhereChassis(chassis => chassis.Id == resolution.Space.Base.Chassis.All[pair[resolution.Space.Chassis]].Id),
        resolution.Space.WhereDonor(donor => donor.Id == resolution.Space.Base.Donors.All[pair[resolution.Space.Donor]].Id));
}
