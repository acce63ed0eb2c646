using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>
/// Works out over the whole space which answers stand. Positions are resolved in order of dependency: a rule that
/// asks for the answer at another position waits until that one is known. Nothing here looks at single combinations.
/// </summary>
public sealed class Resolver
{
    private readonly SpaceModel _space;
    private readonly KnowledgeBase _kb;
    private readonly ConditionRegions _regions;
    private readonly Dictionary<string, ImmutableArray<Rule>> _overriders;
    private readonly Dictionary<string, ImmutableArray<Rule>> _rulesAt;
    private readonly Dictionary<string, Region> _when = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Region> _applies = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ImmutableArray<StandingAnswer>> _answers = new(StringComparer.Ordinal);
    private readonly Dictionary<Condition, Region> _conditions = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);
    private readonly List<Finding> _findings = [];

    private Resolver(KnowledgeBase kb)
    {
        _kb = kb;
        _space = SpaceModel.Of(kb);
        _regions = new ConditionRegions(_space, AnswerRegion, finding => _findings.Add(finding));
        _overriders = Resolution.OverridersOf(kb);
        _rulesAt = kb.Rules.All.SelectMany(rule => rule.Answers.Select(answer => (answer.Position, rule)))
            .GroupBy(pair => pair.Position, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Select(pair => pair.rule).ToImmutableArray(), StringComparer.Ordinal);
    }

    private Resolver(Resolver other)
    {
        _kb = other._kb;
        _space = other._space.Over(other.Store.Copy());
        _regions = new ConditionRegions(_space, AnswerRegion, _ => { });
        _overriders = other._overriders;
        _rulesAt = other._rulesAt;
        _when = new(other._when, StringComparer.Ordinal);
        _applies = new(other._applies, StringComparer.Ordinal);
        _conditions = new(other._conditions, ReferenceEqualityComparer.Instance);
        _findings = other._findings;
        foreach (var position in other._answers.Keys)
        {
            _answers[position] = Standing(position);
        }
    }

    private RegionStore Store => _space.Store;

    public static Resolution Resolve(KnowledgeBase kb) => new Resolver(kb).Resolve();

    private Resolution Resolve()
    {
        _findings.AddRange(RuleLoops.Overrides(_kb));
        var order = RuleLoops.PositionOrder(_kb, position => _rulesAt.GetValueOrDefault(position, []), _findings);
        foreach (var position in order)
        {
            ResolvePosition(position);
        }

        var domain = _kb.Choices.All.Select(Domain).ToImmutableArray();
        foreach (var rule in _kb.Rules.All)
        {
            When(rule);
        }

        var exclusions = _kb.Rules.All.Where(rule => rule.Excludes || rule.Requires is not null)
            .Select(rule => new Exclusion(rule, ExclusionRegion(rule)))
            .ToImmutableArray();
        return Resolved(domain, exclusions);
    }

    private Resolution Resolved(ImmutableArray<Region> domain, ImmutableArray<Exclusion> exclusions) =>
        new(_space, domain, exclusions, _answers, _applies, _when, Values(), RegionOf, [.. _findings.Distinct()], () => new Resolver(this).Resolved(domain, exclusions));

    private void ResolvePosition(string id)
    {
        _applies[id] = RegionOf(_kb.Positions[id].Applies);
        _answers[id] = Standing(id);
    }

    private ImmutableArray<StandingAnswer> Standing(string id)
    {
        var applies = _applies[id];
        var standing = ImmutableArray.CreateBuilder<StandingAnswer>();
        foreach (var rule in _rulesAt.GetValueOrDefault(id, []))
        {
            // Conditions are worked out now, in order of dependency: later, a loop among answers would never end.
            var when = When(rule);
            var silenced = _overriders.GetValueOrDefault(rule.Id, []).Where(over => over.AnswerAt(id) is not null).Select(When).ToImmutableArray();
            standing.Add(new StandingAnswer(rule, rule.AnswerAt(id)!, () => Store.Minus(Store.And(when, applies), Store.OrAll(silenced))));
        }

        return standing.ToImmutable();
    }

    private Region AnswerRegion(AnswerTest test)
    {
        // A position that is not resolved yet, or is asked for while it is being worked out, stands in a loop, which has been reported.
        if (!_answers.TryGetValue(test.Position, out var standing) || !_asked.Add(test.Position))
        {
            return Region.None;
        }

        var region = Store.OrAll(standing.Where(one => test.Matches(one.Answer)).Select(one => one.Region));
        _asked.Remove(test.Position);
        return region;
    }

    private Region Domain(Choice choice)
    {
        var applies = RegionOf(choice.Applies);
        var none = choice.Applies == Condition.Always && !choice.Options.IsEmpty ? Region.None : _space.WhereChoice(choice.Id, [Choice.None]);
        return Store.Or(Store.Minus(applies, none), Store.And(Store.Not(applies), none));
    }

    private Region ExclusionRegion(Rule rule)
    {
        var region = rule.Excludes ? When(rule) : Store.Minus(When(rule), RegionOf(rule.Requires!));
        return Store.Minus(region, Store.OrAll(_overriders.GetValueOrDefault(rule.Id, []).Select(When)));
    }

    private ImmutableArray<StandingValue> Values()
    {
        var values = ImmutableArray.CreateBuilder<StandingValue>();
        foreach (var rule in _kb.Rules.All)
        {
            foreach (var value in rule.Values)
            {
                var silencers = _overriders.GetValueOrDefault(rule.Id, []).Where(over => over.Values.Any(other => other.Name == value.Name));
                values.Add(new StandingValue(rule, value, () => Store.Minus(When(rule), Store.OrAll(silencers.Select(When)))));
            }
        }

        return values.ToImmutable();
    }

    private Region When(Rule rule)
    {
        if (!_when.TryGetValue(rule.Id, out var region))
        {
            region = RegionOf(rule.When);
            _when[rule.Id] = region;
        }

        return region;
    }

    private Region RegionOf(Condition condition)
    {
        if (!_conditions.TryGetValue(condition, out var region))
        {
            region = _regions.Of(condition);
            _conditions[condition] = region;
        }

        return region;
    }
}
