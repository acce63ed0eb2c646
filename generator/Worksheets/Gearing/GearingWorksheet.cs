using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Gearing;

/// <summary>Road speed for engine speed in every gear, against the chassis as it was.</summary>
public static class GearingWorksheet
{
    public const string Title = "Gearing";

    /// <summary>rad/s of one revolution a minute.</summary>
    internal const double Rpm = 2 * Math.PI / 60;

    internal const double Kmh = 1 / 3.6;

    private const string TyreMend = "Give the chassis its tyre width, aspect ratio and rim diameter.";

    // A drive with teeth that cannot be is one that is not known.
    private static GearSet Read(GearSet set) => set.Speed is { IsSound: false } ? set with { Speed = null } : set;

    /// <summary>
    /// Speeds, shifts and speedometer. A tyre or a gearbox that is not known, or that cannot be, is one gap in place of everything;
    /// nothing is thrown.
    /// </summary>
    public static Ledger Work(GearingInput input)
    {
        var ledger = new LedgerBuilder("gearing", Title);
        if (input.Tyre is not { } tyre)
        {
            ledger.Gap("Road speeds", "the tyre size is not known", TyreMend);
            return ledger.Build();
        }

        if (!tyre.IsSound)
        {
            ledger.Gap("Road speeds", "no wheel has such a tyre size", TyreMend);
            return ledger.Build();
        }

        if (!input.Gearbox.IsSound)
        {
            ledger.Gap("Road speeds", "the gearbox's ratios are not known", "Give the gearbox the ratio of every gear and of the final drive.");
            return ledger.Build();
        }

        input = input with
        {
            Gearbox = Read(input.Gearbox),
            PowerSpeed = input.PowerSpeed.IfNumber(),
            Pinion = input.Pinion.IfNumber(),
            PinionBefore = input.PinionBefore.IfNumber(),
        };
        var before = input.Before is { IsSound: true } sound ? Read(sound) : null;
        var tyreBefore = input.TyreBefore is { IsSound: true } other ? other : tyre;
        var known = input with { Before = before, TyreBefore = tyreBefore };
        TyreFigures(ledger, tyre);
        GearingFigures.Add(ledger, known, tyre, tyreBefore);
        SpeedometerFigures.Add(ledger, known, tyre, tyreBefore);
        ledger.Add(GearingTables.Gears(known, tyre, tyreBefore));
        if (known.Gearbox.Gears.Length > 1)
        {
            ledger.Add(GearingTables.Shifts(known, tyre));
        }

        if (known.Alternatives.Length > 1)
        {
            ledger.Add(GearingTables.Alternatives(known, tyre));
        }

        ledger.Add(GearingChart.Of(known, tyre, tyreBefore));
        Notes(ledger, known, tyre);
        return ledger.Build();
    }

    /// <summary>A number as words within a remark; digits of thousands are parted by a comma.</summary>
    internal static string Number(double value, string form = "#,0") => value.ToString(form, CultureInfo.InvariantCulture);

    internal static FigureInput Circumference(TyreSize tyre) => new("rolling circumference", tyre.Circumference * 1000, "mm", "gearing.rolling-circumference");

    private static void TyreFigures(LedgerBuilder ledger, TyreSize tyre)
    {
        ledger.Add(new Figure("tyre-diameter", "Tyre diameter", tyre.Diameter * 1000, "mm")
        {
            Decimals = 0,
            IsStep = true,
            Formula = "D = d + 2 W A",
            Source = "UN Regulation No. 30, definition of the design dimensions",
            From = [tyre.Width.Input, tyre.Aspect?.Input ?? new FigureInput("Aspect ratio taken", tyre.AspectTaken * 100, "%", "common practice, no source"), tyre.Rim.Input],
        });
        ledger.Add(new Figure("rolling-circumference", "Rolling circumference", tyre.Circumference * 1000, "mm")
        {
            Decimals = 0,
            Formula = "U = f D",
            Source = "ETRTO, from memory: f = 3.05 for radial, 2.99 for bias tyres",
            From = [new FigureInput("tyre diameter", tyre.Diameter * 1000, "mm", "gearing.tyre-diameter"), new FigureInput("f", Tyre.RollingFactor(tyre.Construction), "", "ETRTO, from memory")],
            Remark = "an assumption: tread wear alone takes up to 2 % off",
        });
    }

    private static void Notes(LedgerBuilder ledger, GearingInput input, TyreSize tyre)
    {
        ledger.Note("Speeds are those of the rolling tyre without slip at the tread; a loaded or worn tyre rolls a little less far.");
        if (tyre.Aspect is null)
        {
            ledger.Note($"The size names no aspect ratio: {Number(tyre.AspectTaken * 100)} per cent is taken, as tyres of {(tyre.Construction == TyreConstruction.Radial ? "radial" : "bias")} construction of the time had. Measure a turn of the wheel before anything is ordered.");
        }

        if (input.Gearbox.HasConverter)
        {
            ledger.Note("The converter slips while it pulls, so the engine turns faster than these figures say, by a few per cent at a steady speed and by far more when pulling away; only a locked converter turns with them.");
        }
    }
}
