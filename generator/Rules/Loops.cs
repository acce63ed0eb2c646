namespace Swapwright.Rules;

/// <summary>Loops in a graph of ids: what depends on what.</summary>
internal static class Loops
{
    /// <summary>One loop for each strongly connected part of a graph, beginning at its lowest id: the shortest way back to it.</summary>
    public static IEnumerable<List<string>> Of(IEnumerable<string> ids, Func<string, IEnumerable<string>> next)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var start in Knotted([.. ids], next))
        {
            if (!told.Contains(start) && WayBack(start, next) is { } loop)
            {
                // Whoever is reached and leads back belongs to the same knot: mending it is one piece of work.
                var back = Reached(start, next).SelectMany(from => next(from).Select(to => (from, to))).ToLookup(pair => pair.to, pair => pair.from, StringComparer.Ordinal);
                told.UnionWith(Reached(start, id => back[id]));
                yield return loop;
            }
        }
    }

    /// <summary>The ids, in their order, that are left once whatever leads nowhere else is taken away, again and again: in most graphs none.</summary>
    private static List<string> Knotted(List<string> ids, Func<string, IEnumerable<string>> next)
    {
        var open = new Dictionary<string, int>(StringComparer.Ordinal);
        var before = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        var free = new Stack<string>();
        var met = new Stack<string>(ids);
        while (met.TryPop(out var id))
        {
            if (open.ContainsKey(id))
            {
                continue;
            }

            var count = 0;
            foreach (var there in next(id))
            {
                count++;
                met.Push(there);
                if (!before.TryGetValue(there, out var list))
                {
                    before.Add(there, list = []);
                }

                list.Add(id);
            }

            open.Add(id, count);
            if (count == 0)
            {
                free.Push(id);
            }
        }

        while (free.TryPop(out var id))
        {
            foreach (var earlier in before.GetValueOrDefault(id, []))
            {
                if (--open[earlier] == 0)
                {
                    free.Push(earlier);
                }
            }
        }

        return ids.FindAll(id => open[id] > 0);
    }

    private static HashSet<string> Reached(string start, Func<string, IEnumerable<string>> next)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal);
        var queue = new Queue<string>([start]);
        while (queue.TryDequeue(out var here))
        {
            foreach (var there in next(here).Where(reached.Add))
            {
                queue.Enqueue(there);
            }
        }

        return reached;
    }

    private static List<string>? WayBack(string start, Func<string, IEnumerable<string>> next)
    {
        var from = new Dictionary<string, string>(StringComparer.Ordinal);
        var queue = new Queue<string>([start]);
        while (queue.TryDequeue(out var here))
        {
            foreach (var there in next(here).Order(StringComparer.Ordinal))
            {
                if (there == start)
                {
                    var loop = new List<string> { here };
                    while (loop[^1] != start)
                    {
                        loop.Add(from[loop[^1]]);
                    }

                    loop.Reverse();
                    return loop;
                }

                if (from.TryAdd(there, here))
                {
                    queue.Enqueue(there);
                }
            }
        }

        return null;
    }
}
