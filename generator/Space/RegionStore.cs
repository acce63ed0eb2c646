using System.Collections.Immutable;
using System.Numerics;

namespace Swapwright.Space;

/// <summary>
/// Regions of the product of finitely many finite variables, kept as ordered decision diagrams with multi-valued nodes.
/// Every operation works on the diagrams and none lists assignments. Equal regions are equal values. Not safe for use
/// by several threads at once.
/// </summary>
public sealed class RegionStore
{
    /// <summary>
    /// Nodes that a base from strangers may take. The shipped one takes some fifty thousand; what needs many times more ties its
    /// choices together without end, and would exhaust the machine.
    /// </summary>
    public const int NodesOfABase = 4_000_000;

    private readonly NodeTable _nodes;
    private readonly OperationCache _results;
    private readonly RegionAlgebra _algebra;
    private readonly RegionCounter _counter;
    private readonly AssignmentSearch _search;
    private readonly CubeSearch _cubes;
    private readonly Dictionary<Region, Bounds> _bounds = [];

    /// <param name="variables">The variables in the order of the diagram; see <see cref="VariableOrder"/>.</param>
    /// <param name="nodeLimit">Number of nodes beyond which <see cref="SpaceLimitException"/> is thrown.</param>
    public RegionStore(ImmutableArray<Variable> variables, int? nodeLimit = null)
    {
        foreach (var variable in variables)
        {
            ArgumentOutOfRangeException.ThrowIfZero(variable.Size, nameof(variables));
        }

        Variables = variables;
        _nodes = new NodeTable([.. variables.Select(variable => variable.Size)], Math.Min(nodeLimit ?? NodeTable.HardLimit, NodeTable.HardLimit));
        _results = new OperationCache();
        _algebra = new RegionAlgebra(_nodes, _results);
        _counter = new RegionCounter(_nodes);
        _search = new AssignmentSearch(_nodes);
        _cubes = new CubeSearch(this);
    }

    private RegionStore(RegionStore other)
    {
        Variables = other.Variables;
        _nodes = new NodeTable(other._nodes);
        _results = new OperationCache(other._results);
        _algebra = new RegionAlgebra(_nodes, _results);
        _counter = new RegionCounter(_nodes);
        _search = new AssignmentSearch(_nodes);
        _cubes = new CubeSearch(this);
    }

    public ImmutableArray<Variable> Variables { get; }

    /// <summary>Nodes made so far, the two terminals included.</summary>
    public int NodeCount => _nodes.Count;

    /// <summary>Number of assignments of the whole space.</summary>
    public BigInteger Size => _counter.Count(NodeTable.All);

    /// <summary>A store for another thread, in which every region made so far is the same value. Regions made later are not shared.</summary>
    public RegionStore Copy() => new(this);

    /// <summary>The assignments that give the variable one of the values.</summary>
    public Region Where(int variable, ValueSet values) => new(Node(variable, values, NodeTable.All));

    /// <summary>The assignments that meet every constraint; several constraints on one variable are intersected.</summary>
    public Region Product(IEnumerable<Constraint> constraints)
    {
        var node = NodeTable.All;
        foreach (var group in constraints.GroupBy(constraint => constraint.Variable).OrderByDescending(group => group.Key))
        {
            node = Node(group.Key, group.Select(constraint => constraint.Values).Aggregate((a, b) => a.And(b)), node);
        }

        return new Region(node);
    }

    public Region Product(Cube cube) => Product(cube.Constraints);

    public Region And(Region a, Region b) => new(_algebra.Apply(Operation.And, a.Id, b.Id));

    public Region Or(Region a, Region b) => new(_algebra.Apply(Operation.Or, a.Id, b.Id));

    /// <summary>What is in the first region and not in the second.</summary>
    public Region Minus(Region a, Region b) => new(_algebra.Apply(Operation.Minus, a.Id, b.Id));

    public Region Not(Region a) => new(_algebra.Not(a.Id));

    /// <summary>The intersection; of no regions, everything.</summary>
    public Region AndAll(IEnumerable<Region> regions) => Fold(regions, And, Region.All);

    /// <summary>The union; of no regions, nothing.</summary>
    public Region OrAll(IEnumerable<Region> regions) => Fold(regions, Or, Region.None);

    /// <summary>Whether the first region lies within the second.</summary>
    public bool Implies(Region a, Region b) => !_algebra.Any(Operation.Escapes, a.Id, b.Id);

    public bool Intersects(Region a, Region b) => _algebra.Any(Operation.Meets, a.Id, b.Id);

    /// <summary>Whether some assignment lies in all of some regions and in none of others. No region is made of them.</summary>
    public bool Intersects(ReadOnlySpan<Region> within, ReadOnlySpan<Region> outside)
    {
        Span<int> roots = stackalloc int[within.Length + outside.Length];
        var count = 0;
        foreach (var region in within)
        {
            roots[count++] = region.Id;
        }

        // What does not meet the others anyway would only part the values that the search goes through.
        foreach (var region in outside)
        {
            if (MeetsAll(region, within))
            {
                roots[count++] = ~region.Id;
            }
        }

        return new MeetingSearch(_nodes, _algebra).Meet(roots[..count]);
    }

    private bool MeetsAll(Region region, ReadOnlySpan<Region> others)
    {
        foreach (var other in others)
        {
            if (!Intersects(region, other))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>The assignments that fall in the region once the removed variables may take some other value.</summary>
    public Region Project(Region region, IEnumerable<int> removed)
    {
        var chain = NodeTable.All;
        foreach (var variable in removed.Distinct().OrderDescending())
        {
            chain = Node(variable, ValueSet.Of(Variables[variable].Size, 0), chain);
        }

        return new Region(_algebra.Exists(region.Id, chain));
    }

    /// <summary>The region as seen with the variable held at a value; the result does not depend on the variable.</summary>
    public Region Restrict(Region region, int variable, int value) => Slice(region, [(variable, value)]);

    /// <summary>The region as seen with several variables held; the result does not depend on them.</summary>
    public Region Slice(Region region, IEnumerable<(int Variable, int Value)> held) => Slice(region, Point(held));

    /// <summary>The same for variables that many regions are seen with.</summary>
    /// <param name="point">See <see cref="Point"/>.</param>
    public Region Slice(Region region, Region point) => new(_algebra.Restrict(region.Id, point.Id));

    /// <summary>The assignments that give several variables a value each.</summary>
    public Region Point(IEnumerable<(int Variable, int Value)> held)
    {
        var point = NodeTable.All;
        foreach (var (variable, value) in held.OrderByDescending(pair => pair.Variable))
        {
            point = Node(variable, ValueSet.Of(Variables[variable].Size, value), point);
        }

        return new Region(point);
    }

    /// <summary>Exact number of assignments, over all variables.</summary>
    public BigInteger Count(Region region) => _counter.Count(region.Id);

    /// <summary>Exact number of different assignments to some of the variables that the region leaves possible.</summary>
    public BigInteger CountWithin(Region region, IReadOnlyCollection<int> variables)
    {
        var others = Enumerable.Range(0, Variables.Length).Except(variables).ToList();
        return Count(Project(region, others)) / SizeOf(others);
    }

    /// <summary>The smallest assignment of the region, by value index, earlier variables first.</summary>
    /// <exception cref="ArgumentException">The region is empty.</exception>
    public int[] Witness(Region region)
    {
        RequireSome(region);
        return _search.Smallest(region.Id);
    }

    /// <summary>
    /// The assignment of the region that differs from a given one in the fewest variables, or at the least cost where each
    /// variable has one (at least 0, counted once whatever the new value; with none, each counts 1); the smallest of several.
    /// </summary>
    /// <exception cref="ArgumentException">The region is empty, or a list does not fit the variables.</exception>
    public int[] Nearest(Region region, ReadOnlySpan<int> assignment, ReadOnlySpan<int> costs = default)
    {
        RequireSome(region);
        RequireLength(assignment.Length, nameof(assignment));
        if (costs.IsEmpty)
        {
            return _search.Nearest(region.Id, assignment.ToArray(), [.. Enumerable.Repeat(1, Variables.Length)]);
        }

        RequireLength(costs.Length, nameof(costs));
        foreach (var cost in costs)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(cost, nameof(costs));
        }

        return _search.Nearest(region.Id, assignment.ToArray(), costs.ToArray());
    }

    public bool Contains(Region region, ReadOnlySpan<int> assignment)
    {
        RequireLength(assignment.Length, nameof(assignment));
        var node = region.Id;
        while (node > NodeTable.All)
        {
            node = _nodes.ChildOf(node, assignment[_nodes.Level(node)]);
        }

        return node == NodeTable.All;
    }

    /// <summary>The variables that the region depends on, rising.</summary>
    public ImmutableArray<int> Support(Region region)
    {
        var variables = ImmutableArray.CreateBuilder<int>();
        var support = _nodes.Support(region.Id);
        for (var variable = 0; variable < Variables.Length; variable++)
        {
            if (ValueSet.HasBit(support, variable))
            {
                variables.Add(variable);
            }
        }

        return variables.DrainToImmutable();
    }

    /// <summary>Whether the region depends on one of the variables of a set.</summary>
    internal bool DependsOn(Region region, ValueSet variables) => ValueSet.Meet(_nodes.Support(region.Id), variables.Words);

    /// <summary>A box around the region: for each variable the values that it takes there.</summary>
    internal Bounds BoundsOf(Region region)
    {
        if (!_bounds.TryGetValue(region, out var bounds))
        {
            bounds = Bounds.Of(_nodes, region.Id);
            _bounds.Add(region, bounds);
        }

        return bounds;
    }

    /// <summary>The values that the variable takes in the region.</summary>
    public ValueSet AllowedValues(Region region, int variable) => _search.AllowedValues(region.Id, variable);

    /// <summary>
    /// Cubes that together make the region, in a fixed order, largest seeds first; they may overlap. Given a region to care
    /// about, the cubes hold all of the region there, nothing else of it, and what they like outside. Stops at the maximum.
    /// </summary>
    public IEnumerable<Cube> Cubes(Region region, int maximum, Region? care = null)
        => _cubes.Enumerate(region, care ?? Region.All).Take(maximum);

    /// <summary>As <see cref="Cubes"/>, listed at once and rid of cubes that the others make needless.</summary>
    public CubeCover Cover(Region region, int maximum, Region? care = null) => _cubes.Cover(region, care ?? Region.All, maximum);

    /// <summary>Number of assignments to some variables, free of any condition.</summary>
    internal BigInteger SizeOf(IEnumerable<int> variables)
        => variables.Aggregate(BigInteger.One, (product, variable) => product * Variables[variable].Size);

    /// <summary>Number of assignments to the variables from a level on, for a region that depends on no earlier one.</summary>
    internal BigInteger CountFrom(int level, Region region) => _counter.CountFrom(level, region.Id);

    /// <summary>
    /// The values of the variable at a level, parted by what they make of several regions that depend on no earlier one:
    /// for each class its values and the regions seen from there.
    /// </summary>
    internal List<(ValueSet Values, Region[] Children)> Classes(int level, Region[] regions)
    {
        var classes = new List<(ValueSet Values, Region[] Children)> { (ValueSet.Full(Variables[level].Size), [.. regions]) };
        for (var i = 0; i < regions.Length; i++)
        {
            var node = regions[i].Id;
            if (_nodes.Level(node) > level)
            {
                continue;
            }

            var finer = new List<(ValueSet Values, Region[] Children)>();
            foreach (var (values, children) in classes)
            {
                for (var edge = 0; edge < _nodes.Edges(node); edge++)
                {
                    if (ValueSet.Meet(values.Words, _nodes.Mask(node, edge)))
                    {
                        Region[] seen = [.. children];
                        seen[i] = new Region(_nodes.Child(node, edge));
                        finer.Add((values.And(ValueSet.FromWords(values.Size, _nodes.Mask(node, edge))), seen));
                    }
                }
            }

            classes = finer;
        }

        return classes;
    }

    /// <summary>The first variable that a region depends on, and what the region leaves of the others for each class of its values.</summary>
    /// <exception cref="ArgumentException">The region depends on none.</exception>
    internal (int Variable, IReadOnlyList<(ValueSet Values, Region Child)> Edges) Top(Region region)
    {
        if (region.IsNone || region.IsAll)
        {
            throw new ArgumentException("The region depends on no variable.", nameof(region));
        }

        var level = _nodes.Level(region.Id);
        return (level, [.. Classes(level, [region]).Select(cell => (cell.Values, cell.Children[0]))]);
    }

    /// <summary>The path of a region that holds the fewest variables, as a cube.</summary>
    internal Cube ShortestPath(Region region) => new(_search.ShortestPath(region.Id));

    private int Node(int variable, ValueSet values, int inner)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(variable);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(variable, Variables.Length);
        if (values.Size != Variables[variable].Size)
        {
            throw new ArgumentException($"The set of values is not one of '{Variables[variable].Name}'.", nameof(values));
        }

        if (values.IsEmpty)
        {
            return NodeTable.None;
        }

        var draft = _nodes.Begin();
        _nodes.Add(variable, draft, inner, values.Words);
        if (!values.IsFull)
        {
            _nodes.Add(variable, draft, NodeTable.None, values.Not().Words);
        }

        return _nodes.Finish(variable, draft);
    }

    private static Region Fold(IEnumerable<Region> regions, Func<Region, Region, Region> combine, Region empty)
    {
        // In pairs: the halves stay small, where one running total would be walked once for every region.
        var list = regions.ToList();
        if (list.Count > 2)
        {
            list = [.. list.Distinct()];

            // What decides the result by itself spares all other work.
            var deciding = combine(Region.All, Region.None);
            if (list.Contains(deciding))
            {
                return deciding;
            }
        }

        while (list.Count > 1)
        {
            var half = (list.Count + 1) / 2;
            for (var i = 0; i < half; i++)
            {
                list[i] = (2 * i) + 1 < list.Count ? combine(list[2 * i], list[(2 * i) + 1]) : list[2 * i];
            }

            list.RemoveRange(half, list.Count - half);
        }

        return list.Count == 0 ? empty : list[0];
    }

    private static void RequireSome(Region region)
    {
        if (region.IsNone)
        {
            throw new ArgumentException("The region is empty.", nameof(region));
        }
    }

    private void RequireLength(int length, string name)
    {
        if (length != Variables.Length)
        {
            throw new ArgumentException("One entry a variable is needed.", name);
        }
    }
}
