using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>
/// What is left to choose for one chassis with one donor. Small in any base: for fixed entities the parts of the space have
/// nothing to do with each other, so the one diagram of everything buildable is never made.
/// </summary>
public static class PairSpace
{
    /// <summary>The combinations of a pair, buildable or not.</summary>
    public static Region Domain(Resolution resolution, string chassis, string donor) => Of(resolution, resolution.DomainParts, chassis, donor);

    /// <summary>The combinations of a pair that no rule excludes.</summary>
    public static Region Buildable(Resolution resolution, string chassis, string donor) => Of(resolution, resolution.BuildableParts, chassis, donor);

    private static Region Of(Resolution resolution, FactoredRegion parts, string chassis, string donor)
    {
        var space = resolution.Space;
        var pair = resolution.Store.And(space.WhereChassis(one => one.Id == chassis), space.WhereDonor(one => one.Id == donor));
        return pair.IsNone ? pair : resolution.Store.And(pair, parts.At(resolution.Store.Witness(pair).AsSpan(0, SpaceModel.Entities)));
    }
}
