using System.Collections.Frozen;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Findings;

/// <summary>A belt that cannot be bought or cannot run, in some buildable combination.</summary>
public static class BeltLength
{
    public static readonly SpaceCheck Check = new(FindingKinds.BeltLength, Run);

    // The fields that may still be at fault once a file has been read, as the file calls them.
    private static readonly FrozenDictionary<string, string> s_written = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        [nameof(SlideAdjuster.DirectionX)] = "direction",
        [nameof(SlideAdjuster.FromMm)] = "from",
        [nameof(SwingAdjuster.FromRad)] = "from",
        [nameof(SpringAdjuster.Nominal)] = "nominal",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        foreach (var loop in examination.Loops.All)
        {
            if (loop.Belt is not { } belt)
            {
                continue;
            }

            var blocking = belt.Result.Problems.FirstOrDefault(problem => problem.Weight == BeltProblemWeight.Blocking);
            if (loop.Missing.Length > 0)
            {
                yield return examination.About(FindingKinds.BeltLength, $"the belt `{loop.Drive.Id}` does not close without {string.Join(" and ", loop.Missing.Select(station => $"`{station.Id}`"))}", loop.Drive.Place, loop.Region) with
                {
                    Related = [.. loop.Missing.Select(station => new RelatedPlace($"`{station.Id}` is not to be left out", station.Place))],
                    Mend = "Let a rule put something in its place (an idler, the donor's accessory), or say `when-left-out: skip` if the belt closes without it.",
                };
            }
            else if (blocking is NoStockedBelt none)
            {
                yield return examination.About(FindingKinds.BeltLength, $"no stocked belt fits `{loop.Drive.Id}` round {Stations(belt.Loop)}: {Wanted(belt.Result, none)}", loop.Drive.Place, loop.Region) with
                {
                    Mend = "Add the belt to a part if a shop has it, fit another pulley or idler by a rule, or exclude these combinations with the reason.",
                };
            }
            else if (blocking is not null)
            {
                yield return examination.About(FindingKinds.BeltLength, $"no belt can run on `{loop.Drive.Id}` round {Stations(belt.Loop)}: {Words(blocking)}", loop.Drive.Place, loop.Region) with
                {
                    Mend = "Correct the pulleys' places, sizes and sides, or the answers that fit them.",
                };
            }
        }
    }

    private static string Stations(BeltLoop loop) => string.Join(", ", loop.Pulleys.Select(pulley => string.Create(CultureInfo.InvariantCulture, $"`{pulley.Id}` ({pulley.DiameterMm:0.#} mm)")));

    private static string Wanted(BeltResult result, NoStockedBelt none)
    {
        // A belt is looked for where there is a path to lay it along.
        var nominal = result.Nominal!.LengthMm;
        var window = result.Window is { } limits ? string.Create(CultureInfo.InvariantCulture, $", {limits.ShortestMm:0} to {limits.LongestMm:0} mm over the travel") : "";
        var near = new[] { none.NearestShorter, none.NearestLonger }.OfType<StockedBelt>().Select(belt => string.Create(CultureInfo.InvariantCulture, $"{belt.LengthMm:0} mm")).ToList();
        var stocked = near.Count == 0 ? "none of that many ribs is stocked" : $"the nearest stocked are of {string.Join(" and ", near)}";
        return string.Create(CultureInfo.InvariantCulture, $"it takes {none.Ribs} ribs and {nominal:0} mm{window}, and {stocked}");
    }

    private static string Words(BeltProblem problem) => problem switch
    {
        TooFewPulleys few => string.Create(CultureInfo.InvariantCulture, $"only {few.Count} pulley is left"),
        PulleysOverlap overlap => $"`{overlap.FirstId}` and `{overlap.SecondId}` overlap",
        PulleyNotReached apart => $"it does not reach `{apart.StationId}` on the side that is written",
        NoSpan span => $"there is no way from `{span.FromId}` to `{span.ToId}`",
        BeltCrossesItself crossed => $"it crosses itself behind `{crossed.FirstFromId}`",
        BeltRunsOverPulley over => $"it runs over `{over.OverId}`",
        InvalidInput invalid => $"`{s_written.GetValueOrDefault(invalid.Field, invalid.Field)}` of `{invalid.StationId}` is out of range",
        _ => "it does not close into one simple turn",
    };
}
