using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Fuel.FuelWorksheet;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Does the ECU know this engine, and what has to be tuned?</summary>
internal static class Tuning
{
    // Less than this between two sets of injectors is what injectors of one set differ by, and closed-loop control takes it up.
    private const double SameFlow = 0.05;

    // Manifold depression of a warm engine at idle.
    private const double IdleDepression = 0.65 * Bar;

    public static void Add(LedgerBuilder ledger, FuelInput input, double? flow)
    {
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<LedgerCell>>();
        Maps(ledger, rows, input);
        Injectors(ledger, rows, input, flow);
        Reference(ledger, rows, input);
        if (IgnitionFigures.TriggerAgrees(input) == false)
        {
            rows.Add(Row("Base timing", "Another pick-up or tooth wheel moves the mark the ECU counts from; set it, and prove it with a timing lamp."));
        }

        if (rows.Count > 0)
        {
            ledger.Add(new LedgerTable("tuning", "What has to be tuned", [new("what", "What"), new("why", "Why")], rows.ToImmutable()));
        }
    }

    private static void Maps(LedgerBuilder ledger, ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, FuelInput input)
    {
        if (input.Ecu.MadeFor is not { } made)
        {
            return;
        }

        if (made.Id == IgnitionFigures.Any)
        {
            rows.Add(Row("Fuel, ignition, idle and warm-up", $"{input.Ecu.Title} knows no engine: it starts on a base map and has to be mapped on a dynamometer before the engine is loaded."));
            rows.Add(Row("Curves of the sensors", "Temperature, pressure and throttle sensors each have a curve of their own, which has to be entered and proved with the ignition on."));
        }
        else if (made.Id == input.Family)
        {
            ledger.Note($"{input.Ecu.Title} was made for this engine and knows its maps; what is listed under tuning, if anything, is all that differs.");
        }
        else
        {
            rows.Add(Row("Fuel map", $"It was made for the {made.Title}, whose displacement and breathing are others. Have the mixture measured over the whole range of load with a wide-band sensor; rich is safe, lean is not."));
            rows.Add(Row("Ignition map", $"The {made.Title} burns and knocks otherwise. Retard the base timing until somebody has listened for knock under load."));
        }
    }

    private static void Injectors(LedgerBuilder ledger, ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, FuelInput input, double? flow)
    {
        if (flow is not { } fitted || input.Ecu.Flow is not { Si: > 0 } mapped)
        {
            return;
        }

        var difference = (fitted / mapped.Si) - 1;
        ledger.Add(new Figure("injector-change", "Injector flow against the ECU's map", difference * 100, "%")
        {
            Decimals = 0,
            Formula = "q ∕ q of the map − 1",
            Source = Practice,
            From = [new("Injector flow as fitted", fitted / CcPerMinute, "cm³/min", "figure injector-flow"), mapped.Input],
            Remark = Math.Abs(difference) > SameFlow ? $"{(difference > 0 ? "more" : "less")} than the map counts on; see what has to be tuned" : "within what injectors of one set differ",
            IsStep = Math.Abs(difference) <= SameFlow,
            Weight = Math.Abs(difference) > SameFlow ? FigureWeight.Caution : FigureWeight.Plain,
        });
        if (Math.Abs(difference) > SameFlow)
        {
            rows.Add(Row("Injector constant", $"The injectors flow {Number(Math.Abs(difference) * 100, 0)} % {(difference > 0 ? "more" : "less")} than the ECU counts on: multiply its opening times by {Number(mapped.Si / fitted, 2)}, or the engine runs {(difference > 0 ? "rich" : "lean")} everywhere."));
        }
    }

    private static void Reference(LedgerBuilder ledger, ImmutableArray<ImmutableArray<LedgerCell>>.Builder rows, FuelInput input)
    {
        if (input.Line is not { AtTank: true, MadeForTank: false, Pressure: { Si: > 0 } pressure })
        {
            return;
        }

        var more = Math.Sqrt((pressure.Si + IdleDepression) / pressure.Si) - 1;
        ledger.Add(new Figure("idle-excess", "Extra fuel at idle without a manifold reference", more * 100, "%")
        {
            Decimals = 0,
            Formula = "√((p + depression) ∕ p) − 1",
            Source = "flow through an orifice goes with the square root of the pressure over it (Bernoulli); a depression of 0.65 bar is common practice, no source",
            From = [pressure.Input, Assumed("Depression at idle", IdleDepression / Bar, "bar")],
            IsStep = true,
        });
        rows.Add(Row("Idle and part load", $"Regulated at the tank, the pressure no longer falls with the manifold's: at idle {Number(more * 100, 0)} % more fuel comes out in the same time. Closed-loop control may take it up; where there is none, trim it."));
    }

    private static ImmutableArray<LedgerCell> Row(string what, string why) => [LedgerCell.Words(what), LedgerCell.Words(why)];
}
