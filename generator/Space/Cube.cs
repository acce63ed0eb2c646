using System.Collections.Immutable;

namespace Swapwright.Space;

/// <summary>A variable held to a set of its values.</summary>
public readonly record struct Constraint(int Variable, ValueSet Values);

/// <summary>A product of value sets: one constraint for each variable that is not free, in the order of the variables.</summary>
public sealed record Cube(ImmutableArray<Constraint> Constraints);

/// <summary>Cubes whose union is a region; where <paramref name="IsComplete"/> is false the maximum cut the list short.</summary>
public sealed record CubeCover(ImmutableArray<Cube> Cubes, bool IsComplete);
