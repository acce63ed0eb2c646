using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>Which terms of a condition keep it from ever being met.</summary>
internal static class ClashingTerms
{
    // Sets of more terms than these are looked for by leaving terms out, which gives a set that cannot shrink but may not be the smallest.
    private const int Exact = 3;

    /// <summary>The fewest terms that no combination meets together.</summary>
    public static ImmutableArray<Condition> Of(Resolution resolution, Condition condition)
    {
        var terms = Terms(condition).ToImmutableArray();
        for (var size = 1; size <= Math.Min(Exact, terms.Length); size++)
        {
            if (Subsets(terms, size).FirstOrDefault(subset => Clash(resolution, subset)) is { } found)
            {
                return [.. found];
            }
        }

        foreach (var term in terms)
        {
            if (Clash(resolution, terms.Remove(term)))
            {
                terms = terms.Remove(term);
            }
        }

        return terms;
    }

    /// <summary>A term as it is written, up to its colon.</summary>
    public static string Name(Condition term) => term switch
    {
        FactTest fact => fact.Name,
        ChoiceTest choice => $"choice.{choice.Choice}",
        AnswerTest answer => $"answer.{answer.Position}",
        AnyOf => "any",
        // Terms that hold together are taken apart, so nothing else is left.
        _ => "not",
    };

    private static IEnumerable<Condition> Terms(Condition condition) => condition is AllOf { Terms.IsEmpty: false } all ? all.Terms.SelectMany(Terms) : [condition];

    private static bool Clash(Resolution resolution, IEnumerable<Condition> terms) =>
        !resolution.DomainParts.Intersects(resolution.Store.AndAll(terms.Select(resolution.RegionOf)));

    private static IEnumerable<Condition[]> Subsets(ImmutableArray<Condition> terms, int size) => size == 0
        ? [[]]
        : Enumerable.Range(0, terms.Length).SelectMany(at => Subsets([.. terms.Skip(at + 1)], size - 1).Select(rest => (Condition[])[terms[at], .. rest]));
}
