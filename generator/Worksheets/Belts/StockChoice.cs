using System.Collections.Immutable;
using System.Globalization;

namespace Swapwright.Worksheets.Belts;

/// <summary>Chooses among the belts that can be bought.</summary>
/// <remarks>
/// A belt fits an adjustable loop when the loop can become shorter than the belt by the install slack and longer than it by
/// the take-up. Of those that fit, the one whose length is nearest to the nominal loop is put first, because it is tight
/// near the middle of the travel; of two equally near the shorter, which leaves more travel for wear. A spring takes up by itself: there
/// the belt has to hold the arm in the middle part of its travel, and is slipped on with the arm swung back to its stop.
/// </remarks>
internal static class StockChoice
{
    /// <summary>
    /// Ribs, profile, effective length in whole millimetres: <c>6PK2120</c> is 6 ribs, PK, 2120 mm (ISO 9982, as a trade glossary quotes
    /// it).
    /// </summary>
    public static string Designation(int ribs, string profile, double lengthMm) => string.Create(
        CultureInfo.InvariantCulture, $"{ribs}{profile}{Math.Round(lengthMm, MidpointRounding.AwayFromZero):0}");

    /// <summary>The two best of those that fit an adjustable loop, in their order; null where fewer do. Lengths in mm.</summary>
    public static (BeltChoice? First, BeltChoice? Second) Adjustable(
        BeltLoop loop, IEnumerable<StockedBelt> stock, double nominalMm, AdjusterTravel travel, BeltLimits limits)
    {
        var window = travel.Window();
        var spring = loop.Adjuster as SpringAdjuster;
        var fitting = Ranked(stock, nominalMm)
            .Where(belt => window.ShortestMm <= belt.LengthMm * (1 - (limits.InstallSlackPercent / 100))
                && (spring is not null || window.LongestMm >= belt.LengthMm * (1 + (limits.TakeUpPercent / 100))))
            .Select(belt => (Belt: belt, At: travel.TightAt(belt.LengthMm)))
            .Where(fit => fit.At is { } at && (spring is null || IsInTheMiddle(spring, at, limits)))
            .Take(2)
            .ToList();
        BeltChoice Choice(int place, BeltChoiceReason reason) => new(
            fitting[place].Belt,
            Designation(fitting[place].Belt.Ribs, loop.Profile, fitting[place].Belt.LengthMm),
            reason,
            fitting[place].Belt.LengthMm - nominalMm,
            fitting[place].Belt.LengthMm - window.ShortestMm,
            window.LongestMm - fitting[place].Belt.LengthMm,
            fitting[place].At)
        {
            TravelPercent = travel.PercentFromSlack(fitting[place].At!.Value),
        };
        return fitting.Count switch
        {
            0 => (null, null),
            1 => (Choice(0, BeltChoiceReason.OnlyOneThatFits), null),
            _ when spring is not null => (Choice(0, BeltChoiceReason.NearestMark), Choice(1, BeltChoiceReason.FurtherFromMark)),
            _ => (Choice(0, BeltChoiceReason.NearestMidTravel), Choice(1, BeltChoiceReason.FurtherFromMidTravel)),
        };
    }

    /// <summary>The two nearest to the length among those within the tolerance for fixed centres, mm; null where fewer are.</summary>
    public static (BeltChoice? First, BeltChoice? Second) Fixed(
        BeltLoop loop, IEnumerable<StockedBelt> stock, double lengthMm, BeltLimits limits)
    {
        var choices = Ranked(stock, lengthMm)
            .Where(belt => Math.Abs(belt.LengthMm - lengthMm) <= limits.FixedCentreToleranceMm)
            .Take(2)
            .Select(belt => new BeltChoice(
                belt,
                Designation(belt.Ribs, loop.Profile, belt.LengthMm),
                BeltChoiceReason.WithinFixedCentreTolerance,
                belt.LengthMm - lengthMm,
                belt.LengthMm - lengthMm,
                lengthMm - belt.LengthMm,
                TightAt: null))
            .ToImmutableArray();
        return (choices.ElementAtOrDefault(0), choices.ElementAtOrDefault(1));
    }

    /// <summary>What to say where nothing fits: the stocked belts next to the loop on either side, null where none is there.</summary>
    public static NoStockedBelt None(IReadOnlyCollection<StockedBelt> stock, int ribs, double nominalMm) => new(
        ribs,
        Ranked(stock, nominalMm).FirstOrDefault(belt => belt.LengthMm <= nominalMm),
        Ranked(stock, nominalMm).FirstOrDefault(belt => belt.LengthMm > nominalMm));

    /// <summary>
    /// The belts to choose from: those of the loop's rib count, or where a shop has none at all, the narrowest that trimming makes fit.
    /// </summary>
    /// <remarks>
    /// A rib too many is cut off along its groove with a sharp knife, so that no cord is left bare at the edge: common practice, no source.
    /// </remarks>
    public static IReadOnlyList<StockedBelt> Candidates(IEnumerable<StockedBelt> stock, int ribs, BeltLimits limits)
    {
        var usable = stock.Where(belt => LoopInput.IsUsable(belt) && belt.Ribs >= ribs && belt.Ribs <= ribs + Math.Max(0, limits.MostTrimmedRibs)).ToList();
        return ribs == 0 || usable.Count == 0 ? [] : [.. usable.Where(belt => belt.Ribs == usable.Min(one => one.Ribs))];
    }

    private static bool IsInTheMiddle(SpringAdjuster spring, double at, BeltLimits limits)
    {
        var (from, to) = AdjusterTravel.Range(spring);
        return Math.Abs(at - spring.Nominal) <= (to - from) * limits.SpringMiddlePercent / 200;
    }

    private static IEnumerable<StockedBelt> Ranked(IEnumerable<StockedBelt> stock, double nominalMm) => stock
        .OrderBy(belt => Math.Abs(belt.LengthMm - nominalMm))
        .ThenBy(belt => belt.LengthMm)
        .ThenBy(belt => belt.PartId, StringComparer.Ordinal);
}
