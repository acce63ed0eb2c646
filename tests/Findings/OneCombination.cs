using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Tests.Findings;

/// <summary>
/// One combination, judged by walking through the knowledge as a reader would. It shares nothing with the regions of
/// the generator, so that the two can be held against each other.
/// </summary>
internal sealed class OneCombination(KnowledgeBase kb, ChassisVariant chassis, DonorVariant donor, IReadOnlyDictionary<string, string> options)
{
    // Who overrides whom is the same for every combination of a base, and the answers of one are asked for by every rule.
    private static readonly ConditionalWeakTable<KnowledgeBase, ILookup<string, Rule>> s_overriders = [];

    private readonly ILookup<string, Rule> _overriders = s_overriders.GetValue(kb, static one => one.Rules.All
        .SelectMany(rule => rule.Overrides, (rule, named) => (named.Id, Rule: rule)).ToLookup(pair => pair.Id, pair => pair.Rule, StringComparer.Ordinal));

    private readonly Dictionary<string, List<Answer>> _answers = new(StringComparer.Ordinal);
    private bool? _sensible;

    public ChassisVariant Chassis => chassis;

    public DonorVariant Donor => donor;

    public IReadOnlyDictionary<string, string> Options => options;

    /// <summary>Takes for every choice what is recommended first, or its first option.</summary>
    public bool FollowsRecommendations => IsSensible && kb.Choices.All.All(choice => options[choice.Id] == Choice.None
        || options[choice.Id] == (choice.Recommendations.FirstOrDefault(one => Holds(one.When))?.Option ?? choice.Options[0].Id));

    public static OneCombination Of(KnowledgeBase kb, Witness witness) =>
        new(kb, kb.Chassis[witness.Chassis], kb.Donors[witness.Donor], witness.Choices.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal));

    /// <summary>
    /// Every chassis with every donor and every way of taking the options, those that make no sense included; but no way leaves out a choice
    /// that has no condition. Of those there would be 3^n where 2^n can make sense.
    /// </summary>
    public static IEnumerable<OneCombination> Every(KnowledgeBase kb)
    {
        IEnumerable<ImmutableDictionary<string, string>> ways = [ImmutableDictionary<string, string>.Empty];
        foreach (var choice in kb.Choices.All)
        {
            List<string> values = [.. choice.Options.Select(option => option.Id), .. choice.Applies is AllOf { Terms.IsEmpty: true } ? (string[])[] : [Choice.None]];
            ways = [.. ways.SelectMany(way => values.Select(value => way.Add(choice.Id, value)))];
        }

        return from chassis in kb.Chassis.All from donor in kb.Donors.All from way in ways select new OneCombination(kb, chassis, donor, way);
    }

    /// <summary>Every choice takes an option where it applies, and none elsewhere.</summary>
    public bool IsSensible => _sensible ??= kb.Choices.All.All(choice => Holds(choice.Applies) == (options[choice.Id] != Choice.None));

    public bool IsBuildable => IsSensible && !kb.Rules.All.Any(IsExcludedBy);

    public bool IsExcludedBy(Rule rule) =>
        Holds(rule.When)
        && (rule.Excludes || (rule.Requires is { } required && !Holds(required)))
        && !Overriders(rule).Any(over => Holds(over.When));

    public bool Applies(Position position) => Holds(position.Applies);

    public IReadOnlyList<Answer> AnswersAt(string position)
    {
        if (!_answers.TryGetValue(position, out var known))
        {
            _answers[position] = known = [.. WalkedAt(position)];
        }

        return known;
    }

    private IEnumerable<Answer> WalkedAt(string position) =>
        from rule in kb.Rules.All
        from answer in rule.Answers
        where answer.Position == position
        where Holds(kb.Positions[position].Applies) && Holds(rule.When)
        where !Overriders(rule).Any(over => Holds(over.When) && over.Answers.Any(other => other.Position == position))
        select answer;

    public IEnumerable<StatedValue> ValuesOf(string name) =>
        from rule in kb.Rules.All
        where Holds(rule.When)
        from value in rule.Values
        where value.Name == name
        where !Overriders(rule).Any(over => Holds(over.When) && over.Values.Any(other => other.Name == name))
        select value;

    public bool Holds(Condition condition) => condition switch
    {
        AllOf all => all.Terms.All(Holds),
        AnyOf any => any.Terms.Any(Holds),
        NotOf not => !Holds(not.Term),
        ChoiceTest choice => choice.Options.Contains(options[choice.Choice]),
        AnswerTest answer => AnswersAt(answer.Position).Any(given =>
            (answer.Sources.IsEmpty || answer.Sources.Contains(given.Source))
            && (answer.Treatments.IsEmpty || answer.Treatments.Contains(given.Treatment))
            && (answer.Parts.IsEmpty || (given.Part is not null && answer.Parts.Contains(given.Part)))),
        FactTest { Subject: "chassis", Fact: "year" } fact => Years(fact.Test, chassis.Years),
        FactTest { Subject: "donor", Fact: "year" } fact => Years(fact.Test, donor.Years),
        FactTest fact => FactOf(fact.Subject, fact.Fact) is { } value && Meets(value, fact.Test),
        _ => throw new ArgumentOutOfRangeException(nameof(condition)),
    };

    private IEnumerable<Rule> Overriders(Rule rule) => _overriders[rule.Id];

    private static bool Years(ValueTest test, YearSpan span) => Enumerable.Range(span.From, span.To - span.From + 1).All(year => test switch
    {
        OneOfTest list => list.Values.Any(value => value.Text == year.ToString(CultureInfo.InvariantCulture)),
        RangeTest range => AboveBound(year, range.Lower, range.Lower?.Value?.Number) && BelowBound(year, range.Upper, range.Upper?.Value?.Number),
        _ => throw new ArgumentOutOfRangeException(nameof(test)),
    });

    private bool Meets(FactValue value, ValueTest test) => test switch
    {
        OneOfTest list => list.Values.Any(other => other.Text == value.Text),
        EqualsFactTest same => FactOf(same.Fact.Subject, same.Fact.Fact) is { } other && other.Text == value.Text,
        RangeTest range => AboveBound(value.Number, range.Lower, Limit(range.Lower)) && BelowBound(value.Number, range.Upper, Limit(range.Upper)),
        _ => throw new ArgumentOutOfRangeException(nameof(test)),
    };

    private decimal? Limit(Bound? bound) => bound?.Fact is { } fact ? FactOf(fact.Subject, fact.Fact)?.Number : bound?.Value?.Number;

    // A bound that names a missing fact is met by nothing.
    private static bool AboveBound(decimal number, Bound? bound, decimal? limit) => bound is null || number > limit || (bound.Inclusive && number == limit);

    private static bool BelowBound(decimal number, Bound? bound, decimal? limit) => bound is null || number < limit || (bound.Inclusive && number == limit);

    private FactValue? FactOf(string subject, string fact) => (subject, fact) switch
    {
        ("chassis", "family") => Text(chassis.Family),
        ("chassis", "variant") => Text(chassis.Id),
        ("donor", "family") => Text(donor.Family),
        ("donor", "variant") => Text(donor.Id),
        ("chassis", _) => chassis.Fact(fact),
        ("donor", _) => donor.Fact(fact),
        _ => Bound(subject)?.Fact(fact),
    };

    private static FactValue Text(string text) => new(FactType.OneOf, text, 0, default);

    private FactHolder? Bound(string choice)
    {
        var binding = kb.Choices[choice].Options.FirstOrDefault(option => option.Id == options[choice])?.Binds;
        if (binding?.FactName is not { } name)
        {
            return binding is null ? null : kb.FactHolder(binding.Kind!, binding.Entity!);
        }

        var (subject, fact) = name.Split('.') is [var first, var second] ? (first, second) : throw new ArgumentException(name, nameof(choice));
        return FactOf(subject, fact) is { } entity ? kb.FactHolder(kb.Vocabulary.Fact(subject, fact)!.To!, entity.Text) : null;
    }
}
