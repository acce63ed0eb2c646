using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>
/// Which other donor or chassis is the nearest with which something can be built. Nearest: of the same family, then with the
/// fewest facts that differ, then the fewest years apart, then the first in order.
/// </summary>
public static class NearestPairs
{
    /// <summary>Another donor with which some combination of a region can be built in this chassis; null where none is.</summary>
    public static DonorVariant? Donor(Resolution resolution, ChassisVariant chassis, DonorVariant donor, Region wanted)
    {
        var space = resolution.Space;
        var possible = Allowed(resolution, resolution.Store.And(wanted, space.WhereChassis(one => one.Id == chassis.Id)), space.Donor);
        return Nearest(resolution, "donor", donor, space.Base.Donors.All.Where((one, at) => one.Id != donor.Id && possible.Contains(at)));
    }

    /// <summary>Another chassis in which some combination of a region can be built with this donor; null where none is.</summary>
    public static ChassisVariant? Chassis(Resolution resolution, ChassisVariant chassis, DonorVariant donor, Region wanted)
    {
        var space = resolution.Space;
        var possible = Allowed(resolution, resolution.Store.And(wanted, space.WhereDonor(one => one.Id == donor.Id)), space.Chassis);
        return Nearest(resolution, "chassis", chassis, space.Base.Chassis.All.Where((one, at) => one.Id != chassis.Id && possible.Contains(at)));
    }

    // A narrowed region holds exactly the pairs with which something of it can be built.
    private static ValueSet Allowed(Resolution resolution, Region wanted, int level) => resolution.Store.AllowedValues(resolution.BuildableParts.Narrow(wanted), level);

    private static T? Nearest<T>(Resolution resolution, string subject, T from, IEnumerable<T> possible)
        where T : Variant
    {
        var facts = resolution.Space.Base.Vocabulary.Facts.All.Where(fact => fact.Subject == subject).Select(fact => fact.Id).ToList();
        return possible.MinBy(one => (one.Family == from.Family ? 0 : 1, facts.Count(fact => one.Fact(fact) != from.Fact(fact)), Apart(one, from)));
    }

    private static int Apart(Variant one, Variant other) => Math.Max(0, Math.Max(one.Years.From - other.Years.To, other.Years.From - one.Years.To));
}
