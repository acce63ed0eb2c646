using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Rules;

/// <summary>Whether a reader could tell that a rule has been taken out: the base is worked out again without it, combination by combination.</summary>
internal static class WithoutRule
{
    public static bool ChangesNothing(KnowledgeBase kb, Exhaustive with, Rule rule)
    {
        var rest = kb with { Rules = new EntitySet<Rule>(kb.Rules.All.Where(other => other.Id != rule.Id), other => other.Id) };
        var without = new Exhaustive(rest);
        var buildable = without.Buildable.ToDictionary(Name, StringComparer.Ordinal);
        var domain = without.Domain.ToDictionary(Name, StringComparer.Ordinal);
        var asked = Asked(kb).ToHashSet(StringComparer.Ordinal);
        // What decides whether a choice applies is asked before it is known what is a combination.
        var deciding = kb.Choices.All.Any(choice => choice.Applies.AnswerTests().Any()) ? asked : [];
        return with.Domain.Length == domain.Count && with.Buildable.Length == buildable.Count
            && with.Domain.All(at => domain.TryGetValue(Name(at), out var same) && asked.All(position => Same(with, at, without, same, position)))
            && (deciding.Count == 0 || with.Every().Zip(without.Every()).All(pair => deciding.All(position => Same(with, pair.First, without, pair.Second, position))))
            && with.Buildable.All(at => buildable.TryGetValue(Name(at), out var same)
                && kb.Positions.Ids.All(position => Same(with, at, without, same, position))
                && Values(kb, with, at).SequenceEqual(Values(rest, without, same))
                && Speaking(kb, with, at).SequenceEqual(Speaking(rest, without, same), StringComparer.Ordinal));
    }

    private static bool Same(Exhaustive with, Exhaustive.Case at, Exhaustive without, Exhaustive.Case same, string position) =>
        Contents(with.Standing(position, at)).SetEquals(Contents(without.Standing(position, same)));

    private static HashSet<string> Contents(IEnumerable<(Rule Rule, Answer Answer)> standing) =>
        [.. standing.Select(one => $"{one.Answer.Source} {one.Answer.Treatment} {one.Answer.Part} [{string.Join(' ', one.Answer.Also.Order(StringComparer.Ordinal))}] [{string.Join('|', one.Answer.Steps)}] {one.Answer.Notes} [{string.Join('|', one.Answer.Mistakes)}] {one.Answer.Article}")];

    private static IEnumerable<(string, string, decimal)> Values(KnowledgeBase kb, Exhaustive truth, Exhaustive.Case at) =>
        kb.Rules.All.SelectMany(rule => rule.Values.Where(value => truth.Stands(rule, value, at)).Select(value => (rule.Id, value.Name, value.Value)));

    private static IEnumerable<string> Speaking(KnowledgeBase kb, Exhaustive truth, Exhaustive.Case at) =>
        kb.Rules.All.Where(rule => !(rule.Tasks.IsEmpty && rule.Cautions.IsEmpty && rule.Mistakes.IsEmpty && rule.Advises.IsEmpty) && truth.Speaks(rule, at)).Select(rule => rule.Id);

    private static IEnumerable<string> Asked(KnowledgeBase kb) => kb.Rules.All.SelectMany(rule => new[] { rule.When, rule.Requires })
        .Concat(kb.Positions.All.Select(position => position.Applies))
        .Concat(kb.Choices.All.SelectMany(choice => choice.Recommendations.Select(one => one.When).Append(choice.Applies)))
        .Concat(kb.Tasks.All.Select(task => task.When))
        .OfType<Condition>().SelectMany(condition => condition.AnswerTests()).Select(test => test.Position);

    private static string Name(Exhaustive.Case at) => $"{at.Chassis.Id} {at.Donor.Id} {string.Join(' ', at.Options.OrderBy(option => option.Key, StringComparer.Ordinal).Select(option => $"{option.Key}={option.Value}"))}";
}
