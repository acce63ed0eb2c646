using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

public sealed class BeltToneTests
{
    /// <summary>
    /// Mersenne's law f = sqrt(T/m)/(2L), any acoustics textbook (Fletcher and Rossing, The Physics of Musical Instruments, chapter 2).
    /// The worked numbers are exact: 100 N on 0.01 kg/m is a wave speed of 100 m/s, which goes to and fro over 0.5 m a hundred times a second.
    /// </summary>
    [Theory]
    [InlineData(500, 100, 0.01, 100)]
    [InlineData(250, 100, 0.01, 200)]
    [InlineData(500, 400, 0.01, 200)]
    [InlineData(500, 100, 0.04, 50)]
    [InlineData(500, 0, 0.01, 0)]
    public void Frequency_String_FollowsMersenne(double span, double tension, double mass, double hertz) =>
        Assert.Equal(hertz, BeltTone.Frequency(span, tension, mass), 9);

    [Theory]
    [InlineData(0, 100, 0.01)]
    [InlineData(500, -1, 0.01)]
    [InlineData(500, 100, 0)]
    public void Frequency_NoString_Throws(double span, double tension, double mass) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BeltTone.Frequency(span, tension, mass));

    [Fact]
    public void Compute_ByHand_NamesTheLongestSpanWithTheBeltTight()
    {
        var result = BeltWorksheet.Compute(ByHand(), [new(4, 920, "belt")]);
        var longest = result.Pulleys.MaxBy(pulley => pulley.SpanToNextMm)!;

        Assert.Equal((longest.StationId, longest.NextId, longest.SpanToNextMm), (result.Tone!.FromId, result.Tone.ToId, result.Tone.SpanMm));
        Assert.Equal(BeltTone.Frequency(longest.SpanToNextMm, 110, 0.02), result.Tone.New.MiddleHz, 9);
        Assert.Equal(BeltTone.Frequency(longest.SpanToNextMm, 80, 0.02), result.Tone.RunIn.MiddleHz, 9);
    }

    [Fact]
    public void Compute_Spread_GoesByTheRootOfTheTension()
    {
        var tone = BeltWorksheet.Compute(ByHand(), [new(4, 920, "belt")], new BeltLimits { TensionSpreadPercent = 19 }).Tone!;

        Assert.Equal(0.9, tone.New.LowHz / tone.New.MiddleHz, 9); // sqrt(0.81)
        Assert.Equal(Math.Sqrt(1.19), tone.New.HighHz / tone.New.MiddleHz, 9);
    }

    [Fact]
    public void Compute_HeavierBelt_SoundsLower()
    {
        double Of(double? mass) => BeltWorksheet.Compute(ByHand(), [new(4, 920, "belt", mass)]).Tone!.New.MiddleHz;

        Assert.Equal(Of(null) / 2, Of(0.08), 9);
    }

    [Fact]
    public void Compute_RibsAlone_DoNotChangeTheNote()
    {
        var wide = ByHand();
        wide = wide with { Pulleys = [.. wide.Pulleys.Select(pulley => pulley with { Ribs = 6 })] };

        Assert.Equal(
            BeltWorksheet.Compute(ByHand(), [new(4, 920, "belt")]).Tone!.New, BeltWorksheet.Compute(wide, [new(6, 920, "belt")]).Tone!.New);
    }

    [Fact]
    public void Compute_FixedCentresOrSpring_HaveNoNote()
    {
        Assert.Null(BeltWorksheet.Compute(ThreePoint(), [new(4, 922, "belt")]).Tone);
        Assert.Null(BeltWorksheet.Compute(Serpentine() with { Adjuster = new SpringAdjuster(Serpentine().Adjuster!, 0) }, [new(6, 1780, "belt")]).Tone);
    }

    private static BeltLoop ByHand() => ThreePoint() with { Adjuster = new SlideAdjuster("alternator", 0.8, 0.6, -20, 20) };
}
