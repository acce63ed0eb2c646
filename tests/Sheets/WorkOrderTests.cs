using Swapwright.Knowledge;
using Swapwright.Sheets;

namespace Swapwright.Tests.Sheets;

public class WorkOrderTests
{
    [Fact]
    public void Sort_NoTasks_IsEmpty() => Assert.Empty(WorkOrder.Sort([]));

    [Fact]
    public void Sort_NothingWaits_GoesByPhaseThenById() =>
        Assert.Equal(["look", "clear", "a-fit", "b-fit", "drive"], Order(Task("drive", "road-test"), Task("b-fit", "fit"), Task("clear", "remove"), Task("a-fit", "fit"), Task("look", "assess")));

    [Fact]
    public void Sort_EarlyPhaseWaitsForLateOne_ComesAfterIt() =>
        Assert.Equal(["fit-it", "look-again", "paper-it"], Order(Task("look-again", "assess", "fit-it"), Task("fit-it", "fit"), Task("paper-it", "paper")));

    [Fact]
    public void Sort_NameOfATaskThatIsNotDone_IsNotWaitedFor() =>
        Assert.Equal(["one"], Order(Task("one", "fit", "never-done")));

    [Fact]
    public void Sort_Loop_KeepsItsTasksAtTheEnd()
    {
        var order = Order(Task("a", "assess", "b"), Task("b", "assess", "a"), Task("behind", "assess", "b"), Task("free", "paper"));
        Assert.Equal("free", order[0]);
        Assert.Equal(["a", "b", "behind"], order[1..].Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Sort_TaskAfterItself_IsNotLost() => Assert.Equal(["free", "self"], Order(Task("self", "assess", "self"), Task("free", "paper")));

    /// <summary>Held against the meaning itself: nothing before what it names, and at every step nothing of an earlier phase was ready.</summary>
    [Fact]
    public void Sort_DrawnTasks_IsTopologicalAndByPhaseWherePossible()
    {
        for (var seed = 0; seed < 500; seed++)
        {
            var random = new Random(seed);
            var loops = seed % 5 == 0;
            var tasks = Enumerable.Range(0, random.Next(1, 12)).Select(at => Task(
                Name(at),
                WorkTask.Phases[random.Next(WorkTask.Phases.Length)],
                [.. Enumerable.Range(0, loops ? 12 : at).Where(_ => random.Next(5) == 0).Select(Name)])).ToList();
            var order = WorkOrder.Sort(Shuffled(tasks, random));
            Assert.Equal(tasks.Select(task => task.Id).Order(StringComparer.Ordinal), order.Select(task => task.Id).Order(StringComparer.Ordinal));
            if (loops)
            {
                continue;
            }

            var done = new HashSet<string>(StringComparer.Ordinal);
            foreach (var next in order)
            {
                var ready = tasks.Where(task => !done.Contains(task.Id) && task.After.All(after => done.Contains(after.Id))).ToList();
                Assert.Contains(next, ready);
                Assert.Equal(ready.Min(task => WorkTask.Phases.IndexOf(task.Phase)), WorkTask.Phases.IndexOf(next.Phase));
                done.Add(next.Id);
            }
        }
    }

    private static WorkTask[] Shuffled(List<WorkTask> tasks, Random random)
    {
        var shuffled = tasks.ToArray();
        random.Shuffle(shuffled);
        return shuffled;
    }

    private static string Name(int at) => FormattableString.Invariant($"t{at * 7 % 13:00}");

    private static string[] Order(params WorkTask[] tasks) => [.. WorkOrder.Sort(tasks).Select(task => task.Id)];

    private static WorkTask Task(string id, string phase, params string[] after) =>
        new(id, id, default) { Phase = phase, After = [.. after.Select(other => new Named(other, default))] };
}
