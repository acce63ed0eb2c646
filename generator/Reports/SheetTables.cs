using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>The parts of a sheet that make a table of their own for a spreadsheet.</summary>
internal static class SheetTables
{
    /// <summary>Every worksheet that ends in numbers in one table.</summary>
    public const string Figures = "figures";

    public static readonly ImmutableArray<string> Names = ["belts", "wiring", "hoses", .. LedgerAssembly.Ids, "effort"];

    /// <param name="known">What was written before, for many sheets.</param>
    public static string Csv(Sheet sheet, string part, string currency, SheetForms? known = null) => part switch
    {
        "belts" => SheetBelts.Csv(sheet.Belts),
        "wiring" => SheetWiring.Csv(sheet.Wiring),
        "hoses" => SheetHoses.Csv(sheet.Hoses),
        "effort" => known?.EffortTable(sheet, currency) ?? SheetWork.Csv(sheet, currency),
        Figures => SheetLedgers.Csv(sheet.Ledgers),
        _ => SheetLedgers.Csv(sheet.Ledgers.Where(ledger => ledger.Id == part)),
    };
}
