using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>Another answer at a position for the same chassis and donor, and the fewest choices to change for it.</summary>
public sealed record Alternative(Rule Rule, Answer Answer, ImmutableArray<KeyValuePair<string, string>> Changes);

/// <summary>What else could hold, and the nearest way to it. Computed on the diagram; choices are never tried one by one.</summary>
public static class Alternatives
{
    /// <summary>
    /// The other answers at a position that some buildable combination of this chassis and donor takes. It asks the space, which one
    /// worker may do at a time: it takes the lock itself.
    /// </summary>
    /// <param name="pair">What can be built of the chassis and the donor, where the caller remembers it: see <see cref="PairSpace"/>.</param>
    public static ImmutableArray<Alternative> At(Resolution resolution, Sheet sheet, SheetAnswer at, Func<Region>? pair = null)
    {
        var all = resolution.At(at.Position.Id);
        var found = ImmutableArray.CreateBuilder<Alternative>();
        lock (resolution.Store)
        {
            Region? possible = null;
            var (space, values) = (resolution.Space, sheet.Combination.Values);
            foreach (var other in all)
            {
                // Most others hold for other vehicles, which is seen from the box around their condition; to ask the rest makes no region.
                var box = resolution.Store.BoundsOf(resolution.When(other.Rule));
                if (!box.Has(space.Chassis, values[space.Chassis]) || !box.Has(space.Donor, values[space.Donor]) || (at.Answer is { } given && other.Answer.Agrees(given)))
                {
                    continue;
                }

                possible ??= pair?.Invoke() ?? PairSpace.Buildable(resolution, sheet.Chassis.Id, sheet.Donor.Id);
                if (resolution.Store.Intersects(other.Region, possible.Value))
                {
                    found.Add(new Alternative(other.Rule, other.Answer, Changes(resolution, sheet, resolution.Store.And(other.Region, possible.Value))));
                }
            }
        }

        return found.ToImmutable();
    }

    /// <summary>The fewest changes of choices that make a combination buildable with the same chassis and donor; null where none do.</summary>
    public static ImmutableArray<KeyValuePair<string, string>>? NearestBuildable(Resolution resolution, Sheet sheet)
    {
        var region = PairSpace.Buildable(resolution, sheet.Chassis.Id, sheet.Donor.Id);
        return region.IsNone ? null : Changes(resolution, sheet, region);
    }

    private static ImmutableArray<KeyValuePair<string, string>> Changes(Resolution resolution, Sheet sheet, Region region)
    {
        var nearest = resolution.Store.Nearest(region, [.. sheet.Combination.Values]);
        return
        [
            .. resolution.Space.Base.Choices.All.Where(choice => nearest[resolution.Space.LevelOf(choice.Id)] != sheet.Combination.Values[resolution.Space.LevelOf(choice.Id)])
                .Select(choice => KeyValuePair.Create(choice.Id, resolution.Space.OptionOf(nearest, choice.Id))),
        ];
    }
}
