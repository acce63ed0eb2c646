using Swapwright.Knowledge;
using Swapwright.Worksheets.Gearing;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>Gearbox and tyre of a combination → the gearing worksheet.</summary>
internal static class GearingAssembly
{
    public static Ledger Assemble(KnowledgeBase kb, LedgerCase one)
    {
        var quantities = new Quantities(kb, one);
        if (one.Gearbox is not { Ratios.IsEmpty: false } gearbox || !quantities.Declared("chassis", "rim-diameter"))
        {
            return new Ledger("gearing", GearingWorksheet.Title);
        }

        var before = quantities.Word("chassis", "original-gearbox") is { } id ? kb.Gearboxes.Find(id) : null;
        return GearingWorksheet.Work(new GearingInput
        {
            Gearbox = Set(gearbox),
            Before = before is null ? null : Set(before),
            TyreWidth = quantities.Of("chassis", "tyre-width")?.Si,
            TyreAspect = quantities.Of("chassis", "tyre-aspect")?.Si,
            RimDiameter = quantities.Of("chassis", "rim-diameter")?.Si,
        });
    }

    private static GearSet Set(Gearbox gearbox) => new(
        gearbox.Title,
        [.. gearbox.Ratios.Where(ratio => ratio.Key is not ("final" or "reverse")).Select(ratio => new GearRatio(ratio.Key, (double)ratio.Value))],
        (double)gearbox.Ratios.FirstOrDefault(ratio => ratio.Key == "final", new("final", 1)).Value);
}
