using Swapwright.Worksheets.Effort;
using Xunit;

namespace Swapwright.Tests.Worksheets.Effort;

public sealed class EstimateTests
{
    // The example network of the PERT article of the OR-AS PM Knowledge Center, table 1 (a, m, b); the means follow from the published formula.
    [Theory]
    [InlineData(2, 5, 8, 5, 1)]
    [InlineData(1, 2, 9, 3, 4.0 / 3)]
    [InlineData(0.25, 0.5, 3.75, 1, 3.5 / 6)]
    [InlineData(1, 1, 7, 2, 1)]
    [InlineData(1, 3, 11, 4, 5.0 / 3)]
    public void Mean_PublishedExample_Agrees(double least, double likely, double most, double mean, double deviation)
    {
        var estimate = new Estimate(least, likely, most);
        Assert.Equal(mean, estimate.Mean, 9);
        Assert.Equal(deviation, estimate.Deviation, 9);
    }

    // Means and deviations as printed (two decimals) in a worked fourteen-activity PERT exercise, wizedu.com question 717873.
    [Theory]
    [InlineData(5, 5, 7, 5.33, 0.33)]
    [InlineData(4, 8, 13, 8.17, 1.50)]
    [InlineData(1, 10, 17, 9.67, 2.67)]
    [InlineData(6, 10, 13, 9.83, 1.17)]
    [InlineData(2, 6, 6, 5.33, 0.67)]
    [InlineData(7, 7, 12, 7.83, 0.83)]
    public void Deviation_WorkedExercise_Agrees(double least, double likely, double most, double mean, double deviation)
    {
        var estimate = new Estimate(least, likely, most);
        Assert.Equal(mean, estimate.Mean, 0.0051);
        Assert.Equal(deviation, estimate.Deviation, 0.0051);
    }

    // Standard normal table, NIST/SEMATECH e-Handbook 1.3.6.7.1: Φ(0) 0.5, Φ(1) 0.84134, Φ(1.645) 0.95002, Φ(−2) = 1 − 0.97725.
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.84134)]
    [InlineData(1.645, 0.95002)]
    [InlineData(-2, 0.02275)]
    public void ShareWithin_StandardNormal_AgreesWithTheTable(double z, double share) =>
        Assert.Equal(share, new EstimateSum(0, 1, -9, 9).ShareWithin(z), 5);

    [Fact]
    public void Sum_ManyEstimates_IsNarrowerThanTheOuterSumsAndKeepsOrder()
    {
        var random = new Random(7);
        for (var round = 0; round < 200; round++)
        {
            var estimates = Enumerable.Range(0, random.Next(1, 40)).Select(_ => new[] { random.NextDouble(), random.NextDouble(), random.NextDouble() }.Order().ToArray()).Select(three => new Estimate(three[0], three[1], three[2])).ToList();
            var sum = EstimateSum.Of(estimates, 0);
            Assert.InRange(sum.Low, sum.OuterLeast, sum.Mean);
            Assert.InRange(sum.High, sum.Mean, sum.OuterMost);
            estimates.Reverse();
            Assert.Equal(sum.Mean, EstimateSum.Of(estimates, 0).Mean, 9);
            var doubled = EstimateSum.Of(estimates.Select(one => one.Times(2)), 0);
            Assert.Equal(2 * sum.Mean, doubled.Mean, 9);
            Assert.Equal(2 * sum.Deviation, doubled.Deviation, 9);
        }
    }

    // Var(ΣX) = ΣΣ ρ σᵢ σⱼ: with one correlation for all pairs, one variance of 1 and another of 4 give 5 (r = 0), 7 (r = 0.5) and 9 (r = 1).
    [Theory]
    [InlineData(0, 5)]
    [InlineData(0.5, 7)]
    [InlineData(1, 9)]
    public void Sum_CorrelatedGuesses_HasTheVarianceOfASum(double inCommon, double variance)
    {
        var sum = EstimateSum.Of([new Estimate(0, 3, 6), new Estimate(0, 6, 12)], inCommon);
        Assert.Equal(variance, sum.Deviation * sum.Deviation, 9);
    }

    /// <summary>Draws from the beta distributions themselves (mean and deviation as PERT has them) and counts how many sums fall within the range.</summary>
    [Fact]
    public void Sum_DrawnAtRandom_HoldsNineInTen()
    {
        var random = new Random(20260301);
        var estimates = Enumerable.Range(0, 30).Select(at => new Estimate(1 + (at % 3), 2 + (at % 5), 6 + (at % 7))).Select(one => one with { Likely = Math.Min(one.Likely, one.Most) }).ToList();
        var sum = EstimateSum.Of(estimates, 0);
        const int Draws = 4000;
        var within = Enumerable.Range(0, Draws).Count(_ => estimates.Sum(one => Draw(random, one)) is var total && total >= sum.Low && total <= sum.High);
        Assert.InRange((double)within / Draws, 0.87, 0.93);
    }

    // A beta with shape 4 in all on [a, b], the mean as PERT gives it, has a deviation near (b − a) ∕ 6; integer shapes would be drawn as order statistics,
    // so each draw is a normal one cut to the interval: the sum, which is what is tested, does not feel the difference.
    private static double Draw(Random random, Estimate one)
    {
        while (true)
        {
            var normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            var value = one.Mean + (normal * one.Deviation);
            if (value >= one.Least && value <= one.Most)
            {
                return value;
            }
        }
    }
}
