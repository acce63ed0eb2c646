using System.Numerics;
using Swapwright.Diagnostics;
using Swapwright.Space;

namespace Swapwright.Impact;

/// <summary>The part of the space that a change touches.</summary>
/// <param name="Combinations">Exact number.</param>
/// <param name="Witness">The smallest of them.</param>
/// <param name="Where">All of them in facts.</param>
public sealed record Extent(BigInteger Combinations, Witness Witness, string Where);

/// <summary>Measures regions of the shared space against a stretch of combinations.</summary>
/// <param name="among">What counts.</param>
/// <param name="speaker">The side in whose facts regions are described.</param>
/// <param name="without">Levels of choices that the counted combinations do not have.</param>
internal sealed class Ruler(SharedSpace shared, FactoredRegion among, Side speaker, Side? without = null)
{
    private readonly BigInteger _divisor = without is null ? BigInteger.One : shared.Choices(without);

    public FactoredRegion Among => among;

    /// <summary>null where the region holds none of the combinations that count.</summary>
    public Extent? Measure(Region region)
    {
        var met = among.Narrow(region);
        return met.IsNone
            ? null
            : new Extent(among.Count(met) / _divisor, shared.Witness(among.Witness(met), without?.OnlyHere ?? []), speaker.Describe(met, among));
    }

    public BigInteger Count(Region region) => among.Count(region) / _divisor;
}
