using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Gearing.GearingWorksheet;

namespace Swapwright.Worksheets.Gearing;

/// <summary>Gears, shifts, and what another gearbox would do.</summary>
internal static class GearingTables
{
    public static LedgerTable Gears(GearingInput input, TyreSize tyre, TyreSize tyreBefore) => new(
        "gears",
        "Road speed at 1,000 engine revolutions a minute",
        [
            new("gear", "Gear"), new("ratio", "Ratio", Decimals: 3), new("speed", "Speed", "km/h"), new("ratio-before", "Ratio before", Decimals: 3), new("speed-before", "Speed before", "km/h"),
            new("at-power", "At greatest power", "km/h", 0),
        ],
        [
            .. input.Gearbox.Gears.Select(gear =>
            {
                var before = input.Before?.Gears.FirstOrDefault(one => one.Name == gear.Name);
                return (ImmutableArray<LedgerCell>)
                [
                    LedgerCell.Words(gear.Name),
                    LedgerCell.Number(gear.Ratio),
                    LedgerCell.Number(Tyre.Speed(tyre.Circumference, input.Gearbox.Overall(gear), 1000 * Rpm) / Kmh),
                    LedgerCell.Number(before?.Ratio),
                    LedgerCell.Number(before is null ? null : Tyre.Speed(tyreBefore.Circumference, input.Before!.Overall(before), 1000 * Rpm) / Kmh),
                    LedgerCell.Number(input.PowerSpeed is { } power ? Tyre.Speed(tyre.Circumference, input.Gearbox.Overall(gear), power.Si) / Kmh : null),
                ];
            }),
        ]);

    public static LedgerTable Shifts(GearingInput input, TyreSize tyre) => new(
        "shifts",
        "Shifting up at the speed of greatest power",
        [new("shift", "Shift"), new("at", "At", "km/h", 0), new("falls-to", "Falls to", "rpm", 0), new("drop", "Fall", "%", 0), new("step", "Step", Decimals: 2), new("verdict", "Verdict")],
        [
            .. ShiftSteps.Of(input.Gearbox, input.WidestDrop).Select(step => (ImmutableArray<LedgerCell>)
            [
                LedgerCell.Words($"{step.From.Name} to {step.To.Name}"),
                LedgerCell.Number(input.PowerSpeed is { } power ? Tyre.Speed(tyre.Circumference, input.Gearbox.Overall(step.From), power.Si) / Kmh : null),
                LedgerCell.Number(input.PowerSpeed is { } most ? most.Si / Rpm / step.Step : null),
                LedgerCell.Number(step.Drop * 100),
                LedgerCell.Number(step.Step),
                LedgerCell.Words(step.IsGap ? "wide" : "even"),
            ]),
        ]);

    /// <summary>The gearboxes of the choice beside each other, in the order of its options.</summary>
    public static LedgerTable Alternatives(GearingInput input, TyreSize tyre)
    {
        var cruise = input.Cruise.IsEmpty ? (double?)null : input.Cruise[^1];
        var kmh = Number((cruise ?? 0) / Kmh, "0.#");
        ImmutableArray<LedgerColumn> columns =
        [
            new("option", "Option"), new("gearbox", "Gearbox"), new("gears", "Gears", Decimals: 0), new("final", "Final drive", Decimals: 3), new("lowest", "Lowest gear at 1,000 rpm", "km/h"), new("highest", "Highest gear at 1,000 rpm", "km/h"),
            .. cruise is null ? (LedgerColumn[])[] : [new("cruise", $"Engine at {kmh} km/h", "rpm", 0)],
            new("top-speed", "Top speed by gearing", "km/h", 0), new("remark", "Remark"),
        ];
        var taken = input.Alternatives.FirstOrDefault(one => one.IsChosen);
        ImmutableArray<GearboxAlternative> rows = [.. input.Alternatives.Where(one => one.Set.IsSound)];
        return new LedgerTable("options", "The other gearboxes of this choice", columns, [.. rows.Select(Row)]);

        ImmutableArray<LedgerCell> Row(GearboxAlternative one, int at)
        {
            var highest = one.Set.Overall(one.Set.Highest);
            var lowest = one.Set.Overall(one.Set.Gears.MaxBy(gear => gear.Ratio)!);
            return
            [
                LedgerCell.Words(one.Option),
                LedgerCell.Words(one.Set.Title),
                LedgerCell.Number(one.Set.Gears.Length),
                LedgerCell.Number(one.Set.Final),
                LedgerCell.Number(Tyre.Speed(tyre.Circumference, lowest, 1000 * Rpm) / Kmh),
                LedgerCell.Number(Tyre.Speed(tyre.Circumference, highest, 1000 * Rpm) / Kmh),
                .. cruise is { } speed ? (LedgerCell[])[LedgerCell.Number(Tyre.EngineSpeed(tyre.Circumference, highest, speed) / Rpm)] : [],
                LedgerCell.Number(input.PowerSpeed is { } power ? Tyre.Speed(tyre.Circumference, highest, power.Si) / Kmh : null),
                LedgerCell.Words((one.IsChosen, one.Buildable) switch
                {
                    (true, _) => "this guide",
                    (_, false) => "not with everything else as here",
                    // Chassis and donor may have had the same one from the works.
                    _ when Same(one, taken) => "the same gearbox as in this guide: take whichever of the two turns better",
                    _ when rows[..at].FirstOrDefault(above => !above.IsChosen && Same(one, above)) is { } above => $"the same gearbox as “{above.Option}” brings: take whichever of the two turns better",
                    _ => "",
                }),
            ];
        }

        static bool Same(GearboxAlternative one, GearboxAlternative? other) => one.Set.Origin.Length > 0 && one.Set.Origin == other?.Set.Origin;
    }
}
