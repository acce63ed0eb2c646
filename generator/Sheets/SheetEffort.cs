using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Effort;

namespace Swapwright.Sheets;

/// <summary>Tasks and shopping of a sheet → the effort worksheet.</summary>
internal static class SheetEffort
{
    /// <summary>Hours and days alone.</summary>
    /// <param name="tasks">In order of work.</param>
    public static EffortResult Of(ImmutableArray<WorkTask> tasks, EffortSettings settings) => EffortWorksheet.Work(
        tasks.Select(task => new Job(task.Id, task.Title, Estimate(task.Hours), task.People, WorkTask.Phases.IndexOf(task.Phase), [.. task.After.Select(after => after.Id)])),
        [],
        (double)settings.HoursADay,
        (double)settings.InCommon);

    /// <summary>The same with what is on the shopping list.</summary>
    public static EffortResult Priced(EffortResult effort, ImmutableArray<ShoppingLine> shopping, EffortSettings settings) =>
        effort with { Money = EstimateSum.Of(shopping.Select(line => Estimate(line.Price ?? default)), (double)settings.InCommon) };

    /// <summary>Nine builds in ten, with the mean between: what a reader is told.</summary>
    public static Range3 Range(EstimateSum sum) => new((decimal)sum.Low, (decimal)sum.Mean, (decimal)sum.High);

    public static Estimate Estimate(Range3 range) => new((double)range.Least, (double)range.Likely, (double)range.Most);
}
