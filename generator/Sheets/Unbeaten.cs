using System.Collections.Immutable;

namespace Swapwright.Sheets;

/// <summary>Which of several offers none other beats: the Pareto set.</summary>
public static class Unbeaten
{
    /// <summary>
    /// One offer beats another that is nowhere lower on any count and higher on at least one. Offers that are equal on every count do
    /// not beat each other. A count that is not known is taken as the worst: an offer is not marked for what nobody knows.
    /// </summary>
    /// <param name="offers">Each with as many counts as the others; the lower the better.</param>
    /// <returns>For each offer whether no other beats it.</returns>
    public static ImmutableArray<bool> Of(IReadOnlyList<ImmutableArray<decimal?>> offers) =>
        [.. offers.Select(offer => !offers.Any(other => Beats(other, offer)))];

    private static bool Beats(ImmutableArray<decimal?> one, ImmutableArray<decimal?> other)
    {
        var pairs = one.Zip(other, (mine, theirs) => (Mine: mine ?? decimal.MaxValue, Theirs: theirs ?? decimal.MaxValue)).ToList();
        return pairs.TrueForAll(pair => pair.Mine <= pair.Theirs) && pairs.Exists(pair => pair.Mine < pair.Theirs);
    }
}
