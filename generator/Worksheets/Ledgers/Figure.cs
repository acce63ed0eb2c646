using System.Collections.Immutable;

namespace Swapwright.Worksheets.Ledgers;

/// <summary>How a figure stands to its limit.</summary>
public enum FigureWeight
{
    Plain,
    Good,
    Caution,
    Bad,
}

/// <summary>One computed number of a ledger.</summary>
/// <param name="Id">Within its ledger, kebab-case.</param>
/// <param name="Value">In <paramref name="Unit"/>; always finite.</param>
/// <param name="Unit">Symbol of the unit that a reader sees; empty for a plain number.</param>
public sealed record Figure(string Id, string Title, double Value, string Unit)
{
    /// <summary>As many as an instrument in a workshop reads.</summary>
    public int Decimals { get; init; } = 1;

    /// <summary>What was computed, in symbols that <see cref="From"/> explains.</summary>
    public string Formula { get; init; } = "";

    /// <summary>Where the formula is published, or "common practice, no source".</summary>
    public string Source { get; init; } = "";

    /// <summary>What went in.</summary>
    public ImmutableArray<FigureInput> From { get; init; } = [];

    /// <summary>What it means for the builder, in a sentence or less.</summary>
    public string Remark { get; init; } = "";

    public FigureWeight Weight { get; init; }

    /// <summary>A step on the way: told under <c>why</c> and in the JSON, not on the page.</summary>
    public bool IsStep { get; init; }
}

/// <summary>A number that went into a figure.</summary>
/// <param name="Origin">Whose it is: <c>chassis quillet-m-94</c>, <c>part slim-fan</c>, or another figure.</param>
public sealed record FigureInput(string Title, double Value, string Unit, string Origin)
{
    /// <summary>The title is a name, and keeps its capital within a sentence.</summary>
    public bool IsName { get; init; }
}
