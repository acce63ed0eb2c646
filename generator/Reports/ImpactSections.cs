using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Impact;
using Swapwright.Knowledge;
using Swapwright.Sheets;

namespace Swapwright.Reports;

/// <summary>An impact as sections of items in words: what the forms for reading have in common.</summary>
internal sealed class ImpactSections(KnowledgeImpact impact)
{
    private KnowledgeBase Old => impact.Old.Base;

    private KnowledgeBase New => impact.New.Base;

    /// <summary>The sections that have something to say: first what a builder does, last what contributors look for.</summary>
    public IEnumerable<ImpactSection> All() => new ImpactSection[]
    {
        new("Answers", ImpactSentence.Answers(impact), [.. impact.Answers.Select(Answer)]),
        new("Combinations lost", Lost(), [.. impact.Lost.Exclusions.Select(Exclusion)]),
        new("Combinations gained", Gained(), [.. impact.Gained.Exclusions.Select(Exclusion)]),
        new("Guides", ImpactSentence.Guides(impact.Guides), [.. Guides()]),
        new("Tasks, cautions, mistakes, advice", ImpactSentence.Work(impact), [.. impact.Work.Select(Work)]),
        new("Recommended combinations", Defaults(), [.. impact.Numbers.Defaults.Select(Default)]),
        new("Numbers of the recommended combinations", Numbers(), [.. Moved()]),
        new("Words, standing, sources", ImpactSentence.Words(impact), [.. impact.Words.Select(Word)]),
        new("Findings", ImpactSentence.Findings(impact.Findings), [.. impact.Findings.Introduced.Select(one => Finding(one, "introduced")), .. impact.Findings.Mended.Select(one => Finding(one, "mended"))]),
        new("Entries", ImpactSentence.Entries(impact.Entries), [.. Entries()]),
    }.Where(section => section.Summary.Length > 0);

    private ImpactItem Answer(AnswerChange change) => new(
        $"{change.Position.Title}, {CheckWords.Many(change.Extent.Combinations, "combination")}",
        [new("was", Told(change.From, Old)), new("now", Told(change.To, New)), .. Extent(change.Extent)]);

    private static string Told(Told told, KnowledgeBase kb) => told switch
    {
        { Asked: false } => "nothing to settle here",
        { Answers.IsEmpty: true } => "no answer",
        { Answers: [var one] } => Sentence(one, kb),
        _ => $"several answers at once: {string.Join("; ", told.Answers.Select(answer => Sentence(answer, kb)))}",
    };

    private static string Sentence(Answer answer, KnowledgeBase kb)
    {
        var parts = answer.PartIds.Select(id => kb.Parts.Find(id)?.Title ?? id).ToList();
        return AnswerWording.Sentence(answer) + (parts.Count == 0 ? "" : $" ({string.Join("; ", parts)})");
    }

    private string Lost() => Unmatched(impact.Lost, "combination can no longer be built", "combinations can no longer be built", "excluded by rules");

    private string Gained() => Unmatched(impact.Gained, "combination can be built now", "combinations can be built now", "excluded before");

    private static string Unmatched(Unmatched unmatched, string one, string many, string ruled)
    {
        if (unmatched.All.IsZero)
        {
            return "";
        }

        var other = unmatched.All - unmatched.ByRules;
        const string unknown = "with a chassis, donor or option that only one of the bases has there";
        var why = other.IsZero ? $"all {ruled}"
            : unmatched.ByRules.IsZero ? $"all {unknown}"
            : $"{CheckWords.Grouped(unmatched.ByRules)} {ruled}, {CheckWords.Grouped(other)} {unknown}";
        return $"{CheckWords.Grouped(unmatched.All)} {(unmatched.All.IsOne ? one : many)}: {why}";
    }

    private static ImpactItem Exclusion(ExclusionChange exclusion) => new(
        $"{exclusion.Rule.Title}, {CheckWords.Many(exclusion.Extent.Combinations, "combination")}",
        [
            new("rule", exclusion.Rule.Id, IsCode: true),
            new("because", exclusion.Rule.WhyExcluded),
            .. Extent(exclusion.Extent),
        ]);

    private IEnumerable<ImpactItem> Guides() =>
        GuideLines.Of(New, impact.Guides.Gained, "new")
            .Concat(GuideLines.Of(Old, impact.Guides.Lost, "gone"))
            .Concat(impact.Guides.Changed.GroupBy(changed => string.Join(", ", changed.Kinds), changed => changed.Guide, StringComparer.Ordinal)
                .SelectMany(same => GuideLines.Of(New, [.. same], $"changed: {same.Key}")));

    private ImpactItem Work(WorkChange change)
    {
        var text = change.Kind == "task" ? (New.Tasks.Find(change.About) ?? Old.Tasks.Find(change.About))?.Title ?? change.About : change.Text;
        var was = change.Was is { } before ? ImmutableArray.Create(new ImpactDetail("was", before), new ImpactDetail("now", text)) : [new("says", text)];
        return new ImpactItem(
            $"{char.ToUpperInvariant(change.Kind[0])}{change.Kind[1..]}{(change is { Kind: "caution", About.Length: > 0 } ? $" about {change.About}" : "")} {change.Change}, {CheckWords.Many(change.Extent.Combinations, "combination")}",
            [.. was, .. Extent(change.Extent)]);
    }

    private string Defaults() => impact.Numbers.Defaults.IsEmpty ? "" : $"another combination is recommended in {CheckWords.Many(impact.Numbers.Defaults.Length, "guide")}";

    private static ImpactItem Default(DefaultChange change) => new(
        change.Guide.Id,
        new ImpactDetail("was", Pairs(change.Old), IsCode: true),
        new ImpactDetail("now", Pairs(change.New), IsCode: true));

    private static string Pairs(IEnumerable<KeyValuePair<string, string>> pairs) => string.Join(' ', pairs.Select(pair => $"{pair.Key}={pair.Value}"));

    private string Numbers()
    {
        var numbers = impact.Numbers;
        var moved = numbers.Moved.IsEmpty ? "" : $"numbers move in {CheckWords.Many(numbers.Moved.Select(one => one.Guide).Distinct().Count(), "guide")}";
        return numbers.Compared == numbers.Candidates ? moved
            : $"{(moved.Length == 0 ? "no number moves" : moved)} of the first {CheckWords.Grouped(numbers.Compared)} whose numbers were worked out; {CheckWords.Grouped(numbers.Candidates - numbers.Compared)} more were not";
    }

    /// <summary>Guides in which a number makes the same step are told together. Of an estimate the likely number stands for the range, where it moves.</summary>
    private IEnumerable<ImpactItem> Moved()
    {
        var likely = impact.Numbers.Moved.Where(change => change.Name.EndsWith(Likely, StringComparison.Ordinal)).Select(change => (change.Guide, change.Name)).ToHashSet();
        return impact.Numbers.Moved
            .Where(change => !(change.Name.Split('.') is [var of, "least" or "most"] && likely.Contains((change.Guide, of + Likely))))
            .GroupBy(change => (change.Name, change.Title, change.Unit, Step: change.New - change.Old, None: change.Old is null ? change.New : change.New is null ? change.Old : null))
            .OrderBy(same => same.Key.Name, StringComparer.Ordinal)
            .Select(same => new ImpactItem(
                $"{(same.Key.Name.Split('.') is ["belt", var loop, _] ? $"belt {loop}, " : "")}{same.Key.Title}, {CheckWords.Many(same.Count(), "guide")}{Step(same.Key.Step, same.Key.Unit)}",
                new ImpactDetail("as in", same.First().Guide.Id, IsCode: true),
                new ImpactDetail("was", $"{Value(same.First().Old)} {same.Key.Unit}".TrimEnd()),
                new ImpactDetail("now", $"{Value(same.First().New)} {same.Key.Unit}".TrimEnd())));
    }

    private const string Likely = ".likely";

    private static string Step(decimal? step, string unit) => step is { } by
        ? $": {by.ToString("+#,0.##;−#,0.##", CultureInfo.InvariantCulture)} {unit}".TrimEnd()
        : "";

    private static string Value(decimal? value) => value is { } number ? number.ToString("#,0.##", CultureInfo.InvariantCulture) : "none";

    private ImpactItem Word(WordChange change)
    {
        var what = change.What == "standing" ? $"standing {(StandingOrder.Raised(change) ? "raised" : "lowered")}" : change.What;
        return new ImpactItem(
            $"{change.Position.Title}: {what}, {CheckWords.Many(change.Extent.Combinations, "combination")}",
            [new("was", Said(change.From)), new("now", Said(change.To)), .. Extent(change.Extent)]);
    }

    private static string Said(string text) => text.Length == 0 ? "nothing" : text;

    private static ImpactItem Finding(Finding finding, string state) => new(
        $"{SeverityWords.Of(finding.Severity)} {finding.Id} {state}",
        new ImpactDetail("says", finding.Message),
        new ImpactDetail("at", finding.Place.ToString(), IsCode: true));

    private IEnumerable<ImpactItem> Entries() =>
        impact.Entries.Gained.Select(entry => new ImpactItem($"{Named(entry)}: new"))
            .Concat(impact.Entries.Lost.Select(entry => new ImpactItem($"{Named(entry)}: gone")))
            .Concat(impact.Entries.Changed.Select(changed => new ImpactItem($"{Named(changed.Entry)}: {string.Join(", ", changed.What)}")));

    private static string Named(Entry entry) => $"{entry.Kind} {entry.Id}";

    private static IEnumerable<ImpactDetail> Extent(Extent extent)
    {
        yield return new ImpactDetail("where", extent.Where);
        yield return new ImpactDetail("seen in", string.Join(' ', extent.Witness.Choices.Where(choice => choice.Value != Choice.None)
            .Select(choice => $"{choice.Key}={choice.Value}").Prepend(extent.Witness.Donor).Prepend(extent.Witness.Chassis)), IsCode: true);
    }
}
