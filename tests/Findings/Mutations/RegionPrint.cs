using Swapwright.Space;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>
/// Prints a region as a number that depends on its combinations only, so that regions of two bases can be compared: the sum
/// over the combinations of the product of one random weight for each value, modulo the prime 2^61 − 1. Two different
/// regions have one print with a chance below (number of variables) / 2^61, as two different polynomials agree at a
/// random point (Schwartz 1980, Zippel 1979).
/// </summary>
internal sealed class RegionPrint(RegionStore store)
{
    private const ulong Prime = (1UL << 61) - 1;

    private readonly Dictionary<(int Level, Region Region), ulong> _known = [];
    private readonly ulong[][] _weights = [.. store.Variables.Select(variable => variable.Values.Select(value => Weight($"{variable.Name}={value}")).ToArray())];

    public ulong Of(Region region) => From(0, region);

    private ulong From(int level, Region region)
    {
        if (region.IsNone || level == _weights.Length)
        {
            return region.IsNone ? 0UL : 1;
        }

        if (!_known.TryGetValue((level, region), out var sum))
        {
            foreach (var (values, children) in store.Classes(level, [region]))
            {
                sum = Add(sum, Times(values.Aggregate(0UL, (total, value) => Add(total, _weights[level][value])), From(level + 1, children[0])));
            }

            _known.Add((level, region), sum);
        }

        return sum;
    }

    private static ulong Add(ulong a, ulong b) => (a + b) % Prime;

    private static ulong Times(ulong a, ulong b) => (ulong)((UInt128)a * b % Prime);

    /// <summary>FNV-1a over the name, then the finaliser of SplitMix64: the same in every run.</summary>
    private static ulong Weight(string name)
    {
        var hash = name.Aggregate(14695981039346656037UL, (so, character) => (so ^ character) * 1099511628211UL);
        hash = (hash ^ (hash >> 30)) * 0xBF58476D1CE4E5B9UL;
        hash = (hash ^ (hash >> 27)) * 0x94D049BB133111EBUL;
        return (hash ^ (hash >> 31)) % Prime;
    }
}
