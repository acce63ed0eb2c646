using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>What a check over the space looks at.</summary>
public sealed record Examination(KnowledgeBase Base, Resolution Resolution, RegionWords Words)
{
    private RuleEffects? _effects;
    private FittedHoses? _hoses;
    private FittedLoops? _loops;
    private FittedWirings? _wirings;
    private FittedLedgers? _ledgers;
    private RegionYaml? _yaml;

    /// <summary>What each rule gives, and where; its answers are shared by the checks that ask.</summary>
    internal RuleEffects Effects => _effects ??= new RuleEffects(Resolution);

    /// <summary>The belts of the buildable combinations, found when first asked for.</summary>
    internal FittedLoops Loops => _loops ??= new FittedLoops(Resolution);

    /// <summary>The wiring of the buildable combinations, computed where it is asked for.</summary>
    internal FittedWirings Wirings => _wirings ??= new FittedWirings(Resolution);

    internal FittedLedgers Ledgers => _ledgers ??= new FittedLedgers(Resolution);

    /// <summary>Regions in the knowledge's own words, for what a contributor may write.</summary>
    internal RegionYaml Yaml => _yaml ??= new RegionYaml(Resolution);

    /// <summary>The ports and hoses of the buildable combinations, found when first asked for.</summary>
    internal FittedHoses Hoses => _hoses ??= new FittedHoses(Resolution);
}

/// <summary>A cross-check over the space: which finding it gives, and the function that looks for it.</summary>
public sealed record SpaceCheck(FindingKind Kind, Func<Examination, IEnumerable<Finding>> Run)
{
    /// <summary>It takes long in a large base, so it runs on a thread and over a store of its own.</summary>
    public bool Aside { get; init; }
}

/// <summary>A cross-check within and between entities, for which the space need not be known.</summary>
public sealed record EntityCheck(FindingKind Kind, Func<KnowledgeBase, IEnumerable<Finding>> Run)
{
    /// <summary>
    /// It speaks of what is missing, so it waits until everything can be read: what only a broken file uses would
    /// otherwise be called unused, beside the mistake that is the cause.
    /// </summary>
    public bool AsksForWhole { get; init; }
}

/// <summary>A cross-check that looks at the written text, for what the typed knowledge does not keep.</summary>
public sealed record SourceCheck(FindingKind Kind, Func<SourceTree, KnowledgeBase, IEnumerable<Finding>> Run);

/// <summary>Every cross-check, in the order in which they run.</summary>
public static class Checks
{
    public static readonly ImmutableArray<EntityCheck> OfEntities =
    [
        PinClash.Check, LostId.Check, UnregisteredId.Check, PinType.Check, WireSize.Check, Mate.Check, TaskCycle.Check, TaskOrder.Check, PartUse.Check, Unsourced.Check, Stale.Check, Standing.Check,
    ];

    public static readonly ImmutableArray<SourceCheck> OfSource = [ArticleText.Check, UnwrittenText.Check];

    public static readonly ImmutableArray<SpaceCheck> OfSpace =
    [
        Contradiction.Check, Gap.Check, DeadRule.Check, NoBuild.Check, TaskNeeds.Check, TighteningWhere.Check, ToolWhere.Check,
        ShadowedRule.Check, RedundantRule.Check, IdleOverride.Check, DeadOption.Check, ForcedOption.Check, DefaultClash.Check,
        BeltLength.Check, BeltWrap.Check, BeltPlane.Check, BeltFace.Check, StatedValues.Check, UnheldValue.Check,
        PortClash.Check, OpenPort.Check, IdleClosing.Check, HoseSize.Check,
        NoPlug.Check, MissingInput.Check,
    ];
}
