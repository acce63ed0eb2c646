using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Gearing.GearingWorksheet;

namespace Swapwright.Worksheets.Gearing;

/// <summary>Speeds in the highest gear, at a cruise and at greatest power.</summary>
internal static class GearingFigures
{
    private const string Rolling = "follows from the gearing, slip left out; the trade's form, mph = rpm × D ∕ (336 i), at calchorsepower";

    public static void Add(LedgerBuilder ledger, GearingInput input, TyreSize tyre, TyreSize tyreBefore)
    {
        var set = input.Gearbox;
        var top = set.Highest;
        FigureInput[] gearing = [Circumference(tyre), new($"ratio, {top.Name}", top.Ratio, "", set.Origin), new("final drive", set.Final, "", set.FinalOrigin)];
        var speed = Tyre.Speed(tyre.Circumference, set.Overall(top), 1000 * Rpm) / Kmh;
        var inGear = input.Before is { } box && box.Highest.Name != top.Name ? $", in {box.Highest.Name}" : "";
        var speedBefore = input.Before is { } before ? Tyre.Speed(tyreBefore.Circumference, before.Overall(before.Highest), 1000 * Rpm) / Kmh : (double?)null;
        ledger.Add(new Figure("top-gear", $"At 1,000 rpm in {top.Name}", speed, "km/h")
        {
            Formula = "v = U n ∕ (i i_f), n = 1,000 ∕ min",
            Source = Rolling,
            From = [.. gearing],
            Remark = speedBefore is { } was ? Compared(speed, was, inGear) : "",
        });
        foreach (var cruise in input.Cruise)
        {
            var kmh = Number(cruise / Kmh, "0.#");
            var engine = Tyre.EngineSpeed(tyre.Circumference, set.Overall(top), cruise) / Rpm;
            var engineBefore = input.Before is { } old ? Tyre.EngineSpeed(tyreBefore.Circumference, old.Overall(old.Highest), cruise) / Rpm : (double?)null;
            ledger.Add(new Figure($"cruise-{kmh.Replace('.', '-')}", $"Engine speed at {kmh} km/h in {top.Name}", engine, "rpm")
            {
                Decimals = 0,
                Formula = "n = v i i_f ∕ U",
                Source = Rolling,
                From = [new FigureInput("v", cruise / Kmh, "km/h", "settings, cruise"), .. gearing],
                Remark = engineBefore is not { } then ? "" : Number(then) == Number(engine) ? $"as before{inGear}" : $"{Number(then)} rpm before{inGear}",
                Weight = input.PowerSpeed is { } most && engine * Rpm > most.Si ? FigureWeight.Caution : FigureWeight.Plain,
            });
        }

        AtPower(ledger, input, tyre, gearing);
    }

    private static void AtPower(LedgerBuilder ledger, GearingInput input, TyreSize tyre, FigureInput[] gearing)
    {
        if (input.PowerSpeed is not { } power || power.Si <= 0)
        {
            ledger.Gap("Shift points and top speed by gearing", "the engine speed at greatest power is not known", "Give the donor its engine speed at full power.");
            return;
        }

        var set = input.Gearbox;
        var highest = set.Highest;
        var steps = ShiftSteps.Of(set, input.WidestDrop);
        if (steps.Length > 0)
        {
            var widest = steps.MaxBy(step => step.Drop)!;
            var gaps = steps.Where(step => step.IsGap).Select(step => $"{step.From.Name} to {step.To.Name}").ToList();
            ledger.Add(new Figure("largest-drop", "Largest fall at a shift", widest.Drop * power.Si / Rpm, "rpm")
            {
                Decimals = 0,
                Formula = "Δn = n_P (1 − i_high ∕ i_low)",
                Source = "follows from the ratios; the road speed stays over the shift",
                From = [power.Input, new($"ratio, {widest.From.Name}", widest.From.Ratio, "", set.Origin), new($"ratio, {widest.To.Name}", widest.To.Ratio, "", set.Origin)],
                Remark = gaps.Count > 0 ? $"wide step from {string.Join(", from ", gaps)}: the engine falls out of its best range there" : $"from {widest.From.Name} to {widest.To.Name}; the steps narrow upwards as they should",
                Weight = gaps.Count > 0 ? FigureWeight.Caution : FigureWeight.Good,
            });
        }

        ledger.Add(new Figure("top-speed", "Top speed by gearing", Tyre.Speed(tyre.Circumference, set.Overall(highest), power.Si) / Kmh, "km/h")
        {
            Decimals = 0,
            Formula = "v = U n_P ∕ (i i_f)",
            Source = Rolling,
            From = [power.Input, .. gearing],
            Remark = $"in {highest.Name} at the speed of greatest power; whether the power reaches it is not asked here",
        });
    }

    /// <param name="inGear">Which gear that was, where the old gearbox's highest bears another name: a box of four has no fifth to be held against.</param>
    private static string Compared(double now, double before, string inGear)
    {
        var share = (now / before) - 1;
        return Math.Abs(share) < 0.0005
            ? $"as before{inGear}"
            : $"{Number(before, "0.0")} before{inGear}: geared {Number(Math.Abs(share) * 100, "0.0")} % {(share > 0 ? "longer" : "shorter")}";
    }
}
