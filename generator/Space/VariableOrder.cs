namespace Swapwright.Space;

/// <summary>
/// An order of variables that tends to keep diagrams small. Pinned variables come first (the entities: every slice by
/// chassis and donor is then a walk of two steps). The others start with the most used first and are drawn together
/// round by round: each condition pulls its variables to the mean of their places (centre of gravity, as in the FORCE
/// heuristic of Aloul, Markov and Sakallah, "FORCE: a fast and easy-to-implement variable-ordering heuristic", 2003,
/// named from memory). Kept is the round with the least total span, a wide domain weighing more the lower it lies.
/// </summary>
public static class VariableOrder
{
    private const int Rounds = 40;

    /// <param name="sizes">Number of values of each variable.</param>
    /// <param name="supports">For each condition, the variables it names.</param>
    /// <param name="pinned">Variables that come first, in this order.</param>
    /// <returns>At each level, the number of the variable that stands there.</returns>
    public static int[] Find(IReadOnlyList<int> sizes, IEnumerable<IReadOnlyCollection<int>> supports, IReadOnlyList<int>? pinned = null)
    {
        pinned ??= [];
        // Conditions on the same variables pull alike: each such set once, with its weight.
        List<(int[] Variables, int Weight)> conditions =
        [
            .. supports.Select(support => support.Distinct().Order().ToArray()).Where(support => support.Length > 1)
                .GroupBy(support => string.Join(',', support), StringComparer.Ordinal).Select(same => (same.First(), same.Count())),
        ];
        var uses = new int[sizes.Count];
        foreach (var (variables, weight) in conditions)
        {
            foreach (var variable in variables)
            {
                uses[variable] += weight;
            }
        }

        int[] order =
        [
            .. pinned,
            .. Enumerable.Range(0, sizes.Count).Except(pinned)
                .OrderByDescending(variable => uses[variable]).ThenByDescending(variable => sizes[variable]).ThenBy(variable => variable),
        ];
        var best = order;
        var least = Cost(order, conditions, sizes);
        for (var round = 0; round < Rounds; round++)
        {
            order = Draw(order, conditions, pinned.Count);
            var cost = Cost(order, conditions, sizes);
            if (cost < least)
            {
                (best, least) = (order, cost);
            }
        }

        return best;
    }

    private static int[] Draw(int[] order, List<(int[] Variables, int Weight)> conditions, int pinned)
    {
        var place = Places(order);
        var pull = new double[order.Length];
        var pulls = new int[order.Length];
        foreach (var (variables, weight) in conditions)
        {
            var centre = variables.Average(variable => place[variable]);
            foreach (var variable in variables)
            {
                pull[variable] += weight * centre;
                pulls[variable] += weight;
            }
        }

        return
        [
            .. order.Take(pinned),
            .. order.Skip(pinned).OrderBy(variable => pulls[variable] == 0 ? order.Length : pull[variable] / pulls[variable]).ThenBy(variable => place[variable]),
        ];
    }

    private static double Cost(int[] order, List<(int[] Variables, int Weight)> conditions, IReadOnlyList<int> sizes)
    {
        var place = Places(order);
        var cost = 0.0;
        foreach (var (variables, weight) in conditions)
        {
            var first = variables.Min(variable => place[variable]);
            cost += weight * variables.Sum(variable => (place[variable] - first) * Math.Log2(sizes[variable] + 1));
        }

        return cost;
    }

    private static int[] Places(int[] order)
    {
        var place = new int[order.Length];
        for (var level = 0; level < order.Length; level++)
        {
            place[order[level]] = level;
        }

        return place;
    }
}
