using System.Collections.Immutable;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>Where, in the choices of one chassis and donor, each answer stands in something buildable. Asks the space: for who holds the store's lock.</summary>
/// <param name="chassis">As the variable of the space numbers it, and so the donor.</param>
internal sealed class PairAnswers(Resolution resolution, int chassis, int donor)
{
    private readonly Dictionary<string, ImmutableArray<(StandingAnswer Answer, Region Region)>> _at = new(StringComparer.Ordinal);
    private Region? _possible;

    public bool IsOf(int ofChassis, int ofDonor) => chassis == ofChassis && donor == ofDonor;

    /// <summary>The answers at a position that stand somewhere, each with where; the regions depend on choices alone, so that many pairs have the same.</summary>
    public ImmutableArray<(StandingAnswer Answer, Region Region)> At(string position)
    {
        if (!_at.TryGetValue(position, out var standing))
        {
            _at.Add(position, standing = Find(position));
        }

        return standing;
    }

    private ImmutableArray<(StandingAnswer Answer, Region Region)> Find(string position)
    {
        var (store, space) = (resolution.Store, resolution.Space);
        var found = ImmutableArray.CreateBuilder<(StandingAnswer Answer, Region Region)>();
        foreach (var answer in resolution.At(position))
        {
            // Most answers hold for other vehicles, which is seen from the box around their condition.
            var box = store.BoundsOf(resolution.When(answer.Rule));
            if (!box.Has(space.Chassis, chassis) || !box.Has(space.Donor, donor))
            {
                continue;
            }

            var possible = _possible ??= PairSpace.Buildable(resolution, space.Base.Chassis.All[chassis].Id, space.Base.Donors.All[donor].Id);
            var region = store.And(answer.Region, possible);
            if (!region.IsNone)
            {
                found.Add((answer, store.Slice(region, [(space.Chassis, chassis), (space.Donor, donor)])));
            }
        }

        return found.ToImmutable();
    }
}
