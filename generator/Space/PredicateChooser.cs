namespace Swapwright.Space;

/// <summary>
/// Finds the cheapest few sets whose intersection is a wanted set. Unions are found the same way through complements.
/// Bounded: of many candidates the cheapest and closest are tried.
/// </summary>
internal static class PredicateChooser
{
    public const int MostParts = 3;
    private const int MostCandidates = 40;

    /// <summary>The chosen predicates in the order they were given and their total cost; null where none will do.</summary>
    /// <param name="sets">Each predicate with the set it stands for, already cut to the allowed values.</param>
    /// <param name="wanted">The set to be met exactly.</param>
    /// <param name="all">The allowed values; a set that holds them all says nothing.</param>
    /// <param name="most">The highest cost that is of use.</param>
    public static (IReadOnlyList<Predicate> Parts, int Cost)? Intersection(
        IEnumerable<(Predicate Predicate, ValueSet Values)> sets, ValueSet wanted, ValueSet all, int most = int.MaxValue - 1)
    {
        var candidates = sets.Index()
            .Where(entry => wanted.IsSubsetOf(entry.Item.Values) && !all.IsSubsetOf(entry.Item.Values))
            .GroupBy(entry => entry.Item.Values)
            .Select(same => same.MinBy(entry => (entry.Item.Predicate.Cost, entry.Index)))
            .OrderBy(entry => entry.Item.Values.Count).ThenBy(entry => entry.Item.Predicate.Cost).ThenBy(entry => entry.Index)
            .Take(MostCandidates)
            .ToList();
        List<int>? best = null;
        var least = most + 1;
        var cheapest = candidates.Count == 0 ? 0 : candidates.Min(candidate => candidate.Item.Predicate.Cost);
        for (var parts = 1; parts <= MostParts; parts++)
        {
            Search(all, 0, parts, 0, []);
        }

        return best is null ? null : ([.. best.OrderBy(i => candidates[i].Index).Select(i => candidates[i].Item.Predicate)], least);

        void Search(ValueSet met, int from, int parts, int cost, List<int> chosen)
        {
            if (parts == 0)
            {
                if (cost < least && met.IsSubsetOf(wanted))
                {
                    (best, least) = ([.. chosen], cost);
                }

                return;
            }

            for (var i = from; i < candidates.Count; i++)
            {
                var next = cost + candidates[i].Item.Predicate.Cost;
                if (next + ((parts - 1) * cheapest) < least)
                {
                    chosen.Add(i);
                    Search(met.And(candidates[i].Item.Values), i + 1, parts - 1, next, chosen);
                    chosen.RemoveAt(chosen.Count - 1);
                }
            }
        }
    }
}
