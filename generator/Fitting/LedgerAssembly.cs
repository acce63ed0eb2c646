using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>The ledgers of a combination, in the order of the guide. A ledger of which the base says nothing is left out.</summary>
public sealed class LedgerAssembly
{
    /// <summary>Their ids, as <c>--part</c> and the JSON name them.</summary>
    public static readonly ImmutableArray<string> Ids = ["gearing", "load", "fuel", "torques"];

    private readonly ImmutableArray<Kind> _kinds;

    public LedgerAssembly(KnowledgeBase kb)
    {
        var load = new LoadAssembly(kb);
        var torques = new TorquesAssembly(kb);

        // Each is shown what it goes by and nothing else, so that combinations that are alike in that may share it.
        _kinds =
        [
            new Kind(GearingAssembly.Speaks(kb), GoesByWork: false, one => one with { Ecu = null }, one => GearingAssembly.Assemble(kb, one)),
            new Kind(load.Speaks, GoesByWork: false, one => one with { Ecu = null, Gearboxes = [] }, load.Assemble),
            new Kind(FuelAssembly.Speaks(kb), GoesByWork: false, one => one with { Gearbox = null, Gearboxes = [] }, one => FuelAssembly.Assemble(kb, one)),

            // The work asks for tools by ECU and gearbox, and whether two work sheets say the same is read off this ledger: it is shown all.
            new Kind(torques.Speaks, GoesByWork: true, one => one, torques.Assemble),
        ];
        Told = [.. Ids.Where((_, at) => _kinds[at].Speaks)];
    }

    /// <summary>Those of which the base says anything.</summary>
    public ImmutableArray<string> Told { get; }

    public ImmutableArray<Ledger> Assemble(LedgerCase one) => [.. Told.Select(id => Assemble(one, id)).OfType<Ledger>()];

    /// <summary>One ledger; null for a name that is none, and where the base says nothing of it.</summary>
    public Ledger? Assemble(LedgerCase one, string id) => Told.Contains(id) && KindOf(id).Assemble(Seen(one, id)) is { IsEmpty: false } ledger ? ledger : null;

    /// <summary>As much of a combination as a ledger goes by, besides its chassis, its donor and the answers.</summary>
    internal LedgerCase Seen(LedgerCase one, string id) => KindOf(id).Seen(GoesByWork(id) ? one : one with { Tasks = [], IsTightened = _ => false });

    /// <summary>Whether a ledger goes by the tasks and by which fasteners are tightened.</summary>
    internal bool GoesByWork(string id) => KindOf(id).GoesByWork;

    private Kind KindOf(string id) => _kinds[Ids.IndexOf(id)];

    /// <param name="Speaks">Whether the base says anything of it.</param>
    private sealed record Kind(bool Speaks, bool GoesByWork, Func<LedgerCase, LedgerCase> Seen, Func<LedgerCase, Ledger> Assemble);
}
