using System.Collections.Immutable;

namespace Swapwright.Space;

/// <summary>How variables and values are called in a description.</summary>
public sealed record DisplayNames(Func<int, string> Variable, Func<int, int, string> Value)
{
    /// <summary>The names that the variables of the store carry themselves.</summary>
    public static DisplayNames Of(RegionStore store)
        => new(variable => store.Variables[variable].Name, (variable, value) => store.Variables[variable].Values[value]);
}

/// <summary>
/// Says in few words which combinations a region holds. The region is covered by large cubes that may spill outside the
/// context; each constraint of a cube is then said by the cheapest of: up to three predicates that hold together, up to
/// three of which one holds, the list of values, all values but a few. What the context already implies is not said.
/// </summary>
public sealed class RegionDescriber
{
    // One named fact is worth more than any list; a list pays for each value, an exception for being harder to read.
    private const int ValueCost = 2;
    private const int ExceptCost = 3;
    private const int OrCost = 1;

    private readonly RegionStore _store;
    private readonly IReadOnlyDictionary<int, ImmutableArray<Predicate>> _predicates;
    private readonly DisplayNames _names;

    public RegionDescriber(RegionStore store, IReadOnlyDictionary<int, ImmutableArray<Predicate>> predicates, DisplayNames? names = null)
    {
        _store = store;
        _predicates = predicates;
        _names = names ?? DisplayNames.Of(store);
    }

    /// <param name="region">What to describe.</param>
    /// <param name="context">
    /// The only combinations that count, usually the buildable ones; <see cref="FactoredRegion.Near(Region)"/> gives all of
    /// them that matters for a region and is much the faster to work in.
    /// </param>
    /// <param name="maxTerms">Where more terms would be needed the description is cut and says that it is not exact.</param>
    /// <returns>The same words for the same input; the literals of a term stand in the order of the variables.</returns>
    public Description Describe(Region region, Region context, int maxTerms)
    {
        var cover = _store.Cover(region, maxTerms, context);
        return new Description([.. cover.Cubes.Select(cube => Describe(cube, context))], cover.IsComplete);
    }

    private Term Describe(Cube cube, Region context)
    {
        // A constraint is replaced by what means the same where the context and the other constraints hold, as they read by
        // then: so the cube stays the same within the context after every step.
        var said = ImmutableArray.CreateBuilder<Literal>();
        var open = cube.Constraints;
        foreach (var constraint in cube.Constraints)
        {
            open = open.RemoveAt(0);
            var others = open.Concat(said.Select(literal => new Constraint(literal.Variable, literal.Values)));
            var allowed = _store.AllowedValues(_store.And(context, _store.Product(others)), constraint.Variable);
            said.AddRange(Say(constraint.Variable, constraint.Values.And(allowed), allowed));
        }

        return new Term(said.ToImmutable());
    }

    private IEnumerable<Literal> Say(int variable, ValueSet wanted, ValueSet allowed)
    {
        var missing = allowed.Minus(wanted);
        if (missing.IsEmpty)
        {
            return [];
        }

        var sets = _predicates.TryGetValue(variable, out var known)
            ? known.Select(predicate => (predicate, predicate.Values.And(allowed))).ToList()
            : [];
        var (list, except) = (wanted.Count * ValueCost, (missing.Count * ValueCost) + ExceptCost);

        // Whatever costs more than to name the values is not said, and need not be looked for; at the same cost the earlier way below is taken.
        var all = PredicateChooser.Intersection(sets, wanted, allowed, Math.Min(list, except));
        var any = PredicateChooser.Intersection(sets.Select(set => (set.predicate, allowed.Minus(set.Item2))), missing, allowed, Math.Min(list - 1, except));
        (int Cost, Func<IEnumerable<Literal>> Literals)[] ways =
        [
            (all?.Cost ?? int.MaxValue, () => all!.Value.Parts.Select(part => new Literal(variable, part.Text, part.Values))),
            (list, () => [new Literal(variable, $"{_names.Variable(variable)} is {List(variable, wanted)}", wanted)]),
            (any is { } some ? some.Cost + ((some.Parts.Count - 1) * OrCost) : int.MaxValue, () => [Either(variable, any!.Value.Parts)]),
            (except, () => [new Literal(variable, $"{_names.Variable(variable)} is not {List(variable, missing)}", missing.Not())]),
        ];
        return ways.MinBy(way => way.Cost).Literals();
    }

    private static Literal Either(int variable, IReadOnlyList<Predicate> parts) => new(
        variable,
        string.Join(" or ", parts.Select(part => part.Text)),
        parts.Select(part => part.Values).Aggregate((a, b) => a.Or(b)));

    private string List(int variable, ValueSet values)
    {
        var names = values.Select(value => _names.Value(variable, value)).ToList();
        return names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}";
    }
}
