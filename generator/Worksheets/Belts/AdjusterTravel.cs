using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Swapwright.Worksheets.Belts;

/// <summary>
/// The loop length over an adjuster's travel. The length need not rise or fall all the way: a roller that swings through the
/// line between its neighbours passes an extremum. The travel is therefore sampled, every sampled extremum is refined by
/// golden-section search between its neighbours, and roots are sought between neighbouring samples only. Two extrema closer
/// together than a sixty-fourth of the travel would be missed; a loop with a single moving pulley has no such detail.
/// </summary>
/// <remarks>
/// Where part of the travel leaves no possible path (the roller meets another pulley, or leaves the belt), only the unbroken
/// part round the middle counts.
/// </remarks>
internal sealed class AdjusterTravel
{
    private const int Steps = 64;
    private const int RefiningSteps = 40;
    private static readonly double Golden = (Math.Sqrt(5) - 1) / 2;

    private readonly BeltLoop loop;
    private readonly Adjuster adjuster;
    private readonly bool anticlockwise;
    private readonly ImmutableArray<Sample> samples;

    /// <summary>The path at the middle of the travel must be possible.</summary>
    public AdjusterTravel(BeltLoop loop, Adjuster adjuster, bool anticlockwise)
    {
        this.loop = loop;
        this.adjuster = adjuster;
        this.anticlockwise = anticlockwise;
        var (from, to) = Range(adjuster);
        Middle = Mid(adjuster);
        UsableFrom = Reach(Middle, from);
        UsableTo = Reach(Middle, to);
        IsRestricted = UsableFrom > from || UsableTo < to;
        samples = WithExtrema(Sampled());
    }

    public double Middle { get; }

    public double UsableFrom { get; }

    public double UsableTo { get; }

    public bool IsRestricted { get; }

    /// <summary>The adjuster position that a belt is chosen for, mm or rad: a spring's nominal mark, else the middle of the travel.</summary>
    public static double Mid(Adjuster adjuster)
    {
        if (adjuster is SpringAdjuster spring)
        {
            return spring.Nominal;
        }

        var (from, to) = Range(adjuster);
        return from + ((to - from) / 2);
    }

    /// <summary>The ends of the travel as stated, mm or rad, whether or not a belt can run there.</summary>
    public static (double From, double To) Range(Adjuster adjuster) => adjuster switch
    {
        SlideAdjuster slide => (slide.FromMm, slide.ToMm),
        SwingAdjuster swing => (swing.FromRad, swing.ToRad),
        SpringAdjuster spring => Range(spring.Way),
        _ => throw new ArgumentOutOfRangeException(nameof(adjuster)),
    };

    /// <summary>The pulleys with the adjuster at a position.</summary>
    public static ImmutableArray<Pulley> At(BeltLoop loop, Adjuster adjuster, double position) =>
        [.. loop.Pulleys.Select(pulley => pulley.Id == adjuster.StationId ? Moved(pulley, adjuster, position) : pulley)];

    public BeltWindow Window()
    {
        var shortest = samples.MinBy(sample => sample.Length);
        var longest = samples.MaxBy(sample => sample.Length);
        return new BeltWindow(shortest.Length, longest.Length, shortest.At, longest.At);
    }

    /// <summary>A position as a share of the travel, in percent from its slack end, which is the one with the shorter loop.</summary>
    public double PercentFromSlack(double position)
    {
        var (from, to) = Range(adjuster);
        var share = 100 * (position - from) / (to - from);
        return samples[0].Length <= samples[^1].Length ? share : 100 - share;
    }

    /// <summary>The position nearest to the middle at which the loop has the length; null where it never has.</summary>
    public double? TightAt(double lengthMm)
    {
        double? best = null;
        for (var i = 1; i < samples.Length; i++)
        {
            var before = samples[i - 1];
            var after = samples[i];
            if ((before.Length - lengthMm) * (after.Length - lengthMm) <= 0
                && Root(before, after, lengthMm) is { } root
                && (best is null || Math.Abs(root - Middle) < Math.Abs(best.Value - Middle)))
            {
                best = root;
            }
        }

        return best;
    }

    private static Pulley Moved(Pulley pulley, Adjuster adjuster, double position)
    {
        switch (adjuster)
        {
            case SlideAdjuster slide:
                var norm = Math.Sqrt((slide.DirectionX * slide.DirectionX) + (slide.DirectionY * slide.DirectionY));
                return pulley with
                {
                    X = pulley.X + (position * slide.DirectionX / norm),
                    Y = pulley.Y + (position * slide.DirectionY / norm),
                };
            case SwingAdjuster swing:
                var (sin, cos) = Math.SinCos(position);
                var armX = pulley.X - swing.PivotX;
                var armY = pulley.Y - swing.PivotY;
                return pulley with
                {
                    X = swing.PivotX + (armX * cos) - (armY * sin),
                    Y = swing.PivotY + (armX * sin) + (armY * cos),
                };
            case SpringAdjuster spring:
                return Moved(pulley, spring.Way, position);
            default:
                throw new ArgumentOutOfRangeException(nameof(adjuster));
        }
    }

    private double? LengthAt(double position)
    {
        var (path, faults) = BeltGeometry.Solve(At(loop, adjuster, position), anticlockwise);
        return faults.IsEmpty ? path?.LengthMm : null;
    }

    /// <summary>How far from the middle towards an end every position leaves a possible path.</summary>
    private double Reach(double middle, double end)
    {
        var good = middle;
        for (var i = 1; i <= Steps; i++)
        {
            var next = i == Steps ? end : middle + ((end - middle) * i / Steps);
            if (LengthAt(next) is not null)
            {
                good = next;
                continue;
            }

            var bad = next;
            for (var j = 0; j < RefiningSteps; j++)
            {
                var between = good + ((bad - good) / 2);
                (good, bad) = LengthAt(between) is null ? (good, between) : (between, bad);
            }

            return good;
        }

        return good;
    }

    private List<Sample> Sampled()
    {
        var sampled = new List<Sample>();
        for (var i = 0; i <= Steps; i++)
        {
            var at = i == Steps ? UsableTo : UsableFrom + ((UsableTo - UsableFrom) * i / Steps);
            if (LengthAt(at) is { } length)
            {
                sampled.Add(new Sample(at, length));
            }
        }

        return sampled;
    }

    private ImmutableArray<Sample> WithExtrema(List<Sample> sampled)
    {
        var refined = ImmutableArray.CreateBuilder<Sample>();
        refined.AddRange(sampled);
        for (var i = 1; i < sampled.Count - 1; i++)
        {
            var left = sampled[i - 1].Length;
            var here = sampled[i].Length;
            var right = sampled[i + 1].Length;
            if ((here >= left && here >= right) || (here <= left && here <= right))
            {
                refined.Add(Extremum(sampled[i - 1].At, sampled[i + 1].At, sampled[i], here >= left && here >= right ? 1 : -1));
            }
        }

        refined.Sort((a, b) => a.At.CompareTo(b.At));
        return refined.ToImmutable();
    }

    /// <summary>Golden-section search; <paramref name="sense"/> is 1 for the greatest and -1 for the least length.</summary>
    private Sample Extremum(double from, double to, Sample best, int sense)
    {
        for (var i = 0; i < RefiningSteps; i++)
        {
            var low = Probe(to - (Golden * (to - from)), sense);
            var high = Probe(from + (Golden * (to - from)), sense);
            best = sense * low.Length > sense * best.Length ? low : best;
            best = sense * high.Length > sense * best.Length ? high : best;
            (from, to) = sense * low.Length > sense * high.Length ? (from, high.At) : (low.At, to);
        }

        return best;
    }

    private Sample Probe(double at, int sense) => new(at, LengthAt(at) ?? (sense * double.NegativeInfinity));

    private double? Root(Sample before, Sample after, double lengthMm)
    {
        var (low, high) = (before.At, after.At);
        var rising = after.Length >= before.Length;
        for (var i = 0; i < RefiningSteps; i++)
        {
            var between = low + ((high - low) / 2);
            if (LengthAt(between) is not { } length)
            {
                return null;
            }

            (low, high) = length < lengthMm == rising ? (between, high) : (low, between);
        }

        return low + ((high - low) / 2);
    }

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Sample(double At, double Length);
}
