using System.Collections.Immutable;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>Where one and the same thing is said on one side and not, or not so, on the other.</summary>
/// <param name="Old">Everything that holds there on the old side, in order.</param>
internal sealed record Shift<T>(ImmutableArray<T> Old, ImmutableArray<T> New, Region Region);

/// <summary>Compares what holds where. What is said in a part of the space is a set: usually of one, of several where rules disagree.</summary>
internal static class Differences
{
    /// <summary>Where anything that is said holds on one side alone.</summary>
    public static Region Of<T>(RegionStore store, IReadOnlyDictionary<T, Region> old, IReadOnlyDictionary<T, Region> @new)
        where T : notnull =>
        store.OrAll(old.Keys.Union(@new.Keys).SelectMany(key =>
        {
            var (before, now) = (old.GetValueOrDefault(key, Region.None), @new.GetValueOrDefault(key, Region.None));
            return before == now ? Enumerable.Empty<Region>() : [store.Minus(before, now), store.Minus(now, before)];
        }));

    /// <summary>Cuts a region by what is said there on either side, and keeps the pieces in which that is not the same.</summary>
    public static IEnumerable<Shift<T>> Within<T>(RegionStore store, Region region, IReadOnlyDictionary<T, Region> old, IReadOnlyDictionary<T, Region> @new)
        where T : notnull =>
        from before in Cut(store, region, old)
        from now in Cut(store, before.Region, @new)
        where !before.Said.SequenceEqual(now.Said)
        select new Shift<T>(before.Said, now.Said, now.Region);

    private static List<(ImmutableArray<T> Said, Region Region)> Cut<T>(RegionStore store, Region region, IReadOnlyDictionary<T, Region> said)
        where T : notnull
    {
        var pieces = new List<(ImmutableArray<T> Said, Region Region)> { ([], region) };
        foreach (var (what, where) in said.Where(one => store.Intersects(one.Value, region)).OrderBy(one => one.Key))
        {
            var finer = new List<(ImmutableArray<T> Said, Region Region)>();
            foreach (var piece in pieces)
            {
                var inside = store.And(piece.Region, where);
                var outside = inside.IsNone ? piece.Region : store.Minus(piece.Region, where);
                if (!inside.IsNone)
                {
                    finer.Add((piece.Said.Add(what), inside));
                }

                if (!outside.IsNone)
                {
                    finer.Add((piece.Said, outside));
                }
            }

            pieces = finer;
        }

        return pieces;
    }
}
