using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Gearing.GearingWorksheet;

namespace Swapwright.Worksheets.Gearing;

/// <summary>Road speed over engine speed, a line for each gear.</summary>
internal static class GearingChart
{
    // Where the engine speed at greatest power is not known: no road engine of the kind turns faster for long.
    private const double UsualRpm = 6000;

    // An engine is driven a little past its greatest power.
    private const double Beyond = 1.08;

    public static LedgerChart Of(GearingInput input, TyreSize tyre, TyreSize tyreBefore)
    {
        var most = Math.Ceiling((input.PowerSpeed is { Si: > 0 } power ? power.Si / Rpm * Beyond : UsualRpm) / 500) * 500;
        var series = Lines(input.Gearbox, tyre, most, "", isReference: false);
        var before = input.Before is { } old && !Same(old, input.Gearbox, tyre, tyreBefore) ? Lines(old, tyreBefore, most, " before", isReference: true) : [];
        var all = series.AddRange(before);
        var highest = all.SelectMany(one => one.Points).Max(point => point.Up);
        return new LedgerChart(
            "speeds",
            "Road speed over engine speed",
            new ChartAxis("Engine speed", "rpm", 0, most),
            new ChartAxis("Road speed", "km/h", 0, highest),
            all)
        {
            Words = $"Straight lines from rest, one for each gear. At {Number(most)} rpm: {string.Join(", ", all.Select(one => $"{one.Title} {Number(one.Points[^1].Up)} km/h"))}.",
        };
    }

    private static ImmutableArray<ChartSeries> Lines(GearSet set, TyreSize tyre, double most, string suffix, bool isReference) =>
    [
        .. set.Gears.Select(gear => new ChartSeries(
            gear.Name + suffix,
            [new ChartPoint(0, 0), new ChartPoint(most, Tyre.Speed(tyre.Circumference, set.Overall(gear), most * Rpm) / Kmh)],
            isReference)),
    ];

    // The same lines drawn twice would only hide each other.
    private static bool Same(GearSet one, GearSet other, TyreSize tyre, TyreSize tyreBefore) =>
        tyre.Circumference.Equals(tyreBefore.Circumference) && one.Final.Equals(other.Final) && one.Gears.SequenceEqual(other.Gears);
}
