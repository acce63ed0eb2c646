using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Sheets.Questions;

/// <summary>A question about a vehicle or an engine: one that can be seen on it, or the year from its papers.</summary>
/// <param name="Fact">null for the year.</param>
public sealed record VariantQuestion(FactDeclaration? Fact)
{
    public bool IsYear => Fact is null;
}

/// <summary>An answer as it is given: a fact's value, or the years that belong together.</summary>
public readonly record struct Reply(FactValue? Value, YearSpan Years);

/// <summary>A place in the questions that lead to a variant.</summary>
/// <param name="Variants">Who is still possible here.</param>
/// <param name="Question">null where nothing that can be seen tells them apart, or one is left.</param>
/// <param name="Same">Questions that would do as well here.</param>
public sealed record QuestionStep<T>(ImmutableArray<T> Variants, VariantQuestion? Question, ImmutableArray<VariantQuestion> Same, ImmutableArray<(Reply Reply, QuestionStep<T> Next)> Replies)
    where T : Variant;

/// <summary>
/// Finds the questions that lead an owner to their variant, from the facts that can be seen and the years, see <see cref="QuestionPlan"/>.
/// A fact is asked only where every variant that is still possible gives it: what is not written down cannot rule a variant out.
/// Years are asked by spans that do not overlap. Among questions that do as well, one that says how to tell comes first and the year last,
/// since papers can belong to another car.
/// </summary>
public static class VariantQuestions
{
    /// <param name="subject">chassis or donor.</param>
    public static QuestionStep<T> Of<T>(Vocabulary vocabulary, string subject, ImmutableArray<T> variants)
        where T : Variant
    {
        ImmutableArray<VariantQuestion> questions =
        [
            .. vocabulary.Facts.All.Where(fact => fact.Subject == subject && fact.Observable)
                .OrderBy(fact => fact.HowToTell.Length == 0).ThenBy(fact => fact.Place).Select(fact => new VariantQuestion(fact)),
            new(null),
        ];
        var plan = QuestionPlan.Of(variants.Length, [.. questions.Select(question => (Divide)(items => [.. Parts(question, variants, items).Select(part => part.Items)]))]);
        return Step(plan);

        QuestionStep<T> Step(PlanNode node) => new(
            [.. node.Items.Select(item => variants[item])],
            node.IsLeaf ? null : questions[node.Question],
            [.. node.Same.Select(same => questions[same])],
            node.IsLeaf ? [] : [.. Parts(questions[node.Question], variants, node.Items).Zip(node.Branches, (part, branch) => (part.Reply, Step(branch)))]);
    }

    private static ImmutableArray<(Reply Reply, ImmutableArray<int> Items)> Parts<T>(VariantQuestion question, ImmutableArray<T> variants, ImmutableArray<int> items)
        where T : Variant =>
        question.Fact is { } fact ? ByFact(fact, variants, items) : ByYear(variants, items);

    private static ImmutableArray<(Reply, ImmutableArray<int>)> ByFact<T>(FactDeclaration fact, ImmutableArray<T> variants, ImmutableArray<int> items)
        where T : Variant
    {
        if (items.Any(item => variants[item].Fact(fact.Id) is null))
        {
            return [];
        }

        return
        [
            .. items.Select(item => (Item: item, Value: variants[item].Fact(fact.Id)!.Value))
                .GroupBy(pair => (pair.Value.Text, pair.Value.Number))
                .OrderBy(group => fact.Type == FactType.OneOf ? fact.RankOf(group.Key.Text) : 0)
                .ThenBy(group => fact.Type == FactType.Flag ? -group.Key.Number : group.Key.Number)
                .ThenBy(group => group.Key.Text, StringComparer.Ordinal)
                .Select(group => (new Reply(group.First().Value, default), (ImmutableArray<int>)[.. group.Select(pair => pair.Item)])),
        ];
    }

    // Spans that overlap belong together, directly or through others: a year must lead to one answer.
    private static ImmutableArray<(Reply, ImmutableArray<int>)> ByYear<T>(ImmutableArray<T> variants, ImmutableArray<int> items)
        where T : Variant
    {
        var parts = new List<(YearSpan Span, List<int> Items)>();
        foreach (var item in items.OrderBy(item => variants[item].Years.From).ThenBy(item => item))
        {
            var years = variants[item].Years;
            if (parts.Count > 0 && years.From <= parts[^1].Span.To)
            {
                var (span, members) = parts[^1];
                members.Add(item);
                parts[^1] = (span with { To = Math.Max(span.To, years.To) }, members);
            }
            else
            {
                parts.Add((years, [item]));
            }
        }

        return [.. parts.Select(part => (new Reply(null, part.Span), (ImmutableArray<int>)[.. part.Items.Order()]))];
    }
}
