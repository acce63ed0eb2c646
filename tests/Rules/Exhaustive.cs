using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Tests.Rules;

/// <summary>
/// What a knowledge base says, worked out one combination after the other from the words of the file format. It shares
/// nothing with the way over regions but the entities.
/// </summary>
internal sealed class Exhaustive
{
    private readonly KnowledgeBase _kb;
    private readonly ILookup<string, Rule> _overriders;
    private readonly ILookup<string, (Rule Rule, Answer Answer)> _at;

    public Exhaustive(KnowledgeBase kb)
    {
        _kb = kb;
        _overriders = kb.Rules.All.SelectMany(rule => rule.Overrides.Select(named => (named.Id, rule))).ToLookup(pair => pair.Id, pair => pair.rule, StringComparer.Ordinal);
        _at = kb.Rules.All.SelectMany(rule => rule.Answers.Select(answer => (rule, answer))).ToLookup(pair => pair.answer.Position, StringComparer.Ordinal);
        Domain = [.. Every().Where(InDomain)];
        Buildable = [.. Domain.Where(combination => !kb.Rules.All.Any(rule => Excludes(rule, combination)))];
    }

    public ImmutableArray<Case> Domain { get; }

    public ImmutableArray<Case> Buildable { get; }

    public bool Holds(Condition condition, Case at) => condition switch
    {
        AllOf all => all.Terms.All(term => Holds(term, at)),
        AnyOf any => any.Terms.Any(term => Holds(term, at)),
        NotOf not => !Holds(not.Term, at),
        ChoiceTest test => test.Options.Contains(at.Options[test.Choice]),
        AnswerTest test => Standing(test.Position, at).Any(one => Meets(test, one.Answer)),
        FactTest { Fact: "year" } test => Years(VariantOf(test.Subject, at)).All(year => Meets(test.Test, new FactValue(FactType.Number, "", year, default), at)),
        FactTest test => FactOf(test.Subject, test.Fact, at) is { } value && Meets(test.Test, value, at),
        _ => throw new InvalidOperationException(condition.GetType().Name),
    };

    /// <summary>The answers that stand at a position; empty where the position does not apply.</summary>
    public IReadOnlyList<(Rule Rule, Answer Answer)> Standing(string position, Case at)
    {
        if (!at.Standing.TryGetValue(position, out var standing))
        {
            standing = !Holds(_kb.Positions[position].Applies, at)
                ? []
                : [.. _at[position].Where(one => Holds(one.Rule.When, at) && !Overridden(one.Rule, at, over => over.AnswerAt(position) is not null))];
            at.Standing.Add(position, standing);
        }

        return standing;
    }

    public bool Excludes(Rule rule, Case at) =>
        (rule.Excludes || (rule.Requires is { } required && !Holds(required, at))) && Holds(rule.When, at) && !Overridden(rule, at, _ => true);

    public bool Stands(Rule rule, StatedValue value, Case at) =>
        Holds(rule.When, at) && !Overridden(rule, at, over => over.Values.Any(other => other.Name == value.Name));

    /// <summary>Whether the tasks and cautions of a rule are to be read in a combination.</summary>
    public bool Speaks(Rule rule, Case at) =>
        !rule.Answers.IsEmpty ? rule.Answers.Any(answer => Standing(answer.Position, at).Any(one => one.Rule == rule))
        : !rule.Values.IsEmpty ? rule.Values.Any(value => Stands(rule, value, at))
        : Holds(rule.When, at) && !Overridden(rule, at, _ => true);

    public FactHolder? Bound(string choice, Case at) => _kb.Choices[choice].Option(at.Options[choice])?.Binds switch
    {
        null => null,
        { FactName: { } name } => Split(name) is var (subject, fact) && VariantOf(subject, at).Fact(fact) is { } reference
            ? Named(_kb.Vocabulary.Fact(subject, fact)!.To!, reference.Text)
            : null,
        { Kind: { } kind, Entity: { } id } => Named(kind, id),
        _ => throw new InvalidOperationException("a binding of nothing"),
    };

    // Who counts is asked first: a rule that says nothing here may well ask for the very answer that is being worked out.
    private bool Overridden(Rule rule, Case at, Func<Rule, bool> counts) =>
        _overriders[rule.Id].Any(over => counts(over) && Holds(over.When, at));

    /// <summary>Every way of taking the options, in one order, those that are no combinations included.</summary>
    public IEnumerable<Case> Every()
    {
        IEnumerable<ImmutableDictionary<string, string>> options = [ImmutableDictionary<string, string>.Empty];
        foreach (var choice in _kb.Choices.All)
        {
            options = options.SelectMany(so => choice.Options.Select(option => option.Id).Append(Choice.None).Select(option => so.Add(choice.Id, option))).ToList();
        }

        return from chassis in _kb.Chassis.All from donor in _kb.Donors.All from chosen in options select new Case(chassis, donor, chosen);
    }

    private bool InDomain(Case at) => _kb.Choices.All.All(choice => Holds(choice.Applies, at) == (at.Options[choice.Id] != Choice.None));

    private FactValue? FactOf(string subject, string fact, Case at) => (subject, fact) switch
    {
        ("chassis" or "donor", "family") => new FactValue(FactType.OneOf, VariantOf(subject, at).Family, 0, default),
        ("chassis" or "donor", "variant") => new FactValue(FactType.OneOf, VariantOf(subject, at).Id, 0, default),
        ("chassis" or "donor", _) => VariantOf(subject, at).Fact(fact),
        _ => Bound(subject, at)?.Fact(fact),
    };

    private bool Meets(ValueTest test, FactValue value, Case at) => test switch
    {
        OneOfTest oneOf => oneOf.Values.Any(wanted => Equal(wanted, value)),
        EqualsFactTest equals => FactOf(equals.Fact.Subject, equals.Fact.Fact, at) is { } other && Equal(value, other),
        RangeTest range => Within(range.Lower, value.Number, at, least: true) && Within(range.Upper, value.Number, at, least: false),
        _ => throw new InvalidOperationException(test.GetType().Name),
    };

    private bool Within(Bound? bound, decimal number, Case at, bool least)
    {
        if (bound is null)
        {
            return true;
        }

        var limit = bound.Fact is { } fact ? FactOf(fact.Subject, fact.Fact, at)?.Number : bound.Value!.Value.Number;
        return limit is { } known && (number == known ? bound.Inclusive : number > known == least);
    }

    private static bool Equal(FactValue one, FactValue other) =>
        one.Type == FactType.Number ? one.Number == other.Number : one.Text == other.Text;

    private static bool Meets(AnswerTest test, Answer answer) =>
        (test.Sources.IsEmpty || test.Sources.Contains(answer.Source))
        && (test.Treatments.IsEmpty || test.Treatments.Contains(answer.Treatment))
        && (test.Parts.IsEmpty || test.Parts.Any(part => part == answer.Part));

    private static IEnumerable<int> Years(Variant variant) => Enumerable.Range(variant.Years.From, variant.Years.To - variant.Years.From + 1);

    private static Variant VariantOf(string subject, Case at) => subject == "chassis" ? at.Chassis : at.Donor;

    private static (string Subject, string Fact) Split(string name) => (name.Split('.')[0], name.Split('.')[1]);

    private FactHolder? Named(string kind, string id) => kind switch
    {
        "gearbox" => _kb.Gearboxes.Find(id),
        "ecu" => _kb.Ecus.Find(id),
        _ => _kb.Parts.Find(id),
    };

    /// <summary>One combination, with the answers worked out so far.</summary>
    internal sealed class Case(ChassisVariant chassis, DonorVariant donor, ImmutableDictionary<string, string> options)
    {
        private int[]? _values;

        public ChassisVariant Chassis => chassis;

        public DonorVariant Donor => donor;

        public ImmutableDictionary<string, string> Options => options;

        public Dictionary<string, IReadOnlyList<(Rule Rule, Answer Answer)>> Standing { get; } = new(StringComparer.Ordinal);

        /// <summary>As the space numbers it.</summary>
        public int[] In(SpaceModel space) => _values ??=
        [
            .. space.Store.Variables.Select((variable, level) =>
                variable.Values.IndexOf(level == space.Chassis ? Chassis.Id : level == space.Donor ? Donor.Id : Options[space.ChoiceAt[level]!.Id])),
        ];
    }
}
