using Swapwright.Space;

namespace Swapwright.Tests.Space;

public class VariableOrderTests
{
    [Fact]
    public void Find_AnyInput_IsPermutationWithPinnedFirst()
    {
        for (var seed = 0; seed < 50; seed++)
        {
            var random = new Random(seed);
            var sizes = Enumerable.Range(0, 3 + random.Next(20)).Select(_ => 2 + random.Next(6)).ToList();
            var supports = Enumerable.Range(0, random.Next(40))
                .Select(_ => Enumerable.Range(0, random.Next(4)).Select(_ => random.Next(sizes.Count)).ToList()).ToList();
            var order = VariableOrder.Find(sizes, supports, [2, 0]);
            Assert.Equal([2, 0], order.Take(2));
            Assert.Equal(Enumerable.Range(0, sizes.Count), order.Order());
            Assert.Equal(order, VariableOrder.Find(sizes, supports, [2, 0]));
        }
    }

    [Fact]
    public void Find_FarPairs_BringsThemTogether()
    {
        // Eight pairs (i, i + 8): in the written order their equalities together need thousands of nodes, side by side a few.
        var pairs = Enumerable.Range(0, 8).Select(i => new[] { i, i + 8 }).ToList();
        int[] sizes = [.. Enumerable.Repeat(3, 16)];
        var order = VariableOrder.Find(sizes, pairs);
        Assert.True(Nodes(order) * 10 < Nodes([.. Enumerable.Range(0, 16)]));

        int Nodes(int[] levels)
        {
            var store = new RegionStore([.. levels.Select(variable => SmallSpace.Variable("v", sizes[variable]))]);
            var equal = pairs.Select(pair => store.OrAll(Enumerable.Range(0, 3).Select(value => store.Product(
                pair.Select(variable => new Constraint(Array.IndexOf(levels, variable), ValueSet.Of(3, value)))))));
            store.AndAll(equal);
            return store.NodeCount;
        }
    }

    [Fact]
    public void Find_NoConditions_WidestFirst()
        => Assert.Equal([1, 2, 0], VariableOrder.Find([2, 9, 4], []));
}
