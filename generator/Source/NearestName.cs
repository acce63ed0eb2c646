namespace Swapwright.Source;

/// <summary>The known name that a mistyped one most likely stood for.</summary>
public static class NearestName
{
    private const int LongestCompared = 80;

    /// <summary>
    /// The known name at the smallest edit distance (insert, remove, replace, swap of two neighbours; case does not
    /// count), of equal ones the first in ordinal order. Null where a third of the letters, or more than three, differ.
    /// </summary>
    public static string? Of(string mistyped, IEnumerable<string> known)
    {
        if (mistyped.Length is 0 or > LongestCompared)
        {
            return null;
        }

        var typed = mistyped.ToLowerInvariant();
        string? best = null;
        var bestDistance = int.MaxValue;
        foreach (var name in known)
        {
            if (name.Length is 0 or > LongestCompared || string.Equals(name, mistyped, StringComparison.Ordinal))
            {
                continue;
            }

            var reach = Math.Clamp(Math.Max(typed.Length, name.Length) / 3, 1, 3);
            if (Math.Abs(typed.Length - name.Length) > reach)
            {
                continue;
            }

            var distance = Distance(typed, name.ToLowerInvariant());
            var better = distance < bestDistance || (distance == bestDistance && string.CompareOrdinal(name, best) < 0);
            if (distance <= reach && distance < Math.Max(typed.Length, name.Length) && better)
            {
                (best, bestDistance) = (name, distance);
            }
        }

        return best;
    }

    /// <summary>Optimal string alignment distance, over three rows.</summary>
    private static int Distance(string from, string to)
    {
        var (before, previous, current) = (new int[to.Length + 1], new int[to.Length + 1], new int[to.Length + 1]);
        for (var j = 0; j <= to.Length; j++)
        {
            previous[j] = j;
        }

        for (var i = 1; i <= from.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var replaced = previous[j - 1] + (from[i - 1] == to[j - 1] ? 0 : 1);
                var least = Math.Min(replaced, Math.Min(previous[j], current[j - 1]) + 1);
                var swapped = i > 1 && j > 1 && from[i - 1] == to[j - 2] && from[i - 2] == to[j - 1];
                current[j] = swapped ? Math.Min(least, before[j - 2] + 1) : least;
            }

            (before, previous, current) = (previous, current, before);
        }

        return previous[to.Length];
    }
}
