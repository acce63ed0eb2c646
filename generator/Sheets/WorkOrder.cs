using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>Sorts tasks so that each comes after those it names, by phase as far as that allows, then by id.</summary>
internal static class WorkOrder
{
    /// <remarks>Tasks in a loop come last, in order of id: the loop itself is a finding, not a reason to lose them.</remarks>
    public static ImmutableArray<WorkTask> Sort(IEnumerable<WorkTask> tasks)
    {
        var all = tasks.ToDictionary(task => task.Id, StringComparer.Ordinal);
        var waits = all.Values.ToDictionary(task => task.Id, task => task.After.Select(after => after.Id).Where(all.ContainsKey).ToHashSet(StringComparer.Ordinal), StringComparer.Ordinal);
        var next = all.Values.SelectMany(task => waits[task.Id].Select(before => (before, task.Id))).ToLookup(pair => pair.before, pair => pair.Id, StringComparer.Ordinal);
        var ready = new SortedSet<(int Phase, string Id)>(waits.Where(pair => pair.Value.Count == 0).Select(pair => Key(all[pair.Key])));
        var order = ImmutableArray.CreateBuilder<WorkTask>(all.Count);
        while (ready.Count > 0)
        {
            var first = ready.Min;
            ready.Remove(first);
            order.Add(all[first.Id]);
            foreach (var follower in next[first.Id])
            {
                waits[follower].Remove(first.Id);
                if (waits[follower].Count == 0)
                {
                    ready.Add(Key(all[follower]));
                }
            }
        }

        order.AddRange(waits.Where(pair => pair.Value.Count > 0).Select(pair => all[pair.Key]).OrderBy(task => task.Id, StringComparer.Ordinal));
        return order.ToImmutable();
    }

    private static (int Phase, string Id) Key(WorkTask task) => (WorkTask.Phases.IndexOf(task.Phase), task.Id);
}
