using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Fuel.FuelWorksheet;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Is the flow of the injectors as fitted enough for the engine's power?</summary>
internal static class InjectorFigures
{
    private const string SizeSource = "injector sizing by specific consumption, P × BSFC ∕ (N × DC)";

    /// <returns>Flow of one injector at the pressure that is fitted, m³/s; null where it is not known.</returns>
    public static double? Add(LedgerBuilder ledger, FuelInput input)
    {
        var flow = Fitted(ledger, input);
        if (input.Power is not { Si: > 0 } power)
        {
            ledger.Gap("Injector flow needed", "the engine's power is not known", "Give the donor its power.");
            return flow;
        }

        if (input.Injectors.Count is not { Si: > 0 } count)
        {
            ledger.Gap("Injector flow needed", "the number of injectors is not known", "Give the donor its number of injectors.");
            return flow;
        }

        var (consumption, density, limit) = (input.Assumptions.Consumption, input.Assumptions.Density, input.Assumptions.Duty);
        ImmutableArray<FigureInput> assumed = [power.Input, count.Input, Assumed("Consumption", consumption * 3.6e9, "g/kWh"), Assumed("Density", density * Litre, "kg/L")];
        ledger.Add(new Figure("injector-need", "Injector flow needed", InjectorFlow.Needed(power.Si, consumption, density, count.Si, limit) / CcPerMinute, "cm³/min")
        {
            Decimals = 0,
            Formula = "q = P b ∕ (ρ N d)",
            Source = SizeSource,
            From = [.. assumed, Assumed("Duty, at most", limit * 100, "%")],
            Remark = $"each, for {Number(power.Si / 1000)} kW with the injectors open {Number(limit * 100)} % of the time at most",
        });
        if (flow is not { } q)
        {
            return flow;
        }

        var duty = InjectorFlow.Duty(power.Si, consumption, density, count.Si, q);
        ledger.Add(new Figure("injector-duty", "Injector duty at full power", duty * 100, "%")
        {
            Decimals = 0,
            Formula = "d = P b ∕ (ρ N q)",
            Source = SizeSource,
            From = [.. assumed, new("Injector flow as fitted", q / CcPerMinute, "cm³/min", "figure injector-flow")],
            Remark = duty > 1 ? "beyond fully open: the engine runs lean and may burn a piston; larger injectors are wanted" : duty > limit ? $"above the {Number(limit * 100)} % that are allowed: larger injectors, or less power" : $"{Number(limit * 100)} % at most",
            Weight = duty > 1 ? FigureWeight.Bad : duty > limit ? FigureWeight.Caution : FigureWeight.Good,
        });
        ledger.Add(new Figure("injector-power", "Power that the injectors can feed", q * count.Si * limit * density / consumption / 1000, "kW")
        {
            Decimals = 0,
            Formula = "P = q N d ρ ∕ b",
            Source = SizeSource,
            IsStep = true,
        });
        if (input.Ecu.Channels is { } channels && channels.Si < count.Si)
        {
            ledger.Note($"{input.Ecu.Title} has {Number(channels.Si)} injector {(channels.Si == 1 ? "driver" : "drivers")} for {Number(count.Si)} injectors: they are fired together, and each driver carries the current of all that hang on it.");
        }

        return flow;
    }

    private static double? Fitted(LedgerBuilder ledger, FuelInput input)
    {
        var injectors = input.Injectors;
        if (injectors.Flow is not { Si: > 0 } stated)
        {
            ledger.Gap("Injector duty", "the flow of the injectors as fitted is not known", "Have them measured on a flow bench, or give the part its flow.");
            return null;
        }

        if (injectors.FlowPressure is not { Si: > 0 } from || input.Line.Pressure is not { Si: > 0 } to || Math.Abs(from.Si - to.Si) < 1000)
        {
            Tell("Injector flow as fitted", stated.Si, "", "", [stated.Input], "each, as measured");
            return stated.Si;
        }

        var flow = InjectorFlow.AtPressure(stated.Si, from.Si, to.Si);
        Tell("Injector flow as fitted", flow, "q₂ = q₁ √(p₂ ∕ p₁)", "flow through an orifice goes with the square root of the pressure over it (Bernoulli)", [stated.Input, from.Input, to.Input],
            $"each, at {Number(to.Si / Bar, 2)} bar; {Number(stated.Si / CcPerMinute, 0)} cm³/min were measured at {Number(from.Si / Bar, 2)} bar");
        return flow;

        void Tell(string title, double value, string formula, string source, ImmutableArray<FigureInput> inputs, string remark) =>
            ledger.Add(new Figure("injector-flow", title, value / CcPerMinute, "cm³/min") { Decimals = 0, Formula = formula, Source = source, From = inputs, Remark = remark });
    }
}
