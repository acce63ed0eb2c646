using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>The numbers of a sheet by the names in <see cref="ComputedValues"/>, in the units given there.</summary>
internal static class ComputedNumbers
{
    public static decimal? Of(Sheet sheet, string name)
    {
        var parts = name.Split('.');
        return parts switch
        {
            ["belt", var loop, var what] => Belt(sheet.Belts.FirstOrDefault(belt => belt.Loop.Id == loop), what),
            ["wiring", "plugs", var what] => Plugs(sheet, what),
            ["wiring", "splices"] => sheet.Wiring?.Bill.Splices,
            ["wiring", "wire"] => sheet.Wiring is { } wiring ? (decimal)wiring.Bill.TotalLengthMm : null,
            _ => null,
        };
    }

    private static decimal? Belt(SheetBelt? belt, string what) => what switch
    {
        "length" => (decimal?)belt?.Result.Recommended?.Belt.LengthMm,
        "ribs" => belt is { Result.Ribs: > 0 } ? belt.Result.Ribs : null,
        "shortest" => (decimal?)belt?.Result.Window?.ShortestMm,
        "longest" => (decimal?)belt?.Result.Window?.LongestMm,
        _ => null,
    };

    private static decimal? Plugs(Sheet sheet, string what) => sheet.Wiring?.Counts is not { } counts
        ? null
        : what switch
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
