using Swapwright.Knowledge;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Fitting;

/// <summary>Numbers of belts and wiring by the names in <see cref="ComputedValues"/>, in the units given there.</summary>
internal static class FittedNumbers
{
    /// <summary>The loop and the number that a name such as <c>belt.accessory.length</c> asks for; null for names of other worksheets.</summary>
    public static (string Loop, string What)? BeltName(string name) => name.Split('.') is ["belt", var loop, var what] ? (loop, what) : null;

    public static bool IsWiring(string name) => name.StartsWith("wiring.", StringComparison.Ordinal);

    /// <summary>A figure by <c>ledger.figure</c>, or by <c>ledger.group.figure</c> where many are alike.</summary>
    public static decimal? Ledger(IEnumerable<Ledger> ledgers, string name) =>
        name.Split('.') is [var ledger, .. var figure] && ledgers.FirstOrDefault(one => one.Id == ledger)?.Figure(string.Join('-', figure)) is { } found ? (decimal)found.Value : null;

    public static decimal? Belt(FittedBelt? fitted, string what) => fitted?.Result is not { } belt ? null : what switch
    {
        "length" => (decimal?)belt.Recommended?.Belt.LengthMm,
        "ribs" => belt is { Ribs: > 0 } ? belt.Ribs : null,
        "shortest" => (decimal?)belt.Window?.ShortestMm,
        "longest" => (decimal?)belt.Window?.LongestMm,
        "position" => (decimal?)belt.Recommended?.TravelPercent,
        "longest-span" => belt.PathIsPossible ? (decimal)belt.Pulleys.Max(pulley => pulley.SpanToNextMm) : null,
        "frequency" => (decimal?)belt.Tone?.New.MiddleHz,
        "crank-wrap" => WrapAt(fitted, StationRole.Crank),
        "alternator-wrap" => WrapAt(fitted, StationRole.Alternator),
        "spacer" => belt.PathIsPossible ? (decimal)belt.Shims.Select(shim => Math.Abs(shim.MoveMm)).DefaultIfEmpty(0).Max() : null,
        _ => null,
    };

    public static decimal? Wiring(WiringSheet? wiring, string name) => (wiring, name.Split('.')) switch
    {
        (null, _) => null,
        (_, ["wiring", "plugs", var what]) => Plugs(wiring.Counts, what),
        (_, ["wiring", "pieces"]) => wiring.Pieces.Count(),
        (_, ["wiring", "terminals"]) => wiring.Bill.Terminals.Sum(line => line.Count),
        (_, ["wiring", "longest-wire"]) => (decimal)wiring.Pieces.Select(run => run.LengthMm).DefaultIfEmpty(0).Max(),
        (_, ["wiring", "longest-drop"]) => (decimal)wiring.Pieces.Select(run => run.DropV ?? 0).DefaultIfEmpty(0).Max(),
        (_, ["wiring", "thickest-wire"]) => (decimal)wiring.Pieces.Select(run => run.SizeMm2).DefaultIfEmpty(0).Max(),
        (_, ["wiring", "fuses"]) => LoadProtection.Fuses(wiring).Length,
        (_, ["wiring", "relays"]) => LoadProtection.Relays(wiring).Length,
        (_, ["wiring", "splices"]) => wiring.Bill.Splices,
        (_, ["wiring", "wire"]) => (decimal)wiring.Bill.TotalLengthMm,
        _ => null,
    };

    private static decimal? WrapAt(FittedBelt belt, StationRole role) => belt.Loop.Pulleys.FirstOrDefault(pulley => pulley.Role == role) is { } pulley
        ? (decimal?)(belt.Result.Pulleys.FirstOrDefault(judged => judged.StationId == pulley.Id)?.WrapRad * 180 / Math.PI)
        : null;

    private static decimal? Plugs(PlugCounts counts, string what) => what switch
    {
        "straight-in" => counts.StraightIn,
        "re-pinned" => counts.RePinned,
        "changed" => counts.Changed,
        "added" => counts.Added,
        "extended" => counts.Extended,
        "capped" => counts.Capped,
        "lead" => counts.Lead,
        "joined" => counts.Joined,
        _ => null,
    };
}
