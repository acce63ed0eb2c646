using static Swapwright.Space.NodeTable;

namespace Swapwright.Space;

/// <summary>
/// The recursive operations on diagrams. Two nodes of one level are combined edge by edge: masks are intersected a word
/// at a time, so the work follows the number of distinct children and not the number of values. Depth of recursion is
/// the number of variables.
/// </summary>
internal sealed class RegionAlgebra(NodeTable nodes, OperationCache cache)
{
    public int Not(int a)
    {
        if (a <= All)
        {
            return 1 - a;
        }

        if (cache.TryGet(Operation.Not, a, 0, out var known))
        {
            return known;
        }

        var level = nodes.Level(a);
        var draft = nodes.Begin();
        for (var edge = 0; edge < nodes.Edges(a); edge++)
        {
            var child = Not(nodes.Child(a, edge));
            nodes.Add(level, draft, child, nodes.Mask(a, edge));
        }

        return Remember(Operation.Not, a, 0, nodes.Finish(level, draft));
    }

    /// <summary>And, or, minus.</summary>
    public int Apply(Operation operation, int a, int b)
    {
        if (Trivial(operation, a, b) is { } trivial)
        {
            return trivial;
        }

        if (operation != Operation.Minus && a > b)
        {
            (a, b) = (b, a);
        }

        if (cache.TryGet(operation, a, b, out var known))
        {
            return known;
        }

        var (levelA, levelB) = (nodes.Level(a), nodes.Level(b));
        var level = Math.Min(levelA, levelB);
        var draft = nodes.Begin();
        if (levelA < levelB)
        {
            for (var edge = 0; edge < nodes.Edges(a); edge++)
            {
                var child = Apply(operation, nodes.Child(a, edge), b);
                nodes.Add(level, draft, child, nodes.Mask(a, edge));
            }
        }
        else if (levelB < levelA)
        {
            for (var edge = 0; edge < nodes.Edges(b); edge++)
            {
                var child = Apply(operation, a, nodes.Child(b, edge));
                nodes.Add(level, draft, child, nodes.Mask(b, edge));
            }
        }
        else
        {
            ApplyPairs(operation, a, b, level, draft);
        }

        return Remember(operation, a, b, nodes.Finish(level, draft));
    }

    /// <summary>
    /// The assignments that fall in the region after some value of each variable named by <paramref name="variables"/>,
    /// a chain of nodes one for each variable.
    /// </summary>
    public int Exists(int a, int variables)
    {
        while (a > All && variables > All && nodes.Level(variables) < nodes.Level(a))
        {
            variables = nodes.Child(variables, 0);
        }

        if (a <= All || variables <= All)
        {
            return a;
        }

        if (cache.TryGet(Operation.Exists, a, variables, out var known))
        {
            return known;
        }

        var level = nodes.Level(a);
        if (nodes.Level(variables) == level)
        {
            var rest = nodes.Child(variables, 0);
            var union = None;
            for (var edge = 0; edge < nodes.Edges(a) && union != All; edge++)
            {
                union = Apply(Operation.Or, union, Exists(nodes.Child(a, edge), rest));
            }

            return Remember(Operation.Exists, a, variables, union);
        }

        var draft = nodes.Begin();
        for (var edge = 0; edge < nodes.Edges(a); edge++)
        {
            var child = Exists(nodes.Child(a, edge), variables);
            nodes.Add(level, draft, child, nodes.Mask(a, edge));
        }

        return Remember(Operation.Exists, a, variables, nodes.Finish(level, draft));
    }

    /// <summary>The region seen from one value of each variable of <paramref name="point"/>, a chain of one-value nodes.</summary>
    public int Restrict(int a, int point)
    {
        while (a > All && point > All && nodes.Level(point) < nodes.Level(a))
        {
            point = Inner(point);
        }

        if (a <= All || point <= All)
        {
            return a;
        }

        if (cache.TryGet(Operation.Restrict, a, point, out var known))
        {
            return known;
        }

        var level = nodes.Level(a);
        if (nodes.Level(point) == level)
        {
            var value = ValueSet.LowestOf(nodes.Mask(point, InnerEdge(point)));
            return Remember(Operation.Restrict, a, point, Restrict(nodes.ChildOf(a, value), Inner(point)));
        }

        var draft = nodes.Begin();
        for (var edge = 0; edge < nodes.Edges(a); edge++)
        {
            var child = Restrict(nodes.Child(a, edge), point);
            nodes.Add(level, draft, child, nodes.Mask(a, edge));
        }

        return Remember(Operation.Restrict, a, point, nodes.Finish(level, draft));
    }

    /// <summary>
    /// Whether some assignment of a lies in b (<see cref="Operation.Meets"/>) or outside b (<see cref="Operation.Escapes"/>).
    /// Makes no nodes and stops at the first one found.
    /// </summary>
    public bool Any(Operation operation, int a, int b)
    {
        var outside = operation == Operation.Escapes;
        if (a == None || b == (outside ? All : None) || (a == b && outside))
        {
            return false;
        }

        if (a == b || b <= All || (a == All && b > All))
        {
            return true;
        }

        if (!outside && a > b)
        {
            (a, b) = (b, a);
        }

        if (cache.TryGet(operation, a, b, out var known))
        {
            return known != 0;
        }

        var found = SearchPairs(operation, a, b);
        Remember(operation, a, b, found ? 1 : 0);
        return found;
    }

    private bool SearchPairs(Operation operation, int a, int b)
    {
        var (levelA, levelB) = (nodes.Level(a), nodes.Level(b));
        if (levelA < levelB)
        {
            for (var edge = 0; edge < nodes.Edges(a); edge++)
            {
                if (Any(operation, nodes.Child(a, edge), b))
                {
                    return true;
                }
            }

            return false;
        }

        for (var edgeB = 0; edgeB < nodes.Edges(b); edgeB++)
        {
            if (levelB < levelA)
            {
                if (Any(operation, a, nodes.Child(b, edgeB)))
                {
                    return true;
                }

                continue;
            }

            for (var edgeA = 0; edgeA < nodes.Edges(a); edgeA++)
            {
                if (ValueSet.Meet(nodes.Mask(a, edgeA), nodes.Mask(b, edgeB)) && Any(operation, nodes.Child(a, edgeA), nodes.Child(b, edgeB)))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private void ApplyPairs(Operation operation, int a, int b, int level, Draft draft)
    {
        var (edgesA, edgesB) = (nodes.Edges(a), nodes.Edges(b));
        if ((long)edgesA * edgesB > nodes.Sizes[level])
        {
            // So finely parted that going through the values is the shorter way.
            for (var value = 0; value < nodes.Sizes[level]; value++)
            {
                var child = Apply(operation, nodes.ChildOf(a, value), nodes.ChildOf(b, value));
                nodes.Add(level, draft, child, value);
            }

            return;
        }

        for (var edgeA = 0; edgeA < edgesA; edgeA++)
        {
            for (var edgeB = 0; edgeB < edgesB; edgeB++)
            {
                if (!ValueSet.Meet(nodes.Mask(a, edgeA), nodes.Mask(b, edgeB)))
                {
                    continue;
                }

                var child = Apply(operation, nodes.Child(a, edgeA), nodes.Child(b, edgeB));
                nodes.Add(level, draft, child, nodes.Mask(a, edgeA), nodes.Mask(b, edgeB));
            }
        }
    }

    private static int? Trivial(Operation operation, int a, int b) => operation switch
    {
        Operation.And when a == b || b == All => a,
        Operation.And when a == All => b,
        Operation.And when a == None || b == None => None,
        Operation.Or when a == b || b == None => a,
        Operation.Or when a == None => b,
        Operation.Or when a == All || b == All => All,
        Operation.Minus when a == b || a == None || b == All => None,
        Operation.Minus when b == None => a,
        _ => null,
    };

    private int InnerEdge(int point) => nodes.Child(point, 0) == None ? 1 : 0;

    private int Inner(int point) => nodes.Child(point, InnerEdge(point));

    private int Remember(Operation operation, int a, int b, int result)
    {
        cache.Set(operation, a, b, result, nodes.Count);
        return result;
    }
}
