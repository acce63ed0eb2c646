using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>An id that was published and is gone without a word: what it said reaches nobody, and what linked to it is broken.</summary>
public static class LostId
{
    public static readonly EntityCheck Check = new(FindingKinds.LostId, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        if (kb.Register is not { } register)
        {
            yield break;
        }

        var retired = register.Retired.Select(one => (one.Kind, one.Id)).ToHashSet();
        foreach (var lost in register.Published.Where(one => IdRegister.PlaceOf(kb, one.Kind, one.Id) is null && !retired.Contains((one.Kind, one.Id))))
        {
            yield return new Finding(FindingKinds.LostId, $"{lost.Kind} `{lost.Id}` was published and is gone", lost.Place)
            {
                Mend = $"Put it back; or, if it went for a reason, write it under `retired` with the reason and its successors.",
            };
        }

        foreach (var one in register.Retired)
        {
            if (IdRegister.PlaceOf(kb, one.Kind, one.Id) is { } place)
            {
                yield return new Finding(FindingKinds.LostId, $"{one.Kind} `{one.Id}` is retired and still there", one.Place)
                {
                    Related = [new RelatedPlace("here", place)],
                    Mend = "An id that was retired is not used again: rename the new one, or take the retirement out if it never went.",
                };
            }

            foreach (var successor in one.Successors.Where(named => IdRegister.PlaceOf(kb, one.Kind, named.Id) is null))
            {
                yield return new Finding(FindingKinds.LostId, $"`{successor.Id}`, named as successor of {one.Kind} `{one.Id}`, is not there", successor.Place)
                {
                    Mend = "Name what took its place, or leave `successors` empty.",
                };
            }
        }
    }
}
