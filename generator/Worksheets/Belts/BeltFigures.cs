using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Belts;

/// <summary>The numbers of a loop with the way they were got, for who asks why. Each id begins with the loop's, as the names that rules may state do.</summary>
public static class BeltFigures
{
    private const string Geometry = "tangents and arcs; for two pulleys Shigley, Mechanical Engineering Design, eq. 17-1 and 17-2";
    private const string String = "Mersenne's law of the string: Fletcher and Rossing, The Physics of Musical Instruments, chapter 2 (chapter from memory)";
    private const string Practice = "common practice, no source";

    public static void Add(LedgerBuilder ledger, BeltLoop loop, BeltResult result, BeltLimits limits)
    {
        if (!result.PathIsPossible || result.Running is not { } running || result.Nominal is not { } nominal)
        {
            return;
        }

        ledger.Add(new Figure($"{loop.Id}-loop", $"{loop.Title}: loop with its adjuster in the middle", nominal.LengthMm, "mm")
        {
            Formula = "L = Σ t + Σ r θ",
            Source = Geometry,
            From = [.. loop.Pulleys.Select(pulley => new FigureInput($"{(pulley.Side == BeltSide.Back ? "roller on the back" : "effective diameter")}, {pulley.Title}", pulley.DiameterMm, "mm", Station(pulley.Id)))],
            IsStep = true,
        });
        Window(ledger, loop, result, nominal);
        Choice(ledger, loop, result, limits, nominal);
        Pulleys(ledger, loop, result, limits, running);
        Tone(ledger, loop, result, limits);
        ledger.Add(new Figure($"{loop.Id}-spacer", $"{loop.Title}: greatest spacer or shim", result.Shims.Select(shim => Math.Abs(shim.MoveMm)).DefaultIfEmpty(0).Max(), "mm")
        {
            Formula = "z_kept − z, for each pulley beside a span out of plane",
            Source = Practice,
            From = [.. loop.Pulleys.Select(pulley => new FigureInput($"plane of {pulley.Title}", pulley.PlaneMm, "mm", Station(pulley.Id)))],
            Remark = result.Shims.IsEmpty ? "every pulley is in plane" : string.Join("; ", result.Shims.Select(shim => string.Create(CultureInfo.InvariantCulture, $"{Title(loop, shim.StationId)} by {shim.MoveMm:0.0} mm"))),
        });
    }

    private static void Window(LedgerBuilder ledger, BeltLoop loop, BeltResult result, BeltPath nominal)
    {
        if (result.Window is not { } window)
        {
            return;
        }

        var isAngle = loop.Adjuster is SwingAdjuster or SpringAdjuster { Way: SwingAdjuster };
        FigureInput Stands(double at) => isAngle
            ? new("adjuster stands at", double.RadiansToDegrees(at), "°", Station(loop.Adjuster!.StationId))
            : new("adjuster stands at", at, "mm", Station(loop.Adjuster!.StationId));
        void End(string id, string words, double length, double at) => ledger.Add(new Figure($"{loop.Id}-{id}", $"{loop.Title}: {words}", length, "mm")
        {
            Formula = "L over the usable travel of the adjuster, extrema refined by golden section",
            Source = Geometry,
            From = [Stands(at), new("loop with its adjuster in the middle", nominal.LengthMm, "mm", $"figure {loop.Id}-loop")],
            IsStep = true,
        });
        End("shortest", "loop with its adjuster slack", window.ShortestMm, window.ShortestAt);
        End("longest", "loop with its adjuster at the far end", window.LongestMm, window.LongestAt);
    }

    private static void Choice(LedgerBuilder ledger, BeltLoop loop, BeltResult result, BeltLimits limits, BeltPath nominal)
    {
        ledger.Add(new Figure($"{loop.Id}-ribs", $"{loop.Title}: ribs", result.Ribs, "")
        {
            Decimals = 0,
            Formula = "n = grooves of the narrowest grooved pulley",
            Source = Practice,
            From = [.. loop.Pulleys.Where(pulley => pulley.Ribs > 0).Select(pulley => new FigureInput($"grooves of {pulley.Title}", pulley.Ribs, "", Station(pulley.Id)))],
        });
        ImmutableArray<FigureInput> inputs =
        [
            new("loop with its adjuster in the middle", nominal.LengthMm, "mm", $"figure {loop.Id}-loop"),
            .. result.Window is { } window
                ? (FigureInput[])
                [
                    new("loop with its adjuster slack", window.ShortestMm, "mm", $"figure {loop.Id}-shortest"),
                    new("loop with its adjuster at the far end", window.LongestMm, "mm", $"figure {loop.Id}-longest"),
                    new("slack to slip it on", limits.InstallSlackPercent, "%", "setting of the base"),
                    new("take-up", limits.TakeUpPercent, "%", "setting of the base"),
                ]
                : [new("tolerance on fixed centres", limits.FixedCentreToleranceMm, "mm", "limit")],
        ];
        var formula = loop.Adjuster switch
        {
            null => "the stocked length within the tolerance of the loop",
            SpringAdjuster => "the stocked length nearest to the loop at the spring's mark, with L_short ≤ L (1 − slack) and the arm in the middle part of its travel",
            _ => "the stocked length nearest to the loop, with L_short ≤ L (1 − slack) and L_long ≥ L (1 + take-up)",
        };
        void Belt(string id, string words, BeltChoice? choice)
        {
            if (choice is { } belt)
            {
                ledger.Add(new Figure($"{loop.Id}-{id}", $"{loop.Title}: {words}", belt.Belt.LengthMm, "mm")
                {
                    Decimals = 0,
                    Formula = formula,
                    Source = Practice,
                    From = inputs,
                    Remark = string.Create(CultureInfo.InvariantCulture, $"{belt.Designation}; {belt.InstallRoomMm:0.0} mm to slip it on, {belt.TakeUpRoomMm:0.0} mm to take up"),
                });
            }
        }

        Belt("length", "effective length of the belt", result.Recommended);
        Belt("runner-up", "effective length of the runner-up", result.RunnerUp);
        if (result.Recommended is { TravelPercent: { } percent } first)
        {
            ledger.Add(new Figure($"{loop.Id}-position", $"{loop.Title}: where the adjuster stands with the belt tight", percent, "%")
            {
                Decimals = 0,
                Formula = "where on its travel the loop has the belt's length, from the slack end, by bisection",
                Source = Geometry,
                From = [new("effective length of the belt", first.Belt.LengthMm, "mm", $"figure {loop.Id}-length"), .. inputs.Take(3)],
            });
        }
    }

    private static void Pulleys(LedgerBuilder ledger, BeltLoop loop, BeltResult result, BeltLimits limits, BeltPath running)
    {
        var crank = loop.Pulleys.FirstOrDefault(pulley => pulley.Role == StationRole.Crank)?.Id;
        var alternator = loop.Pulleys.FirstOrDefault(pulley => pulley.Role == StationRole.Alternator)?.Id;
        for (var at = 0; at < running.Runs.Length; at++)
        {
            var (run, judged) = (running.Runs[at], result.Pulleys[at]);
            var next = running.Runs[(at + 1) % running.Runs.Length];
            var (name, other) = (Title(loop, run.StationId), Title(loop, judged.NextId));
            ledger.Add(new Figure($"{loop.Id}-span-{run.StationId}", $"{loop.Title}: span from {name} to {other}", run.SpanToNextMm, "mm")
            {
                Formula = "t = √(D² − (s₁ r₁ − s₂ r₂)²)",
                Source = Geometry,
                From =
                [
                    new("distance of the centres", Math.Sqrt(Math.Pow(next.Centre.X - run.Centre.X, 2) + Math.Pow(next.Centre.Y - run.Centre.Y, 2)), "mm", "belt tight"),
                    new($"radius of {name}, minus on the back", Signed(run), "mm", Station(run.StationId)),
                    new($"radius of {other}, minus on the back", Signed(next), "mm", Station(next.StationId)),
                ],
                IsStep = true,
            });
            ledger.Add(new Figure(run.StationId == crank ? $"{loop.Id}-crank-wrap" : run.StationId == alternator ? $"{loop.Id}-alternator-wrap" : $"{loop.Id}-wrap-{run.StationId}", $"{loop.Title}: wrap round {name}", double.RadiansToDegrees(run.WrapRad), "°")
            {
                Formula = "θ = s (φ_out − φ_in) mod 2π",
                Source = Geometry,
                From = [new("span before it", running.Runs[(at + running.Runs.Length - 1) % running.Runs.Length].SpanToNextMm, "mm", "belt tight"), new("span after it", run.SpanToNextMm, "mm", $"figure {loop.Id}-span-{run.StationId}"), new("wrap wanted at least", double.RadiansToDegrees(judged.WrapLimitRad), "°", "setting of the base")],
                Remark = judged.WrapWithinLimit ? "enough" : "too little wrap",
                Weight = judged.WrapWithinLimit ? FigureWeight.Good : FigureWeight.Caution,
            });
            ledger.Add(new Figure($"{loop.Id}-plane-{run.StationId}", $"{loop.Title}: {other} out of the plane of {name}", judged.PlaneOffsetToNextMm, "mm")
            {
                Formula = "z₂ − z₁, against the share of the span that is allowed",
                Source = Practice,
                From = [new("allowed for each 100 mm of span", limits.PlaneOffsetMmPer100Mm, "mm", "setting of the base"), new("allowed here", judged.AllowedPlaneOffsetMm, "mm", $"figure {loop.Id}-span-{run.StationId}")],
                Remark = judged.PlaneWithinLimit ? "in plane" : "out of plane",
                Weight = judged.PlaneWithinLimit ? FigureWeight.Good : FigureWeight.Caution,
                IsStep = judged.PlaneWithinLimit,
            });
        }

        var longest = result.Pulleys.MaxBy(pulley => pulley.SpanToNextMm)!;
        ledger.Add(new Figure($"{loop.Id}-longest-span", $"{loop.Title}: longest free span", longest.SpanToNextMm, "mm")
        {
            Formula = "the greatest t",
            Source = Geometry,
            From = [new($"span from {Title(loop, longest.StationId)} to {Title(loop, longest.NextId)}", longest.SpanToNextMm, "mm", $"figure {loop.Id}-span-{longest.StationId}")],
            IsStep = true,
        });
    }

    private static void Tone(LedgerBuilder ledger, BeltLoop loop, BeltResult result, BeltLimits limits)
    {
        if (result.Tone is not { } tone)
        {
            return;
        }

        var weighed = result.Recommended?.Belt is { RibMassKgPerM: { } grams } belt
            ? new FigureInput("mass of a rib a metre", grams * 1000, "g/m", $"part {belt.PartId}")
            : new FigureInput("mass of a rib a metre", limits.RibMassKgPerM * 1000, "g/m", "setting of the base");
        void Note(string id, string words, ToneRange range, double tension) => ledger.Add(new Figure($"{loop.Id}-{id}", $"{loop.Title}: note of the longest span, {words}", range.MiddleHz, "Hz")
        {
            Decimals = 0,
            Formula = "f = √(T ∕ m) ∕ (2 t)",
            Source = String,
            From = [new("longest free span", tone.SpanMm, "mm", $"figure {loop.Id}-longest-span"), new("tension a rib", tension, "N", "setting of the base"), weighed],
            Remark = string.Create(CultureInfo.InvariantCulture, $"good from {range.LowHz:0} to {range.HighHz:0} Hz"),
        });
        Note("frequency", "new belt", tone.New, limits.NewTensionN);
        Note("run-in-frequency", "belt that has run", tone.RunIn, limits.RunInTensionN);
    }

    private static double Signed(PulleyRun run) => run.Side == BeltSide.Back ? -run.RadiusMm : run.RadiusMm;

    private static string Station(string id) => $"station {id}";

    private static string Title(BeltLoop loop, string station) => loop.Pulleys.First(pulley => pulley.Id == station).Title;
}
