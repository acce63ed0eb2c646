using System.Collections.Immutable;

namespace Swapwright.Space;

/// <summary>One dimension of the space. Its index in the store is its level in the order of the diagram.</summary>
public sealed record Variable(string Name, ImmutableArray<string> Values)
{
    /// <summary>Number of values; at least one.</summary>
    public int Size => Values.Length;
}
