using Swapwright.Worksheets.Wiring;

namespace Swapwright.Sheets;

/// <summary>The words of the wiring worksheet, as data and pages give them.</summary>
public static class WiringWords
{
    public static string Outcome(PlugOutcome outcome) => outcome switch
    {
        PlugOutcome.StraightIn => "straight-in",
        PlugOutcome.Extended => "extended",
        PlugOutcome.RePinned => "re-pinned",
        PlugOutcome.Changed => "changed",
        PlugOutcome.Lead => "lead",
        PlugOutcome.Added => "added",
        _ => "capped",
    };

    public static string Action(WireAction action) => action switch
    {
        WireAction.Stays => "stays",
        WireAction.Moves => "moves",
        WireAction.Runs => "runs",
        WireAction.Joins => "joins",
        _ => "unreached",
    };

    public static string Action(AdapterAction action) => action switch
    {
        AdapterAction.Join => "join",
        AdapterAction.AddWire => "add-wire",
        AdapterAction.Cap => "cap",
        _ => "missing",
    };
}
