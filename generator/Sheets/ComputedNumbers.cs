using Swapwright.Fitting;
using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>The numbers of a sheet by the names in <see cref="ComputedValues"/>, in the units given there.</summary>
internal static class ComputedNumbers
{
    public static decimal? Of(Sheet sheet, string name) => FittedNumbers.BeltName(name) is var (loop, what)
        ? FittedNumbers.Belt(sheet.Belts.FirstOrDefault(belt => belt.Loop.Id == loop), what)
        : FittedNumbers.IsWiring(name) ? FittedNumbers.Wiring(sheet.Wiring, name) : FittedNumbers.Ledger(sheet.Ledgers, name);
}
