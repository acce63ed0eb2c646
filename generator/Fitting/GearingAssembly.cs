using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Gearing;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Fitting;

/// <summary>Gearbox and tyre of a combination → the gearing worksheet.</summary>
internal static class GearingAssembly
{
    private const string PinionTeeth = "speed-pinion-teeth";

    /// <summary>Whether a base says anything of gearing.</summary>
    public static bool Speaks(KnowledgeBase kb) => kb.Vocabulary.Meaning("chassis", "rim-diameter") is not null;

    public static Ledger Assemble(KnowledgeBase kb, LedgerCase one)
    {
        var quantities = new Quantities(kb, one);
        if (one.Gearbox is not { Ratios.IsEmpty: false } gearbox)
        {
            return new Ledger("gearing", GearingWorksheet.Title);
        }

        var before = quantities.Word("chassis", "original-gearbox") is { } id ? kb.Gearboxes.Find(id) : null;
        var axle = quantities.Fitted("axle-ratio");
        return GearingWorksheet.Work(new GearingInput
        {
            Gearbox = Set(quantities, gearbox, axle),
            Before = before is null ? null : Set(quantities, before, quantities.Of("chassis", "axle-ratio")),
            Alternatives = [.. one.Gearboxes.Select(option => new GearboxAlternative(option.Title, Set(quantities, option.Gearbox, axle), option.IsChosen, option.Buildable))],
            Tyre = Tyre(quantities.Fitted, quantities.FittedWord("tyre-construction")?.Id),
            TyreBefore = Tyre(quantity => quantities.Of("chassis", quantity), quantities.Word("chassis", "tyre-construction")),
            PowerSpeed = quantities.Of("donor", "engine-power-speed")?.Given,
            PinionBefore = quantities.Of("chassis", PinionTeeth)?.Given,
            Pinion = quantities.Fitted(PinionTeeth)?.Given,
            SpeedIsAdjustable = quantities.AnswerFor(PinionTeeth) is { Source: "new" or "other" or "made" },
            AsksForSpeedometer = quantities.Declared("gearbox", "speed-drive-teeth"),
            Cruise = [.. kb.Settings.Gearing.CruiseKmh.Select(speed => (double)speed / 3.6)],
            WidestDrop = (double)kb.Settings.Gearing.WidestDropPercent / 100,
        });
    }

    /// <summary>Forward gears of a gearbox, from the lowest up.</summary>
    internal static ImmutableArray<GearRatio> Gears(Gearbox gearbox) =>
        [.. gearbox.Ratios.Where(ratio => ratio.Key is not ("final" or "reverse")).Select(ratio => new GearRatio(ratio.Key, (double)ratio.Value))];

    /// <summary>The final drive: an axle of its own where there is one, else the gearbox's; null where neither is known.</summary>
    internal static Given? Final(Gearbox gearbox, KnownValue? axle) =>
        axle is not null ? axle.Given
        : gearbox.Ratios.Where(ratio => ratio.Key == "final").Select(ratio => (double)ratio.Value).ToList() is [var final] ? new Given(final, new FigureInput("final drive", final, "", $"gearbox {gearbox.Id}"))
        : null;

    // Without a final drive the set is not sound, and the worksheet says so.
    private static GearSet Set(Quantities quantities, Gearbox gearbox, KnownValue? axle) => new(gearbox.Title, Gears(gearbox), Final(gearbox, axle)?.Si ?? 0)
    {
        Origin = $"gearbox {gearbox.Id}",
        FinalOrigin = Final(gearbox, axle)?.Input.Origin ?? "",
        HasConverter = quantities.Word(gearbox, "gearbox", "gearbox-kind") == "automatic",
        Speed = quantities.Word(gearbox, "gearbox", "speed-pickup") is { } pickup && quantities.Of(gearbox, "gearbox", "speed-drive-teeth") is { } teeth
            ? new SpeedDrive(pickup == "before-final", teeth.Si, quantities.Of(gearbox, "gearbox", PinionTeeth)?.Si, quantities.Of(gearbox, "gearbox", "speed-pulses")?.Si)
            : null,
    };

    private static TyreSize? Tyre(Func<string, KnownValue?> value, string? construction) => value("tyre-width") is { } width && value("rim-diameter") is { } rim
        ? new TyreSize(width.Given, value("tyre-aspect")?.Given, rim.Given, construction == "bias" ? TyreConstruction.Bias : TyreConstruction.Radial)
        : null;
}
