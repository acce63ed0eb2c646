using System.Collections.Immutable;

namespace Swapwright.Worksheets.Effort;

/// <summary>What a swap takes in hours, money and days.</summary>
/// <param name="Hours">Hours of the work, each job once, however many people are at it.</param>
/// <param name="HandHours">Hours of all hands together.</param>
/// <param name="Money">In the currency of the base.</param>
/// <param name="Alone">The order in which one person does it, a helper called where a job wants two.</param>
/// <param name="Together">The order in which two people do it.</param>
/// <param name="DaysAlone">Working days from the first to the last for one person.</param>
public sealed record EffortResult(
    EstimateSum Hours,
    EstimateSum HandHours,
    EstimateSum Money,
    ImmutableArray<JobTimes> Times,
    ImmutableArray<Job> CriticalPath,
    ImmutableArray<JobTurn> Alone,
    ImmutableArray<JobTurn> Together,
    int DaysAlone,
    int DaysTogether)
{
    /// <summary>Guesses that cannot be; they are left out of every sum.</summary>
    public ImmutableArray<EffortProblem> Problems { get; init; } = [];
}

/// <summary>A guess that is no guess: not three numbers of at least nought in rising order, or work for nobody.</summary>
/// <param name="JobId">null for a price.</param>
public sealed record EffortProblem(string? JobId, Estimate Guess);

/// <summary>Hours, money and days from jobs and prices.</summary>
public static class EffortWorksheet
{
    /// <param name="prices">Of everything on the shopping list, amounts counted in.</param>
    /// <param name="hoursADay">Hours of work in a day.</param>
    /// <param name="inCommon">See <see cref="EstimateSum.Of"/>.</param>
    public static EffortResult Work(IEnumerable<Job> jobs, IEnumerable<Estimate> prices, double hoursADay, double inCommon)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(hoursADay);
        var (asked, priced) = (jobs.ToList(), prices.ToList());
        var all = asked.Where(job => job.Hours.IsSound && job.People > 0).ToImmutableArray();
        var network = new Network(all);
        var alone = network.Turns(1);
        var together = network.Turns(2);
        return new EffortResult(
            EstimateSum.Of(all.Select(job => job.Hours), inCommon),
            EstimateSum.Of(all.Select(job => job.Hours.Times(job.People)), inCommon),
            EstimateSum.Of(priced.Where(price => price.IsSound), inCommon),
            network.Times,
            network.CriticalPath(),
            alone,
            together,
            Days(alone, hoursADay),
            Days(together, hoursADay))
        {
            Problems = [.. asked.Except(all).Select(job => new EffortProblem(job.Id, job.Hours)), .. priced.Where(price => !price.IsSound).Select(price => new EffortProblem(null, price))],
        };
    }

    private static int Days(ImmutableArray<JobTurn> turns, double hoursADay) =>
        turns.IsEmpty ? 0 : (int)Math.Ceiling(Math.Round(turns.Max(turn => turn.End) / hoursADay, 9));
}
