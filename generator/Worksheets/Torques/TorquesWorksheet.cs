using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Torques;

/// <summary>How far bolts are tightened, what is filled in, and what is renewed while it is within reach.</summary>
public static class TorquesWorksheet
{
    public const string Title = "Tightening and fluids";

    /// <summary>
    /// Torques in N m, fillings in litres (a gas in kilograms). A thread or a class that is not known leaves its torque to the
    /// manual; nothing is thrown.
    /// </summary>
    public static Ledger Work(TorquesInput input)
    {
        var ledger = new LedgerBuilder("torques", Title);
        TorqueTables.Add(ledger, input);
        FluidTable.Add(ledger, input);
        if (!input.Refreshes.IsEmpty)
        {
            ledger.Add(new LedgerTable(
                "refresh",
                "Renew while it is within reach",
                [new("work", "Work"), new("why", "Why now")],
                [.. input.Refreshes.Select(refresh => (System.Collections.Immutable.ImmutableArray<LedgerCell>)[LedgerCell.Words(refresh.Title), LedgerCell.Words(refresh.WhyNow)])]));
        }

        return ledger.Build();
    }
}
