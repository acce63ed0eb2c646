using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>The parts of a sheet that make a table of their own for a spreadsheet.</summary>
internal static class SheetTables
{
    public static readonly ImmutableArray<string> Names = ["belts", "wiring", .. LedgerAssembly.Ids];

    public static string Csv(Sheet sheet, string part) => part switch
    {
        "belts" => SheetBelts.Csv(sheet.Belts),
        "wiring" => SheetWiring.Csv(sheet.Wiring),
        _ => SheetLedgers.Csv(sheet.Ledger(part)),
    };
}
