using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>Rejects what no geometry can be made of, so that the formulas behind never meet a number they cannot use.</summary>
internal static class LoopInput
{
    /// <summary>No belt drive of a vehicle is wider; larger numbers are slips of the unit.</summary>
    private const double FarthestMm = 100_000;

    public static ImmutableArray<BeltProblem> Problems(BeltLoop loop)
    {
        var problems = ImmutableArray.CreateBuilder<BeltProblem>();
        var pulleys = loop.Pulleys.IsDefault ? [] : loop.Pulleys;
        if (pulleys.Length < 2)
        {
            problems.Add(new TooFewPulleys(pulleys.Length));
        }

        if (!double.IsFinite(loop.RibPitchMm) || loop.RibPitchMm <= 0 || loop.RibPitchMm > FarthestMm)
        {
            problems.Add(new InvalidInput(nameof(BeltLoop.RibPitchMm), StationId: null));
        }

        foreach (var pulley in pulleys)
        {
            problems.AddRange(FieldsAtFault(pulley).Select(field => new InvalidInput(field, pulley.Id)));
        }

        problems.AddRange(pulleys.GroupBy(pulley => pulley.Id).Where(group => group.Skip(1).Any())
            .Select(group => new InvalidInput(nameof(Pulley.Id), group.Key)));
        if (loop.Adjuster is { } adjuster)
        {
            if (!pulleys.Any(pulley => pulley.Id == adjuster.StationId))
            {
                problems.Add(new InvalidInput(nameof(Adjuster.StationId), adjuster.StationId));
            }

            problems.AddRange(FieldsAtFault(adjuster).Select(field => new InvalidInput(field, adjuster.StationId)));
        }

        return problems.ToImmutable();
    }

    public static bool IsUsable(StockedBelt belt) => belt.Ribs > 0 && Within(belt.LengthMm) && belt.LengthMm > 0;

    /// <summary>Whether a pulley can at least be drawn.</summary>
    public static bool IsDrawable(Pulley pulley) =>
        Within(pulley.X) && Within(pulley.Y) && Within(pulley.DiameterMm) && pulley.DiameterMm > 0;

    private static IEnumerable<string> FieldsAtFault(Pulley pulley)
    {
        if (!Within(pulley.X))
        {
            yield return nameof(Pulley.X);
        }

        if (!Within(pulley.Y))
        {
            yield return nameof(Pulley.Y);
        }

        if (!Within(pulley.DiameterMm) || pulley.DiameterMm <= 0)
        {
            yield return nameof(Pulley.DiameterMm);
        }

        if (!Within(pulley.PlaneMm))
        {
            yield return nameof(Pulley.PlaneMm);
        }

        if (pulley.Ribs < 0)
        {
            yield return nameof(Pulley.Ribs);
        }
    }

    private static IEnumerable<string> FieldsAtFault(Adjuster adjuster)
    {
        switch (adjuster)
        {
            case SlideAdjuster slide:
                if (!IsDirection(slide.DirectionX, slide.DirectionY))
                {
                    yield return nameof(SlideAdjuster.DirectionX);
                }

                if (!IsRange(slide.FromMm, slide.ToMm, FarthestMm))
                {
                    yield return nameof(SlideAdjuster.FromMm);
                }

                break;
            case SwingAdjuster swing:
                if (!Within(swing.PivotX) || !Within(swing.PivotY))
                {
                    yield return nameof(SwingAdjuster.PivotX);
                }

                if (!IsRange(swing.FromRad, swing.ToRad, 2 * Math.PI))
                {
                    yield return nameof(SwingAdjuster.FromRad);
                }

                break;
            case SpringAdjuster { Way: not SpringAdjuster } spring:
                foreach (var field in FieldsAtFault(spring.Way))
                {
                    yield return field;
                }

                var (from, to) = AdjusterTravel.Range(spring);
                if (!(spring.Nominal >= from && spring.Nominal <= to))
                {
                    yield return nameof(SpringAdjuster.Nominal);
                }

                break;
            default:
                yield return nameof(BeltLoop.Adjuster);
                break;
        }
    }

    private static bool Within(double mm) => Math.Abs(mm) <= FarthestMm;

    private static bool IsDirection(double x, double y) =>
        Within(x) && Within(y) && Math.Sqrt((x * x) + (y * y)) > 1e-9;

    private static bool IsRange(double from, double to, double limit) => Math.Abs(from) <= limit && Math.Abs(to) <= limit && from < to;
}
