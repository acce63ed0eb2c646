using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Load.LoadWorksheet;

namespace Swapwright.Worksheets.Load;

/// <summary>Heat that the coolant takes up at full power, against what the radiator is stated to give off.</summary>
internal static class CoolingFigures
{
    private const string Source = "Heywood, Internal Combustion Engine Fundamentals, table 12.1, from memory: at full load 25 to 28 % of the fuel's heat are work and 17 to 26 % go to the coolant";

    public static void Add(LedgerBuilder ledger, LoadInput input)
    {
        if (!input.Asks(Cooling))
        {
            return;
        }

        if (input.Power is not { Si: > 0 } power)
        {
            ledger.Gap("Heat to the coolant", "the engine's power is not known", "Give the donor its power.");
            return;
        }

        var (least, most) = (power.Si * LoadFormulas.CoolantLeast, power.Si * LoadFormulas.CoolantMost);
        ledger.Add(Heat("heat-least", "Heat to the coolant at full power, at least", least, "Q = P × 17 ∕ 28", power) with { IsStep = true });
        var figure = Heat("heat-most", "Heat to the coolant at full power, at most", most, "Q = P × 26 ∕ 25", power);
        ledger.Add(input.RadiatorHeat switch
        {
            { } heat when heat.Si >= most => figure with { Remark = $"{Range(least, most)} expected; the radiator gives off {Kilowatts(heat.Si)}: enough", Weight = FigureWeight.Good, From = figure.From.Add(heat.Input) },
            { } heat when heat.Si >= least => figure with { Remark = $"{Range(least, most)} expected; the radiator gives off {Kilowatts(heat.Si)}: enough for most engines, not for every one. Watch the gauge on a long hill", Weight = FigureWeight.Caution, From = figure.From.Add(heat.Input) },
            { } heat => figure with { Remark = $"{Range(least, most)} expected; the radiator gives off {Kilowatts(heat.Si)}: too little", Weight = FigureWeight.Bad, From = figure.From.Add(heat.Input) },
            null => figure with { Remark = $"{Range(least, most)} expected; what the radiator gives off is not stated" },
        });
        if (input.RadiatorPower is { Si: > 0 } cooled)
        {
            ledger.Add(new Figure("radiator-share", "Engine power to what the radiator has cooled", power.Si / cooled.Si * 100, "%")
            {
                Decimals = 0,
                Formula = "P ∕ P_cooled",
                Source = "stated by whoever ran it",
                From = [power.Input, cooled.Input],
                Remark = power.Si > cooled.Si ? $"more than the {Kilowatts(cooled.Si)} it has been shown to cool" : $"it has been shown to cool {Kilowatts(cooled.Si)}",
                Weight = power.Si > cooled.Si ? FigureWeight.Bad : FigureWeight.Good,
            });
        }

        ledger.Note("Full power lasts seconds on the road and minutes on a hill; a condenser in front of the radiator and a trailer behind the car ask for more than these figures.");
    }

    private static Figure Heat(string id, string title, double heat, string formula, Given power) => new(id, title, heat / 1000, "kW")
    {
        Decimals = 0,
        Formula = formula,
        Source = Source,
        From = [power.Input],
    };

    private static string Range(double least, double most) => $"{Number(least / 1000)} to {Number(most / 1000)} kW";

    private static string Kilowatts(double value) => $"{Number(value / 1000)} kW";
}
