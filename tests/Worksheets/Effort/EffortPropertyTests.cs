using System.Collections.Immutable;
using Swapwright.Worksheets.Effort;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Effort;

/// <summary>What must hold for any work and any prices, tried on ones drawn from a seeded generator.</summary>
public sealed class EffortPropertyTests
{
    private const int Builds = 100;
    private const double HoursADay = 6;
    private const double InCommon = 0.3;

    [Fact]
    public void Work_PricesAndIndependentJobsInAnyOrder_GiveTheSameSums()
    {
        foreach (var (jobs, prices, random) in Draws(1))
        {
            var (one, other) = (Work(jobs, prices), Work([.. jobs.Select(job => job with { After = [] }).OrderBy(_ => random.Next())], [.. prices.OrderBy(_ => random.Next())]));
            Assert.All([(one.Hours, other.Hours), (one.HandHours, other.HandHours), (one.Money, other.Money)], pair =>
            {
                Assert.Equal(pair.Item1.Mean, pair.Item2.Mean, 1e-6);
                Assert.Equal(pair.Item1.Low, pair.Item2.Low, 1e-6);
                Assert.Equal(pair.Item1.High, pair.Item2.High, 1e-6);
            });
        }
    }

    [Fact]
    public void Work_EveryGuessScaled_ScalesSumsAndKeepsTheCriticalPath()
    {
        foreach (var (jobs, prices, random) in Draws(2))
        {
            var factor = random.Between(0.5, 3);
            var one = Work(jobs, prices);
            var scaled = EffortWorksheet.Work(jobs.Select(job => job with { Hours = job.Hours.Times(factor) }), prices.Select(price => price.Times(factor)), HoursADay * factor, InCommon);
            Assert.Equal(one.Hours.High * factor, scaled.Hours.High, 1e-6);
            Assert.Equal(one.Money.Low * factor, scaled.Money.Low, 1e-6);
            Assert.Equal(one.CriticalPath.Select(job => job.Id), scaled.CriticalPath.Select(job => job.Id));
            Assert.Equal((one.DaysAlone, one.DaysTogether), (scaled.DaysAlone, scaled.DaysTogether));
        }
    }

    [Fact]
    public void Work_OneMoreJobOrADearerPart_NeverTakesLess()
    {
        foreach (var (jobs, prices, random) in Draws(3))
        {
            var (one, more) = (Work(jobs, prices), Work([.. jobs, new Job("more", "More", Guess(random), 1, 4, [])], [.. prices, Guess(random)]));
            Assert.True(more.Hours.Mean > one.Hours.Mean && more.Money.Mean > one.Money.Mean && more.DaysAlone >= one.DaysAlone);
            var longer = Work([jobs[0] with { Hours = jobs[0].Hours with { Most = jobs[0].Hours.Most + 5 } }, .. jobs.Skip(1)], prices);
            Assert.True(longer.Hours.Mean > one.Hours.Mean && longer.Hours.Deviation > one.Hours.Deviation);
        }
    }

    [Fact]
    public void Work_AnyBuild_IsOrderedAndFinite()
    {
        foreach (var (jobs, prices, _) in Draws(4))
        {
            var effort = Work(jobs, prices);
            Assert.Empty(effort.Problems);
            Assert.All([effort.Hours, effort.HandHours, effort.Money], sum => Assert.True(sum.OuterLeast <= sum.Low && sum.Low <= sum.Mean && sum.Mean <= sum.High && sum.High <= sum.OuterMost));
            Assert.True(effort.DaysTogether <= effort.DaysAlone);
            Drawn.HasNumbersOnly(Figures(effort));
        }
    }

    /// <summary>One guess in turn made impossible: it is named as a problem, and the sums are those of the others.</summary>
    [Fact]
    public void Work_ImpossibleGuess_IsAProblemAndLeftOut()
    {
        foreach (var (jobs, prices, _) in Draws(5).Take(20))
        {
            foreach (var odd in Drawn.Impossible.Where(odd => odd is not (0 or double.Epsilon)).Select(odd => new Estimate(odd, odd, odd)))
            {
                var effort = Work([jobs[0] with { Hours = odd }, .. jobs.Skip(1)], [odd, .. prices.Skip(1)]);
                Assert.Equal([jobs[0].Id, null], effort.Problems.Select(problem => problem.JobId));
                Assert.Equal(Work([.. jobs.Skip(1)], [.. prices.Skip(1)]).Hours.Mean, effort.Hours.Mean, 1e-9);
                Drawn.HasNumbersOnly(Figures(effort));
            }

            Assert.Single(Work([jobs[0] with { Hours = new Estimate(3, 2, 1) }], []).Problems);
            Assert.Single(Work([jobs[0] with { People = 0 }], []).Problems);
        }
    }

    [Fact]
    public void Work_Nothing_TakesNothing()
    {
        var effort = Work([], []);
        Assert.Equal((0, 0, 0, 0), (effort.Hours.Mean, effort.Money.High, effort.DaysAlone, effort.DaysTogether));
        Drawn.HasNumbersOnly(Figures(effort));
    }

    private static Ledger Figures(EffortResult effort)
    {
        var ledger = new LedgerBuilder("effort", "Effort");
        EffortFigures.Add(ledger, effort, [], HoursADay, InCommon, "EUR");
        return ledger.Build();
    }

    private static EffortResult Work(ImmutableArray<Job> jobs, ImmutableArray<Estimate> prices) => EffortWorksheet.Work(jobs, prices, HoursADay, InCommon);

    private static Estimate Guess(Random random)
    {
        var least = random.Between(0.1, 5);
        var likely = least + random.Between(0, 4);
        return new Estimate(least, likely, likely + random.Between(0.1, 8));
    }

    private static IEnumerable<(ImmutableArray<Job> Jobs, ImmutableArray<Estimate> Prices, Random Random)> Draws(int seed)
    {
        var random = new Random(seed);
        for (var build = 0; build < Builds; build++)
        {
            var count = random.Next(1, 20);
            yield return (
                [.. Enumerable.Range(0, count).Select(at => new Job(Name(at), "Job", Guess(random), random.Next(1, 3), at * 5 / count, [.. Enumerable.Range(0, at).Where(_ => random.Next(4) == 0).Select(Name)]))],
                [.. Enumerable.Range(0, random.Next(1, 30)).Select(_ => Guess(random))],
                random);
        }
    }

    private static string Name(int at) => "j" + at.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
