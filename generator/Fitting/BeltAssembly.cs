using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Fitting;

/// <summary>A belt with the pulleys that it runs on, and what was computed for it.</summary>
public sealed record FittedBelt(BeltLoop Loop, BeltResult Result);

/// <summary>
/// Puts together belt loops: a donor's stations with the pulleys that answers fit there. Each different loop is computed once,
/// however many combinations have it.
/// </summary>
internal sealed class BeltAssembly
{
    private readonly EntitySet<Part> _parts;
    private readonly ImmutableArray<(string Profile, StockedBelt Belt)> _stock;
    private readonly BeltLimits _limits;
    private readonly System.Collections.Concurrent.ConcurrentDictionary<string, BeltResult> _results = new(StringComparer.Ordinal);

    public BeltAssembly(KnowledgeBase kb)
    {
        _parts = kb.Parts;
        _stock =
        [
            .. from part in kb.Parts.All
               let belt = part.Belt
               where belt is not null
               from ribs in belt.Ribs
               from length in belt.LengthsMm
               select (belt.Profile, new StockedBelt(ribs, (double)length, part.Id, (double?)belt.RibMassGPerM / 1000)),
        ];
        _limits = Limits(kb);
    }

    public static BeltLimits Limits(KnowledgeBase kb)
    {
        var settings = kb.Settings.Belt;
        return new BeltLimits
        {
            CrankWrapDeg = (double)settings.CrankWrapDeg,
            AlternatorWrapDeg = (double)settings.AlternatorWrapDeg,
            OtherWrapDeg = (double)settings.OtherWrapDeg,
            PlaneOffsetMmPer100Mm = (double)settings.PlaneOffsetMmPer100Mm,
            InstallSlackPercent = (double)settings.FitSlackPercent,
            TakeUpPercent = (double)settings.TakeUpPercent,
            SpringMiddlePercent = (double)settings.SpringMiddlePercent,
            MostTrimmedRibs = settings.TrimRibs,
            RibMassKgPerM = (double)settings.RibMassGPerM / 1000,
            NewTensionN = (double)settings.TensionNewN,
            RunInTensionN = (double)settings.TensionRunInN,
            TensionSpreadPercent = (double)settings.TensionSpreadPercent,
        };
    }

    /// <param name="answers">The answer that stands at a position; null where none does or the position does not apply.</param>
    public ImmutableArray<FittedBelt> Assemble(DonorVariant donor, ChassisVariant chassis, Func<string, Answer?> answers) =>
    [
        .. donor.BeltDrives.Select(drive => Fit(drive, drive.Stations.Select(station => PulleyAt(station, chassis, station.Position is { } position ? answers(position) : null)))).OfType<FittedBelt>(),
    ];

    /// <summary>The belt of a drive with a pulley, or none, for each of its stations; null where everything that it drove is left off, and the belt with it.</summary>
    public FittedBelt? Fit(BeltDrive drive, IEnumerable<Pulley?> fitted)
    {
        var pulleys = fitted.OfType<Pulley>().ToImmutableArray();
        if (!pulleys.Any(pulley => pulley.Role is StationRole.Alternator or StationRole.Other))
        {
            return null;
        }

        var loop = new BeltLoop(drive.Id, drive.Title, drive.Profile, (double)drive.RibPitchMm, pulleys, Adjuster(drive.Adjuster, pulleys));
        var result = _results.GetOrAdd(Content(loop), _ => BeltWorksheet.Compute(loop, _stock.Where(stock => stock.Profile == drive.Profile).Select(stock => stock.Belt), _limits));
        return new FittedBelt(loop, result);
    }

    /// <summary>The pulley that runs at a station, given the chassis and the answer at the station's position; null where it is left out.</summary>
    public Pulley? PulleyAt(BeltStation station, ChassisVariant chassis, Answer? answer)
    {
        PulleyEntry? fitted = null;
        var title = station.Title;
        if (station.Position is { } position)
        {
            if (answer is null or { Source: "none" } or { Treatment: "blank" })
            {
                return null;
            }

            var carrier = new[] { answer.Part }.Concat(answer.Also).Select(id => id is null ? null : _parts.Find(id)).FirstOrDefault(part => part?.Pulley is not null);
            var own = answer.Source == "chassis" ? chassis.AccessoryAt(position) : null;
            fitted = carrier?.Pulley ?? own?.Pulley;
            title = carrier?.Title ?? own?.Title ?? title;
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

    /// <summary>All that a loop's worksheet depends on: titles are not among it.</summary>
    public static string Content(BeltLoop loop) => string.Join('|', loop.Pulleys
        .Select(pulley => string.Create(CultureInfo.InvariantCulture, $"{pulley.Id} {pulley.Role} {pulley.X:R} {pulley.Y:R} {pulley.DiameterMm:R} {pulley.Ribs} {pulley.PlaneMm:R} {pulley.Side}"))
        .Prepend(string.Create(CultureInfo.InvariantCulture, $"{loop.Profile} {loop.RibPitchMm:R} {loop.Adjuster}")));

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

        double Inside(decimal value) => (double)(entry.Turns ? value * Unit.Degree.Factor : value);
        Adjuster way = entry.Turns
            ? new SwingAdjuster(entry.Station, (double)entry.X, (double)entry.Y, Inside(entry.From), Inside(entry.To))
            : new SlideAdjuster(entry.Station, (double)entry.X, (double)entry.Y, Inside(entry.From), Inside(entry.To));
        return entry.Kind == "spring" ? new SpringAdjuster(way, Inside(entry.Nominal ?? ((entry.From + entry.To) / 2))) : way;
    }
}
