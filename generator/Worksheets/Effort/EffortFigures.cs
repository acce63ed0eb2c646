using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Effort;

/// <summary>Something that is bought, with its price, amounts counted in.</summary>
public sealed record PriceLine(string Id, string Title, int Amount, Estimate Price);

/// <summary>The numbers of the effort with the way they were got, for who asks why.</summary>
public static class EffortFigures
{
    private const string Guess = "program evaluation and review technique: Malcolm, Roseboom, Clark and Fazar, Operations Research 7 (1959) 646–669";
    private const string Quantile = "95th percentile of the normal distribution, 1.6449: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1";
    private const string Path = "critical path method: Kelley and Walker, Proceedings of the Eastern Joint Computer Conference 1959";

    /// <param name="inCommon">See <see cref="EstimateSum.Of"/>.</param>
    public static void Add(LedgerBuilder ledger, EffortResult effort, IEnumerable<PriceLine> prices, double hoursADay, double inCommon, string currency)
    {
        var jobs = effort.Times.Select(times => times.Job).ToImmutableArray();
        Sum(ledger, "hours", "Hours of work", effort.Hours, "h", 1, inCommon, [.. jobs.Select(job => new FigureInput(job.Title, job.Hours.Mean, "h", $"figure task-{job.Id}"))]);
        Sum(ledger, "hand-hours", "Hours of all hands together", effort.HandHours, "h", 1, inCommon, [.. jobs.Select(job => new FigureInput(job.Title, job.Hours.Mean * job.People, "h", $"figure task-{job.Id}, {People(job.People)}"))]);
        Sum(ledger, "money", "Parts on the shopping list", effort.Money, currency, 0, inCommon, [.. prices.Select(line => new FigureInput(line.Title, line.Price.Mean, currency, $"part {line.Id}, {line.Amount.ToString(CultureInfo.InvariantCulture)} of it"))]);
        ledger.Add(new Figure("critical-path", "Hours of the longest chain of tasks", effort.CriticalPath.Sum(job => job.Hours.Mean), "h")
        {
            Formula = "Σ t_mean along the chain without slack",
            Source = Path,
            From = [.. effort.CriticalPath.Select(job => new FigureInput(job.Title, job.Hours.Mean, "h", $"figure task-{job.Id}")), new("tasks", jobs.Length, "", "tasks of the combination")],
        });
        Days("days-alone", "Working days, one person", effort.DaysAlone, effort.Alone);
        Days("days-together", "Working days, two people", effort.DaysTogether, effort.Together);
        foreach (var times in effort.Times)
        {
            var hours = times.Job.Hours;
            ledger.Add(new Figure($"task-{times.Job.Id}", times.Job.Title, hours.Mean, "h")
            {
                Formula = "(a + 4 m + b) ∕ 6",
                Source = Guess,
                From = [new("least a", hours.Least, "h", $"task {times.Job.Id}"), new("likely m", hours.Likely, "h", $"task {times.Job.Id}"), new("most b", hours.Most, "h", $"task {times.Job.Id}")],
                Remark = string.Create(CultureInfo.InvariantCulture, $"begins {times.Start:0.0} h in at the earliest; {(times.IsCritical ? "decides the length" : $"can wait {times.Slack:0.0} h")}"),
                IsStep = true,
            });
        }

        void Days(string id, string title, int days, ImmutableArray<JobTurn> turns) => ledger.Add(new Figure(id, title, days, "")
        {
            Decimals = 0,
            Formula = "⌈end of the last task ∕ hours a day⌉, the task with least slack first",
            Source = Path,
            From = [new("end of the last task", turns.Select(turn => turn.End).DefaultIfEmpty(0).Max(), "h", "order of work"), new("hours a day", hoursADay, "h", "setting of the base")],
        });
    }

    private static void Sum(LedgerBuilder ledger, string id, string title, EstimateSum sum, string unit, int decimals, double inCommon, ImmutableArray<FigureInput> of)
    {
        FigureInput mean = new("mean", sum.Mean, unit, $"figure {id}");
        FigureInput deviation = new("standard deviation", sum.Deviation, unit, $"figure {id}-deviation");
        FigureInput lines = new("lines", of.Length, "", "guesses that are summed");
        ledger.Add(new Figure(id, title, sum.Mean, unit) { Decimals = decimals, Formula = "Σ (a + 4 m + b) ∕ 6", Source = Guess, From = [.. of, lines] });
        ledger.Add(new Figure($"{id}-deviation", $"{title}: standard deviation", sum.Deviation, unit)
        {
            Decimals = decimals,
            Formula = "√((1 − r) Σ σ² + r (Σ σ)²), σ = (b − a) ∕ 6",
            Source = $"variance of a sum whose guesses correlate by r; {Guess}",
            From = [new("share in common r", inCommon, "", "setting of the base"), lines],
            IsStep = true,
        });
        ledger.Add(new Figure($"{id}-low", $"{title}: one build in twenty stays below", sum.Low, unit) { Decimals = decimals, Formula = "μ − 1.6449 σ, no less than Σ a", Source = Quantile, From = [mean, deviation, new("every least guess", sum.OuterLeast, unit, "Σ a")] });
        ledger.Add(new Figure($"{id}-high", $"{title}: one build in twenty goes beyond", sum.High, unit) { Decimals = decimals, Formula = "μ + 1.6449 σ, no more than Σ b", Source = Quantile, From = [mean, deviation, new("every most guess", sum.OuterMost, unit, "Σ b")] });
    }

    private static string People(int people) => people == 1 ? "one person" : string.Create(CultureInfo.InvariantCulture, $"{people} people");
}
