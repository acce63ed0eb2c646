using System.Collections.Immutable;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Fuel.FuelWorksheet;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Does the pump give enough at the rail's pressure, what flows back, and what the line must stand.</summary>
internal static class PumpFigures
{
    // A hand's breadth on a gauge: two statements of one pressure.
    private const double SamePressure = 0.05 * Bar;

    private const string Measure = "Measure what comes out of the return in a minute at the rail's pressure.";

    public static void Add(LedgerBuilder ledger, FuelInput input)
    {
        var line = input.Line;
        if (line.Pressure is not { Si: > 0 } pressure)
        {
            ledger.Gap("Fuel pump", "the rail's pressure is not known", "Give the donor its rail pressure, or the regulator that is fitted its own.");
            return;
        }

        double? burnt = input.Power is { Si: > 0 } power ? InjectorFlow.Fuel(power.Si, input.Assumptions.Consumption, input.Assumptions.Density) : null;
        if (burnt is { } need)
        {
            Need(ledger, input, need);
        }
        else
        {
            ledger.Gap("Pump delivery needed", "the engine's power is not known", "Give the donor its power.");
        }

        if (Delivered(ledger, input, pressure) is { } pump)
        {
            Margin(ledger, input, pump, burnt);
            Return(ledger, line, pump, burnt);
        }

        ledger.Add(Line(line, pressure));
    }

    private static void Need(LedgerBuilder ledger, FuelInput input, double burnt)
    {
        var (assumptions, bar) = (input.Assumptions, input.Line.Pressure!.Si / Bar);
        ledger.Add(new Figure("pump-need", "Pump delivery needed", burnt * (1 + assumptions.PumpMargin) / LitrePerHour, "L/h")
        {
            Decimals = 0,
            Formula = "V̇ = P b ∕ ρ × (1 + margin)",
            Source = "half a pound of fuel an hour for each horsepower is common practice, no source; a margin of 20 to 30 % from memory",
            From = [input.Power!.Input, Assumed("Consumption", assumptions.Consumption * 3.6e9, "g/kWh"), Assumed("Density", assumptions.Density * Litre, "kg/L"), Assumed("Pump margin", assumptions.PumpMargin * 100, "%")],
            Remark = $"at {Number(bar, 2)} bar and the voltage of a running engine; {Number(burnt / LitrePerHour, 0)} L/h of it are burnt at full power",
        });
    }

    // What the pump gives at the rail's pressure, by its points, by its one point and the usual fall, or as stated.
    private static Pump? Delivered(LedgerBuilder ledger, FuelInput input, FuelValue pressure)
    {
        var line = input.Line;
        FigureInput rail = pressure.Input;
        if (!line.PumpCurve.IsEmpty)
        {
            if (PumpDelivery.Between(line.PumpCurve, pressure.Si) is { } between)
            {
                return new Pump(
                    PumpDelivery.On(between, pressure.Si),
                    $"at {Number(pressure.Si / Bar, 2)} bar",
                    "V̇ = V̇₁ + (V̇₂ − V̇₁) (p − p₁) ∕ (p₂ − p₁) between two measurements; at less pressure a pump gives no less",
                    [rail, .. new[] { between.Before, between.After }.Distinct().Select(point => new FigureInput($"delivery at {Number(point.Pressure / Bar, 2)} bar", point.Flow / LitrePerHour, "L/h", line.PumpHolder))]);
            }

            var most = line.PumpCurve.Max(point => point.Pressure);
            ledger.Gap("Pump delivery", $"the pump was measured up to {Number(most / Bar, 2)} bar, and the rail is at {Number(pressure.Si / Bar, 2)} bar, where every pump gives less", Measure);
            return null;
        }

        if (line.PumpFlow is not { Si: > 0 } flow)
        {
            ledger.Gap("Pump delivery", "the delivery of the pump as fitted is not known", Measure);
            return null;
        }

        if (line.PumpFlowPressure is not { } measured)
        {
            return new Pump(flow.Si, "as stated", "as stated, whatever the pressure", [flow.Input]);
        }

        if (measured.Si >= pressure.Si - SamePressure)
        {
            return new Pump(flow.Si, $"at {Number(measured.Si / Bar, 2)} bar", "as measured; at less pressure a pump gives no less", [flow.Input, measured.Input]);
        }

        if (PumpDelivery.Falling(flow.Si, measured.Si, input.Assumptions.PumpFall, pressure.Si) is not { } left)
        {
            ledger.Gap("Pump delivery", $"it was measured at {Number(measured.Si / Bar, 2)} bar, and the rail is at {Number(pressure.Si / Bar, 2)} bar, where every pump gives less", Measure);
            return null;
        }

        var fall = Assumed("Fall of a pump's delivery for each bar", input.Assumptions.PumpFall * Bar * 100, "%");
        return new Pump(left, $"reckoned from {Number(flow.Si / LitrePerHour, 0)} L/h at {Number(measured.Si / Bar, 2)} bar down to {Number(pressure.Si / Bar, 2)} bar, to be measured", "V̇ = V̇₀ (1 − a (p − p₀))", [flow.Input, measured.Input, rail, fall])
        {
            IsReckoned = true,
        };
    }

    private static void Margin(LedgerBuilder ledger, FuelInput input, Pump pump, double? burnt)
    {
        var wanted = input.Assumptions.PumpMargin;
        var margin = burnt is { } use ? (pump.Flow / use) - 1 : (double?)null;
        ledger.Add(new Figure("pump-flow", "Delivery of the pump as fitted", pump.Flow / LitrePerHour, "L/h")
        {
            Decimals = 0,
            From = pump.From,
            Formula = pump.Formula,
            Source = Practice,
            Remark = margin is { } share ? share < 0 ? $"{pump.At}; less than the engine burns: it leans out at full power" : share < wanted ? $"{pump.At}; {Number(share * 100, 0)} % beyond full power, where {Number(wanted * 100, 0)} % are wanted" : $"{pump.At}; {Number(share * 100, 0)} % beyond full power" : pump.At,
            Weight = margin switch
            {
                < 0 => FigureWeight.Bad,
                { } some when some < wanted || pump.IsReckoned => FigureWeight.Caution,
                { } => FigureWeight.Good,
                null => FigureWeight.Plain,
            },
        });
        if (margin is { } share2)
        {
            ledger.Add(new Figure("pump-margin", "Margin of the pump", share2 * 100, "%")
            {
                Decimals = 0,
                IsStep = true,
                Formula = "delivery ∕ fuel burnt − 1",
                Source = Practice,
                From = [new("delivery of the pump", pump.Flow / LitrePerHour, "L/h", "figure pump-flow"), new("fuel burnt at full power", burnt!.Value / LitrePerHour, "L/h", "figure pump-need"), Assumed("Margin that is wanted", wanted * 100, "%")],
            });
        }
    }

    private static void Return(LedgerBuilder ledger, FuelLine line, Pump pump, double? burnt)
    {
        var delivery = pump.Flow;
        if (line.AtTank)
        {
            ledger.Note($"The pressure is regulated at the tank: surplus turns back there, one pipe runs to the rail, and nothing returns from the engine.{(line.MadeForTank ? "" : " The rail's own regulator has to come off, or it doubles the work.")}");
            return;
        }

        ledger.Add(new Figure("return-flow", "Return flow at idle", delivery / LitrePerHour, "L/h")
        {
            Decimals = 0,
            Formula = "V̇ = delivery, what an idling engine burns left out",
            Source = Practice,
            From = pump.From,
            Remark = $"{(burnt is { } use && delivery > use ? $"{Number((delivery - use) / LitrePerHour, 0)} L/h at full power; " : "")}the return must carry it with less than 0.3 bar",
        });
    }

    private static LedgerTable Line(FuelLine line, FuelValue pressure)
    {
        var bar = pressure.Si / Bar;
        var least = FuelHoseClasses.Least(bar, line.InjectionBar);
        var bought = string.Join(", ", line.HoseClasses.Select(hose => $"{hose.Title}: {hose.Class}{(FuelHoseClasses.Suits(hose.Class, bar, line.InjectionBar) ? "" : ", not for this pressure")}"));
        var rating = line.FilterRating?.Si / Bar;
        return new LedgerTable(
            "line",
            $"Fuel line at {Number(bar, 2)} bar",
            [new("item", "Item"), new("wanted", "Wanted"), new("fitted", "Fitted")],
            [
                [LedgerCell.Words("Fuel hose outside the tank"), LedgerCell.Words($"class {least} of SAE J30"), LedgerCell.Words(string.Join("; ", new[] { bought, line.HoseKept ? "what stays: read the class printed on it" : "" }.Where(text => text.Length > 0)))],
                [LedgerCell.Words("Hose inside the tank"), LedgerCell.Words("class R10, the one made to lie in fuel"), LedgerCell.Words("look at it: the class is printed on it")],
                [LedgerCell.Words("Clips"), LedgerCell.Words("smooth band, on beaded pipe"), LedgerCell.Words("look at each of them")],
                [LedgerCell.Words("Filter"), LedgerCell.Words($"for injection, {Number(bar, 2)} bar and more"), LedgerCell.Words(rating is { } most ? $"{Number(most, 1)} bar{(most < bar ? ", too little" : "")}" : "what stays: its marking decides")],
            ]);
    }

    /// <param name="Flow">m³/s.</param>
    /// <param name="At">At which pressure, in words.</param>
    private sealed record Pump(double Flow, string At, string Formula, ImmutableArray<FigureInput> From)
    {
        /// <summary>Nobody measured it at this pressure or beyond.</summary>
        public bool IsReckoned { get; init; }
    }
}
