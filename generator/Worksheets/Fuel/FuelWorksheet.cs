using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Fuel;

/// <summary>Injectors, their drivers, the pump and the fuel line, ignition, and what has to be tuned.</summary>
public static class FuelWorksheet
{
    public const string Title = "Fuel and ignition";

    internal const double Litre = 0.001;
    internal const double LitrePerHour = Litre / 3600;
    internal const double CcPerMinute = 1e-6 / 60;
    internal const double Bar = 1e5;

    internal const string OhmsLaw = "Ohm's law";
    internal const string Practice = "common practice, no source";

    /// <summary>
    /// Figures, verdicts and the tuning that is left. What is not known, and a number that no measurement gives, is a gap; nothing is
    /// thrown.
    /// </summary>
    public static Ledger Work(FuelInput input)
    {
        var ledger = new LedgerBuilder("fuel", Title);
        input = Read(input);
        var flow = InjectorFigures.Add(ledger, input);
        DriverFigures.Add(ledger, input);
        PumpFigures.Add(ledger, input);
        IgnitionFigures.Add(ledger, input);
        Tuning.Add(ledger, input, flow);
        ledger.Note("Let the pressure off before a fuel joint is opened, battery off, in the open air, and no flame or spark near; catch every drop and prove each joint with the pump running before the engine starts.");
        return ledger.Build();
    }

    private static FuelValue? IfNumber(FuelValue? value) => value is { } one && Soundness.IsNumber(one.Si) ? one : null;

    private static FuelInput Read(FuelInput input)
    {
        var (ecu, injectors, line, ignition) = (input.Ecu, input.Injectors, input.Line, input.Ignition);
        return input with
        {
            Power = IfNumber(input.Power),
            PowerSpeed = IfNumber(input.PowerSpeed),
            Cylinders = IfNumber(input.Cylinders),
            BallastResistance = IfNumber(input.BallastResistance),
            BallastPower = IfNumber(input.BallastPower),
            Ecu = ecu with { DriverCurrent = IfNumber(ecu.DriverCurrent), Channels = IfNumber(ecu.Channels), Flow = IfNumber(ecu.Flow), SparkOutputs = IfNumber(ecu.SparkOutputs) },
            Injectors = new InjectorSet(IfNumber(injectors.Flow), IfNumber(injectors.FlowPressure), IfNumber(injectors.Resistance), IfNumber(injectors.Count)),
            Line = line with
            {
                Pressure = IfNumber(line.Pressure),
                PumpFlow = IfNumber(line.PumpFlow),
                PumpFlowPressure = IfNumber(line.PumpFlowPressure),
                FilterRating = IfNumber(line.FilterRating),
                PumpCurve = [.. line.PumpCurve.Where(point => point.Pressure >= 0 && point.Flow > 0 && Soundness.IsNumber(point.Pressure) && Soundness.IsNumber(point.Flow))],
            },
            Ignition = ignition with
            {
                Coils = IfNumber(ignition.Coils),
                SparkOutputs = IfNumber(ignition.SparkOutputs),
                CoilResistance = IfNumber(ignition.CoilResistance),
                CoilInductance = IfNumber(ignition.CoilInductance),
                CoilCurrent = IfNumber(ignition.CoilCurrent),
            },
        };
    }

    /// <summary>A number in a sentence, with no more decimals than it needs.</summary>
    internal static string Number(double value, int decimals = 1) => Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("0.###", CultureInfo.InvariantCulture);

    internal static FigureInput Assumed(string title, double value, string unit) => new(title, value, unit, "setting of the base");
}
