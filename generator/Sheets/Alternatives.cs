using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>Another answer at a position for the same chassis and donor, and the fewest choices to change for it.</summary>
public sealed record Alternative(Rule Rule, Answer Answer, ImmutableArray<KeyValuePair<string, string>> Changes);

/// <summary>What else could hold in a sheet, and the nearest way to it. Computed on the diagram; choices are never tried one by one.</summary>
/// <remarks>It asks the space, which one worker may do at a time: it takes the lock itself. One is for one worker.</remarks>
public sealed class Alternatives(Resolution resolution, Sheet sheet)
{
    // Many rules say "with this gearbox" of different positions: what is left of them with the two vehicles is the same region.
    private readonly Dictionary<Region, ImmutableArray<KeyValuePair<string, string>>> _changes = [];
    private Region? _possible;

    /// <summary>The other answers at a position that some buildable combination of this chassis and donor takes.</summary>
    public ImmutableArray<Alternative> At(SheetAnswer at)
    {
        var all = resolution.At(at.Position.Id);
        var found = ImmutableArray.CreateBuilder<Alternative>();
        lock (resolution.Store)
        {
            var (store, space, values) = (resolution.Store, resolution.Space, sheet.Combination.Values);
            foreach (var other in all)
            {
                // Most others hold for other vehicles, which is seen from the box around their condition.
                var box = store.BoundsOf(resolution.When(other.Rule));
                if (!box.Has(space.Chassis, values[space.Chassis]) || !box.Has(space.Donor, values[space.Donor]) || (at.Answer is { } given && other.Answer.Agrees(given)))
                {
                    continue;
                }

                var possible = _possible ??= PairSpace.Buildable(resolution, sheet.Chassis.Id, sheet.Donor.Id);
                var region = store.And(other.Region, possible);
                if (!region.IsNone)
                {
                    found.Add(new Alternative(other.Rule, other.Answer, Changes(region)));
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

    private ImmutableArray<KeyValuePair<string, string>> Changes(Region region)
    {
        if (!_changes.TryGetValue(region, out var changes))
        {
            changes = Changes(resolution, sheet, region);
            _changes.Add(region, changes);
        }

        return changes;
    }

    private static ImmutableArray<KeyValuePair<string, string>> Changes(Resolution resolution, Sheet sheet, Region region)
    {
        var nearest = resolution.Store.Nearest(region, sheet.Combination.Values.AsSpan());
        return
        [
            .. resolution.Space.Base.Choices.All.Where(choice => nearest[resolution.Space.LevelOf(choice.Id)] != sheet.Combination.Values[resolution.Space.LevelOf(choice.Id)])
                .Select(choice => KeyValuePair.Create(choice.Id, resolution.Space.OptionOf(nearest, choice.Id))),
        ];
    }
}
