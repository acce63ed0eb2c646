using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Findings;

/// <summary>Tasks that wait for each other in a loop.</summary>
public static class TaskCycle
{
    public static readonly EntityCheck Check = new(FindingKinds.TaskCycle, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        foreach (var loop in Loops.Of(kb.Tasks.Ids, id => kb.Tasks[id].After.Select(named => named.Id).Where(kb.Tasks.Has)))
        {
            var tasks = loop.Select(id => kb.Tasks[id]).ToList();
            yield return new Finding(FindingKinds.TaskCycle, $"tasks wait for each other in a loop: {string.Join(" → ", loop.Append(loop[0]).Select(id => $"`{id}`"))}", Names(tasks[^1], tasks[0]))
            {
                Related = [.. tasks.SkipLast(1).Select((task, at) => new RelatedPlace($"`{task.Id}` waits for `{tasks[at + 1].Id}` here", Names(task, tasks[at + 1])))],
                Mend = "Take out the `after` that need not hold.",
            };
        }
    }

    private static Place Names(WorkTask task, WorkTask other) => task.After.First(named => named.Id == other.Id).Place;
}
