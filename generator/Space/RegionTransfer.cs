using System.Collections.Immutable;

namespace Swapwright.Space;

/// <summary>
/// Carries regions from one store into another. Variables are paired by the caller, values by their names: assignments
/// that use a value unknown over there are left behind, and a variable without a partner may take any value (so the
/// image is what the region says about the others). Quick where both stores hold the paired variables in one order.
/// </summary>
public sealed class RegionTransfer
{
    private readonly RegionStore _from;
    private readonly RegionStore _to;
    private readonly ImmutableArray<int> _levels;
    private readonly ImmutableArray<ImmutableArray<int>> _values;
    private readonly int[] _alone;
    private readonly Dictionary<Region, Region> _carried = [];

    /// <param name="levels">For each variable of <paramref name="from"/> its partner in <paramref name="to"/>; −1 where it has none.</param>
    public RegionTransfer(RegionStore from, RegionStore to, ImmutableArray<int> levels)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(levels.Length, from.Variables.Length, nameof(levels));
        _from = from;
        _to = to;
        _levels = levels;
        _values =
        [
            .. levels.Select((partner, level) => partner < 0
                ? ImmutableArray<int>.Empty
                : [.. from.Variables[level].Values.Select(value => to.Variables[partner].Values.IndexOf(value))]),
        ];
        _alone = [.. levels.Index().Where(pair => pair.Item < 0).Select(pair => pair.Index)];
    }

    public Region Carry(Region region) => Image(_alone.Length == 0 ? region : _from.Project(region, _alone));

    private Region Image(Region region)
    {
        if (region.IsNone || region.IsAll)
        {
            return region;
        }

        if (!_carried.TryGetValue(region, out var image))
        {
            var (level, edges) = _from.Top(region);
            image = _to.OrAll(edges.Select(edge => _to.And(Where(level, edge.Values), Image(edge.Child))));
            _carried.Add(region, image);
        }

        return image;
    }

    private Region Where(int level, ValueSet values)
    {
        var partner = _levels[level];
        var known = values.Select(value => _values[level][value]).Where(value => value >= 0).ToHashSet();
        return _to.Where(partner, ValueSet.Where(_to.Variables[partner].Size, known.Contains));
    }
}
