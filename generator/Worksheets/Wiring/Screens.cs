using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// The screen of a screened wire is no wire of its own: where a device gets both anew, the screen comes with the piece that it is around. It ends where that
/// piece is laid on to a wire of the harness, whose screen goes on; at the ECU it ends where its own cavity is. In an adapter it is the screen of the screened wire beside it, each screen of another cable as far as there are such: two wires that are twisted lie under one. Common practice, no source.
/// </summary>
internal static class Screens
{
    /// <summary>
    /// A device takes screened wires that its plug has already, in a harness that grounds their screen: that ends at this plug, cut back under the sheath, and
    /// is drawn out for the device's own cavity (common practice, no source).
    /// </summary>
    public static bool IsThere(WiringData data, Device device, string cavity, string signal, ImmutableArray<Pin?> found) =>
        data.SignalOf(signal)?.Kind == SignalKind.Shield && device.LeadOf(cavity) is null
        && found.Any(wire => wire is not null && data.SignalOf(wire.Signal) is { Shielded: true })
        && (data.IsAtHarnessEcu(signal) || data.IsAtHarnessBody(signal));

    /// <summary>A screened piece in the size that it is sold in: the next thicker one, which its terminals and splices then have to take (common practice, no source).</summary>
    public static WireRun AsSold(WiringData data, WireRun run) =>
        run is { Shielded: true, Lead: null } && data.ScreenedMm2.FirstOrDefault(size => size >= run.SizeMm2) is var sold && sold > run.SizeMm2
            ? AsSold(run with { SizeMm2 = sold }, run.Conductor is { } chosen ? ConductorSize.Choose(chosen.For with { AskedMm2 = sold }) with { For = chosen.For } : null)
            : run;

    private static WireRun AsSold(WireRun run, ConductorChoice? conductor) => run with { Conductor = conductor, DropV = conductor?.DropV };

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
        run is { Lead: null, Purpose: not WirePurpose.Renewal } && data.SignalOf(run.Signal)?.Kind == SignalKind.Shield;

    private static WireRun? Around(WiringData data, ImmutableArray<WireRun> runs, WireRun screen)
    {
        var alike = runs.Where(run => run.Purpose == screen.Purpose && run.Lead is null).ToList();
        var wires = alike.Where(run => run.Shielded && !IsScreen(data, run)).ToList();
        if (screen.Purpose is WirePurpose.Device or WirePurpose.Extension)
        {
            return wires.Find(run => run.Role == screen.Role);
        }

        var cables = wires.Where((run, at) => !wires.Take(at).Any(earlier => TwistedPairs.AreTwisted(data, earlier.Signal, run.Signal)));
        return cables.ElementAtOrDefault(alike.FindAll(run => IsScreen(data, run)).IndexOf(screen));
    }
}
