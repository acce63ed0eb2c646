using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>A headline combination: what makes a guide of its own.</summary>
/// <param name="Options">Choice id → option id, in the order in which kb.yaml names the choices.</param>
/// <param name="Slice">The buildable combinations of this guide.</param>
public sealed record Headline(ChassisVariant Chassis, DonorVariant Donor, ImmutableArray<KeyValuePair<string, string>> Options, Region Slice)
{
    /// <summary>As in <c>chassis/donor/option</c>; unique among headline combinations.</summary>
    public string Id => string.Join('/', Options.Select(option => option.Value).Prepend(Donor.Id).Prepend(Chassis.Id));
}

/// <summary>Finds the headline combinations that can be built, and the recommended combination of a part of the space.</summary>
public sealed class Headlines(Resolution resolution)
{
    private readonly ImmutableArray<(Choice Choice, ImmutableArray<(Region Where, int Value)> Recommended)> _recommended = Recommended(resolution);

    /// <summary>Every headline combination with at least one buildable combination, in order of chassis, donor and options.</summary>
    public IEnumerable<Headline> All()
    {
        var space = resolution.Space;
        var levels = Levels(space);
        return Split(resolution.Buildable, new[] { space.Chassis, space.Donor }.Concat(levels).ToArray()).Select(slice =>
        {
            var values = resolution.Store.Witness(slice);
            return new Headline(
                space.ChassisOf(values),
                space.DonorOf(values),
                [.. levels.Select(level => KeyValuePair.Create(space.ChoiceAt[level]!.Id, space.Store.Variables[level].Values[values[level]]))],
                slice);
        });
    }

    /// <summary>How many there are, without making them.</summary>
    public static int Count(Resolution resolution) => (int)resolution.BuildableParts.CountWithin(Levels(resolution.Space));

    /// <summary>
    /// The combination of a region that follows the recommendations: choice by choice in page order, the recommended
    /// option where some combination of the region still takes it, else the first option that one takes.
    /// </summary>
    public int[] Default(Region region)
    {
        var store = resolution.Store;
        var left = region;
        foreach (var (choice, recommended) in _recommended)
        {
            // A choice that makes guides of their own has one option left in each.
            var level = resolution.Space.LevelOf(choice.Id);
            var allowed = store.AllowedValues(left, level);
            var isSettled = allowed.Count == 1;
            Region Taking(int value) => isSettled ? left : store.And(left, store.Where(level, ValueSet.Of(store.Variables[level].Size, value)));
            var followed = recommended.Where(one => allowed.Contains(one.Value)).Select(one => store.And(Taking(one.Value), one.Where)).FirstOrDefault(taken => !taken.IsNone, Region.None);
            left = followed.IsNone ? Taking(allowed.First()) : followed;
        }

        return store.Witness(left);
    }

    private static List<int> Levels(SpaceModel space) =>
        [.. space.Base.Settings.Headline.Where(named => space.Base.Choices.Has(named.Id)).Select(named => space.LevelOf(named.Id)).Distinct()];

    private IEnumerable<Region> Split(Region region, ReadOnlyMemory<int> levels)
    {
        if (levels.IsEmpty)
        {
            yield return region;
            yield break;
        }

        var level = levels.Span[0];
        foreach (var value in resolution.Store.AllowedValues(region, level))
        {
            var part = resolution.Store.And(region, resolution.Store.Where(level, ValueSet.Of(resolution.Store.Variables[level].Size, value)));
            foreach (var slice in Split(part, levels[1..]))
            {
                yield return slice;
            }
        }
    }

    private static ImmutableArray<(Choice, ImmutableArray<(Region, int)>)> Recommended(Resolution resolution)
    {
        var space = resolution.Space;
        return
        [
            .. space.Base.Choices.All.OrderBy(choice => choice.Order).ThenBy(choice => choice.Id, StringComparer.Ordinal).Select(choice =>
            {
                var options = space.Store.Variables[space.LevelOf(choice.Id)].Values;
                ImmutableArray<(Region, int)> recommended =
                [
                    .. choice.Recommendations.Where(one => options.Contains(one.Option)).Select(one => (resolution.RegionOf(one.When), options.IndexOf(one.Option))),
                ];
                return (choice, recommended);
            }),
        ];
    }
}
