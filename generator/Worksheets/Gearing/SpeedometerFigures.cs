using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Gearing.GearingWorksheet;

namespace Swapwright.Worksheets.Gearing;

/// <summary>What the speedometer shows, taking it to have shown the true speed with the gearbox and tyres the chassis was built with.</summary>
internal static class SpeedometerFigures
{
    private const string About = "Speedometer";
    private const string Formula = "k = (c z ∕ (U p))_after ∕ (c z ∕ (U p))_before, c the final drive where the shaft before it is tapped, z driving teeth, p pinion teeth";
    private const string Law = "UN Regulation No. 39, 5.3: 0 ≤ V1 − V2 ≤ 0.1 V2 + 4 km/h; test speeds from memory";

    public static void Add(LedgerBuilder ledger, GearingInput input, TyreSize tyre, TyreSize tyreBefore)
    {
        if (!input.AsksForSpeedometer)
        {
            return;
        }

        if (input.Gearbox.Speed is not { } drive)
        {
            ledger.Gap(About, "the gearbox does not say what turns its speedometer drive", "Give the gearbox what is tapped, the driving wheel's teeth and the pinion's.");
            return;
        }

        // A sensor keeps its own pinion; a cable is turned by the one that the answers put in place. Where one is to be bought, the chassis's own is reckoned from.
        var pinion = drive.Pulses is null ? input.Pinion ?? OwnPinion(input.Gearbox, drive) ?? (input.SpeedIsAdjustable ? input.PinionBefore : null) : OwnPinion(input.Gearbox, drive);
        if (pinion is not { Si: > 0 })
        {
            ledger.Gap(About, "the teeth of its drive are not known", "Count the driving wheel's teeth and the pinion's, and give them to the gearbox or the chassis.");
            return;
        }

        var turns = Speedometer.TurnsPerMetre(drive, pinion.Si, input.Gearbox.Final, tyre.Circumference);
        if (drive.Pulses is { } pulses)
        {
            ledger.Add(new Figure("speedometer-pulses", "Pulses of the speed sensor for a kilometre", turns * pulses * 1000, "")
            {
                Decimals = 0,
                Formula = "N = 1 km × c z s ∕ (U p), s pulses for a turn",
                Source = "follows from the gearing",
                From = [.. Inputs(input.Gearbox, drive, pinion, tyre), new FigureInput("pulses for a turn of the pinion", pulses, "", input.Gearbox.Origin)],
                Remark = input.SpeedIsAdjustable ? "set the converter to this and prove it on a measured kilometre" : "what the speedometer has to be made for",
                Weight = FigureWeight.Plain,
            });
        }

        if (input.SpeedIsAdjustable)
        {
            Set(ledger, input, drive, pinion, turns, tyreBefore);
            return;
        }

        if (input.Before is not { } before || before.Speed is not { } driveBefore || (driveBefore.Pulses is null ? input.PinionBefore ?? OwnPinion(before, driveBefore) : OwnPinion(before, driveBefore)) is not { Si: > 0 } pinionBefore)
        {
            ledger.Gap("Speedometer error", "it is not known how the speedometer was driven before", "Give the original gearbox its speedometer drive and the chassis its pinion.");
            return;
        }

        if (drive.Pulses is null != driveBefore.Pulses is null)
        {
            ledger.Gap("Speedometer error", "one gearbox turns a cable and the other gives pulses", "Put a converter in place, or a sensor of the other kind.");
            return;
        }

        var factor = turns * (drive.Pulses ?? 1) / (Speedometer.TurnsPerMetre(driveBefore, pinionBefore.Si, before.Final, tyreBefore.Circumference) * (driveBefore.Pulses ?? 1));
        Error(ledger, input, factor, [.. Inputs(input.Gearbox, drive, pinion, tyre), .. Inputs(before, driveBefore, pinionBefore, tyreBefore).Select(one => one with { Title = one.Title + ", before" })]);
        if (!Speedometer.IsLawful(factor) || factor > 1.02)
        {
            Mend(ledger, drive, factor, pinion);
        }
    }

    /// <summary>What has to be set or bought, where the answer puts something in place that is made to fit.</summary>
    private static void Set(LedgerBuilder ledger, GearingInput input, SpeedDrive drive, Given pinion, double turns, TyreSize tyreBefore)
    {
        if (drive.Pulses is not null)
        {
            return;
        }

        ledger.Add(new Figure("speedometer-turns", "Turns of the speedometer's drive for a kilometre", turns * 1000, "")
        {
            Decimals = 0,
            Formula = "1 km × c z ∕ (U p)",
            Source = "follows from the gearing",
            From = [.. Inputs(input.Gearbox, drive, pinion, input.Tyre!)],
            Remark = $"with a pinion of {Number(pinion.Si)} teeth; times the pulses of a sensor that is put on it",
        });
        if (input.Before is { Speed: { Pulses: null } driveBefore } before && (input.PinionBefore ?? OwnPinion(before, driveBefore)) is { Si: > 0 } pinionBefore)
        {
            Mend(ledger, drive, turns / Speedometer.TurnsPerMetre(driveBefore, pinionBefore.Si, before.Final, tyreBefore.Circumference), pinion);
        }
    }

    private static void Error(LedgerBuilder ledger, GearingInput input, double factor, FigureInput[] from)
    {
        var lawful = Speedometer.IsLawful(factor);
        var shown = Number(factor * 80, "0");
        ledger.Add(new Figure("speedometer-error", "Speedometer error", (factor - 1) * 100, "%")
        {
            Formula = Formula,
            Source = Law,
            From = [.. from],
            Remark = Math.Abs(factor - 1) < 0.0005
                ? "shows as before"
                : $"shows {shown} at a true 80 km/h{(lawful ? ", within what the law allows" : factor < 1 ? ": too little, which the law allows nowhere" : ": more than the law allows")}",
            Weight = lawful ? FigureWeight.Good : FigureWeight.Bad,
        });
        if (!lawful)
        {
            ledger.Note("The speedometer is taken to have shown the true speed with the original gearbox and tyres. Most show a little more; check against a measured kilometre.");
        }
    }

    private static void Mend(LedgerBuilder ledger, SpeedDrive drive, double factor, Given pinion)
    {
        if (drive.Pulses is null && Speedometer.PinionTeeth(factor, pinion.Si) is > 0 and var teeth)
        {
            ledger.Add(new Figure("speedometer-pinion", "Pinion that puts the speedometer right", teeth, "")
            {
                Decimals = 0,
                Formula = "p = ⌊k p_in⌋",
                Source = "follows from the gearing",
                From = [new FigureInput("k", factor, "", "gearing.speedometer-error"), pinion.Input],
                Remark = $"teeth; it then shows {Number(((factor * pinion.Si / teeth) - 1) * 100, "0.0")} % more than the true speed",
            });
        }

        ledger.Add(new Figure("speedometer-factor", "Correction of the speedometer's drive", 1 / factor, "")
        {
            Decimals = 3,
            Formula = "1 ∕ k",
            Source = "follows from the gearing",
            From = [new FigureInput("k", factor, "", "gearing.speedometer-error")],
            Remark = "for a reduction in the cable or a pulse corrector",
        });
    }

    private static Given? OwnPinion(GearSet set, SpeedDrive drive) => drive.PinionTeeth is { } teeth ? new Given(teeth, new FigureInput("pinion teeth", teeth, "", set.Origin)) : null;

    private static FigureInput[] Inputs(GearSet set, SpeedDrive drive, Given pinion, TyreSize tyre) =>
    [
        Circumference(tyre), new("driving teeth", drive.DriveTeeth, "", set.Origin), pinion.Input with { Title = "pinion teeth" },
        .. drive.BeforeFinal ? (FigureInput[])[new("final drive", set.Final, "", set.FinalOrigin)] : [],
    ];
}
