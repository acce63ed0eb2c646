using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Reports;
using Swapwright.Rules;
using Swapwright.Sheets;
using Swapwright.Space;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>
/// What a base tells its readers, worked out without any check: for each thing that can be said the part of the space in
/// which it is said, and the whole sheet of every guide's recommended combination.
/// </summary>
internal sealed class Told
{
    private readonly SortedDictionary<string, ulong> _said = new(StringComparer.Ordinal);
    private readonly Resolution _resolution;
    private readonly Lazy<SheetBuilder> _builder;
    private readonly Lazy<ImmutableSortedDictionary<string, string>> _sheets;
    private readonly Lazy<ImmutableSortedSet<string>> _wrong;

    private Told(KnowledgeBase kb, Resolution resolution)
    {
        var holes = new List<string>();
        _resolution = resolution;
        _builder = new(() => new SheetBuilder(resolution));
        Say(kb, resolution, holes);
        var sheets = new Lazy<ImmutableArray<(string Id, Sheet Sheet)>>(Recommended);
        _sheets = new(() => sheets.Value.ToImmutableSortedDictionary(one => one.Id, one => Written(one.Sheet), StringComparer.Ordinal));
        _wrong = new(() => holes.Concat(sheets.Value.SelectMany(one => Wrong(one.Sheet))).ToImmutableSortedSet(StringComparer.Ordinal));
    }

    /// <summary>The base has to be one whose space could be examined.</summary>
    public static Told By(Proof proof) => new(proof.Base, proof.Resolution!);

    /// <summary>Whether any reader of the other base is told anything else.</summary>
    public bool Differs(Told other) =>
        !_said.SequenceEqual(other._said) || !_sheets.Value.SequenceEqual(other._sheets.Value);

    /// <summary>What is wrong here and was not there: no answer, two answers, no build, no belt, a stated number that is not borne out.</summary>
    public IEnumerable<string> WrongBeside(Told other) => _wrong.Value.Except(other._wrong.Value);

    /// <summary>The sheet of one combination; empty where the base has no such combination.</summary>
    public string At(Witness witness)
    {
        var store = _resolution.Store;
        var names = witness.Choices.Append(new("chassis", witness.Chassis)).Append(new("donor", witness.Donor)).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        int[] values = [.. store.Variables.Select(variable => names.TryGetValue(variable.Name, out var value) ? variable.Values.IndexOf(value) : -1)];
        return values.Contains(-1) ? "" : Written(_builder.Value.Build(values));
    }

    private string Written(Sheet sheet) =>
        new SheetJson(sheet, _resolution).Write() + string.Join('\n', sheet.Values.Select(value => FormattableString.Invariant($"{value.Stated.Rule.Id} {value.Stated.Value.Name} {value.Agrees}")));

    private void Say(KnowledgeBase kb, Resolution resolution, List<string> holes)
    {
        var store = resolution.Store;
        var print = new RegionPrint(store);
        var buildable = resolution.Buildable;
        void Add(string what, Region region)
        {
            var here = store.And(region, buildable);
            if (!here.IsNone)
            {
                _said.Add(what, print.Of(here));
            }
        }

        Add("buildable", buildable);
        foreach (var position in kb.Positions.All)
        {
            var answers = resolution.At(position.Id).GroupBy(one => Content(one.Answer), StringComparer.Ordinal)
                .Select(group => (Content: group.Key, group.First().Answer, Region: store.OrAll(group.Select(one => store.And(one.Region, buildable))))).ToList();
            answers.ForEach(answer => Add($"at {position.Id} {answer.Content}", answer.Region));
            var here = store.And(resolution.Applies(position.Id), buildable);
            var ways = answers.GroupBy(one => Decision(one.Answer), StringComparer.Ordinal).Select(group => store.OrAll(group.Select(one => one.Region))).ToList();
            var answered = store.Count(store.OrAll(ways));
            holes.AddRange(answered < store.Count(here) ? [$"no answer at {position.Id}"] : []);
            holes.AddRange(ways.Aggregate(answered, (left, way) => left - store.Count(way)).Sign < 0 ? [$"two answers at {position.Id}"] : []);
        }

        foreach (var group in kb.Rules.All.SelectMany(rule => Words(rule).Select(words => (words, rule))).GroupBy(pair => pair.words, StringComparer.Ordinal))
        {
            Add(group.Key, store.OrAll(group.Select(pair => resolution.Speaks(pair.rule))));
        }

        foreach (var task in kb.Tasks.All.Where(task => task.When is not null))
        {
            Add($"always {task.Id}", resolution.RegionOf(task.When!));
        }

        foreach (var choice in kb.Choices.All)
        {
            var advised = choice.Recommendations.GroupBy(one => one.Option, StringComparer.Ordinal).Select(group => store.And(store.OrAll(group.Select(one => resolution.RegionOf(one.When))), store.And(buildable, resolution.RegionOf(choice.Applies)))).ToList();
            holes.AddRange(advised.Aggregate(store.Count(store.OrAll(advised)), (left, one) => left - store.Count(one)).Sign < 0 ? [$"two options of {choice.Id} recommended at once"] : []);
        }

        var followed = store.AndAll(kb.Choices.All.Select(choice => Followed(choice, resolution)).Append(buildable));
        foreach (var pair in store.Variables[resolution.Space.Chassis].Values.SelectMany(chassis => store.Variables[resolution.Space.Donor].Values.Select(donor => (chassis, donor))))
        {
            var region = store.And(resolution.Space.WhereChassis(one => one.Id == pair.chassis), resolution.Space.WhereDonor(one => one.Id == pair.donor));
            holes.AddRange(store.Intersects(region, buildable) ? [] : [$"no build of {pair.chassis} and {pair.donor}"]);
            holes.AddRange(store.Intersects(region, followed) ? [] : [$"what is recommended for {pair.chassis} and {pair.donor} cannot be built"]);
        }
    }

    /// <summary>Where a choice takes the first option that is recommended there; without one, its first.</summary>
    private static Region Followed(Choice choice, Resolution resolution)
    {
        var store = resolution.Store;
        var (taken, left) = (store.Minus(resolution.Space.WhereChoice(choice.Id, [Choice.None]), resolution.RegionOf(choice.Applies)), resolution.RegionOf(choice.Applies));
        foreach (var (option, where) in choice.Recommendations.Select(one => (one.Option, resolution.RegionOf(one.When))).Append((choice.Options[0].Id, Region.All)))
        {
            taken = store.Or(taken, store.And(store.And(left, where), resolution.Space.WhereChoice(choice.Id, [option])));
            left = store.Minus(left, where);
        }

        return taken;
    }

    private ImmutableArray<(string Id, Sheet Sheet)> Recommended()
    {
        var headlines = new Headlines(_resolution);
        return [.. headlines.All().Select(headline => (headline.Id, _builder.Value.Build(headlines.Default(headline.Slice))))];
    }

    private static IEnumerable<string> Wrong(Sheet sheet) =>
        sheet.Belts.Where(belt => belt.Result.Recommended is null || belt.Result.Pulleys.Any(pulley => !pulley.WrapWithinLimit || !pulley.PlaneWithinLimit))
            .Select(belt => $"belt {belt.Loop.Id} of {sheet.Donor.Id} in {sheet.Chassis.Id}")
            .Concat(sheet.Values.Where(value => !value.Agrees).Select(value => $"{value.Stated.Value.Name} of {value.Stated.Rule.Id}"));

    private static IEnumerable<string> Words(Rule rule) =>
        rule.Tasks.Select(task => $"task {task}")
            .Concat(rule.Cautions.Select(caution => $"caution {caution.About} {caution.Text}"))
            .Concat(rule.Mistakes.Select(text => $"mistake {text}"))
            .Concat(rule.Advises.Select(advice => $"advice {advice.Text} {advice.Option} {advice.Donor}"))
            .Distinct();

    private static string Decision(Answer answer) => string.Join('|', [answer.Source, answer.Treatment, answer.Part ?? "", string.Join(',', answer.Also.Order(StringComparer.Ordinal))]);

    private static string Content(Answer answer) =>
        string.Join('|', [Decision(answer), string.Join(';', answer.Steps), answer.Notes, string.Join(';', answer.Mistakes), answer.Article ?? ""]);
}
