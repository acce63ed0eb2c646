using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>A task that waits for one of a later phase, and a task that appears in no guide.</summary>
public static class TaskOrder
{
    public static readonly EntityCheck Check = new(FindingKinds.TaskOrder, Run) { AsksForWhole = true };

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        var named = kb.Rules.All.SelectMany(rule => rule.Tasks).ToHashSet(StringComparer.Ordinal);
        foreach (var task in kb.Tasks.All)
        {
            foreach (var after in task.After)
            {
                if (kb.Tasks.Find(after.Id) is { } earlier && WorkTask.Phases.IndexOf(earlier.Phase) > WorkTask.Phases.IndexOf(task.Phase))
                {
                    yield return new Finding(FindingKinds.TaskOrder, $"`{task.Id}` ({task.Phase}) waits for `{earlier.Id}`, which belongs to the later phase {earlier.Phase}", after.Place)
                    {
                        Related = [new RelatedPlace($"`{earlier.Id}`", earlier.Place)],
                        Mend = "Take it out of `after`, or move one of the two tasks to another `phase`.",
                    };
                }
            }

            if (task.When is null && !named.Contains(task.Id))
            {
                yield return new Finding(FindingKinds.TaskOrder, $"`{task.Id}` appears in no guide: it has no `when`, and no rule names it", task.Place)
                {
                    Mend = "Name it under `tasks` of the rule that asks for it, or say `when` (`when: {}` for always).",
                };
            }
        }
    }
}
