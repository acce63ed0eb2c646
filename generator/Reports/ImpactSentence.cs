using System.Numerics;
using Swapwright.Impact;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>An impact in one sentence, and what its numbers are made of.</summary>
internal static class ImpactSentence
{
    public static string Of(KnowledgeImpact impact)
    {
        var findings = Findings(impact.Findings);
        if (!impact.Changed)
        {
            return $"Nothing changes for readers: {CheckWords.Many(impact.Compared, "combination")} in {CheckWords.Many(Headlines.Count(impact.New.Resolution!), "guide")} "
                + $"{(impact.Compared.IsOne ? "is" : "are")} told the same{(findings.Length == 0 ? "" : $"; {findings}")}.";
        }

        string[] first = [Guides(impact.Guides), Answers(impact)];
        string[] then = [Built(impact), Work(impact), Numbers(impact.Numbers), Words(impact), Entries(impact.Entries), findings];
        var sentence = string.Join("; ", then.Prepend(string.Join(", ", first.Where(part => part.Length > 0))).Where(part => part.Length > 0));
        return $"{char.ToUpperInvariant(sentence[0])}{sentence[1..]}.";
    }

    public static string Guides(GuideChanges guides) => Joined(
        Part(guides.Changed.Length, "guide changes", "guides change"),
        Part(guides.Gained.Length, "guide is new", "guides are new"),
        Part(guides.Lost.Length, "guide is gone", "guides are gone"));

    public static string Answers(KnowledgeImpact impact)
    {
        var positions = impact.Answers.Select(change => change.Position.Id).Distinct(StringComparer.Ordinal).Count();
        return positions == 0 ? "" : $"{CheckWords.Grouped(impact.Answered)} of {CheckWords.Many(impact.Compared, "combination")} {(impact.Answered.IsOne ? "gets" : "get")} another answer at {CheckWords.Many(positions, "position")}";
    }

    public static string Built(KnowledgeImpact impact) => Joined(
        Part(impact.Lost.All, "combination can no longer be built", "combinations can no longer be built"),
        Part(impact.Gained.All, "combination can be built now", "combinations can be built now"));

    public static string Work(KnowledgeImpact impact) => Joined(
        [.. WorkChanges.Kinds.Select(kind => (kind, impact.Work.Count(change => change.Kind == kind)))
            .Where(one => one.Item2 > 0)
            .Select(one => one.kind == "advice" ? Part(one.Item2, "piece of advice changes", "pieces of advice change") : Part(one.Item2, $"{one.kind} changes", $"{one.kind}s change"))]);

    public static string Numbers(NumberChanges numbers) => Joined(
        numbers.Defaults.IsEmpty ? "" : $"another combination is recommended in {CheckWords.Many(numbers.Defaults.Length, "guide")}",
        numbers.Moved.IsEmpty ? "" : $"numbers move in {CheckWords.Many(numbers.Moved.Select(one => one.Guide).Distinct().Count(), "guide")}");

    public static string Words(KnowledgeImpact impact) => Joined(
        At(impact, "words change at", change => change.What is not ("standing" or "sources")),
        At(impact, "standing is raised at", StandingOrder.Raised),
        At(impact, "standing is lowered at", StandingOrder.Lowered),
        At(impact, "sources change at", change => change.What == "sources"));

    public static string Entries(EntryChanges entries) => Joined(
        Part(entries.Gained.Length, "entry is new", "entries are new"),
        Part(entries.Lost.Length, "entry is gone", "entries are gone"),
        Part(entries.Changed.Length, "entry says something else", "entries say something else"));

    public static string Findings(FindingChanges findings) => Joined(
        Part(findings.Introduced.Length, "finding is introduced", "findings are introduced"),
        Part(findings.Mended.Length, "finding is mended", "findings are mended"));

    private static string At(KnowledgeImpact impact, string words, Func<WordChange, bool> which)
    {
        var positions = impact.Words.Where(which).Select(change => change.Position.Id).Distinct(StringComparer.Ordinal).Count();
        return positions == 0 ? "" : $"{words} {CheckWords.Many(positions, "position")}";
    }

    private static string Part(BigInteger count, string one, string many) => count.IsZero ? "" : $"{CheckWords.Grouped(count)} {(count.IsOne ? one : many)}";

    private static string Joined(params IEnumerable<string> parts) => string.Join(", ", parts.Where(part => part.Length > 0));
}
