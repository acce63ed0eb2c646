using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>Two rules that tell a builder different things about one position, or state different numbers for one value.</summary>
public static class Contradiction
{
    public static readonly SpaceCheck Check = new(FindingKinds.Contradiction, Run);

    private static IEnumerable<Finding> Run(Examination examination) =>
        examination.Base.PositionOrder.SelectMany(position => AtPosition(examination, position.Id)).Concat(InValues(examination));

    private static IEnumerable<Finding> AtPosition(Examination examination, string position)
    {
        var resolution = examination.Resolution;
        foreach (var (first, second, overlap) in Overlaps(resolution, resolution.At(position), one => one.Rule, one => one.Region, (a, b) => a.Answer.Agrees(b.Answer)))
        {
            yield return examination.About(
                FindingKinds.Contradiction,
                $"`{first.Rule.Id}` and `{second.Rule.Id}` give `{position}` different answers: {AnswerWords.Short(first.Answer)}, and {AnswerWords.Short(second.Answer)}",
                first.Answer.Place,
                overlap) with
            {
                Related = [new RelatedPlace($"`{second.Rule.Id}` answers: {AnswerWords.Short(second.Answer)}", second.Answer.Place)],
                Mend = MendWords.Disagreement(examination, first.Rule, second.Rule, overlap),
            };
        }
    }

    private static IEnumerable<Finding> InValues(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var name in resolution.Values.GroupBy(value => value.Value.Name, StringComparer.Ordinal).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            foreach (var (first, second, overlap) in Overlaps(resolution, [.. name], one => one.Rule, one => one.Region, (a, b) => a.Value.Value == b.Value.Value))
            {
                yield return examination.About(FindingKinds.Contradiction, $"`{first.Rule.Id}` and `{second.Rule.Id}` state different numbers for `{name.Key}`: {Number(first.Value)} and {Number(second.Value)}", first.Value.Place, overlap) with
                {
                    Related = [new RelatedPlace($"`{second.Rule.Id}` states it here", second.Value.Place)],
                    Mend = MendWords.Disagreement(examination, first.Rule, second.Rule, overlap),
                };
            }
        }
    }

    private static Quantity Number(StatedValue value) => new(value.Value, ComputedValues.UnitOf(value.Name));

    /// <summary>
    /// The pairs that disagree and meet in some buildable combination. The cheap questions come first: where one rule overrides
    /// the other, or their conditions never meet, what stands of them and what can be built need not be worked out.
    /// </summary>
    private static IEnumerable<(T First, T Second, Region Overlap)> Overlaps<T>(Resolution resolution, ImmutableArray<T> items, Func<T, Rule> rule, Func<T, Region> standing, Func<T, T, bool> agree)
    {
        var store = resolution.Store;
        var when = items.Select(item => resolution.When(rule(item))).ToArray();
        var bounds = Array.ConvertAll(when, store.BoundsOf);
        for (var second = 1; second < items.Length; second++)
        {
            var later = rule(items[second]);
            for (var first = 0; first < second; first++)
            {
                var earlier = rule(items[first]);
                if (bounds[first].Meet(bounds[second]) && !Overrides(earlier, later) && !Overrides(later, earlier) && !agree(items[first], items[second]) && MayMeet(resolution, earlier, later)
                    && resolution.BuildableParts.Narrow(store.And(standing(items[first]), standing(items[second]))) is { IsNone: false } overlap)
                {
                    yield return (items[first], items[second], overlap);
                }
            }
        }
    }

    /// <summary>
    /// Whether the conditions of two rules meet. Of two long ones often one asks for what another bars; that is found term by term, and
    /// terms are few and asked by many rules.
    /// </summary>
    private static bool MayMeet(Resolution resolution, Rule one, Rule other)
    {
        var others = resolution.TermsOf(other);
        foreach (var term in resolution.TermsOf(one))
        {
            foreach (var counter in others)
            {
                if (!resolution.Store.Intersects(term, counter))
                {
                    return false;
                }
            }
        }

        return resolution.Store.Intersects(resolution.When(one), resolution.When(other));
    }

    private static bool Overrides(Rule winner, Rule other)
    {
        foreach (var named in winner.Overrides)
        {
            if (named.Id == other.Id)
            {
                return true;
            }
        }

        return false;
    }
}
