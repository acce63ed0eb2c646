using System.Collections.Immutable;

namespace Swapwright.Space;

/// <summary>Walks that look for single assignments or single variables in a diagram.</summary>
internal sealed class AssignmentSearch(NodeTable nodes)
{
    /// <summary>Every node but None leads to an assignment, so the first edge not to None is always the right one.</summary>
    public int[] Smallest(int node)
    {
        var assignment = new int[nodes.Sizes.Length];
        while (node > NodeTable.All)
        {
            var edge = nodes.Child(node, 0) == NodeTable.None ? 1 : 0;
            assignment[nodes.Level(node)] = ValueSet.LowestOf(nodes.Mask(node, edge));
            node = nodes.Child(node, edge);
        }

        return assignment;
    }

    public int[] Nearest(int node, int[] assignment, int[] costs)
    {
        var least = new Dictionary<int, long>();
        Least(node);
        var result = new int[nodes.Sizes.Length];
        for (var level = 0; level < result.Length; level++)
        {
            if (nodes.Level(node) > level)
            {
                result[level] = costs[level] == 0 ? 0 : assignment[level];
                continue;
            }

            result[level] = Best(node);
            node = nodes.ChildOf(node, result[level]);
        }

        return result;

        // The smallest value by which the least cost is kept: the given one, or the first of an edge. Values of an edge are not tried one by one.
        int Best(int at)
        {
            var (goal, level) = (Least(at), nodes.Level(at));
            var best = int.MaxValue;
            for (var edge = 0; edge < nodes.Edges(at); edge++)
            {
                var below = Least(nodes.Child(at, edge));
                if (below == goal && ValueSet.HasBit(nodes.Mask(at, edge), assignment[level]))
                {
                    best = Math.Min(best, assignment[level]);
                }

                if (below != long.MaxValue && below + costs[level] == goal)
                {
                    best = Math.Min(best, ValueSet.LowestOf(nodes.Mask(at, edge)));
                }
            }

            return best;
        }

        long Least(int at)
        {
            if (at <= NodeTable.All)
            {
                return at == NodeTable.All ? 0 : long.MaxValue;
            }

            if (least.TryGetValue(at, out var known))
            {
                return known;
            }

            var level = nodes.Level(at);
            var best = long.MaxValue;
            for (var edge = 0; edge < nodes.Edges(at); edge++)
            {
                var below = Least(nodes.Child(at, edge));
                if (below != long.MaxValue)
                {
                    var kept = ValueSet.HasBit(nodes.Mask(at, edge), assignment[level]);
                    best = Math.Min(best, kept ? below : below + costs[level]);
                }
            }

            least[at] = best;
            return best;
        }
    }

    /// <summary>The path from a node to All with the fewest nodes; of equal ones, the one by the lowest values.</summary>
    public ImmutableArray<Constraint> ShortestPath(int node)
    {
        var lengths = new Dictionary<int, int>();
        var path = ImmutableArray.CreateBuilder<Constraint>();
        while (node > NodeTable.All)
        {
            var edge = 0;
            while (Length(nodes.Child(node, edge)) != Length(node) - 1)
            {
                edge++;
            }

            var level = nodes.Level(node);
            path.Add(new Constraint(level, ValueSet.FromWords(nodes.Sizes[level], nodes.Mask(node, edge))));
            node = nodes.Child(node, edge);
        }

        return path.ToImmutable();

        int Length(int at)
        {
            if (at <= NodeTable.All)
            {
                return at == NodeTable.All ? 0 : int.MaxValue;
            }

            if (!lengths.TryGetValue(at, out var length))
            {
                length = int.MaxValue;
                for (var edge = 0; edge < nodes.Edges(at); edge++)
                {
                    length = Math.Min(length, Length(nodes.Child(at, edge)));
                }

                lengths[at] = ++length;
            }

            return length;
        }
    }

    public ValueSet AllowedValues(int node, int variable)
    {
        var size = nodes.Sizes[variable];
        var words = new ulong[ValueSet.WordsFor(size)];
        foreach (var at in Reachable(node, variable))
        {
            if (at == NodeTable.None)
            {
                continue;
            }

            if (nodes.Level(at) > variable)
            {
                return ValueSet.Full(size);
            }

            if (nodes.Level(at) < variable)
            {
                continue;
            }

            for (var edge = 0; edge < nodes.Edges(at); edge++)
            {
                if (nodes.Child(at, edge) != NodeTable.None)
                {
                    var mask = nodes.Mask(at, edge);
                    for (var word = 0; word < words.Length; word++)
                    {
                        words[word] |= mask[word];
                    }
                }
            }
        }

        return ValueSet.FromWords(size, words);
    }

    /// <summary>The nodes of a diagram in the order of a walk, each once; nothing below <paramref name="deepest"/> is entered.</summary>
    public IEnumerable<int> Reachable(int node, int deepest = int.MaxValue)
    {
        var seen = new HashSet<int> { node };
        var open = new Stack<int>();
        open.Push(node);
        while (open.TryPop(out var at))
        {
            yield return at;
            if (at <= NodeTable.All || nodes.Level(at) >= deepest)
            {
                continue;
            }

            for (var edge = 0; edge < nodes.Edges(at); edge++)
            {
                if (seen.Add(nodes.Child(at, edge)))
                {
                    open.Push(nodes.Child(at, edge));
                }
            }
        }
    }
}
