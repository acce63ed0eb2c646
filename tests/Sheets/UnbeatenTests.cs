using System.Collections.Immutable;
using Swapwright.Sheets;

namespace Swapwright.Tests.Sheets;

public sealed class UnbeatenTests
{
    [Fact]
    public void Of_CheaperAndQuicker_BeatsTheOther() => Assert.Equal<IEnumerable<bool>>([true, false], Unbeaten.Of([[100, 20], [120, 25]]));

    [Fact]
    public void Of_BetterOnOneCountEach_LeavesBoth() => Assert.Equal<IEnumerable<bool>>([true, true], Unbeaten.Of([[100, 30], [120, 25]]));

    [Fact]
    public void Of_EqualOnEveryCount_LeavesBoth() => Assert.Equal<IEnumerable<bool>>([true, true, false], Unbeaten.Of([[100, 30], [100, 30], [100, 31]]));

    [Fact]
    public void Of_UnknownCount_IsTheWorst() => Assert.Equal<IEnumerable<bool>>([true, false, true], Unbeaten.Of([[100, 30], [100, null], [90, null]]));

    /// <summary>Defined the other way round: whoever is best for some order of looking at the counts is unbeaten, and each beaten one has an unbeaten that beats it.</summary>
    [Fact]
    public void Of_ManyDrawn_HoldsTheBestOfEveryOrderAndLeavesNothingBeatenUnanswered()
    {
        var draw = new Random(20260301);
        for (var round = 0; round < 200; round++)
        {
            ImmutableArray<decimal?>[] offers = [.. Enumerable.Range(0, 1 + draw.Next(12)).Select(_ => (ImmutableArray<decimal?>)[draw.Next(6), draw.Next(6), draw.Next(6)])];
            var marks = Unbeaten.Of(offers);
            int[][] orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
            foreach (var order in orders)
            {
                var best = Enumerable.Range(0, offers.Length).MinBy(at => (offers[at][order[0]], offers[at][order[1]], offers[at][order[2]]));
                Assert.True(marks[best]);
            }

            bool Beats(int one, int other) => offers[one].Zip(offers[other]).All(pair => pair.First <= pair.Second) && !offers[one].SequenceEqual(offers[other]);
            foreach (var at in Enumerable.Range(0, offers.Length))
            {
                if (marks[at])
                {
                    Assert.DoesNotContain(Enumerable.Range(0, offers.Length), other => Beats(other, at));
                }
                else
                {
                    Assert.Contains(Enumerable.Range(0, offers.Length).Where(other => marks[other]), other => Beats(other, at));
                }
            }
        }
    }
}
