using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>A piece of a knowledge file that knows where it stands. Lines and columns (UTF-16 code units) count from 1.</summary>
public abstract class SourceNode
{
    private protected SourceNode(Place place) => Place = place;

    /// <summary>From the first character to one past the last.</summary>
    public Place Place { get; }
}

/// <summary>A list.</summary>
public sealed class SequenceNode : SourceNode
{
    internal SequenceNode(Place place, ImmutableArray<SourceNode> items)
        : base(place) => Items = items;

    public ImmutableArray<SourceNode> Items { get; }
}
