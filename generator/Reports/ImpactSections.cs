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
        new("No longer buildable", Lost(), [.. impact.Lost.Exclusions.Select(Exclusion)]),
        new("Buildable now", Gained(), [.. impact.Gained.Exclusions.Select(Exclusion)]),
        new("Guides", ImpactSentence.Guides(impact.Guides), [.. Guides()]),
        new("Tasks, cautions, mistakes, advice", ImpactSentence.Work(impact), [.. impact.Work.Select(Work)]),
        new("Recommended combinations", Defaults(), [.. impact.Numbers.Defaults.Select(Default)]),
        new("Numbers of the recommended combinations", Numbers(), [.. Moved()]),
        new("Words, standing, sources", ImpactSentence.Words(impact), [.. impact.Words.Select(Word)]),
        new("Findings", ImpactSentence.Findings(impact.Findings), [.. impact.Findings.Introduced.Select(one => Finding(one, "introduced")), .. impact.Findings.Mended.Select(one => Finding(one, "mended"))]),
        new("Entries", ImpactSentence.Entries(impact.Entries), [.. Entries()]),
    }.Where(section => section.Summary.Length > 0);

    private ImpactItem Answer(AnswerChange change) => new(
        $"{change.Position.Title}, {ImpactSentence.Amount(change.Extent.Combinations, "combination")}",
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
        return $"{ImpactSentence.Grouped(unmatched.All)} {(unmatched.All.IsOne ? one : many)}: {ImpactSentence.Grouped(unmatched.ByRules)} {ruled}"
            + (other.IsZero ? "" : $", {ImpactSentence.Grouped(other)} with a chassis, donor or option that only one of the bases has there");
    }

    private static ImpactItem Exclusion(ExclusionChange exclusion) => new(
        $"{exclusion.Rule.Title}, {ImpactSentence.Amount(exclusion.Extent.Combinations, "combination")}",
        [
            new("rule", exclusion.Rule.Id, IsCode: true),
            new("because", exclusion.Rule.ExcludeText.Length > 0 ? exclusion.Rule.ExcludeText : exclusion.Rule.Because),
            .. Extent(exclusion.Extent),
        ]);

    private IEnumerable<ImpactItem> Guides() =>
        impact.Guides.Gained.Select(guide => Guide(guide, New, "new", ""))
            .Concat(impact.Guides.Lost.Select(guide => Guide(guide, Old, "gone", "")))
            .Concat(impact.Guides.Changed.Select(changed => Guide(changed.Guide, New, "", string.Join(", ", changed.Kinds))));

    private static ImpactItem Guide(GuideName guide, KnowledgeBase kb, string state, string kinds) => new(
        $"{kb.Donors[guide.Donor].Title} into {kb.Chassis[guide.Chassis].Title}{string.Concat(guide.Options.Select(option => $", {Option(kb, option)}"))}{(state.Length == 0 ? "" : $": {state}")}",
        kinds.Length == 0 ? [] : [new("changes", kinds)]);

    private static string Option(KnowledgeBase kb, KeyValuePair<string, string> option) => option.Value == Choice.None
        ? $"{InSentence.Lower(kb.Choices[option.Key].Title)} not asked"
        : $"{InSentence.Lower(kb.Choices[option.Key].Title)}: {InSentence.Lower(kb.Choices[option.Key].Option(option.Value)?.Title ?? option.Value)}";

    private ImpactItem Work(WorkChange change)
    {
        var text = change.Kind == "task" ? (New.Tasks.Find(change.About) ?? Old.Tasks.Find(change.About))?.Title ?? change.About : change.Text;
        var was = change.Was is { } before ? ImmutableArray.Create(new ImpactDetail("was", before), new ImpactDetail("now", text)) : [new("says", text)];
        return new ImpactItem(
            $"{char.ToUpperInvariant(change.Kind[0])}{change.Kind[1..]}{(change is { Kind: "caution", About.Length: > 0 } ? $" about {change.About}" : "")} {change.Change}, {ImpactSentence.Amount(change.Extent.Combinations, "combination")}",
            [.. was, .. Extent(change.Extent)]);
    }

    private string Defaults() => impact.Numbers.Defaults.IsEmpty ? "" : $"another combination is recommended in {ImpactSentence.Amount(impact.Numbers.Defaults.Length, "guide")}";

    private static ImpactItem Default(DefaultChange change) => new(
        change.Guide.Id,
        new ImpactDetail("was", Pairs(change.Old), IsCode: true),
        new ImpactDetail("now", Pairs(change.New), IsCode: true));

    private static string Pairs(IEnumerable<KeyValuePair<string, string>> pairs) => string.Join(' ', pairs.Select(pair => $"{pair.Key}={pair.Value}"));

    private string Numbers()
    {
        var numbers = impact.Numbers;
        var moved = numbers.Moved.IsEmpty ? "" : $"numbers move in {ImpactSentence.Amount(numbers.Moved.Select(one => one.Guide).Distinct().Count(), "guide")}";
        return numbers.Compared == numbers.Candidates ? moved
            : $"{(moved.Length == 0 ? "no number moves" : moved)} of the first {ImpactSentence.Grouped(numbers.Compared)} whose numbers were worked out; {ImpactSentence.Grouped(numbers.Candidates - numbers.Compared)} more were not";
    }

    /// <summary>Guides in which a number makes the same step are told together.</summary>
    private IEnumerable<ImpactItem> Moved() => impact.Numbers.Moved
        .GroupBy(change => (change.Name, change.Unit, change.Old, change.New))
        .Select(same => new ImpactItem(
            $"{Title(same.Key.Name)}: {Value(same.Key.Old)} → {Value(same.Key.New)}{(same.Key.Unit.Length == 0 ? "" : $" {same.Key.Unit}")}, {ImpactSentence.Amount(same.Count(), "guide")}",
            new ImpactDetail("as in", same.First().Guide.Id, IsCode: true)));

    private static string Title(string name) => name.Split('.') switch
    {
        ["money", var which] => $"Parts, {which}",
        ["hours", var which] => $"Hours, {which}",
        ["belt", var loop, _] => $"Belt {loop}, {ComputedValues.Find(name)!.Title}",
        _ => $"Wiring, {ComputedValues.Find(name)?.Title ?? name}",
    };

    private static string Value(decimal? value) => value is { } number ? number.ToString("#,0.##", CultureInfo.InvariantCulture) : "none";

    private ImpactItem Word(WordChange change)
    {
        var what = change.What == "standing" ? $"standing {(StandingOrder.Raised(change) ? "raised" : "lowered")}" : change.What;
        return new ImpactItem(
            $"{change.Position.Title}: {what}, {ImpactSentence.Amount(change.Extent.Combinations, "combination")}",
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
