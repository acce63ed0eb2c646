using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>Something that a rule, a task or the whole base warns of.</summary>
public sealed record SheetCaution(Caution Caution, Rule? Rule);

public sealed record SheetMistake(string Text, Rule? Rule, Position? Position);

/// <summary>Cautions and mistakes of a combination, each said once.</summary>
public static class SheetTexts
{
    /// <summary>Those of the base, then of the rules that speak, then of the tasks.</summary>
    public static ImmutableArray<SheetCaution> Cautions(Sheet sheet, KnowledgeBase kb) =>
    [
        .. kb.Settings.Cautions.Select(caution => new SheetCaution(caution, null))
            .Concat(sheet.Speaking.SelectMany(rule => rule.Cautions.Select(caution => new SheetCaution(caution, rule))))
            .Concat(sheet.Tasks.SelectMany(task => task.Cautions.Select(caution => new SheetCaution(caution, null))))
            .DistinctBy(caution => (caution.Caution.About, caution.Caution.Text)),
    ];

    public static ImmutableArray<SheetMistake> Mistakes(Sheet sheet) =>
    [
        .. sheet.Answers.Where(answer => answer.Answer is not null).SelectMany(answer => answer.Answer!.Mistakes.Select(text => new SheetMistake(text, answer.Rule, answer.Position)))
            .Concat(sheet.Speaking.SelectMany(rule => rule.Mistakes.Select(text => new SheetMistake(text, rule, null))))
            .Concat(sheet.Tasks.SelectMany(task => task.Mistakes.Select(text => new SheetMistake(text, null, null))))
            .DistinctBy(mistake => mistake.Text),
    ];
}
