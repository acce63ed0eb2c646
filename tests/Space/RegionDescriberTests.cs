using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

public class RegionDescriberTests
{
    private static readonly int[] Years = [1986, 1989, 1992, 1996, 1999, 2002];

    private readonly RegionStore _store = new(
    [
        new Variable("chassis", ["a", "b", "c", "d"]),
        new Variable("donor", [.. Years.Select(year => year.ToString(CultureInfo.InvariantCulture))]),
        new Variable("alternator", ["keep", "donor", "none"]),
    ]);

    private readonly RegionDescriber _describer;

    public RegionDescriberTests() => _describer = new RegionDescriber(_store, new Dictionary<int, ImmutableArray<Predicate>>
    {
        [0] = [new Predicate("carburettor", ValueSet.Of(4, 0, 1)), new Predicate("diesel", ValueSet.Of(4, 1, 2))],
        [1] =
        [
            .. Years.Select((year, index) => new Predicate(string.Create(CultureInfo.InvariantCulture, $"year from {year}"), ValueSet.Range(6, index, 5))),
            .. Years.Select((year, index) => new Predicate(string.Create(CultureInfo.InvariantCulture, $"year to {year}"), ValueSet.Range(6, 0, index))),
        ],
    });

    [Fact]
    public void Describe_OneFact_NamesIt()
        => Assert.Equal("year from 1996", Text(Donor(3, 4, 5), Region.All));

    [Fact]
    public void Describe_Range_NamesTwoFacts()
        => Assert.Equal("year from 1989 and year to 1996", Text(Donor(1, 2, 3), Region.All));

    [Fact]
    public void Describe_TwoVariables_JoinsThem()
        => Assert.Equal("carburettor and year to 1992 and alternator is keep", Text(
            _store.AndAll([_store.Where(0, ValueSet.Of(4, 0, 1)), Donor(0, 1, 2), _store.Where(2, ValueSet.Of(3, 0))]), Region.All));

    [Fact]
    public void Describe_OneOfTwoFacts_SaysOr()
        => Assert.Equal("carburettor or diesel", Text(_store.Where(0, ValueSet.Of(4, 0, 1, 2)), Region.All));

    [Fact]
    public void Describe_TwoOptions_ListsThem()
        => Assert.Equal("alternator is keep or donor", Text(_store.Where(2, ValueSet.Of(3, 0, 1)), Region.All));

    [Fact]
    public void Describe_AllButOne_SaysNot()
        => Assert.Equal("chassis is not c", Text(_store.Where(0, ValueSet.Of(4, 0, 1, 3)), Region.All));

    [Fact]
    public void Describe_ContextImpliesPart_LeavesItOut()
    {
        var context = _store.And(Donor(0, 1, 2, 3), _store.Where(2, ValueSet.Of(3, 0)));
        Assert.Equal("year from 1992", Text(_store.AndAll([Donor(2, 3), context]), context));
        Assert.Equal("", Text(context, context));
    }

    [Fact]
    public void Describe_NothingInContext_HasNoTerm()
    {
        var description = _describer.Describe(Donor(0), Donor(1), 5);
        Assert.Empty(description.Terms);
        Assert.True(description.IsExact);
    }

    [Fact]
    public void Describe_TooFewTerms_SaysNotExact()
    {
        var region = _store.Or(_store.And(Donor(0), _store.Where(0, ValueSet.Of(4, 0))), _store.And(Donor(5), _store.Where(0, ValueSet.Of(4, 3))));
        Assert.True(_describer.Describe(region, Region.All, 2).IsExact);
        var cut = _describer.Describe(region, Region.All, 1);
        Assert.False(cut.IsExact);
        Assert.Single(cut.Terms);
        Assert.True(_store.Implies(cut.ToRegion(_store), region));
    }

    [Fact]
    public void Describe_RandomRegions_DenotesExactlyWithinContext()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var space = new SmallSpace(seed);
            var store = space.Store;
            var (region, context) = (space.NextRegion().Region, space.NextRegion().Region);
            var describer = new RegionDescriber(store, Predicates(space));
            var description = describer.Describe(region, context, int.MaxValue);
            Assert.True(description.IsExact);
            Assert.Equal(store.And(region, context), store.And(description.ToRegion(store), context));
            var cut = describer.Describe(region, context, 1);
            Assert.True(store.Implies(store.And(cut.ToRegion(store), context), region));
            Assert.Equal(cut.IsExact, store.Implies(store.And(region, context), cut.ToRegion(store)));
        }
    }

    [Fact]
    public void Describe_Again_SameWords()
    {
        var space = new SmallSpace(5);
        var again = new SmallSpace(5);
        Assert.Equal(Words(space), Words(again));

        static IEnumerable<string> Words(SmallSpace space)
        {
            var describer = new RegionDescriber(space.Store, Predicates(space));
            return Enumerable.Range(0, 20).SelectMany(_ => describer.Describe(space.NextRegion().Region, Region.All, 50).Terms)
                .Select(term => string.Join(" and ", term.Literals.Select(literal => literal.Text))).ToList();
        }
    }

    private static Dictionary<int, ImmutableArray<Predicate>> Predicates(SmallSpace space)
        => Enumerable.Range(0, space.Store.Variables.Length).ToDictionary(
            variable => variable,
            variable => Enumerable.Range(0, space.Next(5))
                .Select(i => new Predicate(string.Create(CultureInfo.InvariantCulture, $"p{variable}.{i}"), space.NextValues(variable), 1 + space.Next(2)))
                .ToImmutableArray());

    private Region Donor(params int[] values) => _store.Where(1, ValueSet.Of(6, values));

    private string Text(Region region, Region context)
    {
        var description = _describer.Describe(region, context, 20);
        Assert.True(description.IsExact);
        Assert.Equal(_store.And(region, context), _store.And(description.ToRegion(_store), context));
        return string.Join("; or ", description.Terms.Select(term => string.Join(" and ", term.Literals.Select(literal => literal.Text))));
    }
}
