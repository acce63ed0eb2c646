using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Findings;

/// <summary>A belt as some combinations have it.</summary>
/// <param name="Drive">The drive as one of its donors has it.</param>
/// <param name="Belt">null where everything that the belt drives is left off.</param>
/// <param name="Missing">Stations left out although the belt cannot do without them.</param>
/// <param name="Region">Where it is so; it may reach beyond what can be built.</param>
internal sealed record FittedLoop(BeltDrive Drive, FittedBelt? Belt, ImmutableArray<BeltStation> Missing, Region Region);

/// <summary>
/// Every different belt loop of the buildable combinations with the region that has it. The space is cut by what turns at
/// each station (the answers at its position, the chassis's accessories); combinations are not looked at one by one.
/// </summary>
internal sealed class FittedLoops
{
    private readonly Resolution _resolution;
    private readonly RegionStore _store;
    private readonly KnowledgeBase _kb;
    private readonly BeltAssembly _belts;

    public FittedLoops(Resolution resolution)
    {
        _resolution = resolution;
        _store = resolution.Store;
        _kb = resolution.Space.Base;
        _belts = new BeltAssembly(_kb);
        All = Find();
    }

    /// <summary>In the order of donors and drives. Donors that take after one another share their loops.</summary>
    public ImmutableArray<FittedLoop> All { get; }

    private ImmutableArray<FittedLoop> Find()
    {
        var found = new List<FittedLoop>();
        var places = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var donor = 0; donor < _kb.Donors.Count; donor++)
        {
            var region = _store.Where(_resolution.Space.Donor, ValueSet.Of(_kb.Donors.Count, donor));
            foreach (var drive in _kb.Donors.All[donor].BeltDrives)
            {
                foreach (var (fitted, where) in Fittings(drive, region))
                {
                    var belt = _belts.Fit(drive, fitted);
                    ImmutableArray<BeltStation> missing = [.. belt is null ? [] : drive.Stations.Where((station, at) => fitted[at] is null && !station.CanBeLeftOut)];
                    var key = string.Create(CultureInfo.InvariantCulture, $"{drive.Place} {(belt is null ? "" : BeltAssembly.Content(belt.Loop))} {string.Join(' ', missing.Select(station => station.Id))}");
                    if (places.TryGetValue(key, out var at))
                    {
                        found[at] = found[at] with { Region = _store.Or(found[at].Region, where) };
                    }
                    else
                    {
                        places.Add(key, found.Count);
                        found.Add(new FittedLoop(drive, belt, missing, where));
                    }
                }
            }
        }

        return [.. found];
    }

    private List<(ImmutableArray<Pulley?> Fitted, Region Where)> Fittings(BeltDrive drive, Region donor)
    {
        List<(ImmutableArray<Pulley?> Fitted, Region Where)> fittings = [([], donor)];
        foreach (var station in drive.Stations)
        {
            var here = AtStation(station, donor);
            fittings =
            [
                .. from fitting in fittings
                   from piece in here
                   let both = _store.And(fitting.Where, piece.Where)
                   where _resolution.BuildableParts.Intersects(both)
                   select (fitting.Fitted.Add(piece.Pulley), both),
            ];
        }

        return fittings;
    }

    /// <summary>What turns at a station, and where: the pieces are disjoint and cover the donor's combinations.</summary>
    private List<(Pulley? Pulley, Region Where)> AtStation(BeltStation station, Region donor)
    {
        if (station.Position is not { } position || !_kb.Positions.Has(position))
        {
            return [(_belts.PulleyAt(station with { Position = null }, _kb.Chassis.All[0], null), donor)];
        }

        var pieces = new Dictionary<Pulley, Region>();
        var left = donor;
        var leftOut = Region.None;
        foreach (var standing in _resolution.At(position))
        {
            // Where two answers stand, which is a finding of its own, the sheet shows the first.
            var here = _store.And(standing.Region, left);
            if (here.IsNone)
            {
                continue;
            }

            left = _store.Minus(left, here);
            foreach (var alike in _kb.Chassis.All.Select((chassis, at) => (Pulley: _belts.PulleyAt(station, chassis, standing.Answer), at)).GroupBy(one => one.Pulley is { } pulley ? pulley with { Title = "" } : null))
            {
                var where = _store.And(here, _store.Where(_resolution.Space.Chassis, ValueSet.Of(_kb.Chassis.Count, [.. alike.Select(one => one.at)])));
                if (alike.Key is { } pulley)
                {
                    pieces[pulley] = _store.Or(pieces.GetValueOrDefault(pulley, Region.None), where);
                }
                else
                {
                    leftOut = _store.Or(leftOut, where);
                }
            }
        }

        return [.. pieces.Select(piece => ((Pulley?)piece.Key, piece.Value)), (null, _store.Or(left, leftOut))];
    }
}
