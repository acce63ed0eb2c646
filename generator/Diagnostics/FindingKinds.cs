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

    public static readonly FindingKind PortClash = new("port-clash", Severity.Error, "Port that two hoses want at once");
    public static readonly FindingKind OpenPort = new("open-port", Severity.Error, "Port left open");
    public static readonly FindingKind HoseSize = new("hose-size", Severity.Error, "Hose of the wrong size or class");

    /// <summary>All kinds, in the order in which the documentation lists them.</summary>
    public static readonly ImmutableArray<FindingKind> All =
    [
        Schema, Reference, Vocabulary, Unit, PinClash, Contradiction, Gap, DeadRule, OverrideCycle, AnswerCycle, NoBuild,
        PortClash, OpenPort, HoseSize,
    ];
}
