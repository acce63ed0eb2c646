using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>
/// An answer that fits a part of another vehicle where devices are, and whose parts state none of them, in some buildable
/// combination whose harness has a plug for one. Only the part's own entry can say which plug it has, so the wiring would
/// tell the builder to cap the wire of a thing that is there.
/// </summary>
public static class NoPlug
{
    public static readonly SpaceCheck Check = new(FindingKinds.NoPlug, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var roles in examination.Base.Vocabulary.Devices.All.Where(role => role.Position is not null).GroupBy(role => role.Position!, StringComparer.Ordinal))
        {
            var bare = resolution.At(roles.Key).Where(standing => standing.Answer is { Source: "other", Treatment: not "blank" } && !States(examination.Base, standing.Answer, roles)).ToList();
            if (bare.Count == 0)
            {
                continue;
            }

            var wired = WithPlug(resolution, roles);
            foreach (var standing in bare)
            {
                var here = resolution.BuildableParts.Narrow(resolution.Store.And(standing.Region, wired));
                if (!here.IsNone)
                {
                    yield return examination.About(
                        FindingKinds.NoPlug,
                        $"`{roles.Key}` gets a part of another vehicle that states no plug, where the harness has one for {string.Join(" or ", roles.Select(role => $"`{role.Id}`"))}",
                        standing.Answer.Place,
                        here) with
                    {
                        Mend = "Write the plug that the part has under its `devices`, with connector, location and pins; where it really has none, accept the warning with the reason.",
                    };
                }
            }
        }
    }

    private static bool States(KnowledgeBase kb, Answer answer, IEnumerable<DeviceRole> roles) =>
        answer.PartIds.Select(kb.Parts.Find).OfType<Part>().Any(part => part.Devices.Any(device => roles.Any(role => role.Id == device.Role)));

    /// <summary>Where the harness in use, the chassis's or the donor's, has a plug for one of the roles.</summary>
    private static Region WithPlug(Resolution resolution, IEnumerable<DeviceRole> roles)
    {
        var (store, space) = (resolution.Store, resolution.Space);
        var own = space.Base.Settings.HarnessPosition is { } harness
            ? store.OrAll(resolution.At(harness).Where(standing => standing.Answer.Source == "chassis").Select(standing => standing.Region))
            : Region.None;
        return store.Or(store.And(own, space.WhereChassis(HasPlug)), store.Minus(space.WhereDonor(HasPlug), own));

        bool HasPlug(Variant variant) => variant.Harness is { } loom && loom.Plugs.Any(plug => roles.Any(role => role.Id == plug.Key));
    }
}
