using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>Regions in the words of the facts: which chassis, which donors, which options.</summary>
public sealed class RegionWords
{
    // What a fact costs more that the rule does not ask for: it may happen to part the same variants, and a stranger would take it for the reason.
    private const int AskedBeside = 1;
    private const int AskedElsewhere = 2;
    private const int AskedNowhere = 4;

    // More alternatives than these are harder to read than the count and the witness beside them.
    private const int MostTerms = 4;

    private readonly Resolution _resolution;
    private readonly RegionDescriber _describer;
    private readonly Dictionary<int, ImmutableArray<(FactName? Fact, Predicate Predicate)>> _predicates;
    private readonly Lazy<HashSet<FactName>> _asked;
    private readonly DisplayNames _names;
    private readonly Dictionary<(Region Region, Region Context), string> _said = [];

    public RegionWords(Resolution resolution)
    {
        _resolution = resolution;
        var space = resolution.Space;
        _predicates = new()
        {
            [space.Chassis] = [.. Variants("chassis", [.. space.Base.Chassis.All])],
            [space.Donor] = [.. Variants("donor", [.. space.Base.Donors.All])],
        };
        _asked = new(() => [.. space.Base.Rules.All.SelectMany(rule => rule.When.FactsAsked())]);
        _names = new DisplayNames(
            level => level == space.Chassis ? "chassis" : level == space.Donor ? "donor" : InSentence.Lower(space.ChoiceAt[level]!.Title),
            (level, value) => level == space.Chassis ? space.Base.Chassis.All[value].Title
                : level == space.Donor ? space.Base.Donors.All[value].Title
                : space.ChoiceAt[level]!.Option(space.Store.Variables[level].Values[value]) is { } option ? $"“{InSentence.Lower(option.Title)}”" : "not asked");
        _describer = Describer((_, predicate) => predicate);
    }

    /// <summary>The region among the buildable combinations, or among all where none of it can be built.</summary>
    public string Describe(Region region)
    {
        var context = _resolution.BuildableParts.Intersects(region) ? _resolution.BuildableParts : _resolution.DomainParts;
        return Describe(region, context.Near(region));
    }

    /// <summary>
    /// Where one of several rules speaks, in the facts that it asks itself, else in those of its neighbours, and only then in others.
    /// </summary>
    /// <param name="own">Its condition.</param>
    /// <param name="beside">What the rules beside it ask for.</param>
    public string Describe(Region region, Region context, Condition own, IReadOnlySet<FactName> beside)
    {
        if (_resolution.Store.Implies(context, region))
        {
            return "always";
        }

        HashSet<FactName> asked = [.. own.FactsAsked()];
        return InTerms(
            region,
            context,
            Describer((fact, predicate) => fact is not { } name ? predicate
                : asked.Contains(name) ? predicate with { Cost = Math.Max(1, predicate.Cost / 2) }
                : predicate with { Cost = predicate.Cost + (beside.Contains(name) ? AskedBeside : _asked.Value.Contains(name) ? AskedElsewhere : AskedNowhere) }));
    }

    /// <summary>The region in as few words as are found, taking for granted that the combination lies in <paramref name="context"/>.</summary>
    public string Describe(Region region, Region context)
    {
        if (!_said.TryGetValue((region, context), out var text))
        {
            text = _resolution.Store.Implies(context, region) ? "always" : InTerms(region, context, _describer);
            _said.Add((region, context), text);
        }

        return text;
    }

    private RegionDescriber Describer(Func<FactName?, Predicate, Predicate> priced) => new(
        _resolution.Store,
        _predicates.ToDictionary(of => of.Key, of => of.Value.Select(one => priced(one.Fact, one.Predicate)).ToImmutableArray()),
        _names);

    private static string InTerms(Region region, Region context, RegionDescriber describer)
    {
        var description = describer.Describe(region, context, MostTerms);
        var terms = description.Terms.Select(term => term.Literals.IsEmpty ? "always" : string.Join(" and ", term.Literals.Select(literal => literal.Text)));
        return string.Join("; or ", terms) + (description.IsExact ? "" : "; or in further cases");
    }

    private IEnumerable<(FactName? Fact, Predicate Predicate)> Variants(string subject, ImmutableArray<Variant> variants)
    {
        var size = variants.Length;
        ValueSet Where(Func<Variant, bool> holds) => ValueSet.Where(size, value => holds(variants[value]));
        foreach (var family in variants.GroupBy(variant => variant.Family, StringComparer.Ordinal).OrderBy(family => family.Key, StringComparer.Ordinal))
        {
            yield return (null, new Predicate(FamilyWords.Of(subject, family.Key, variants), Where(variant => variant.Family == family.Key)));
        }

        foreach (var from in variants.Select(variant => variant.Years.From).Distinct().Order().Skip(1))
        {
            yield return (new(subject, "year"), new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject} of {from} or later"), Where(variant => variant.Years.From >= from)));
        }

        foreach (var to in variants.Select(variant => variant.Years.To).Distinct().Order().SkipLast(1))
        {
            yield return (new(subject, "year"), new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject} of {to} or earlier"), Where(variant => variant.Years.To <= to)));
        }

        // Of a single year nobody would say "1990 or later and 1990 or earlier".
        foreach (var year in variants.Where(variant => variant.Years.From == variant.Years.To).Select(variant => variant.Years.From).Distinct().Order())
        {
            yield return (new(subject, "year"), new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject} of {year}"), Where(variant => variant.Years.From >= year && variant.Years.To <= year), Cost: 2));
        }

        foreach (var declaration in _resolution.Space.Base.Vocabulary.Facts.All.Where(fact => fact.Subject == subject))
        {
            foreach (var predicate in OfFact(declaration, variants))
            {
                yield return (new(subject, declaration.Id), predicate);
            }
        }
    }

    private static IEnumerable<Predicate> OfFact(FactDeclaration fact, ImmutableArray<Variant> variants)
    {
        var size = variants.Length;
        var name = $"{fact.Subject}: {InSentence.Lower(fact.Title)}";
        ValueSet Where(Func<FactValue, bool> holds) => ValueSet.Where(size, value => variants[value].Fact(fact.Id) is { } found && holds(found));
        switch (fact.Type)
        {
            case FactType.Flag:
                yield return new Predicate($"{name}: yes", Where(value => value.Number == 1));
                yield return new Predicate($"{name}: no", Where(value => value.Number == 0));
                break;
            case FactType.OneOf:
                for (var rank = 0; rank < fact.Options.Length; rank++)
                {
                    var option = fact.Options[rank];
                    yield return new Predicate($"{name} {InSentence.Lower(option.Title)}", Where(value => value.Text == option.Id));
                    if (fact.Ordered && rank > 0 && rank < fact.Options.Length - 1)
                    {
                        yield return new Predicate($"{name} {InSentence.Lower(option.Title)} or above", Where(value => value.Number >= fact.RankOf(option.Id)));
                        yield return new Predicate($"{name} {InSentence.Lower(option.Title)} or below", Where(value => value.Number <= fact.RankOf(option.Id)));
                    }
                }

                break;
            case FactType.Number:
                var limits = variants.Select(variant => variant.Fact(fact.Id)?.Number).OfType<decimal>().Distinct().Order().ToList();
                foreach (var limit in limits.Skip(1))
                {
                    yield return new Predicate($"{name} {new Quantity(limit, fact.Unit).ToString()} or more", Where(value => value.Number >= limit), Cost: 2);
                }

                foreach (var limit in limits.SkipLast(1))
                {
                    yield return new Predicate($"{name} {new Quantity(limit, fact.Unit).ToString()} or less", Where(value => value.Number <= limit), Cost: 2);
                }

                // As much as both bounds together, of which nobody would say "562 mm or more and 562 mm or less".
                foreach (var limit in limits.Skip(1).SkipLast(1))
                {
                    yield return new Predicate($"{name} {new Quantity(limit, fact.Unit).ToString()}", Where(value => value.Number == limit), Cost: 4);
                }

                break;
        }
    }
}
