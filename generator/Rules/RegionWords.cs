using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Knowledge;
using Swapwright.Space;

namespace Swapwright.Rules;

/// <summary>Regions in the words of the facts: which chassis, which donors, which options.</summary>
public sealed class RegionWords
{
    // More alternatives than these are harder to read than the count and the witness beside them.
    private const int MostTerms = 4;

    private readonly Resolution _resolution;
    private readonly RegionDescriber _describer;
    private readonly Dictionary<(Region Region, Region Context), string> _said = [];

    public RegionWords(Resolution resolution)
    {
        _resolution = resolution;
        var space = resolution.Space;
        var predicates = new Dictionary<int, ImmutableArray<Predicate>>
        {
            [space.Chassis] = [.. Variants("chassis", [.. space.Base.Chassis.All])],
            [space.Donor] = [.. Variants("donor", [.. space.Base.Donors.All])],
        };
        var names = new DisplayNames(
            level => level == space.Chassis ? "chassis" : level == space.Donor ? "donor" : InSentence.Lower(space.ChoiceAt[level]!.Title),
            (level, value) => level == space.Chassis ? space.Base.Chassis.All[value].Title
                : level == space.Donor ? space.Base.Donors.All[value].Title
                : space.ChoiceAt[level]!.Option(space.Store.Variables[level].Values[value]) is { } option ? $"“{InSentence.Lower(option.Title)}”" : "no question there");
        _describer = new RegionDescriber(space.Store, predicates, names);
    }

    /// <summary>The region among the buildable combinations, or among all where none of it can be built.</summary>
    public string Describe(Region region)
    {
        var context = _resolution.BuildableParts.Intersects(region) ? _resolution.BuildableParts : _resolution.DomainParts;
        return Describe(region, context.Near(region));
    }

    /// <summary>The region in as few words as are found, taking for granted that the combination lies in <paramref name="context"/>.</summary>
    public string Describe(Region region, Region context)
    {
        if (!_said.TryGetValue((region, context), out var text))
        {
            text = _resolution.Store.Implies(context, region) ? "always" : InTerms(region, context);
            _said.Add((region, context), text);
        }

        return text;
    }

    private string InTerms(Region region, Region context)
    {
        var description = _describer.Describe(region, context, MostTerms);
        var terms = description.Terms.Select(term => term.Literals.IsEmpty ? "always" : string.Join(" and ", term.Literals.Select(literal => literal.Text)));
        return string.Join("; or ", terms) + (description.IsExact ? "" : "; or in further cases");
    }

    private IEnumerable<Predicate> Variants(string subject, ImmutableArray<Variant> variants)
    {
        var size = variants.Length;
        ValueSet Where(Func<Variant, bool> holds) => ValueSet.Where(size, value => holds(variants[value]));
        foreach (var family in variants.GroupBy(variant => variant.Family, StringComparer.Ordinal).OrderBy(family => family.Key, StringComparer.Ordinal))
        {
            yield return new Predicate(FamilyWords.Of(subject, family.Key, variants), Where(variant => variant.Family == family.Key));
        }

        foreach (var from in variants.Select(variant => variant.Years.From).Distinct().Order().Skip(1))
        {
            yield return new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject} of {from} or later"), Where(variant => variant.Years.From >= from));
        }

        foreach (var to in variants.Select(variant => variant.Years.To).Distinct().Order().SkipLast(1))
        {
            yield return new Predicate(string.Create(CultureInfo.InvariantCulture, $"{subject} of {to} or earlier"), Where(variant => variant.Years.To <= to));
        }

        foreach (var declaration in _resolution.Space.Base.Vocabulary.Facts.All.Where(fact => fact.Subject == subject))
        {
            foreach (var predicate in OfFact(declaration, variants))
            {
                yield return predicate;
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

                break;
        }
    }
}
