using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Load.LoadWorksheet;

namespace Swapwright.Worksheets.Load;

/// <summary>How engine and gearbox hang on their two mounts, standing still.</summary>
internal static class MountFigures
{
    private const string Formula = "F = g Σ m (z − z_1) ∕ (z_2 − z_1)";
    private const string Source = "moments about the other mount: follows from the lever; g of ISO 80000-3";

    public static void Add(LedgerBuilder ledger, LoadInput input)
    {
        if (!input.Asks(Mounts) || input.Mounts is not { } mounts)
        {
            return;
        }

        var engine = input.Changes.FirstOrDefault(change => change.Id == "engine")?.After;
        var gearbox = input.Changes.FirstOrDefault(change => change.Id == "gearbox")?.After;
        if (mounts is not { TimingPlace: { } timing, EngineCentre: { } centre, EngineLength: { } length, GearboxCentre: { } boxCentre } || (mounts.GearboxReach ?? mounts.GearboxPlace) is not { } stated || engine is null || gearbox is null)
        {
            ledger.Gap("Load on the mounts", "where the mounts and the centres of mass lie along the crank axis is not known", "Give the chassis its mounts, the donor its centre of mass and length, and the gearbox its centre of mass.");
            return;
        }

        // What bolts on behind the engine is set back by its length, and by the plate between the two.
        var face = length.Si + (mounts.Plate?.Si ?? 0);
        var flank = mounts.GearboxReach is { } reach ? face + reach.Si : stated.Si;
        if (flank - timing.Si < 0.05)
        {
            ledger.Gap("Load on the mounts", "the two mounts lie in one place", "Measure both from the crank nose along the crank axis.");
            return;
        }

        var onGearbox = LoadFormulas.OnSecond(timing.Si, flank, (engine.Si, centre.Si), (gearbox.Si, face + boxCentre.Si));
        var onTiming = (LoadFormulas.Gravity * (engine.Si + gearbox.Si)) - onGearbox;
        FigureInput[] from = [engine.Input, centre.Input, gearbox.Input, length.Input, .. mounts.Plate is { } plate ? [plate.Input] : (FigureInput[])[], boxCentre.Input, timing.Input, stated.Input];
        ledger.Add(Mount("timing-mount", input.HasPropellerShaft ? "Engine mounts carry together" : "Timing-side mount carries", onTiming, mounts.TimingLimit) with { From = [.. from] });
        ledger.Add(Mount("gearbox-mount", input.HasPropellerShaft ? "Gearbox crossmember carries" : "Gearbox-side mount carries", onGearbox, mounts.GearboxLimit) with { From = [.. from] });
        ledger.Note("The mounts' loads are those of the powertrain standing still; restrictors of its roll carry nothing then. Torque and bumps come on top.");
    }

    private static Figure Mount(string id, string title, double load, Given? limit) => new(id, title, load, "N")
    {
        Decimals = 0,
        Formula = Formula,
        Source = Source,
        Remark = $"{Number(load / LoadFormulas.Gravity)} kg{(load < 0 ? ": it lifts, so the powertrain tips over the other mount" : limit switch { null => "", { Si: var most } when load > most => $": more than the {Number(most)} N that are allowed", { Si: var most } => $", within the {Number(most)} N that are allowed" })}",
        Weight = load < 0 || load > limit?.Si ? FigureWeight.Bad : limit is null ? FigureWeight.Plain : FigureWeight.Good,
    };
}
