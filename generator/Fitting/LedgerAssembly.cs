using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>The ledgers of a combination, in the order of the guide. A ledger of which the base says nothing is left out.</summary>
public sealed class LedgerAssembly(KnowledgeBase kb)
{
    private static readonly ImmutableArray<Func<KnowledgeBase, LedgerCase, Ledger>> s_ledgers = [GearingAssembly.Assemble, LoadAssembly.Assemble, FuelAssembly.Assemble, TorquesAssembly.Assemble];

    /// <summary>Their ids, as <c>--part</c> and the JSON name them.</summary>
    public static readonly ImmutableArray<string> Ids = ["gearing", "load", "fuel", "torques"];

    public ImmutableArray<Ledger> Assemble(LedgerCase one) => [.. s_ledgers.Select(assemble => assemble(kb, one)).Where(ledger => !ledger.IsEmpty)];

    /// <summary>One ledger; null for a name that is none, and where the base says nothing of it.</summary>
    public Ledger? Assemble(LedgerCase one, string id) => Ids.IndexOf(id) is >= 0 and var at && s_ledgers[at](kb, one) is { IsEmpty: false } ledger ? ledger : null;
}
