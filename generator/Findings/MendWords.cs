using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>Mends worked out on the regions: which override, which narrower <c>when</c>.</summary>
internal static class MendWords
{
    /// <summary>How two rules that disagree where they overlap are brought to agree.</summary>
    public static string Disagreement(Examination examination, Rule first, Rule second, Region overlap)
    {
        var resolution = examination.Resolution;
        var (one, other) = (resolution.When(first), resolution.When(second));
        var firstInside = !resolution.BuildableParts.Intersects(resolution.Store.Minus(one, other));
        var secondInside = !resolution.BuildableParts.Intersects(resolution.Store.Minus(other, one));
        if (firstInside && secondInside)
        {
            return $"Both hold in the same combinations, so neither is the exception: keep the answer of one and take it out of `{first.Place.File}` or `{second.Place.File}`.";
        }

        if (firstInside && MayOverride(examination.Base, first, second))
        {
            return Override(first, second);
        }

        if (secondInside && MayOverride(examination.Base, second, first))
        {
            return Override(second, first);
        }

        var narrowed = new[] { (Rule: first, Beside: Apart(examination, one, overlap)), (Rule: second, Beside: Apart(examination, other, overlap)) }
            .Where(way => way.Beside is not null).OrderBy(way => way.Beside!.Length).FirstOrDefault();
        return narrowed.Beside is { } condition
            ? $"Add `{condition[1..^1]}` to the `when` in `{narrowed.Rule.Place.File}`, so that the two no longer meet; or, if one is the exception, let it override the other."
            : $"If one is the exception, let it say so (`overrides: [{second.Id}]` in `{first.Place.File}`, or the other way round); else narrow one `when`, so that they no longer meet.";
    }

    private static string Override(Rule smaller, Rule larger) =>
        $"Wherever `{smaller.Id}` holds `{larger.Id}` does too: if it is the exception, write `overrides: [{string.Join(", ", smaller.Overrides.Select(named => named.Id).Append(larger.Id))}]` in `{smaller.Place.File}`.";

    /// <summary>The shortest condition found that keeps a rule where it does no harm and nowhere else.</summary>
    private static string? Apart(Examination examination, Region when, Region overlap)
    {
        var parts = examination.Resolution.BuildableParts;
        var context = parts.Narrow(when);
        return examination.Resolution.Store.Minus(context, overlap).IsNone ? null : examination.Yaml.Write(examination.Resolution.Store.Not(overlap), context);
    }

    /// <summary>Whether an override would close no loop.</summary>
    private static bool MayOverride(KnowledgeBase kb, Rule rule, Rule other)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { other.Id };
        var open = new Stack<string>(seen);
        while (open.TryPop(out var id))
        {
            foreach (var next in kb.Rules.Find(id)?.Overrides.Select(named => named.Id).Where(seen.Add) ?? [])
            {
                open.Push(next);
            }
        }

        return !seen.Contains(rule.Id);
    }
}
