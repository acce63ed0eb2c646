using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Gearing;

/// <summary>Road speed for engine speed in every gear, against the chassis as it was.</summary>
public static class GearingWorksheet
{
    public const string Title = "Gearing";

    public static Ledger Work(GearingInput input)
    {
        var ledger = new LedgerBuilder("gearing", Title);
        if (input is not { TyreWidth: { } width, TyreAspect: { } aspect, RimDiameter: { } rim })
        {
            ledger.Gap("Road speeds", "the tyre size is not known", "Give the chassis its tyre width, aspect ratio and rim diameter.");
            return ledger.Build();
        }

        var diameter = Tyre.Diameter(width, aspect, rim);
        ledger.Add(new Figure("tyre-diameter", "Tyre diameter", diameter * 1000, "mm") { Decimals = 0, IsStep = true, Formula = "D = d + 2 W A", Source = "UN Regulation No. 30, definition of the design dimensions" });
        ledger.Add(new LedgerTable(
            "gears",
            "Road speed at 1,000 engine revolutions a minute",
            [new("gear", "Gear"), new("ratio", "Ratio", Decimals: 3), new("speed", "Speed", "km/h"), new("ratio-before", "Ratio before", Decimals: 3), new("speed-before", "Speed before", "km/h")],
            [.. input.Gearbox.Gears.Select(gear => Row(gear, input, diameter))]));
        return ledger.Build();
    }

    private static ImmutableArray<LedgerCell> Row(GearRatio gear, GearingInput input, double diameter)
    {
        var before = input.Before?.Gears.FirstOrDefault(one => one.Name == gear.Name);
        return
        [
            LedgerCell.Words(gear.Name),
            LedgerCell.Number(gear.Ratio),
            LedgerCell.Number(Tyre.SpeedAt1000(diameter, gear.Ratio, input.Gearbox.Final) * 3.6),
            LedgerCell.Number(before?.Ratio),
            LedgerCell.Number(before is null ? null : Tyre.SpeedAt1000(diameter, before.Ratio, input.Before!.Final) * 3.6),
        ];
    }
}
