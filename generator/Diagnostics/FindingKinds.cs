using System.Collections.Immutable;

namespace Swapwright.Diagnostics;

/// <summary>The ledger of every finding id. Ids are never re-used; a retired one stays listed with the reason.</summary>
public static class FindingKinds
{
    public static readonly FindingKind Schema = new("schema", Severity.Error, "File does not have the form its kind asks for");
    public static readonly FindingKind Reference = new("reference", Severity.Error, "Name that nothing carries");
    public static readonly FindingKind Vocabulary = new("vocabulary", Severity.Error, "Fact or value that the vocabulary does not know");
    public static readonly FindingKind Unit = new("unit", Severity.Error, "Quantity of the wrong dimension or out of plausible range");
    public static readonly FindingKind PinClash = new("pin-clash", Severity.Error, "Cavity used twice or beyond the connector");
    public static readonly FindingKind Contradiction = new("contradiction", Severity.Error, "Two rules give different answers");
    public static readonly FindingKind Gap = new("gap", Severity.Error, "Position without an answer");
    public static readonly FindingKind DeadRule = new("dead-rule", Severity.Error, "Rule that no buildable combination meets");
    public static readonly FindingKind OverrideCycle = new("override-cycle", Severity.Error, "Overrides in a loop");
    public static readonly FindingKind AnswerCycle = new("answer-cycle", Severity.Error, "Answers that depend on each other in a loop");
    public static readonly FindingKind NoBuild = new("no-build", Severity.Error, "Chassis and donor with no buildable combination");
    public static readonly FindingKind LostId = new("lost-id", Severity.Error, "Published id that is gone");
    public static readonly FindingKind UnregisteredId = new("unregistered-id", Severity.Warning, "Id that the register does not name");
    public static readonly FindingKind PinType = new("pin-type", Severity.Error, "Signals that cannot meet in one cavity");
    public static readonly FindingKind WireSize = new("wire-size", Severity.Error, "Conductor or cavity too small for its current, or conductor outside the connector's range");
    public static readonly FindingKind Mate = new("mate", Severity.Warning, "Connectors that cannot go together");
    public static readonly FindingKind TaskCycle = new("task-cycle", Severity.Error, "Tasks in a loop");
    public static readonly FindingKind TaskOrder = new("task-order", Severity.Warning, "Task that cannot be done where it stands");
    public static readonly FindingKind PartUse = new("part-use", Severity.Warning, "Part that nothing uses");
    public static readonly FindingKind Unsourced = new("unsourced", Severity.Warning, "Rule without a source");
    public static readonly FindingKind Stale = new("stale", Severity.Warning, "Checked too long ago, or never");
    public static readonly FindingKind Standing = new("standing", Severity.Warning, "Safety that rests on a report alone");
    public static readonly FindingKind Article = new("article", Severity.Warning, "Link, picture or heading that a reader cannot follow");
    public static readonly FindingKind IdleAccept = new("idle-accept", Severity.Warning, "Acceptance that meets nothing");

    public static readonly FindingKind ShadowedRule = new("shadowed-rule", Severity.Warning, "Rule overridden wherever it applies");
    public static readonly FindingKind RedundantRule = new("redundant-rule", Severity.Warning, "Rule whose removal changes nothing");
    public static readonly FindingKind IdleOverride = new("idle-override", Severity.Warning, "Override that silences nothing");
    public static readonly FindingKind DeadOption = new("dead-option", Severity.Warning, "Option that no buildable combination takes");
    public static readonly FindingKind ForcedOption = new("forced-option", Severity.Note, "Choice with one option left");
    public static readonly FindingKind DefaultClash = new("default-clash", Severity.Error, "Recommended options that cannot be built together");
    public static readonly FindingKind BeltLength = new("belt-length", Severity.Error, "No belt that fits a loop");
    public static readonly FindingKind BeltWrap = new("belt-wrap", Severity.Warning, "Belt that embraces a pulley too little");
    public static readonly FindingKind BeltPlane = new("belt-plane", Severity.Warning, "Pulleys of a belt out of plane");
    public static readonly FindingKind BeltFace = new("belt-face", Severity.Warning, "Pulley that does not suit the face of its belt");
    public static readonly FindingKind StatedValue = new("stated-value", Severity.Error, "Stated number that differs from the computed one");
    public static readonly FindingKind UnheldValue = new("unheld-value", Severity.Note, "Stated number in too many cases to compute");

    public static readonly FindingKind PortClash = new("port-clash", Severity.Error, "Port that two hoses want at once");
    public static readonly FindingKind OpenPort = new("open-port", Severity.Error, "Port left open");
    public static readonly FindingKind IdleClosing = new("idle-closing", Severity.Warning, "Closing of a port that is not left open");
    public static readonly FindingKind HoseSize = new("hose-size", Severity.Error, "Hose of the wrong size or class");

    public static readonly FindingKind NoPlug = new("no-plug", Severity.Warning, "Part of another vehicle that states no plug");

    public static readonly FindingKind MissingInput = new("missing-input", Severity.Note, "Fact left out that a worksheet wants");

    public static readonly FindingKind Unwritten = new("unwritten", Severity.Warning, "Text of a draft that is still to be written");

    /// <summary>All kinds, in the order in which the documentation lists them.</summary>
    public static readonly ImmutableArray<FindingKind> All =
    [
        Schema, Reference, Vocabulary, Unit, PinClash, Contradiction, Gap, DeadRule, OverrideCycle, AnswerCycle, NoBuild,
        LostId, UnregisteredId,
        PinType, WireSize, Mate, TaskCycle, TaskOrder, PartUse, Unsourced, Stale, Standing, Article, IdleAccept,
        ShadowedRule, RedundantRule, IdleOverride, DeadOption, ForcedOption, DefaultClash, BeltLength, BeltWrap, BeltPlane, BeltFace, StatedValue, UnheldValue,
        PortClash, OpenPort, IdleClosing, HoseSize,
        NoPlug, MissingInput, Unwritten,
    ];
}
