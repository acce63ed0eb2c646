using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A feed of the cabin behind whose wire at the bulkhead more hangs than that carries.</summary>
/// <param name="SizeMm2">Conductor of the thinner of the two wires that meet at the bulkhead, mm².</param>
/// <param name="CarriesA">What they carry by <see cref="ConductorSize.Table"/>, A.</param>
/// <param name="CurrentA">What hangs on them and stays on, A; without the ECU's own, which no base states.</param>
/// <param name="Moved">Titles of the devices that are to be fed over a relay, so that the wire carries the rest.</param>
/// <param name="MovedA">What these draw together, A.</param>
/// <param name="FuseA">Blade fuse for their feed, A; null where the current is beyond the largest.</param>
/// <param name="FeedMm2">Conductor of that feed, mm²; null beyond the table.</param>
public sealed record BulkheadFeed(
    string Signal, string Title, string CabinCavity, string HarnessCavity, double SizeMm2, double CarriesA, double CurrentA, ImmutableArray<string> Moved, double MovedA, double? FuseA, double? FeedMm2);

/// <summary>
/// What the fitted devices draw over a feed that cabin and harness share. Left out is what is fed another way: over an added relay, or at the cabin's own
/// plug; an added relay's coil is not counted. What is on for seconds at a time, as reversing lamps, heats no wire
/// that was made for the rest. Common practice, no source.
/// </summary>
/// <param name="runs">The new wires of the devices.</param>
/// <param name="relayed">Wires whose loads start at an added relay.</param>
internal sealed class BulkheadFeeds(WiringData data, IReadOnlyList<WireRun> runs, ImmutableArray<SharedFeed> relayed)
{
    // Below this a load is a coil or a module itself, and nobody puts a relay before it (common practice, no source).
    private const double WorthA = 1;

    /// <summary>Current of the wire that joins the two sides, A: at least the signal's own; null for what is no shared feed.</summary>
    public double? CurrentOf(string id) => Shared(id) is { } feed ? Math.Max(feed.CurrentA ?? 0, data.Together(Behind(feed), feed)) : null;

    /// <summary>The feeds that ask more of the wires as found than they carry, by signal.</summary>
    public ImmutableArray<BulkheadFeed> TooThin() =>
    [
        .. from own in data.HarnessBody?.Pins ?? []
           group own by own.Signal into harness
           orderby harness.Key
           let feed = Shared(harness.Key)
           let cabin = data.CabinPinsOf(harness.Key).Select(pin => pin.Pin).ToList()
           where feed is not null && cabin.Count > 0 && data.CabinGiver(harness.Key) is null
           let carries = Math.Min(cabin.Sum(Carries), harness.Sum(Carries))
           let devices = Behind(feed).FindAll(device => !device.IsBrief)
           let current = data.Together(devices, feed)
           where current > carries
           select Relieved(feed, cabin, [.. harness], carries, current, devices),
    ];

    /// <summary>A shared feed that comes from the cabin; null where a device of this build gives it.</summary>
    private Signal? Shared(string id) =>
        data.SignalOf(id) is { Kind: SignalKind.Power, Shared: true } feed && data.Devices.All(device => !device.Supplies.Contains(id)) ? feed : null;

    private static double Carries(Pin pin) => SharedFeeds.Carries(pin.SizeMm2);

    private List<Device> Behind(Signal feed) => [.. data.On(feed).Where(device => !runs.Any(run => run.Role == device.Role && run.Signal == feed.Id && IsFedElsewhere(run)))];

    private bool IsFedElsewhere(WireRun run) => run.To.Place == Places.Body || relayed.Any(feed => SharedFeeds.HangsThere(data, run, feed));

    /// <summary>
    /// Moved is what there is least work on: of the groups of like devices that each suffice and are worth a relay the one with the fewest, then the one that draws
    /// most. Where none suffices alone, what draws most goes first, until the wire carries the rest.
    /// </summary>
    private BulkheadFeed Relieved(Signal feed, List<Pin> cabin, List<Pin> harness, double carries, double current, List<Device> devices)
    {
        double Rest(IEnumerable<Device> moved) => data.Together([.. devices.Except(moved)], feed);
        List<List<Device>> groups =
        [
            .. devices.Where(device => data.Together([device], feed) > 0).GroupBy(device => device.Position ?? device.Role, StringComparer.Ordinal)
                .OrderByDescending(group => data.Together([.. group], feed)).ThenBy(group => group.Key, StringComparer.Ordinal).Select(group => group.ToList()),
        ];
        var moved = groups.Where(group => data.Together(group, feed) >= WorthA && Rest(group) <= carries).MinBy(group => group.Count) ?? [];
        foreach (var group in moved.Count > 0 ? [] : groups)
        {
            if (Rest(moved) > carries)
            {
                moved.AddRange(group);
            }
        }

        var taken = data.Together(moved, feed);
        // A heater draws more while it is cold, and its fuse stands that.
        var fuse = LoadProtection.FuseFor(taken + moved.Sum(device => Math.Max(0, (device.ColdA ?? 0) - (device.CurrentA ?? 0))));
        return new(
            feed.Id, feed.Title, string.Join(", ", cabin.Select(pin => pin.Cavity)), string.Join(", ", harness.Select(pin => pin.Cavity)), cabin.Concat(harness).Min(pin => pin.SizeMm2), carries, current,
            [.. moved.Select(device => device.Title)], taken, fuse, SharedFeeds.Feed(data, Places.HarnessBody, taken, fuse)?.SizeMm2);
    }
}
