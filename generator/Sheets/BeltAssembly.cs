using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Sheets;

/// <summary>Puts together the belt loops of a combination: the donor's stations with the accessories that the answers fit there.</summary>
internal sealed class BeltAssembly
{
    private readonly ImmutableArray<(string Profile, StockedBelt Belt)> _stock;
    private readonly BeltLimits _limits;

    public BeltAssembly(KnowledgeBase kb)
    {
        _stock =
        [
            .. from part in kb.Parts.All
               let belt = part.Belt
               where belt is not null
               from ribs in belt.Ribs
               from length in belt.LengthsMm
               select (belt.Profile, new StockedBelt(ribs, (double)length, part.Id)),
        ];
        var settings = kb.Settings.Belt;
        _limits = new BeltLimits
        {
            CrankWrapDeg = (double)settings.CrankWrapDeg,
            AlternatorWrapDeg = (double)settings.AlternatorWrapDeg,
            OtherWrapDeg = (double)settings.OtherWrapDeg,
            PlaneOffsetMmPer100Mm = (double)settings.PlaneOffsetMmPer100Mm,
            InstallSlackPercent = (double)settings.FitSlackPercent,
            TakeUpPercent = (double)settings.TakeUpPercent,
        };
    }

    /// <param name="parts">The parts of the base, by id.</param>
    /// <param name="answers">The answer that stands at a position; null where none does or the position does not apply.</param>
    public ImmutableArray<SheetBelt> Assemble(DonorVariant donor, ChassisVariant chassis, EntitySet<Part> parts, Func<string, Answer?> answers)
    {
        var belts = ImmutableArray.CreateBuilder<SheetBelt>();
        foreach (var drive in donor.BeltDrives)
        {
            var pulleys = drive.Stations.Select(station => PulleyAt(station, chassis, parts, answers)).OfType<Pulley>().ToImmutableArray();
            if (!pulleys.Any(pulley => pulley.Role is StationRole.Alternator or StationRole.Other))
            {
                // Everything that this belt drove is left off, and the belt with it.
                continue;
            }

            var loop = new BeltLoop(drive.Id, drive.Title, drive.Profile, (double)drive.RibPitchMm, pulleys, Adjuster(drive.Adjuster, pulleys));
            belts.Add(new SheetBelt(loop, BeltWorksheet.Compute(loop, _stock.Where(stock => stock.Profile == drive.Profile).Select(stock => stock.Belt), _limits)));
        }

        return belts.ToImmutable();
    }

    private static Pulley? PulleyAt(BeltStation station, ChassisVariant chassis, EntitySet<Part> parts, Func<string, Answer?> answers)
    {
        PulleyEntry? fitted = null;
        var title = station.Title;
        if (station.Position is { } position)
        {
            var answer = answers(position);
            if (answer is null or { Source: "none" } or { Treatment: "blank" })
            {
                return null;
            }

            var carrier = new[] { answer.Part }.Concat(answer.Also).Select(id => id is null ? null : parts.Find(id)).FirstOrDefault(part => part?.Pulley is not null);
            fitted = carrier?.Pulley ?? (answer.Source == "chassis" ? chassis.AccessoryAt(position)?.Pulley : null);
            title = carrier?.Title ?? (answer.Source == "chassis" ? chassis.AccessoryAt(position)?.Title : null) ?? title;
        }

        return new Pulley(
            station.Id,
            title,
            Role(station.Role),
            (double)(station.X + (fitted?.Dx ?? 0)),
            (double)(station.Y + (fitted?.Dy ?? 0)),
            (double)(fitted?.DiameterMm ?? station.DiameterMm),
            fitted?.Ribs ?? station.Ribs,
            (double)(station.PlaneMm + (fitted?.PlaneMm ?? 0)),
            station.OnBack ? BeltSide.Back : BeltSide.Grooved);
    }

    private static StationRole Role(string role) => role switch
    {
        "crank" => StationRole.Crank,
        "alternator" => StationRole.Alternator,
        "idler" => StationRole.Idler,
        _ => StationRole.Other,
    };

    private static Adjuster? Adjuster(AdjusterEntry? entry, ImmutableArray<Pulley> pulleys)
    {
        if (entry is null || pulleys.All(pulley => pulley.Id != entry.Station))
        {
            return null;
        }

        return entry.Kind == "swing"
            ? new SwingAdjuster(entry.Station, (double)entry.X, (double)entry.Y, (double)(entry.From * Unit.Degree.Factor), (double)(entry.To * Unit.Degree.Factor))
            : new SlideAdjuster(entry.Station, (double)entry.X, (double)entry.Y, (double)entry.From, (double)entry.To);
    }
}
