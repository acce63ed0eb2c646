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

    public static decimal? Belt(BeltResult? belt, string what) => what switch
    {
        "length" => (decimal?)belt?.Recommended?.Belt.LengthMm,
        "ribs" => belt is { Ribs: > 0 } ? belt.Ribs : null,
        "shortest" => (decimal?)belt?.Window?.ShortestMm,
        "longest" => (decimal?)belt?.Window?.LongestMm,
        _ => null,
    };

    public static decimal? Wiring(WiringSheet? wiring, string name) => (wiring, name.Split('.')) switch
    {
        (null, _) => null,
        (_, ["wiring", "plugs", var what]) => Plugs(wiring.Counts, what),
        (_, ["wiring", "splices"]) => wiring.Bill.Splices,
        (_, ["wiring", "wire"]) => (decimal)wiring.Bill.TotalLengthMm,
        _ => null,
    };

    private static decimal? Plugs(PlugCounts counts, string what) => what switch
    {
        "straight-in" => counts.StraightIn,
        "re-pinned" => counts.RePinned,
        "changed" => counts.Changed,
        "added" => counts.Added,
        "extended" => counts.Extended,
        "capped" => counts.Capped,
        _ => null,
    };
}
