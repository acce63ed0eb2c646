using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A wire of the harness on which more new wires would hang than it carries.</summary>
/// <param name="Place">Where they are spliced on.</param>
/// <param name="SizeMm2">Conductor of the wire that is there, mm².</param>
/// <param name="CarriesA">What it carries by <see cref="ConductorSize.Table"/>, A.</param>
/// <param name="CurrentA">What the new wires draw together, A.</param>
/// <param name="FuseA">Blade fuse for a feed of their own, A; null where the current is beyond the largest.</param>
/// <param name="FeedMm2">Conductor of that feed, mm²; null beyond the table.</param>
public sealed record SharedFeed(
    string Signal, string Title, string Place, string Cavity, double SizeMm2, double CarriesA, double CurrentA, double? FuseA, double? FeedMm2, ImmutableArray<string> Members);

/// <summary>
/// Adds up what new feeds take from one wire of the harness. What that wire carried before is not known and not counted, so the sum is
/// the least. Common practice, no source.
/// </summary>
public static class SharedFeeds
{
    internal static ImmutableArray<SharedFeed> Of(WiringData data, ImmutableArray<WireRun> runs) =>
        [
            .. from run in runs
               where run is { Purpose: WirePurpose.Device, JoinedMm2: > 0, Conductor: not null }
               let signal = data.SignalOf(run.Signal)
               where signal?.Kind == SignalKind.Power && !Gives(data, run)
               group (Run: run, Signal: signal, Size: run.JoinedMm2) by (run.To.Place, run.To.Cavity) into wire
               let current = wire.Sum(one => one.Run.Conductor!.For.CurrentA)
               let carries = Carries(wire.First().Size)
               where current > carries
               orderby wire.Key.Place, wire.Key.Cavity
               let fuse = LoadProtection.FuseFor(current)
               select new SharedFeed(
                   wire.First().Signal.Id, wire.First().Signal.Title, wire.Key.Place, wire.Key.Cavity, wire.First().Size, carries, current, fuse, Feed(data, wire.Key.Place, current, fuse)?.SizeMm2,
                   [.. wire.Select(one => data.TitleOf(one.Run.Role)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]),
        ];

    /// <summary>
    /// The pieces with a relay for each such wire: what would have hung on it starts at the relay's contact, and its coil alone hangs there. The
    /// contact's own feed comes from the battery. Where no base says where that is, it is reckoned by way of the trunk to the bulkhead and measured on the car.
    /// </summary>
    internal static ImmutableArray<WireRun> WithRelays(WiringData data, ImmutableArray<WireRun> runs, ImmutableArray<SharedFeed> feeds)
    {
        var all = runs.ToList();
        for (var at = 0; at < feeds.Length; at++)
        {
            var (feed, relay) = (feeds[at], Places.AddedRelay(at + 1));
            bool Hangs(WireRun run) => HangsThere(data, run, feed);
            var first = runs.First(Hangs);

            // The contact's cavity takes one terminal; what else hangs on it is spliced to that wire.
            WireRun ToContact(WireRun run) => ReferenceEquals(run, first)
                ? run with { To = new(WireEndKind.Terminal, relay, "87", Places.RelayBase), Splices = 0, JoinedMm2 = 0, TakesOver = false }
                : run with { To = new(WireEndKind.Splice, relay, "87", Places.RelayBase), Splices = 1, JoinedMm2 = 0, TakesOver = false };
            all = [.. all.Select(run => Hangs(run) ? ToContact(run) : run)];
            all.Add(Coil(data, relay, "86", feed.Signal, first.Colour, first.To) with { JoinedMm2 = first.JoinedMm2, TakesOver = first.TakesOver, Splices = 1 });
            if (data.Signals.All.Where(signal => signal is { Kind: SignalKind.Ground, Shared: true }).OrderByDescending(signal => signal.CurrentA).ThenBy(signal => signal.Id, StringComparer.Ordinal).FirstOrDefault() is { } ground)
            {
                all.Add(Coil(data, relay, "85", ground.Id, ground.Colour, new(WireEndKind.Ring, Places.BodyMetal, "", Places.Ring)));
            }

            if (Feed(data, feed.Place, feed.CurrentA, feed.FuseA) is { } conductor)
            {
                all.Add(Contact(data, relay, feed.Place, conductor));
            }
        }

        return [.. all];
    }

    /// <summary>Whether a new wire is one of those that would hang on a wire too many.</summary>
    internal static bool HangsThere(WiringData data, WireRun run, SharedFeed feed) =>
        run is { Purpose: WirePurpose.Device, Conductor: not null } && run.Signal == feed.Signal && run.To.Place == feed.Place && run.To.Cavity == feed.Cavity && !Gives(data, run);

    // A coil draws so little that the mechanical minimum carries it.
    private static WireRun Coil(WiringData data, string relay, string cavity, string signal, string colour, WireEnd to) => new(
        WireLabel.Of(relay, cavity, signal), WirePurpose.Device, relay, cavity, signal, new(WireEndKind.Terminal, relay, cavity, Places.RelayBase), to,
        data.LengthMm(data.Settings.GroundWayMm), data.Settings.LeastMm2, data.Settings.LeastMm2, colour, null, Shielded: false, Splices: 0)
    {
        WayMm = data.Settings.GroundWayMm,
    };

    /// <summary>Largest current that a conductor carries, A: the last row of the table that is no thicker; 0 below the first.</summary>
    public static double Carries(double sizeMm2) => ConductorSize.Table.LastOrDefault(row => row.SizeMm2 <= sizeMm2).CurrentA;

    // One tail of the fuse's holder is spliced to it, the other ends under the battery's clamp or the nut of its cable's joint. Red, as feeds of the battery are: common practice, no source.
    private static WireRun Contact(WiringData data, string relay, string place, ConductorChoice conductor) => new(
        WireLabel.Of(relay, "30", Places.Battery), WirePurpose.Device, relay, "30", Places.Battery, new(WireEndKind.Terminal, relay, "30", Places.RelayBase), new(WireEndKind.Ring, Places.Battery, "", Places.Ring),
        conductor.For.LengthMm, conductor.SizeMm2, conductor.SizeMm2, "RD", conductor.DropV, Shielded: false, Splices: 1)
    {
        Conductor = conductor,
        WayMm = ContactWayMm(data, place),
    };

    // A relay sits where the wire is that its coil hangs on.
    private static double ContactWayMm(WiringData data, string place)
    {
        var own = data.PlugAt(place)?.Location;
        var bulkhead = data.HarnessBody?.Location ?? data.EcuPlace;
        if (data.Battery is { } battery)
        {
            return place == Places.HarnessBody ? bulkhead.DistanceTo(battery.Location) : (own ?? data.EcuPlace).DistanceTo(data.Trunk) + data.Trunk.DistanceTo(battery.Location);
        }

        return place == Places.HarnessBody ? data.Trunk.DistanceTo(bulkhead) : (own ?? data.EcuPlace).DistanceTo(data.Trunk) + data.Trunk.DistanceTo(bulkhead);
    }

    /// <summary>The conductor of a contact's feed; null beyond what the table or a blade fuse stands.</summary>
    internal static ConductorChoice? Feed(WiringData data, string place, double currentA, double? fuseA) => fuseA is { } fuse && ConductorSize.For(currentA) is not null
        && ConductorSize.Choose(new(0, currentA, data.LengthMm(ContactWayMm(data, place)), data.Settings.AllowedDropV, data.Settings.ConductorCelsius, data.Settings.LeastMm2, fuse)) is var choice
        && ConductorSize.FuseFor(choice.SizeMm2) >= fuse
            ? choice
            : null;

    private static bool Gives(WiringData data, WireRun run) => data.DeviceAt(run.Role)?.Supplies.Contains(run.Signal) == true;
}
