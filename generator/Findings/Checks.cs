using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Findings;

/// <summary>What a check over the space looks at.</summary>
public sealed record Examination(KnowledgeBase Base, Resolution Resolution, RegionWords Words)
{
    private FittedHoses? _hoses;

    /// <summary>The ports and hoses of the buildable combinations, found when first asked for.</summary>
    internal FittedHoses Hoses => _hoses ??= new FittedHoses(Resolution);
}

/// <summary>A cross-check over the space: which finding it gives, and the function that looks for it.</summary>
public sealed record SpaceCheck(FindingKind Kind, Func<Examination, IEnumerable<Finding>> Run);

/// <summary>A cross-check within and between entities, for which the space need not be known.</summary>
public sealed record EntityCheck(FindingKind Kind, Func<KnowledgeBase, IEnumerable<Finding>> Run);

/// <summary>Every cross-check, in the order in which they run.</summary>
public static class Checks
{
    public static readonly ImmutableArray<EntityCheck> OfEntities = [PinClash.Check];

    public static readonly ImmutableArray<SpaceCheck> OfSpace =
    [
        Contradiction.Check, Gap.Check, DeadRule.Check, NoBuild.Check,
        PortClash.Check, OpenPort.Check, HoseSize.Check,
    ];
}
