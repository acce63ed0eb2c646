using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Knowledge;

/// <summary>A word of the trade, said once in plain words. Texts reach it by <c>term:id</c>.</summary>
public sealed record GlossaryTerm(string Id, string Term, Place Place)
{
    /// <summary>One line without marks, shown where a link rests on the word.</summary>
    public string Short { get; init; } = "";

    /// <summary>Markdown; empty where the short line says it all.</summary>
    public string About { get; init; } = "";

    /// <summary>Other words for the same thing.</summary>
    public ImmutableArray<string> Also { get; init; } = [];

    /// <summary>Links such as <c>term:splice</c> or <c>article:extending-wires</c>, as written.</summary>
    public ImmutableArray<Named> See { get; init; } = [];
}
