using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>An answer of a rule with the region in which it stands: where the rule applies and no override silences it.</summary>
public sealed class StandingAnswer(Rule rule, Answer answer, Func<Region> region)
{
    private Region? _region;

    public Rule Rule => rule;

    public Answer Answer => answer;

    /// <summary>Worked out when first asked: most answers of a large base are never asked for theirs.</summary>
    public Region Region => _region ??= region();
}

/// <summary>A stated value with the region in which it stands.</summary>
public sealed class StandingValue(Rule rule, StatedValue value, Func<Region> region)
{
    private Region? _region;

    public Rule Rule => rule;

    public StatedValue Value => value;

    /// <summary>Worked out when first asked.</summary>
    public Region Region => _region ??= region();
}

/// <summary>The part of the space that a rule makes unbuildable.</summary>
public sealed record Exclusion(Rule Rule, Region Region);

/// <summary>What the rules say over the whole space.</summary>
public sealed class Resolution
{
    private readonly Dictionary<string, ImmutableArray<StandingAnswer>> _answers;
    private readonly Dictionary<string, Region> _applies;
    private readonly Dictionary<string, Region> _when;
    private readonly ILookup<string, StandingValue> _values;
    private readonly Func<Resolution> _copy;
    private readonly Dictionary<string, ImmutableArray<Region>> _terms = new(StringComparer.Ordinal);
    private (Region Domain, Region Buildable)? _whole;

    internal Resolution(
        SpaceModel space,
        ImmutableArray<Region> domain,
        ImmutableArray<Exclusion> exclusions,
        Dictionary<string, ImmutableArray<StandingAnswer>> answers,
        Dictionary<string, Region> applies,
        Dictionary<string, Region> when,
        ImmutableArray<StandingValue> values,
        Func<Condition, Region> regionOf,
        ImmutableArray<Finding> findings,
        Func<Resolution> copy)
    {
        _copy = copy;
        Space = space;
        Exclusions = exclusions;
        DomainParts = new FactoredRegion(space.Store, domain, SpaceModel.Entities);
        BuildableParts = new FactoredRegion(space.Store, domain.Concat(exclusions.Select(exclusion => space.Store.Not(exclusion.Region))), SpaceModel.Entities);
        _answers = answers;
        _applies = applies;
        _when = when;
        Values = values;
        _values = values.ToLookup(value => value.Rule.Id, StringComparer.Ordinal);
        RegionOf = regionOf;
        Findings = findings;
        Overriders = OverridersOf(space.Base);
    }

    public SpaceModel Space { get; }

    public RegionStore Store => Space.Store;

    /// <summary>All combinations: every choice takes an option where it applies and <c>none</c> elsewhere.</summary>
    public FactoredRegion DomainParts { get; }

    /// <summary>
    /// The combinations that no rule excludes, in parts. Questions over a large space go here: <c>Narrow</c>, <c>Intersects</c>,
    /// <c>Implies</c>, <c>Witness</c>, <c>Count</c>, <c>Size</c>.
    /// </summary>
    public FactoredRegion BuildableParts { get; }

    /// <summary><see cref="DomainParts"/> as one diagram, for pages; made when first asked, and slowly in a large space.</summary>
    public Region Domain => Whole.Domain;

    /// <summary><see cref="BuildableParts"/> as one diagram, for pages; made when first asked, and slowly in a large space.</summary>
    public Region Buildable => Whole.Buildable;

    public ImmutableArray<Exclusion> Exclusions { get; }

    public ImmutableArray<StandingValue> Values { get; }

    /// <summary>The values that a rule states.</summary>
    public IEnumerable<StandingValue> ValuesOf(Rule rule) => _values[rule.Id];

    /// <summary>The region of a condition of this base; conditions on answers included.</summary>
    public Func<Condition, Region> RegionOf { get; }

    /// <summary>What was wrong while resolving: year splits, loops of overrides and of answers.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>Rule id → the rules that override it.</summary>
    public IReadOnlyDictionary<string, ImmutableArray<Rule>> Overriders { get; }

    /// <summary>The same over a store of its own (<see cref="RegionStore.Copy"/>), for another thread.</summary>
    public Resolution Copy() => _copy();

    /// <summary>Where a rule's <c>when</c> holds, overridden or not.</summary>
    public Region When(Rule rule) => _when[rule.Id];

    /// <summary>The regions whose intersection is <see cref="When"/>: of what a rule's <c>when</c> asks all together.</summary>
    internal ImmutableArray<Region> TermsOf(Rule rule)
    {
        if (!_terms.TryGetValue(rule.Id, out var terms))
        {
            terms = rule.When is AllOf all ? [.. all.Terms.Select(RegionOf).Distinct()] : [When(rule)];
            _terms.Add(rule.Id, terms);
        }

        return terms;
    }

    /// <summary>Where a position has to be settled.</summary>
    public Region Applies(string position) => _applies[position];

    /// <summary>The answers that stand somewhere at a position, in order of rule id.</summary>
    public ImmutableArray<StandingAnswer> At(string position) => _answers[position];

    /// <summary>
    /// What the answers that stand at a position cover together: wherever some rule answers it. For of several rules that
    /// answer in one combination one is overridden by none of the others, as long as overrides form no loop.
    /// </summary>
    public Region Answered(string position) => Store.OrAll(At(position).Select(one => When(one.Rule)));

    /// <summary>Works out every region that is otherwise made when first asked. After this all of them can be read from any thread.</summary>
    public void Complete()
    {
        foreach (var region in _answers.Values.SelectMany(answers => answers.Select(one => one.Region)).Concat(Values.Select(value => value.Region)))
        {
            _ = region;
        }
    }

    /// <summary>
    /// Where a rule still speaks: an answer of it stands; or it gives none and a value of it stands; or it gives neither,
    /// applies, and no rule that overrides it does.
    /// </summary>
    public Region Speaks(Rule rule)
    {
        if (rule.Answers.IsEmpty && rule.Values.IsEmpty)
        {
            return Silenced(rule, When(rule));
        }

        return rule.Answers.IsEmpty
            ? Store.OrAll(ValuesOf(rule).Select(value => value.Region))
            : Store.OrAll(rule.Answers.Where(answer => _answers.ContainsKey(answer.Position))
                .SelectMany(answer => At(answer.Position).Where(standing => standing.Rule.Id == rule.Id).Select(standing => standing.Region)));
    }

    /// <summary>Where a task is to be done: by its own condition, or because a rule that speaks names it.</summary>
    public Region Wanted(WorkTask task) => Store.OrAll(
        Space.Base.Rules.All.Where(rule => rule.Tasks.Contains(task.Id)).Select(Speaks).Append(task.When is { } when ? RegionOf(when) : Region.None));

    internal static Dictionary<string, ImmutableArray<Rule>> OverridersOf(KnowledgeBase kb) =>
        kb.Rules.All.SelectMany(rule => rule.Overrides.Select(named => (named.Id, rule)))
            .GroupBy(pair => pair.Id, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Select(pair => pair.rule).ToImmutableArray(), StringComparer.Ordinal);

    // Both at once: whoever has asked for one before threads start finds the other made.
    private (Region Domain, Region Buildable) Whole => _whole ??= (DomainParts.ToRegion(), BuildableParts.ToRegion());

    private Region Silenced(Rule rule, Region region) =>
        Overriders.TryGetValue(rule.Id, out var over) ? Store.Minus(region, Store.OrAll(over.Select(When))) : region;
}
