using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>The ledgers of a combination, in the order of the guide. A ledger of which the base says nothing is left out.</summary>
public sealed class LedgerAssembly(KnowledgeBase kb)
{
    private readonly ImmutableArray<Func<LedgerCase, Ledger>> _ledgers =
        [one => GearingAssembly.Assemble(kb, one), new LoadAssembly(kb).Assemble, one => FuelAssembly.Assemble(kb, one), new TorquesAssembly(kb).Assemble];

    /// <summary>Their ids, as <c>--part</c> and the JSON name them.</summary>
    public static readonly ImmutableArray<string> Ids = ["gearing", "load", "fuel", "torques"];

    public ImmutableArray<Ledger> Assemble(LedgerCase one) => [.. _ledgers.Select(assemble => assemble(one)).Where(ledger => !ledger.IsEmpty)];

    /// <summary>One ledger; null for a name that is none, and where the base says nothing of it.</summary>
    public Ledger? Assemble(LedgerCase one, string id) => Ids.IndexOf(id) is >= 0 and var at && _ledgers[at](one) is { IsEmpty: false } ledger ? ledger : null;
}
