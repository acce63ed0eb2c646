using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Swapwright.Knowledge;
using Swapwright.Fitting;
using Swapwright.Sheets;
using Swapwright.Site.Models;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Site.Pages;

/// <summary>The belts of a guide's recommended combination.</summary>
internal static class GuideBelts
{
    private static readonly ConditionalWeakTable<FittedBelt, HtmlString> s_drawn = [];

    /// <summary>Each belt as far as the guide shows it.</summary>
    public static ImmutableArray<GuideBelt> Of(Sheet sheet) =>
    [
        .. sheet.Belts.Select(belt => new GuideBelt
        {
            Title = belt.Loop.Title,
            Designation = belt.Result.Recommended?.Designation ?? "",
            Words = string.Join(" ", Words(belt)),
            Trim = Trim(belt.Result),
            Drawing = Drawing(belt),
        }),
    ];

    public static ImmutableArray<BeltCard> Cards(Sheet sheet) => [.. sheet.Belts.Select(belt => Card(sheet, belt))];

    /// <summary>Loop and designation in a line each, for the summary.</summary>
    public static ImmutableArray<NamedValue> Short(Sheet sheet) =>
        [.. sheet.Belts.Select(belt => new NamedValue(belt.Loop.Title, belt.Result.Recommended?.Designation ?? "none that is stocked", null, belt.Result.Recommended is null ? Weight.Bad : Weight.Plain))];

    private static BeltCard Card(Sheet sheet, FittedBelt belt)
    {
        var result = belt.Result;
        return new BeltCard
        {
            Title = belt.Loop.Title,
            Designation = result.Recommended?.Designation ?? "",
            Words = string.Join(" ", Words(belt)),
            RunnersUp = result.RunnerUp is { } second ? [new NamedValue("Runner-up", second.Designation, BeltWords.Chosen(second))] : [],
            Tone = [.. Tone(belt)],
            Shims = [.. result.Shims.Select(shim => BeltWords.Shim(belt, shim))],
            Trim = Trim(result),
            Drawing = Drawing(belt),
            DrawingText = $"{belt.Loop.Title}: {string.Join(", ", belt.Loop.Pulleys.Select(pulley => pulley.Title))}, in the order in which the belt passes them.",
            Pulleys = [.. belt.Loop.Pulleys.Select((pulley, at) => Pulley(pulley, Owner(sheet, belt, pulley), result.Pulleys.IsEmpty ? null : result.Pulleys[at]))],
            Window = [.. Window(result)],
            Stated =
            [
                .. sheet.Values.Where(value => value.Stated.Value.Name.StartsWith($"belt.{belt.Loop.Id}.", StringComparison.Ordinal)).Select(value => new GuideStatedValue(
                    InSentence.Upper(ComputedValues.TitleOf(value.Stated.Value.Name)),
                    $"{SiteKnowledge.Number(value.Stated.Value.Value)}{(value.Stated.Value.Tolerance > 0 ? $" ± {SiteKnowledge.Number(value.Stated.Value.Tolerance)}" : "")}",
                    value.Computed is { } computed ? SiteKnowledge.Number(Math.Round(computed, 1)) : "none",
                    value.Stated.Value.WrittenDown ? "written down, not measured" : value.Verdict,
                    value.Agrees ? Weight.Good : Weight.Bad,
                    SiteKnowledge.Link(value.Stated.Rule))),
            ],
        };
    }

    private static string Trim(BeltResult result) => result.Problems.OfType<TrimmedBelt>().Select(BeltWords.Trim).FirstOrDefault() ?? "";

    // Drawn once for the guide and its card.
    private static HtmlString Drawing(FittedBelt belt) => s_drawn.GetValue(belt, static belt =>
        belt.Result.Nominal is null ? HtmlString.Empty : new HtmlString(BeltDrawing.Svg(belt.Loop, belt.Result, new BeltDrawingOptions($"belt-{belt.Loop.Id}"))));

    // Where the pulley comes from: the answer at its station's position says so, and the engine's own has none.
    private static string Owner(Sheet sheet, FittedBelt belt, Pulley pulley)
    {
        var station = sheet.Donor.BeltDrives.FirstOrDefault(drive => drive.Id == belt.Loop.Id)?.Stations.FirstOrDefault(one => one.Id == pulley.Id);
        return station?.Position is not { } position ? "the engine" : sheet.At(position)?.Answer?.Source switch
        {
            "chassis" => "the car",
            "donor" => "the engine",
            "other" => "another car",
            "made" => "made",
            _ => "new",
        };
    }

    private static GuideBeltPulley Pulley(Pulley pulley, string from, PulleyJudgement? judged) => new()
    {
        Name = pulley.Title,
        From = from,
        Side = pulley.Side == BeltSide.Back ? "back" : "ribs",
        Diameter = SiteKnowledge.Number(pulley.DiameterMm, "0.#"),
        Ribs = pulley.Ribs == 0 ? "flat" : SiteKnowledge.Number(pulley.Ribs),
        Wrap = judged is null ? "" : SiteKnowledge.Number(double.RadiansToDegrees(judged.WrapRad)),
        WrapLimit = judged is null ? "" : SiteKnowledge.Number(double.RadiansToDegrees(judged.WrapLimitRad)),
        Span = judged is null ? "" : SiteKnowledge.Number(judged.SpanToNextMm),
        PlaneOffset = judged is null ? "" : SiteKnowledge.Number(judged.PlaneOffsetToNextMm, "0.0"),
        Weight = judged is null or { WrapWithinLimit: true, PlaneWithinLimit: true } ? Weight.Plain : Weight.Caution,
        Remark = judged switch
        {
            { WrapWithinLimit: false } => "too little wrap",
            { PlaneWithinLimit: false } => "out of plane with the next pulley",
            _ => "",
        },
    };

    private static IEnumerable<NamedValue> Window(BeltResult result)
    {
        if (result.Window is { } window)
        {
            yield return new NamedValue("Loop, adjuster slack", Millimetres(window.ShortestMm));
            yield return new NamedValue("Loop, adjuster at its end", Millimetres(window.LongestMm));
        }

        if (result.Recommended is { } belt)
        {
            yield return new NamedValue("Room to slip the belt on", Millimetres(belt.InstallRoomMm));
            yield return new NamedValue("Room to take up", Millimetres(belt.TakeUpRoomMm));
            if (belt.TravelPercent is { } percent)
            {
                yield return new NamedValue(
                    "Adjuster with the belt tight",
                    $"{SiteKnowledge.Number(percent)} %",
                    result.Tone is null ? "of the arm's travel, measured from where it is swung back for fitting; the spring keeps the belt tight" : "of its travel from the slack end");
            }
        }
    }

    private static IEnumerable<NamedValue> Tone(FittedBelt belt)
    {
        if (belt.Result.Tone is { } tone)
        {
            yield return new NamedValue("Pluck here", $"{BeltWords.Title(belt, tone.FromId)} to {BeltWords.Title(belt, tone.ToId)}", $"the longest free span, {Millimetres(tone.SpanMm)}, in its middle");
            yield return new NamedValue("New belt", BeltWords.Hertz(tone.New));
            yield return new NamedValue("Belt that has run", BeltWords.Hertz(tone.RunIn));
        }
    }

    private static IEnumerable<string> Words(FittedBelt belt)
    {
        var reason = belt.Result.Recommended is { } first ? BeltWords.Chosen(first) : null;
        return new[] { reason }.OfType<string>().Concat(belt.Result.Problems.Where(problem => (problem.Weight != BeltProblemWeight.Note || problem is RibMismatch) && problem is not TrimmedBelt).Select(problem => BeltWords.Problem(belt, problem)));
    }

    private static string Millimetres(double value) => $"{SiteKnowledge.Number(value)} mm";
}
