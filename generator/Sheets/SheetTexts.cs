using System.Collections.Immutable;
using Swapwright.Knowledge;

namespace Swapwright.Sheets;

/// <summary>Something that a rule, a task or the whole base warns of.</summary>
public sealed record SheetCaution(Caution Caution, Rule? Rule);

public sealed record SheetMistake(string Text, Rule? Rule, Position? Position);

/// <summary>A caution with the places of a combination that it belongs to; none for one of the whole job.</summary>
public sealed record PlacedCaution(Caution Caution, ImmutableArray<Position> Positions, ImmutableArray<WorkTask> Tasks);

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

    /// <summary>The same cautions, each with where it belongs: the lines that its rules answer and the tasks that say it.</summary>
    public static ImmutableArray<PlacedCaution> Placed(Sheet sheet, KnowledgeBase kb)
    {
        var lines = sheet.Answers.Where(answer => answer.Rule is not null).ToLookup(answer => answer.Rule!.Id, answer => answer.Position, StringComparer.Ordinal);
        var ofRules = sheet.Speaking.SelectMany(rule => lines[rule.Id].Select(line => (Position?)line).DefaultIfEmpty().SelectMany(line => rule.Cautions.Select(caution => (Caution: caution, Line: line, Task: (WorkTask?)null))));
        var ofTasks = sheet.Tasks.SelectMany(task => task.Cautions.Select(caution => (Caution: caution, Line: (Position?)null, Task: (WorkTask?)task)));
        return
        [
            .. kb.Settings.Cautions.Select(caution => (Caution: caution, Line: (Position?)null, Task: (WorkTask?)null)).Concat(ofRules).Concat(ofTasks)
                .GroupBy(one => (one.Caution.About, one.Caution.Text))
                .Select(same => same.Any(one => one is { Line: null, Task: null })
                    ? new PlacedCaution(same.First().Caution, [], [])
                    : new PlacedCaution(same.First().Caution, [.. same.Select(one => one.Line).OfType<Position>().DistinctBy(position => position.Id)], [.. same.Select(one => one.Task).OfType<WorkTask>().DistinctBy(task => task.Id)])),
        ];
    }

    public static ImmutableArray<SheetMistake> Mistakes(Sheet sheet)
    {
        var (told, said) = (ImmutableArray.CreateBuilder<SheetMistake>(), new HashSet<string>(StringComparer.Ordinal));
        void Tell(ImmutableArray<string> texts, Rule? rule, Position? position)
        {
            foreach (var text in texts)
            {
                if (said.Add(text))
                {
                    told.Add(new SheetMistake(text, rule, position));
                }
            }
        }

        foreach (var answer in sheet.Answers)
        {
            Tell(answer.Answer?.Mistakes ?? [], answer.Rule, answer.Position);
        }

        foreach (var rule in sheet.Speaking)
        {
            Tell(rule.Mistakes, rule, null);
        }

        foreach (var task in sheet.Tasks)
        {
            Tell(task.Mistakes, null, null);
        }

        return told.ToImmutable();
    }
}
