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
    public static ImmutableArray<SharedFeed> Of(WiringSheet sheet)
    {
        if (sheet.Data is not { } data)
        {
            return [];
        }

        return
        [
            .. from run in sheet.Runs
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
                   wire.First().Signal.Id, wire.First().Signal.Title, wire.Key.Place, wire.Key.Cavity, wire.First().Size, carries, current, fuse, fuse is null ? null : Feed(current, fuse.Value),
                   [.. wire.Select(one => data.TitleOf(one.Run.Role)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]),
        ];
    }

    /// <summary>Largest current that a conductor carries, A: the last row of the table that is no thicker; 0 below the first.</summary>
    public static double Carries(double sizeMm2) => ConductorSize.Table.LastOrDefault(row => row.SizeMm2 <= sizeMm2).CurrentA;

    private static double? Feed(double currentA, double fuseA) => Conductor.ClassFive.Select(row => (double?)row.SizeMm2)
        .FirstOrDefault(size => size >= (ConductorSize.For(currentA) ?? double.PositiveInfinity) && ConductorSize.FuseFor(size!.Value) >= fuseA);

    private static bool Gives(WiringData data, WireRun run) => data.Devices.Any(device => device.Role == run.Role && device.Supplies.Contains(run.Signal));
}
