using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>
/// A task that takes what a position yields, where the position yields nothing in any buildable combination in which the
/// task appears: no answer, an answer that leaves the thing off, or one that blanks it. A thing kept as it is counts.
/// </summary>
public static class TaskNeeds
{
    public static readonly SpaceCheck Check = new(FindingKinds.TaskOrder, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        var store = resolution.Store;
        foreach (var task in examination.Base.Tasks.All.Where(task => task.Needs.Length > 0))
        {
            var appears = store.And(resolution.Buildable, resolution.Wanted(task));
            // A task that appears nowhere is told as such.
            foreach (var need in appears.IsNone ? [] : task.Needs.Where(need => examination.Base.Positions.Has(need.Id)))
            {
                if (!store.Intersects(appears, Yields(examination, need.Id)))
                {
                    yield return new Finding(FindingKinds.TaskOrder, $"`{task.Id}` needs what `{need.Id}` yields, but it yields nothing wherever the task appears", need.Place)
                    {
                        Related = [new RelatedPlace("the position", examination.Base.Positions[need.Id].Place), .. resolution.At(need.Id).Take(3).Select(standing => new RelatedPlace($"`{standing.Rule.Id}` answers: {AnswerWords.Short(standing.Answer)}", standing.Answer.Place))],
                        Mend = "Take the position out of `needs`, name another, or correct where the task appears.",
                    };
                }
            }
        }
    }

    private static Region Yields(Examination examination, string position) => examination.Resolution.Store.OrAll(
        examination.Resolution.At(position).Where(standing => standing.Answer is not ({ Source: "none" } or { Treatment: "blank" }) || standing.Answer.Part is not null).Select(standing => standing.Region));
}
