using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>Computes the belt worksheet: path, length window, belt to buy, wraps, planes and whatever is wrong with the loop.</summary>
public static class BeltWorksheet
{
    private const double DegreesToRad = Math.PI / 180;

    /// <summary>
    /// Belts of another rib count than the loop's are passed over, but for wider ones where none of the loop's is stocked; the stock must be
    /// of the loop's profile.
    /// </summary>
    public static BeltResult Compute(BeltLoop loop, IEnumerable<StockedBelt> stock, BeltLimits? limits = null)
    {
        limits ??= BeltLimits.Default;
        var invalid = LoopInput.Problems(loop);
        if (!invalid.IsEmpty)
        {
            return new BeltResult(null, null, null, null, 0, 0, null, null, null, [], invalid);
        }

        var problems = ImmutableArray.CreateBuilder<BeltProblem>();
        var ribs = RibsOf(loop);
        AddPulleyProblems(loop, ribs, limits, problems);

        double? middle = loop.Adjuster is null ? null : AdjusterTravel.Mid(loop.Adjuster);
        var (nominal, faults) = BeltGeometry.Solve(At(loop, middle));
        problems.AddRange(faults);
        if (nominal is null || !faults.IsEmpty)
        {
            return new BeltResult(
                nominal, middle, nominal, null, ribs, ribs * loop.RibPitchMm, null, null, null, [], problems.ToImmutable());
        }

        BeltWindow? window = null;
        BeltChoice? first;
        BeltChoice? second;
        var candidates = StockChoice.Candidates(stock, ribs, limits);
        if (loop.Adjuster is null)
        {
            problems.Add(new MissingAdjuster(nominal.LengthMm, limits.FixedCentreToleranceMm));
            (first, second) = StockChoice.Fixed(loop, candidates, nominal.LengthMm, limits);
        }
        else
        {
            var travel = new AdjusterTravel(loop, loop.Adjuster, nominal.Anticlockwise);
            window = travel.Window();
            if (travel.IsRestricted)
            {
                problems.Add(new TravelRestricted(travel.UsableFrom, travel.UsableTo));
            }

            (first, second) = StockChoice.Adjustable(loop, candidates, nominal.LengthMm, travel, limits);
        }

        if (first is null)
        {
            problems.Add(StockChoice.None([.. candidates.Where(belt => belt.Ribs == ribs)], ribs, nominal.LengthMm));
        }
        else if (first.Belt.Ribs > ribs)
        {
            problems.Add(new TrimmedBelt(ribs, first.Belt.Ribs));
        }

        var running = first?.TightAt is null
            ? nominal
            : BeltGeometry.Solve(At(loop, first.TightAt), nominal.Anticlockwise).Path!;
        var judged = Judge(loop, running, limits);
        AddJudgements(judged, problems);
        return new BeltResult(
            nominal,
            middle,
            running,
            window,
            ribs,
            ribs * loop.RibPitchMm,
            first?.Designation ?? (ribs == 0 ? null : StockChoice.Designation(ribs, loop.Profile, nominal.LengthMm)),
            first,
            second,
            judged,
            problems.ToImmutable())
        {
            Tone = loop.Adjuster is SlideAdjuster or SwingAdjuster ? BeltTone.Of(running, first?.Belt, limits) : null,
            Shims = PlaneShims.Of(loop, judged),
        };
    }

    private static ImmutableArray<Pulley> At(BeltLoop loop, double? position) =>
        loop.Adjuster is null || position is null ? loop.Pulleys : AdjusterTravel.At(loop, loop.Adjuster, position.Value);

    private static int RibsOf(BeltLoop loop) => loop.Pulleys
        .Where(pulley => pulley.Side == BeltSide.Grooved && pulley.Ribs > 0)
        .Select(pulley => pulley.Ribs)
        .DefaultIfEmpty(0)
        .Min();

    private static void AddPulleyProblems(BeltLoop loop, int ribs, BeltLimits limits, ImmutableArray<BeltProblem>.Builder problems)
    {
        foreach (var pulley in loop.Pulleys)
        {
            if (pulley.DiameterMm < limits.MinEffectiveDiameterMm)
            {
                problems.Add(new BelowMinimumDiameter(pulley.Id, pulley.DiameterMm, limits.MinEffectiveDiameterMm));
            }

            if (pulley.Side == BeltSide.Grooved == (pulley.Ribs == 0))
            {
                problems.Add(new FaceMismatch(pulley.Id, pulley.Side, pulley.Ribs));
            }
            else if (pulley.Side == BeltSide.Grooved && pulley.Ribs > ribs)
            {
                problems.Add(new RibMismatch(pulley.Id, pulley.Ribs, ribs));
            }
        }
    }

    private static ImmutableArray<PulleyJudgement> Judge(BeltLoop loop, BeltPath path, BeltLimits limits) =>
        [.. path.Runs.Select((run, index) => Judge(loop, index, run, limits))];

    private static PulleyJudgement Judge(BeltLoop loop, int index, PulleyRun run, BeltLimits limits)
    {
        var pulley = loop.Pulleys[index];
        var next = loop.Pulleys[(index + 1) % loop.Pulleys.Length];
        var wrapLimit = DegreesToRad * pulley.Role switch
        {
            StationRole.Crank => limits.CrankWrapDeg,
            StationRole.Alternator => limits.AlternatorWrapDeg,
            StationRole.Other => limits.OtherWrapDeg,
            _ => limits.BackWrapDeg,
        };
        var offset = next.PlaneMm - pulley.PlaneMm;
        var allowed = limits.PlaneOffsetMmPer100Mm * run.SpanToNextMm / 100;
        return new PulleyJudgement(
            pulley.Id,
            next.Id,
            run.WrapRad,
            wrapLimit,
            run.WrapRad >= wrapLimit,
            run.SpanToNextMm,
            offset,
            allowed,
            Math.Abs(offset) <= allowed);
    }

    private static void AddJudgements(ImmutableArray<PulleyJudgement> judged, ImmutableArray<BeltProblem>.Builder problems)
    {
        foreach (var pulley in judged)
        {
            if (!pulley.WrapWithinLimit)
            {
                problems.Add(new WrapBelowLimit(pulley.StationId, pulley.WrapRad, pulley.WrapLimitRad));
            }

            if (!pulley.PlaneWithinLimit)
            {
                problems.Add(new OutOfPlane(pulley.StationId, pulley.NextId, pulley.PlaneOffsetToNextMm, pulley.AllowedPlaneOffsetMm));
            }
        }
    }
}
