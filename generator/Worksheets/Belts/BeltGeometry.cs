using System.Collections.Immutable;

namespace Swapwright.Worksheets.Belts;

/// <summary>
/// The path of a belt round any number of pulleys on either of its faces.
/// </summary>
/// <remarks>
/// <para>
/// With the belt order anticlockwise, every grooved pulley lies to the left of the moving belt (s = +1) and every back-side
/// pulley to its right (s = -1). For a span from pulley i to pulley j, with d the vector between the centres, D its length
/// and k = s_i r_i - s_j r_j, the span is t = sqrt(D^2 - k^2) in direction phi = atan2(d_y, d_x) + atan2(k, t); the contact
/// points lie at s r along the normal (sin phi, -cos phi). The wrap is s_i (phi_i - phi_(i-1)) modulo 2 pi and the length
/// L = sum of t + sum of r times wrap. A simple closed curve turns once, so the sum of s times wrap is 2 pi.
/// For two grooved pulleys this is the open belt of Shigley, equations 17-1 and 17-2; for one of each, the crossed belt.
/// </para>
/// <para>
/// A clockwise order is mirrored in the x axis, solved, and mirrored back. Nothing in the centres alone tells the order once
/// rollers press on the back, so both are tried: the one with fewer faults is taken, then the one that turns once, then the
    /// shorter.
/// </para>
/// <para>
/// Diameters are effective diameters, so the length is the effective length, by which ribbed belts are sold. The cord line
/// lies further out by the effective line differential, nominally 2 mm for PK (ISO 9981:2020, 5.4): with only grooved
/// pulleys the pitch length is longer by 2 pi times that, 12.566 mm. Speed ratios go by pitch diameters, lengths do not.
/// </para>
/// </remarks>
public static class BeltGeometry
{
    private const double Full = 2 * Math.PI;

    /// <summary>Two pulleys read the same either way round; rounding must not choose.</summary>
    private const double LengthNoiseMm = 1e-6;

    /// <summary>Below this two pulleys touch, and a direction between them would be rounding noise.</summary>
    private const double ShortestSpanMm = 1e-6;

    /// <summary>Rounding in the angles must not turn a wrap of nothing into a whole turn.</summary>
    private const double AngleNoiseRad = 1e-9;

    /// <summary>Solves the loop in whichever order is the better one; the path is null where some span does not exist.</summary>
    public static (BeltPath? Path, ImmutableArray<BeltProblem> Faults) Solve(ImmutableArray<Pulley> pulleys)
    {
        var anticlockwise = Solve(pulleys, anticlockwise: true);
        var clockwise = Solve(pulleys, anticlockwise: false);
        return clockwise.Path is not null && anticlockwise.Path is not null && IsBetter(clockwise, anticlockwise)
            ? clockwise
            : anticlockwise;
    }

    /// <summary>Solves the loop with the belt order taken as given.</summary>
    public static (BeltPath? Path, ImmutableArray<BeltProblem> Faults) Solve(ImmutableArray<Pulley> pulleys, bool anticlockwise)
    {
        var mirror = anticlockwise ? 1.0 : -1.0;
        var count = pulleys.Length;
        var faults = ImmutableArray.CreateBuilder<BeltProblem>();
        var directions = new double[count];
        var spans = new double[count];
        for (var i = 0; i < count; i++)
        {
            var from = pulleys[i];
            var to = pulleys[(i + 1) % count];
            var dx = to.X - from.X;
            var dy = mirror * (to.Y - from.Y);
            var k = SignedRadius(from) - SignedRadius(to);
            var square = (dx * dx) + (dy * dy) - (k * k);
            if (!(square > ShortestSpanMm * ShortestSpanMm))
            {
                faults.Add(new NoSpan(from.Id, to.Id));
                continue;
            }

            spans[i] = Math.Sqrt(square);
            directions[i] = Math.Atan2(dy, dx) + Math.Atan2(k, spans[i]);
        }

        if (faults.Count > 0)
        {
            return (null, faults.ToImmutable());
        }

        var runs = ImmutableArray.CreateBuilder<PulleyRun>(count);
        var length = 0.0;
        for (var i = 0; i < count; i++)
        {
            var pulley = pulleys[i];
            var arriving = directions[(i + count - 1) % count];
            var wrap = Wrap(Sign(pulley.Side) * (directions[i] - arriving));
            var radius = pulley.DiameterMm / 2;
            length += spans[i] + (radius * wrap);
            runs.Add(new PulleyRun(
                pulley.Id,
                new BeltPoint(pulley.X, pulley.Y),
                radius,
                pulley.Side,
                wrap,
                Contact(pulley, arriving, mirror),
                Contact(pulley, directions[i], mirror),
                spans[i]));
        }

        var path = new BeltPath(length, anticlockwise, runs.ToImmutable());
        return (path, BeltPathFaults.Of(path));
    }

    /// <summary>The full turns that the belt makes with its ribs inwards: 1 for a proper loop, 0 for a crossed one.</summary>
    public static int Turns(BeltPath path) => (int)Math.Round(path.Runs.Sum(run => Sign(run.Side) * run.WrapRad) / Full);

    private static double Wrap(double angle)
    {
        var wrap = angle - (Full * Math.Floor(angle / Full));
        return wrap > Full - AngleNoiseRad ? 0 : wrap;
    }

    private static BeltPoint Contact(Pulley pulley, double direction, double mirror) => new(
        pulley.X + (SignedRadius(pulley) * Math.Sin(direction)),
        pulley.Y - (mirror * SignedRadius(pulley) * Math.Cos(direction)));

    private static double SignedRadius(Pulley pulley) => Sign(pulley.Side) * pulley.DiameterMm / 2;

    private static double Sign(BeltSide side) => side == BeltSide.Grooved ? 1 : -1;

    private static bool IsBetter(
        (BeltPath? Path, ImmutableArray<BeltProblem> Faults) one, (BeltPath? Path, ImmutableArray<BeltProblem> Faults) other)
    {
        if (one.Faults.Length != other.Faults.Length)
        {
            return one.Faults.Length < other.Faults.Length;
        }

        var (turnsOnce, otherTurnsOnce) = (Turns(one.Path!) == 1, Turns(other.Path!) == 1);
        return turnsOnce == otherTurnsOnce
            ? one.Path!.LengthMm < other.Path!.LengthMm - LengthNoiseMm
            : turnsOnce;
    }
}
