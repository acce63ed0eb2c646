using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>An end of a new piece whose terminals are made for other conductors than the one that was chosen for it.</summary>
public sealed record TerminalRange(WireEnd End, double FromMm2, double ToMm2)
{
    /// <summary>
    /// A conductor is chosen by current, fuse and drop, and the terminal has to be crimped on it all the same. Ends of families that state no range are passed
    /// over, and so is what a lead brings.
    /// </summary>
    public static ImmutableArray<TerminalRange> Beyond(WiringSheet sheet, WireRun run) =>
        run.IsCut ? [.. new[] { run.From, run.To }.Select(end => At(sheet, end, run.SizeMm2)).OfType<TerminalRange>()] : [];

    private static TerminalRange? At(WiringSheet sheet, WireEnd end, double sizeMm2) =>
        end is { Kind: WireEndKind.Terminal or WireEndKind.Counterpart, Connector: { } connector }
        && sheet.Data?.Connectors.GetValueOrDefault(connector) is { FromMm2: { } from, ToMm2: { } to }
        && (sizeMm2 > to + 1e-9 || sizeMm2 < from - 1e-9)
            ? new(end, from, to)
            : null;
}
