using System.Collections.Immutable;

namespace Swapwright.Sheets;

/// <summary>Which of several offers none other beats: the Pareto set.</summary>
public static class Unbeaten
{
    private static readonly Comparer<decimal[]> s_byFirstDifference = Comparer<decimal[]>.Create((one, other) => one.AsSpan().SequenceCompareTo(other));

    /// <summary>
    /// One offer beats another that is nowhere lower on any count and higher on at least one. Offers that are equal on every count do
    /// not beat each other. A count that is not known is taken as the worst: an offer is not marked for what nobody knows.
    /// </summary>
    /// <param name="offers">Each with as many counts as the others; the lower the better.</param>
    /// <returns>For each offer whether no other beats it.</returns>
    public static ImmutableArray<bool> Of(IReadOnlyList<ImmutableArray<decimal?>> offers)
    {
        var known = offers.Select(offer => offer.Select(count => count ?? decimal.MaxValue).ToArray()).ToArray();
        var unbeaten = new bool[known.Length];

        // What beats an offer comes before it when the first count that differs decides, and one that is unbeaten itself is among what does.
        var front = new List<decimal[]>();
        foreach (var at in Enumerable.Range(0, known.Length).OrderBy(at => known[at], s_byFirstDifference))
        {
            if (!front.Exists(other => Beats(other, known[at])))
            {
                unbeaten[at] = true;
                front.Add(known[at]);
            }
        }

        return [.. unbeaten];
    }

    private static bool Beats(decimal[] one, decimal[] other)
    {
        var isLower = false;
        for (var at = 0; at < one.Length; at++)
        {
            if (one[at] > other[at])
            {
                return false;
            }

            isLower |= one[at] < other[at];
        }

        return isLower;
    }
}
