using System.Collections.Immutable;
using System.Globalization;
using Google.OrTools.Sat;
using Swapwright.Knowledge;

namespace Swapwright.Benchmarks.Solving;

/// <summary>
/// A knowledge base as a model for a constraint solver: one truth value for every variant and option, made from the typed
/// entities and from nothing that is worked out over regions. Each question is a solve of its own.
/// </summary>
internal sealed class SolverSpace
{
    private readonly CpModel _model = new();
    private readonly Dictionary<(string Choice, string Option), ILiteral> _options = [];
    private readonly Dictionary<string, ImmutableArray<(Rule Rule, Answer Answer)>> _at;
    private readonly ILookup<string, Rule> _overriders;
    private readonly KnowledgeBase _kb;
    private readonly SolverFacts _facts;
    private readonly BoolVar _buildable;
    private readonly int _variables;
    private readonly int _constraints;
    private Dictionary<Condition, ILiteral> _conditions = new(ReferenceEqualityComparer.Instance);

    public SolverSpace(KnowledgeBase kb)
    {
        _kb = kb;
        var chassis = OneOf(kb.Chassis.Ids);
        var donors = OneOf(kb.Donors.Ids);
        foreach (var choice in kb.Choices.All)
        {
            foreach (var (option, literal) in OneOf(choice.Options.Select(option => option.Id).Append(Choice.None)))
            {
                _options[(choice.Id, option)] = literal;
            }
        }

        _facts = new SolverFacts(kb, chassis, donors, _options, All, Any);
        _overriders = kb.Rules.All.SelectMany(rule => rule.Overrides.Select(named => (named.Id, rule))).ToLookup(pair => pair.Id, pair => pair.rule, StringComparer.Ordinal);
        _at = kb.Rules.All.SelectMany(rule => rule.Answers.Select(answer => (rule, answer))).GroupBy(pair => pair.answer.Position, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.ToImmutableArray(), StringComparer.Ordinal);
        foreach (var choice in kb.Choices.All)
        {
            // The choice is `none` exactly where it does not apply.
            var (applies, none) = (Of(choice.Applies), _options[(choice.Id, Choice.None)]);
            _model.AddBoolOr([applies, none]);
            _model.AddBoolOr([applies.Not(), none.Not()]);
        }

        _buildable = _model.NewBoolVar("buildable");
        foreach (var rule in kb.Rules.All.Where(rule => rule.Excludes || rule.Requires is not null))
        {
            var met = rule.Excludes ? Of(rule.When) : All([Of(rule.When), Of(rule.Requires!).Not()]);
            _model.AddBoolOr([_buildable.Not(), met.Not(), .. _overriders[rule.Id].Select(over => Of(over.When))]);
        }

        (_variables, _constraints) = (_model.Model.Variables.Count, _model.Model.Constraints.Count);
    }

    /// <summary>The answers of all rules at a position.</summary>
    public ImmutableArray<(Rule Rule, Answer Answer)> At(string position) => _at.GetValueOrDefault(position, []);

    /// <summary>Whether both answers stand in some buildable combination.</summary>
    public bool Meet((Rule Rule, Answer Answer) one, (Rule Rule, Answer Answer) other) => Ask(() => [_buildable, Stands(one), Stands(other)]);

    /// <summary>Whether in some buildable combination the position applies and no answer stands.</summary>
    public bool IsOpen(Position position) => Ask(() => [_buildable, Of(position.Applies), .. At(position.Id).Select(one => Stands(one).Not())]);

    /// <summary>Whether some buildable combination meets a rule; for one that says what cannot be built, some combination.</summary>
    public bool IsMet(Rule rule) => Ask(() => rule.Excludes || rule.Requires is not null ? [Of(rule.When)] : [_buildable, Of(rule.When)]);

    /// <summary>Whether a chassis takes a donor in some buildable combination.</summary>
    public bool Takes(ChassisVariant chassis, DonorVariant donor) => Ask(() => [_buildable, _facts.Is(chassis), _facts.Is(donor)]);

    private bool Ask(Func<IEnumerable<ILiteral>> together)
    {
        var lasting = _conditions;
        _conditions = new Dictionary<Condition, ILiteral>(lasting, ReferenceEqualityComparer.Instance);
        foreach (var literal in together())
        {
            _model.AddBoolOr([literal]);
        }

        var solver = new CpSolver { StringParameters = "num_workers:1" };
        var status = solver.Solve(_model);
        _conditions = lasting;
        Cut(_model.Model.Constraints, _constraints);
        Cut(_model.Model.Variables, _variables);
        return status switch
        {
            CpSolverStatus.Feasible or CpSolverStatus.Optimal => true,
            CpSolverStatus.Infeasible => false,
            _ => throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"the solver gave up: {status}")),
        };
    }

    private static void Cut<T>(Google.Protobuf.Collections.RepeatedField<T> list, int length)
    {
        while (list.Count > length)
        {
            list.RemoveAt(list.Count - 1);
        }
    }

    private ILiteral Stands((Rule Rule, Answer Answer) one)
    {
        var silencers = _overriders[one.Rule.Id].Where(over => over.AnswerAt(one.Answer.Position) is not null);
        return All([Of(one.Rule.When), Of(_kb.Positions[one.Answer.Position].Applies), .. silencers.Select(over => Of(over.When).Not())]);
    }

    private ILiteral Of(Condition condition)
    {
        if (!_conditions.TryGetValue(condition, out var literal))
        {
            literal = condition switch
            {
                AllOf all => All(all.Terms.Select(Of)),
                AnyOf any => Any(any.Terms.Select(Of)),
                NotOf not => Of(not.Term).Not(),
                ChoiceTest test => Any(test.Options.Distinct(StringComparer.Ordinal).Select(option => _options[(test.Choice, option)])),
                AnswerTest test => Any(At(test.Position).Where(one => Matches(test, one.Answer)).Select(Stands)),
                FactTest test => _facts.Of(test),
                _ => throw new InvalidOperationException(condition.GetType().Name),
            };
            _conditions.Add(condition, literal);
        }

        return literal;
    }

    private static bool Matches(AnswerTest test, Answer answer) =>
        (test.Sources.IsEmpty || test.Sources.Contains(answer.Source))
        && (test.Treatments.IsEmpty || test.Treatments.Contains(answer.Treatment))
        && (test.Parts.IsEmpty || (answer.Part is not null && test.Parts.Contains(answer.Part)));

    private Dictionary<string, ILiteral> OneOf(IEnumerable<string> names)
    {
        var literals = names.ToDictionary(name => name, name => (ILiteral)_model.NewBoolVar(name), StringComparer.Ordinal);
        _model.AddExactlyOne(literals.Values);
        return literals;
    }

    /// <summary>True exactly where all are.</summary>
    private ILiteral All(IEnumerable<ILiteral> terms)
    {
        List<ILiteral> list = [.. terms];
        if (list.Count == 1)
        {
            return list[0];
        }

        var all = _model.NewBoolVar("all");
        foreach (var term in list)
        {
            _model.AddImplication(all, term);
        }

        _model.AddBoolOr([all, .. list.Select(term => term.Not())]);
        return all;
    }

    /// <summary>True exactly where one is.</summary>
    private ILiteral Any(IEnumerable<ILiteral> terms) => All(terms.Select(term => term.Not())).Not();
}
