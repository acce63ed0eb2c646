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

    public static Ledger Work(FuelInput input)
    {
        var ledger = new LedgerBuilder("fuel", Title);
        var flow = InjectorFigures.Add(ledger, input);
        DriverFigures.Add(ledger, input);
        PumpFigures.Add(ledger, input);
        IgnitionFigures.Add(ledger, input);
        Tuning.Add(ledger, input, flow);
        ledger.Note("Let the pressure off before a fuel joint is opened, battery off, in the open air, and no flame or spark near; catch every drop and prove each joint with the pump running before the engine starts.");
        return ledger.Build();
    }

    /// <summary>A number in a sentence, with no more decimals than it needs.</summary>
    internal static string Number(double value, int decimals = 1) => Math.Round(value, decimals, MidpointRounding.AwayFromZero).ToString("0.###", CultureInfo.InvariantCulture);

    internal static FigureInput Assumed(string title, double value, string unit) => new(title, value, unit, "setting of the base");
}
