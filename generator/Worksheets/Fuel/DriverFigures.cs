using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Fuel.FuelWorksheet;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Does the current of the injectors suit the ECU's drivers, and what becomes of the ballast resistors?</summary>
internal static class DriverFigures
{
    // What a resistor is bought with beyond what it dissipates at full current, so that it does not run at its limit.
    private const double RatingMargin = 1.25;

    public static void Add(LedgerBuilder ledger, FuelInput input)
    {
        if (input.Injectors.Resistance is not { Si: > 0 } ohms)
        {
            ledger.Gap("Injector driver current", "the resistance of the injectors as fitted is not known", "Measure across the two pins of one, unplugged and cold.");
            return;
        }

        if (input.Ecu.Driver is not { } driver || input.Ecu.DriverCurrent is not { Si: > 0 } limit)
        {
            ledger.Gap("Injector driver current", $"the injector drivers of {input.Ecu.Title} are not known", "Give the ECU its kind of injector driver and the driver's largest current.");
            return;
        }

        var series = input.Ballast is BallastWork.Kept or BallastWork.Added ? input.BallastResistance?.Si : 0;
        if (series is null)
        {
            ledger.Gap("Injector driver current", "the ballast pack does not say its resistance", "Measure one path of the pack, unplugged.");
            return;
        }

        // A driver with several injectors carries the current of all of them.
        var shared = input is { Injectors.Count: { Si: > 0 } count, Ecu.Channels: { Si: > 0 } channels } ? Math.Max(1, Math.Ceiling(count.Si / channels.Si)) : 1;
        var supply = input.Assumptions.Supply;
        var needed = driver == InjectorDriver.PeakHold ? 0 : Math.Max(0, DriverLoad.SeriesNeeded(supply, limit.Si / shared, ohms.Si));
        var current = DriverLoad.Current(supply, ohms.Si, series.Value);
        var drawn = driver == InjectorDriver.PeakHold ? Math.Min(shared * current, limit.Si) : shared * current;
        var verdict = BallastVerdict.Of(driver, needed, series.Value, input.Ballast);
        ledger.Add(new Figure("driver-current", "Current of one injector driver", drawn, "A")
        {
            Decimals = 2,
            Formula = driver == InjectorDriver.PeakHold && shared * current > limit.Si ? "I = the driver's limit" : shared > 1 ? "I = n U ∕ (R + Rₛ)" : "I = U ∕ (R + Rₛ)",
            Source = OhmsLaw,
            From = [Assumed("Supply", supply, "V"), ohms.Input, .. series.Value > 0 && input.BallastResistance is { } fitted ? [fitted.Input] : Array.Empty<FigureInput>(), limit.Input],
            Remark = $"{Number(limit.Si, 2)} A at most{(driver == InjectorDriver.PeakHold ? ", limited by the driver itself" : "")}; {verdict.Words}",
            Weight = verdict.Weight,
        });
        if (needed > 0)
        {
            Resistors(ledger, input, ohms, limit, needed);
        }

        if (series.Value > 0)
        {
            Heat(ledger, input, current, series.Value);
        }

        if (ohms.Si is > DriverLoad.LowOhm and < DriverLoad.HighOhm)
        {
            ledger.Note($"Injectors of {Number(ohms.Si, 1)} Ω are between the two usual classes, up to {Number(DriverLoad.LowOhm)} Ω and from {Number(DriverLoad.HighOhm)} Ω; the current above decides, not the name.");
        }
    }

    private static void Resistors(LedgerBuilder ledger, FuelInput input, FuelValue ohms, FuelValue limit, double needed)
    {
        var supply = input.Assumptions.Supply;
        ledger.Add(new Figure("ballast-need", "Series resistance needed", needed, "Ω")
        {
            Decimals = 2,
            Formula = "Rₛ = U ∕ I − R",
            Source = OhmsLaw,
            From = [Assumed("Supply", supply, "V"), limit.Input, ohms.Input],
            Remark = "in the feed of each injector, at least",
            IsStep = input.Ballast == BallastWork.Kept,
        });
        if (PreferredValues.AtLeast(needed) is not { } made)
        {
            return;
        }

        var heat = DriverLoad.Dissipation(DriverLoad.Current(supply, ohms.Si, made), made, 1);
        var rating = PreferredValues.Watts(heat * RatingMargin);
        ledger.Add(new Figure("ballast-made", "Nearest resistor that is made", made, "Ω")
        {
            Decimals = 1,
            Formula = "next of E24 that is not below Rₛ",
            Source = "IEC 60063, series E24",
            From = [new("Series resistance needed", needed, "Ω", "figure ballast-need")],
            Remark = $"wire-wound, {(rating is { } watts ? $"{Number(watts, 0)} W or more" : "in several pieces")}; it dissipates {Number(heat)} W while current flows",
            IsStep = input.Ballast == BallastWork.Kept,
        });
    }

    private static void Heat(LedgerBuilder ledger, FuelInput input, double current, double series)
    {
        var heat = DriverLoad.Dissipation(current, series, 1);
        var rating = input.BallastPower?.Si;
        ledger.Add(new Figure("ballast-heat", "Heat in each ballast resistor", heat, "W")
        {
            Decimals = 1,
            Formula = "P = I² Rₛ",
            Source = OhmsLaw,
            From = [new("Current of one injector driver", current, "A", "figure driver-current"), .. input.BallastResistance is { } fitted ? [fitted.Input] : Array.Empty<FigureInput>(), .. input.BallastPower is { } power ? [power.Input] : Array.Empty<FigureInput>()],
            Remark = rating is { } watts ? $"rated for {Number(watts, 0)} W; while current flows without a break" : "while current flows without a break; its rating is not known",
            Weight = rating is { } most ? (heat > most ? FigureWeight.Bad : heat * RatingMargin > most ? FigureWeight.Caution : FigureWeight.Good) : FigureWeight.Plain,
        });
        ledger.Note("Ballast resistors get hot enough to burn skin and to melt tape: on sheet metal in the air stream, away from hoses, fuel and looms.");
    }
}
