using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>A fastener whose own <c>when</c> never holds where its task is done, or where its part is fitted: no guide speaks of it.</summary>
public static class TighteningWhere
{
    public static readonly SpaceCheck Check = new(FindingKinds.TaskOrder, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var (kb, resolution) = (examination.Base, examination.Resolution);
        var ofTasks = kb.Tasks.All.SelectMany(task => task.Fasteners.Select(fastener => (Fastener: fastener, Holder: task.Id, Where: (Func<Region>)(() => resolution.Wanted(task)))));
        var ofParts = kb.Parts.All.SelectMany(part => part.Fasteners.Select(fastener => (Fastener: fastener, Holder: part.Id, Where: (Func<Region>)(() => Fitted(examination, part)))));
        foreach (var (fastener, holder, where) in ofTasks.Concat(ofParts))
        {
            if (fastener.When is { } when && where() is { IsNone: false } appears && !resolution.BuildableParts.Intersects(resolution.Store.And(appears, resolution.RegionOf(when))))
            {
                yield return new Finding(FindingKinds.TaskOrder, $"`{fastener.Id}` of `{holder}` is tightened in no guide: its `when` never holds where `{holder}` appears", fastener.Place)
                {
                    Mend = "Correct the `when`, or take the fastener out.",
                };
            }
        }
    }

    private static Region Fitted(Examination examination, Part part) => examination.Resolution.Store.OrAll(
        examination.Base.Positions.All.SelectMany(position => examination.Resolution.At(position.Id)).Where(standing => standing.Answer.PartIds.Contains(part.Id)).Select(standing => standing.Region));
}
