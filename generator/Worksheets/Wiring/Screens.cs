using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// The screen of a screened wire is no wire of its own: where a device gets both anew, the screen comes with the piece that it is around. It ends where that
/// piece is laid on to a wire of the harness, whose screen goes on; at the ECU it ends where its own cavity is. Common practice, no source.
/// </summary>
internal static class Screens
{
    public static ImmutableArray<WireRun> Marked(WiringData data, ImmutableArray<WireRun> runs) =>
        runs.Any(run => IsScreen(data, run)) ? [.. runs.Select(run => IsScreen(data, run) && Around(data, runs, run) is { } wire ? Marked(run, wire) : run)] : runs;

    private static WireRun Marked(WireRun screen, WireRun wire) => screen with
    {
        ScreenOf = wire.Label,
        LengthMm = wire.LengthMm,
        WayMm = wire.WayMm,
        To = wire.TakesOver ? wire.To : screen.To,
        Splices = wire.TakesOver ? wire.Splices : screen.Splices,
    };

    private static bool IsScreen(WiringData data, WireRun run) =>
        run is { Lead: null, Purpose: WirePurpose.Device or WirePurpose.Extension } && data.SignalOf(run.Signal)?.Kind == SignalKind.Shield;

    private static WireRun? Around(WiringData data, ImmutableArray<WireRun> runs, WireRun screen) =>
        runs.FirstOrDefault(run => run.Role == screen.Role && run is { Shielded: true, Lead: null } && run.Purpose == screen.Purpose && !IsScreen(data, run));
}
