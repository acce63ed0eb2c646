using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A warning that is right to stand, with the reason.</summary>
public sealed record Accept(string Finding, string Because, Place Place);

/// <summary>A dated remark on an entity, for the pages of changes.</summary>
public sealed record DatedNote(DateOnly Date, string Text);

/// <summary>What every knowledge entity carries.</summary>
public abstract record Entity(string Id, string Title, Place Place)
{
    /// <summary>Markdown; empty where nothing is said.</summary>
    public string About { get; init; } = "";

    public ImmutableArray<Accept> Accepts { get; init; } = [];

    public ImmutableArray<DatedNote> Notes { get; init; } = [];
}
