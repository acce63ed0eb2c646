using System.Collections.Immutable;

namespace Swapwright.Space;

/// <summary>A set of values of one variable that has a name: 'year from 1996', 'fuel delivery is carburettor'.</summary>
/// <param name="Cost">How unwelcome the predicate is in a description, at least 1.</param>
public sealed record Predicate(string Text, ValueSet Values, int Cost = 1);

/// <summary>One statement of a description: the variable takes one of the values.</summary>
public sealed record Literal(int Variable, string Text, ValueSet Values);

/// <summary>Literals that hold together; without any, the term says 'everywhere'.</summary>
public sealed record Term(ImmutableArray<Literal> Literals);

/// <summary>
/// A region in words: the union of the terms. Where <paramref name="IsExact"/> is true it is the region, as far as the
/// context reaches; otherwise the terms are part of it and more would be needed. A region that is empty within the
/// context has no term.
/// </summary>
public sealed record Description(ImmutableArray<Term> Terms, bool IsExact)
{
    /// <summary>What the terms say, for the store they were made from.</summary>
    public Region ToRegion(RegionStore store)
        => store.OrAll(Terms.Select(term => store.Product(term.Literals.Select(literal => new Constraint(literal.Variable, literal.Values)))));
}
