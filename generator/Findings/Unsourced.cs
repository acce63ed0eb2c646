using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>A rule that decides something on nobody's word.</summary>
public static class Unsourced
{
    public static readonly EntityCheck Check = new(FindingKinds.Unsourced, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb) =>
        kb.Rules.All.Where(rule => rule.Sources.IsEmpty && Decides(rule)).Select(rule => new Finding(FindingKinds.Unsourced, $"`{rule.Id}` names no source", rule.Place)
        {
            Mend = "Add `sources`, from `sources.yaml`; what every workshop does is a source of the kind `common-practice`.",
        });

    private static bool Decides(Rule rule) => !rule.Answers.IsEmpty || !rule.Values.IsEmpty || rule.Excludes || rule.Requires is not null;
}
