using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>Finds what keeps a computed path from being one that a real belt can take in a single plane.</summary>
internal static class BeltPathFaults
{
    /// <summary>Touching is allowed; only what is deeper than this counts.</summary>
    private const double ToleranceMm = 1e-6;

    /// <summary>Beyond three quarters of a turn round one pulley the belt has, in truth, missed it.</summary>
    private const double MissedWrapRad = 1.5 * Math.PI;

    public static ImmutableArray<BeltProblem> Of(BeltPath path)
    {
        var faults = ImmutableArray.CreateBuilder<BeltProblem>();
        var missed = Missed(path);
        AddOverlaps(path.Runs, faults);
        AddCrossings(path.Runs, missed, faults);
        AddRunOvers(path.Runs, faults);
        AddWinding(path, missed, faults);
        return faults.ToImmutable();
    }

    private static void AddOverlaps(ImmutableArray<PulleyRun> runs, ImmutableArray<BeltProblem>.Builder faults)
    {
        for (var i = 0; i < runs.Length; i++)
        {
            for (var j = i + 1; j < runs.Length; j++)
            {
                var overlap = runs[i].RadiusMm + runs[j].RadiusMm - runs[i].Centre.DistanceTo(runs[j].Centre);
                if (overlap > ToleranceMm)
                {
                    faults.Add(new PulleysOverlap(runs[i].StationId, runs[j].StationId, overlap));
                }
            }
        }
    }

    private static void AddCrossings(
        ImmutableArray<PulleyRun> runs, List<PulleyRun> missed, ImmutableArray<BeltProblem>.Builder faults)
    {
        for (var i = 0; i < runs.Length; i++)
        {
            for (var j = i + 1; j < runs.Length; j++)
            {
                if (Cross(runs[i].ContactEnd, Next(runs, i).ContactStart, runs[j].ContactEnd, Next(runs, j).ContactStart)
                    && !MeetAtMissed(runs, i, j, missed))
                {
                    faults.Add(new BeltCrossesItself(runs[i].StationId, runs[j].StationId));
                }
            }
        }
    }

    /// <summary>The two spans at a missed pulley cross because it is missed; that is reported once, as the cause.</summary>
    private static bool MeetAtMissed(ImmutableArray<PulleyRun> runs, int i, int j, List<PulleyRun> missed) =>
        missed.Exists(run => (Next(runs, i) == run && runs[j] == run) || (Next(runs, j) == run && runs[i] == run));

    private static void AddRunOvers(ImmutableArray<PulleyRun> runs, ImmutableArray<BeltProblem>.Builder faults)
    {
        for (var i = 0; i < runs.Length; i++)
        {
            var next = Next(runs, i);
            foreach (var other in runs)
            {
                if (!ReferenceEquals(other, runs[i]) && !ReferenceEquals(other, next)
                    && Distance(other.Centre, runs[i].ContactEnd, next.ContactStart) < other.RadiusMm - ToleranceMm)
                {
                    faults.Add(new BeltRunsOverPulley(runs[i].StationId, next.StationId, other.StationId));
                }
            }
        }
    }

    /// <summary>A pulley that the belt misses adds (grooved) or takes away (back) one whole turn.</summary>
    private static List<PulleyRun> Missed(BeltPath path)
    {
        var turns = BeltGeometry.Turns(path);
        return [.. path.Runs.Where(run => run.WrapRad > MissedWrapRad && (run.Side == BeltSide.Grooved ? turns > 1 : turns < 1))];
    }

    private static void AddWinding(BeltPath path, List<PulleyRun> missed, ImmutableArray<BeltProblem>.Builder faults)
    {
        faults.AddRange(missed.Select(run => new PulleyNotReached(run.StationId)));
        var turns = BeltGeometry.Turns(path);
        if (turns != 1 && missed.Count == 0)
        {
            faults.Add(new WrongWinding(turns));
        }
    }

    private static PulleyRun Next(ImmutableArray<PulleyRun> runs, int index) => runs[(index + 1) % runs.Length];

    /// <summary>Whether two segments cross at a point inside both.</summary>
    private static bool Cross(BeltPoint a, BeltPoint b, BeltPoint c, BeltPoint d) =>
        OppositeSides(a, b, c, d) && OppositeSides(c, d, a, b);

    private static bool OppositeSides(BeltPoint a, BeltPoint b, BeltPoint p, BeltPoint q)
    {
        var length = a.DistanceTo(b);
        var left = Area(a, b, p) / length;
        var right = Area(a, b, q) / length;
        return (left > ToleranceMm && right < -ToleranceMm) || (left < -ToleranceMm && right > ToleranceMm);
    }

    private static double Area(BeltPoint a, BeltPoint b, BeltPoint p) => ((b.X - a.X) * (p.Y - a.Y)) - ((b.Y - a.Y) * (p.X - a.X));

    private static double Distance(BeltPoint p, BeltPoint a, BeltPoint b)
    {
        var dx = b.X - a.X;
        var dy = b.Y - a.Y;
        var along = Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / ((dx * dx) + (dy * dy)), 0, 1);
        return p.DistanceTo(new BeltPoint(a.X + (along * dx), a.Y + (along * dy)));
    }
}
