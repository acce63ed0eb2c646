using Swapwright.Diagnostics;

namespace Swapwright.Findings;

/// <summary>A tool whose own <c>when</c> never holds where its task is done: no guide asks for it.</summary>
public static class ToolWhere
{
    public static readonly SpaceCheck Check = new(FindingKinds.TaskOrder, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var task in examination.Base.Tasks.All)
        {
            foreach (var tool in task.Tools.Where(tool => tool.When is not null))
            {
                if (resolution.Wanted(task) is { IsNone: false } appears && !resolution.BuildableParts.Intersects(resolution.Store.And(appears, resolution.RegionOf(tool.When!))))
                {
                    yield return new Finding(FindingKinds.TaskOrder, $"no guide asks for the tool `{tool.Title}` of `{task.Id}`: its `when` never holds where `{task.Id}` appears", tool.Place)
                    {
                        Mend = "Correct the `when`, or take the tool out.",
                    };
                }
            }
        }
    }
}
