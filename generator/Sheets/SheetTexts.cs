using System.Collections.Immutable;
using System.Runtime.InteropServices;
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

    /// <summary>All that <see cref="Cautions"/> goes by of a sheet of one base.</summary>
    internal static object?[] CautionsFrom(Sheet sheet) => [ImmutableCollectionsMarshal.AsArray(sheet.Tasks), .. sheet.Speaking.Where(rule => !rule.Cautions.IsEmpty)];

    /// <summary>The same cautions, each with where it belongs: the lines that its rules answer and the tasks that say it.</summary>
    public static ImmutableArray<PlacedCaution> Placed(Sheet sheet, KnowledgeBase kb)
    {
        var lines = sheet.Answers.Where(answer => answer.Rule is not null).ToLookup(answer => answer.Rule!.Id, answer => answer.Position, StringComparer.Ordinal);
        var gathered = new OrderedDictionary<(string About, string Text), Gathered>();
        void Gather(ImmutableArray<Caution> cautions, Position? line, WorkTask? task)
        {
            foreach (var caution in cautions)
            {
                if (!gathered.TryGetValue((caution.About, caution.Text), out var one))
                {
                    gathered.Add((caution.About, caution.Text), one = new Gathered(caution));
                }

                one.Add(line, task);
            }
        }

        Gather(kb.Settings.Cautions, null, null);
        foreach (var rule in sheet.Speaking.Where(rule => !rule.Cautions.IsEmpty))
        {
            foreach (var line in lines[rule.Id].DefaultIfEmpty())
            {
                Gather(rule.Cautions, line, null);
            }
        }

        foreach (var task in sheet.Tasks)
        {
            Gather(task.Cautions, null, task);
        }

        return [.. gathered.Values.Select(one => one.Placed())];
    }

    /// <summary>All that <see cref="Placed"/> goes by of a sheet of one base: the tasks, and the rules that warn of something, each with the lines that it answers.</summary>
    internal static object?[] PlacedFrom(Sheet sheet) =>
    [
        ImmutableCollectionsMarshal.AsArray(sheet.Tasks),
        .. sheet.Speaking.Where(rule => !rule.Cautions.IsEmpty)
            .SelectMany(rule => sheet.Answers.Where(answer => ReferenceEquals(answer.Rule, rule)).Select(answer => (object)answer.Position).Prepend(rule)),
    ];

    /// <summary>A caution while its places are gathered.</summary>
    private sealed class Gathered(Caution caution)
    {
        private readonly List<Position> _lines = [];
        private readonly List<WorkTask> _tasks = [];
        private bool _isWhole;

        /// <summary>A place that it belongs to; neither for the whole job.</summary>
        public void Add(Position? line, WorkTask? task)
        {
            _isWhole |= line is null && task is null;
            if (line is not null && _lines.TrueForAll(other => other.Id != line.Id))
            {
                _lines.Add(line);
            }

            if (task is not null && _tasks.TrueForAll(other => other.Id != task.Id))
            {
                _tasks.Add(task);
            }
        }

        public PlacedCaution Placed() => _isWhole ? new PlacedCaution(caution, [], []) : new PlacedCaution(caution, [.. _lines], [.. _tasks]);
    }

    /// <summary>All that <see cref="Mistakes"/> goes by of a sheet of one base.</summary>
    internal static object?[] MistakesFrom(Sheet sheet) =>
    [
        ImmutableCollectionsMarshal.AsArray(sheet.Tasks),
        .. sheet.Answers.Select(answer => answer.Answer).Where(answer => answer is { Mistakes.IsEmpty: false }),
        .. sheet.Speaking.Where(rule => !rule.Mistakes.IsEmpty),
    ];

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
