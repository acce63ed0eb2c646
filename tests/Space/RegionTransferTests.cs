using System.Collections.Immutable;
using Swapwright.Space;

namespace Swapwright.Tests.Space;

/// <summary>A region carried into another store holds the same assignments, by the names of their values.</summary>
public class RegionTransferTests
{
    [Fact]
    public void Carry_RandomStores_HoldsWhatIsNamedTheSame()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            var space = new SmallSpace(seed);
            var random = new Random(seed);
            var (to, levels) = Partner(space.Store, random);
            var transfer = new RegionTransfer(space.Store, to, levels);
            int[] alone = [.. levels.Index().Where(pair => pair.Item < 0).Select(pair => pair.Index)];
            for (var i = 0; i < 5; i++)
            {
                var (region, _) = space.NextRegion(2);
                var image = transfer.Carry(region);
                Assert.All(to.Support(image), level => Assert.Contains(level, levels));
                foreach (var assignment in space.Assignments)
                {
                    var there = Translated(space.Store, to, levels, assignment, random);
                    Assert.True(there is null || to.Contains(image, there) == space.Store.Contains(space.Store.Project(region, alone), assignment), FormattableString.Invariant($"seed {seed}"));
                }
            }
        }
    }

    /// <summary>A store with the variables in another order, some left out, with more values and fewer, and one variable of its own.</summary>
    private static (RegionStore Store, ImmutableArray<int> Levels) Partner(RegionStore from, Random random)
    {
        var kept = from.Variables.Where(_ => random.Next(4) > 0).ToArray();
        random.Shuffle(kept);
        ImmutableArray<Variable> variables =
        [
            .. kept.Select(variable => new Variable(variable.Name, [.. variable.Values.Where(_ => random.Next(5) > 0).Append("more")])),
            SmallSpace.Variable("other", 3),
        ];
        return (new RegionStore(variables), [.. from.Variables.Select(variable => variables.Select(one => one.Name).ToList().IndexOf(variable.Name))]);
    }

    /// <summary>The assignment over there, free variables as they come; null where a value is unknown there.</summary>
    private static int[]? Translated(RegionStore from, RegionStore to, ImmutableArray<int> levels, int[] assignment, Random random)
    {
        int[] there = [.. to.Variables.Select(variable => random.Next(variable.Size))];
        foreach (var (partner, level) in levels.Select((partner, level) => (partner, level)).Where(pair => pair.partner >= 0))
        {
            there[partner] = to.Variables[partner].Values.IndexOf(from.Variables[level].Values[assignment[level]]);
        }

        return there.Contains(-1) ? null : there;
    }
}
