using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>
/// Writes a region as a contributor would: a <c>when</c> mapping in flow form, over facts of the chassis and the donor and
/// over choices. Read back it is the region, as far as the context reaches. The shorter of two ways is taken: the terms
/// that make the region, or <c>not</c> of those that make the rest.
/// </summary>
public sealed class RegionYaml
{
    // A condition of more terms than this is no help to the one who has to write it.
    private const int MostTerms = 6;
    private const int MostLength = 320;

    private readonly SpaceModel _space;
    private readonly ImmutableDictionary<int, ImmutableArray<Predicate>> _predicates;

    public RegionYaml(Resolution resolution)
    {
        _space = resolution.Space;
        _predicates = ImmutableDictionary<int, ImmutableArray<Predicate>>.Empty
            .Add(_space.Chassis, [.. Variants("chassis", [.. _space.Base.Chassis.All])])
            .Add(_space.Donor, [.. Variants("donor", [.. _space.Base.Donors.All])]);
    }

    /// <returns>As in <c>{chassis.fuel-delivery: carburettor, choice.ecu: [donor, standalone]}</c>; null where it would be too long to be of use.</returns>
    public string? Write(Region region, Region context)
    {
        if (_space.Store.Implies(context, region))
        {
            return "{}";
        }

        var straight = Terms(region, context);
        var around = Terms(_space.Store.Not(region), context) is { } rest ? $"{{not: {rest}}}" : null;
        var shorter = new[] { straight, around }.OfType<string>().OrderBy(text => text.Length).FirstOrDefault();
        return shorter?.Length <= MostLength ? shorter : null;
    }

    private string? Terms(Region region, Region context)
    {
        var cover = _space.Store.Cover(region, MostTerms, context);
        if (!cover.IsComplete || cover.Cubes.IsEmpty)
        {
            return null;
        }

        var terms = cover.Cubes.Select(cube => Mapping(cube, context)).ToList();
        return terms.Count == 1 ? terms[0] : $"{{any: [{string.Join(", ", terms)}]}}";
    }

    private string Mapping(Cube cube, Region context)
    {
        // As in descriptions: a constraint is replaced by what means the same where the context and the other ones hold.
        var entries = new List<string>();
        var said = new List<Constraint>();
        var open = cube.Constraints;
        foreach (var constraint in cube.Constraints)
        {
            open = open.RemoveAt(0);
            var allowed = _space.Store.AllowedValues(_space.Store.And(context, _space.Store.Product(open.Concat(said))), constraint.Variable);
            var wanted = constraint.Values.And(allowed);
            if (wanted.Count == allowed.Count)
            {
                continue;
            }

            var (texts, values) = Say(constraint.Variable, wanted, allowed);
            entries.AddRange(texts);
            said.Add(new Constraint(constraint.Variable, values));
        }

        var keys = entries.Select(entry => entry[..entry.IndexOf(':', StringComparison.Ordinal)]).ToList();
        return keys.Distinct(StringComparer.Ordinal).Count() == keys.Count
            ? $"{{{string.Join(", ", entries)}}}"
            : $"{{all: [{string.Join(", ", entries.Select(entry => $"{{{entry}}}"))}]}}";
    }

    /// <summary>The shortest entries that part the wanted values from the other allowed ones, and the values that they mean.</summary>
    private (ImmutableArray<string> Entries, ValueSet Values) Say(int level, ValueSet wanted, ValueSet allowed)
    {
        var variable = _space.Store.Variables[level];
        var key = _space.ChoiceAt[level] is { } choice ? $"choice.{choice.Id}" : level == _space.Chassis ? "chassis.variant" : "donor.variant";
        var ways = new List<(ImmutableArray<string> Entries, ValueSet Values)>
        {
            ([$"{key}: {List(variable, wanted)}"], wanted),
        };
        var missing = allowed.Minus(wanted);
        ways.Add(([$"not: {{{key}: {List(variable, missing)}}}"], missing.Not()));
        if (_predicates.TryGetValue(level, out var known))
        {
            if (PredicateChooser.Intersection(known.Select(one => (one, one.Values.And(allowed))), wanted, allowed) is { } all)
            {
                ways.Add(([.. all.Parts.Select(part => part.Text)], all.Parts.Select(part => part.Values).Aggregate((a, b) => a.And(b))));
            }

            if (PredicateChooser.Intersection(known.Select(one => (one, one.Values.And(allowed))), missing, allowed) is { } none)
            {
                var values = none.Parts.Select(part => part.Values).Aggregate((a, b) => a.And(b)).Not();
                var keys = none.Parts.Select(part => part.Text[..part.Text.IndexOf(':', StringComparison.Ordinal)]).Distinct(StringComparer.Ordinal).Count();
                var inner = keys == none.Parts.Count ? string.Join(", ", none.Parts.Select(part => part.Text)) : $"all: [{string.Join(", ", none.Parts.Select(part => $"{{{part.Text}}}"))}]";
                ways.Add(([$"not: {{{inner}}}"], values));
            }
        }

        return ways.OrderBy(way => way.Entries.Sum(entry => entry.Length)).First();
    }

    private static string List(Variable variable, ValueSet values)
    {
        var names = values.Select(value => Scalar(variable.Values[value])).ToList();
        return names.Count == 1 ? names[0] : $"[{string.Join(", ", names)}]";
    }

    private static IEnumerable<Predicate> Variants(string subject, ImmutableArray<Variant> variants, KnowledgeBase kb)
    {
        var size = variants.Length;
        ValueSet Where(Func<Variant, bool> holds) => ValueSet.Where(size, value => holds(variants[value]));
        foreach (var family in variants.Select(variant => variant.Family).Where(family => family.Length > 0).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            yield return new Predicate($"{subject}.family: {Scalar(family)}", Where(variant => variant.Family == family));
        }

        // A year that cuts through a variant's years would be a finding of its own.
        foreach (var year in variants.SelectMany(variant => new[] { variant.Years.From, variant.Years.To + 1 }).Distinct().Order().Where(year => variants.All(variant => year <= variant.Years.From || year > variant.Years.To)))
        {
            yield return new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject}.year: {{from: {year}}}"), Where(variant => variant.Years.From >= year));
            yield return new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject}.year: {{to: {year - 1}}}"), Where(variant => variant.Years.To < year));
        }

        foreach (var fact in kb.Vocabulary.Facts.All.Where(fact => fact.Subject == subject))
        {
            foreach (var predicate in OfFact(fact, variants))
            {
                yield return predicate;
            }
        }
    }

    private IEnumerable<Predicate> Variants(string subject, ImmutableArray<Variant> variants) =>
        Variants(subject, variants, _space.Base).Where(predicate => predicate.Values is { IsEmpty: false, IsFull: false });

    private static IEnumerable<Predicate> OfFact(FactDeclaration fact, ImmutableArray<Variant> variants)
    {
        ValueSet Where(Func<FactValue, bool> holds) => ValueSet.Where(variants.Length, value => variants[value].Fact(fact.Id) is { } found && holds(found));
        switch (fact.Type)
        {
            case FactType.Flag:
                yield return new Predicate($"{fact.Name}: true", Where(value => value.Number == 1));
                yield return new Predicate($"{fact.Name}: false", Where(value => value.Number == 0));
                break;
            case FactType.Number:
                foreach (var limit in variants.Select(variant => variant.Fact(fact.Id)?.Number).OfType<decimal>().Distinct().Order())
                {
                    yield return new Predicate(string.Create(CultureInfo.InvariantCulture, $"{fact.Name}: {{from: {limit}}}"), Where(value => value.Number >= limit), Cost: 2);
                    yield return new Predicate(string.Create(CultureInfo.InvariantCulture, $"{fact.Name}: {{to: {limit}}}"), Where(value => value.Number <= limit), Cost: 2);
                }

                break;
            default:
                foreach (var text in variants.Select(variant => variant.Fact(fact.Id)?.Text).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
                {
                    yield return new Predicate($"{fact.Name}: {Scalar(text)}", Where(value => value.Text == text));
                    if (fact.Ordered)
                    {
                        var rank = fact.RankOf(text);
                        yield return new Predicate($"{fact.Name}: {{from: {Scalar(text)}}}", Where(value => value.Number >= rank));
                        yield return new Predicate($"{fact.Name}: {{to: {Scalar(text)}}}", Where(value => value.Number <= rank));
                    }
                }

                break;
        }
    }

    // All of them are ids; one that begins with a digit may look like a number to an editor, which asks for a text.
    private static string Scalar(string id) => char.IsAsciiLetter(id[0]) ? id : $"\"{id}\"";
}
