using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>
/// The loan table (income, size) of Calvanese, Dumas, Laurson, Maggi, Montali, Teinemaa, "Semantics and analysis of DMN
/// decision tables", BPM 2016; table from memory, its single overlap worked out by hand from the bounds.
/// </summary>
public class DecisionTableTests
{
    private const int Step = 250;

    // Each axis is cut into points (even) and the open stretches between them (odd), so closed bounds stay exact.
    private const int Incomes = (2 * 2500 / Step) + 1;
    private const int Sizes = (2 * 5000 / Step) + 1;

    private readonly RegionStore _store = new([SmallSpace.Variable("income", Incomes), SmallSpace.Variable("size", Sizes)]);

    [Fact]
    public void Loan_Pairs_OnlyAAndCOverlap()
    {
        var rules = Rules();
        var overlaps = from a in rules from b in rules where string.CompareOrdinal(a.Key, b.Key) < 0 && _store.Intersects(a.Value, b.Value) select a.Key + b.Key;
        Assert.Equal(["AC"], overlaps);
        Assert.Equal(Box(500, 1000, 500, 1000), _store.And(rules["A"], rules["C"]));
    }

    [Fact]
    public void Loan_Union_LeavesGap()
    {
        var gap = _store.Not(_store.OrAll(Rules().Values));
        Assert.False(gap.IsNone);

        // The first uncovered cell at income 0 is the stretch above size 1000.
        Assert.Equal([0, (2 * 1000 / Step) + 1], _store.Witness(gap));
    }

    [Fact]
    public void Loan_OverlapCover_IsOneCube()
    {
        var rules = Rules();
        var cube = Assert.Single(_store.Cover(_store.And(rules["A"], rules["C"]), 10).Cubes);
        Assert.Equal(ValueSet.Range(Incomes, 2 * 500 / Step, 2 * 1000 / Step), cube.Constraints[0].Values);
        Assert.Equal(ValueSet.Range(Sizes, 2 * 500 / Step, 2 * 1000 / Step), cube.Constraints[1].Values);
    }

    private SortedDictionary<string, Region> Rules() => new(StringComparer.Ordinal)
    {
        ["A"] = Box(0, 1000, 0, 1000),
        ["B"] = Box(250, 750, 4000, 5000),
        ["C"] = Box(500, 1500, 500, 3000),
        ["D"] = Box(2000, 2500, 0, 2000),
    };

    private Region Box(int incomeFrom, int incomeTo, int sizeFrom, int sizeTo) => _store.Product(
    [
        new Constraint(0, ValueSet.Range(Incomes, 2 * incomeFrom / Step, 2 * incomeTo / Step)),
        new Constraint(1, ValueSet.Range(Sizes, 2 * sizeFrom / Step, 2 * sizeTo / Step)),
    ]);
}
