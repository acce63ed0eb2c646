using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Rules;

/// <summary>Loops among overrides and among answers, and the order in which positions can be resolved.</summary>
internal static class RuleLoops
{
    public static IEnumerable<Finding> Overrides(KnowledgeBase kb)
    {
        foreach (var loop in Loops.Of(kb.Rules.Ids, id => kb.Rules[id].Overrides.Select(named => named.Id).Where(kb.Rules.Has)))
        {
            var rules = loop.Select(id => kb.Rules[id]).ToList();
            var closing = rules[^1].Overrides.First(named => named.Id == rules[0].Id);
            yield return new Finding(FindingKinds.OverrideCycle, $"overrides go in a loop: {string.Join(" → ", loop.Append(loop[0]).Select(id => $"`{id}`"))}", closing.Place)
            {
                Related = [.. rules.Take(rules.Count - 1).Select((rule, at) => new RelatedPlace($"`{rule.Id}` overrides `{rules[at + 1].Id}` here", rule.Overrides.First(named => named.Id == rules[at + 1].Id).Place))],
                Mend = "Take out the override that should not win.",
            };
        }
    }

    /// <summary>Every position after those whose answers its rules ask for; positions of a loop come in order of id, the loop being reported.</summary>
    public static ImmutableArray<string> PositionOrder(KnowledgeBase kb, Func<string, ImmutableArray<Rule>> rulesAt, List<Finding> findings)
    {
        var tests = kb.Positions.Ids.ToDictionary(
            position => position,
            position => rulesAt(position).SelectMany(rule => rule.When.AnswerTests()).Concat(kb.Positions[position].Applies.AnswerTests()).Where(test => kb.Positions.Has(test.Position)).ToArray(),
            StringComparer.Ordinal);
        AnswerTest[] Tests(string position) => tests[position];
        foreach (var loop in Loops.Of(kb.Positions.Ids, id => Tests(id).Select(test => test.Position)))
        {
            var first = Tests(loop[0]).First(test => test.Position == loop[1 % loop.Count]);
            findings.Add(new Finding(FindingKinds.AnswerCycle, $"answers depend on each other in a loop: {string.Join(" → ", loop.Append(loop[0]).Select(id => $"`{id}`"))}", first.Place)
            {
                Related = [.. loop.Skip(1).Select((id, at) => new RelatedPlace($"the answer at `{id}` asks for `{loop[(at + 2) % loop.Count]}` here", Tests(id).First(test => test.Position == loop[(at + 2) % loop.Count]).Place))],
                Mend = "Let one of these rules ask a fact or a choice in place of an answer.",
            });
        }

        var order = ImmutableArray.CreateBuilder<string>();
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var id in kb.Positions.Ids)
        {
            Visit(id);
        }

        return order.ToImmutable();

        void Visit(string id)
        {
            if (done.Add(id))
            {
                foreach (var test in Tests(id))
                {
                    Visit(test.Position);
                }

                order.Add(id);
            }
        }
    }
}
