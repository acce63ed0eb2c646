using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>An answer that can hurt where it is wrong, and that nobody measured or drove.</summary>
public static class Standing
{
    public static readonly EntityCheck Check = new(FindingKinds.Standing, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb) =>
        from rule in kb.Rules.All
        where rule.Standing == "reported"
        from answer in rule.Answers
        let position = kb.Positions.Find(answer.Position)
        where position?.Safety is not null
        select new Finding(FindingKinds.Standing, $"`{rule.Id}` answers `{position.Id}` on a report alone, where a wrong answer is a danger ({position.Safety})", answer.Place)
        {
            Related = [new RelatedPlace($"`{position.Id}` is marked for its safety", position.Place)],
            Mend = "Have it measured or built and say so under `standing`, with `checked` and its source.",
        };
}
