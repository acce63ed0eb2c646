using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>An entity that the register does not name yet.</summary>
public static class UnregisteredId
{
    public static readonly EntityCheck Check = new(FindingKinds.UnregisteredId, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        if (kb.Register is not { } register)
        {
            yield break;
        }

        var known = register.Published.Select(one => (one.Kind, one.Id)).ToHashSet();
        foreach (var kind in IdRegister.Kinds)
        {
            foreach (var id in IdRegister.Present(kb, kind).Where(id => !known.Contains((kind, id))))
            {
                yield return new Finding(FindingKinds.UnregisteredId, $"{kind} `{id}` is not in the register", IdRegister.PlaceOf(kb, kind, id)!.Value)
                {
                    Mend = "Run `swapwright register`, or add the id under its kind in register.yaml.",
                };
            }
        }
    }
}
