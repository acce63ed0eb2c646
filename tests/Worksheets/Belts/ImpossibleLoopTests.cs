using System.Collections.Immutable;
using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

public sealed class ImpossibleLoopTests
{
    [Fact]
    public void Compute_OnePulley_IsTooFew() =>
        Assert.Contains(new TooFewPulleys(1), Problems(Loop(Round("a", 0, 0, 100))));

    [Fact]
    public void Compute_NoPulleyArray_IsTooFew() =>
        Assert.Contains(new TooFewPulleys(0), Problems(new BeltLoop("l", "L", "PK", 3.56, default, null)));

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e300)]
    [InlineData(-80)]
    [InlineData(0)]
    public void Compute_ImpossibleDiameter_IsInvalid(double diameter) => Assert.Equal(
        [new InvalidInput("DiameterMm", "b")],
        Problems(Loop(Round("a", 0, 0, 100), Round("b", 300, 0, diameter))));

    [Fact]
    public void Compute_AdjusterOfNoPulleyAndNoDirection_IsInvalid() => Assert.Equal(
        [new InvalidInput("StationId", "x"), new InvalidInput("DirectionX", "x"), new InvalidInput("FromMm", "x")],
        Problems(ThreePoint() with { Adjuster = new SlideAdjuster("x", 0, 0, 5, 5) }));

    [Fact]
    public void Compute_TwoPulleysOfOneName_IsInvalid() => Assert.Equal(
        [new InvalidInput("Id", "a")], Problems(Loop(Round("a", 0, 0, 100), Round("a", 300, 0, 80))));

    [Fact]
    public void Compute_PulleyInsideAnother_HasNoSpan()
    {
        var problems = Problems(Loop(Round("a", 0, 0, 200), Round("b", 10, 0, 80)));

        Assert.Contains(new NoSpan("a", "b"), problems);
    }

    [Fact]
    public void Compute_SamePlace_HasNoSpan() =>
        Assert.Contains(new NoSpan("a", "b"), Problems(Loop(Round("a", 0, 0, 100), Round("b", 0, 0, 100))));

    [Fact]
    public void Compute_PulleysThatOverlap_AreNamedWithTheOverlap() => Assert.Contains(
        new PulleysOverlap("a", "b", 10), Problems(Loop(Round("a", 0, 0, 100), Round("b", 80, 0, 80))));

    [Fact]
    public void Compute_GroovedPulleyInsideTheHull_IsNotReached() => Assert.Contains(
        new PulleyNotReached("d"),
        Problems(Loop(Round("a", 0, 0, 60), Round("b", 400, 0, 60), Round("c", 200, 400, 60), Round("d", 220, 180, 60))));

    [Fact]
    public void Compute_RollerThatTheBeltPassesBy_IsNotReachedAndNothingElse() => Assert.Equal(
        [new PulleyNotReached("roller")],
        Problems(Loop(Round("a", 0, 0, 100), Round("b", 400, 0, 100), Round("roller", 200, 150, 60, BeltSide.Back)))
            .Where(problem => problem.Weight == BeltProblemWeight.Blocking));

    [Fact]
    public void Compute_AllFacesSwapped_IsWrongWinding() => Assert.Contains(
        new WrongWinding(-1),
        Problems(Loop(
            Round("a", 0, 0, 60, BeltSide.Back), Round("b", 400, 0, 60, BeltSide.Back), Round("c", 200, 300, 60, BeltSide.Back))));

    [Fact]
    public void Compute_PulleysInTheWrongOrder_CrossesItself() => Assert.Contains(
        new BeltCrossesItself("a", "b"),
        Problems(Loop(Round("a", 0, 0, 60), Round("c", 400, 400, 60), Round("b", 400, 0, 60), Round("d", 0, 400, 60))));

    [Fact]
    public void Compute_SpanThroughAThirdPulley_IsNamed() => Assert.Contains(
        new BeltRunsOverPulley("a", "b", "roller"),
        Problems(Loop(
            Round("a", 0, 0, 100), Round("b", 400, 0, 100), Round("c", 200, 300, 100), Round("roller", 180, -40, 60, BeltSide.Back))));

    /// <summary>Whatever the input, there is a problem or a length, and no number is NaN.</summary>
    [Fact]
    public void Compute_RandomRubbish_NeverGivesNaN()
    {
        var random = new Random(11);
        double[] odd = [0, -1, 1e-12, double.NaN, double.NegativeInfinity, 1e308, 50, 100];
        double Any() => random.Next(12) == 0 ? odd[random.Next(odd.Length)] : (random.NextDouble() * 600) - 100;
        BeltSide AnySide() => random.Next(4) == 0 ? BeltSide.Back : BeltSide.Grooved;
        for (var i = 0; i < 600; i++)
        {
            var pulleys = Enumerable.Range(0, random.Next(1, 6))
                .Select(n => Round(FormattableString.Invariant($"p{n}"), Any(), Any(), Any() / 3, AnySide()))
                .ToImmutableArray();
            Adjuster? adjuster = random.Next(3) switch
            {
                0 => null,
                1 => new SlideAdjuster("p0", Any(), Any(), -Any() / 10, Any() / 10),
                _ => new SwingAdjuster("p0", Any(), Any(), -Any() / 500, Any() / 500),
            };
            var loop = Loop(pulleys) with { Adjuster = adjuster };
            var result = BeltWorksheet.Compute(loop, [new(6, 1500, "x"), new(6, double.NaN, "y")]);

            Assert.True(result.Running is not null || result.Problems.Any(problem => problem.Weight == BeltProblemWeight.Blocking));
            var text = result + string.Concat(result.Problems) + string.Concat(result.Pulleys) + string.Concat(result.Running?.Runs ?? []);
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", text, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", BeltDrawing.Svg(loop, result, new BeltDrawingOptions("x")), StringComparison.Ordinal);
        }
    }

    private static List<BeltProblem> Problems(BeltLoop loop) => [.. BeltWorksheet.Compute(loop, []).Problems];
}
