using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Findings;

/// <summary>What a check looks at.</summary>
public sealed record Examination(KnowledgeBase Base, Resolution Resolution, RegionWords Words);

/// <summary>A cross-check: which finding it gives, and the function that looks for it.</summary>
public sealed record Check(FindingKind Kind, Func<Examination, IEnumerable<Finding>> Run)
{
    /// <summary>Every cross-check, in the order in which they run.</summary>
    public static readonly ImmutableArray<Check> All =
    [
        PinClash.Check, Contradiction.Check, Gap.Check, DeadRule.Check, NoBuild.Check,
    ];
}
