using Swapwright.Worksheets.Hoses;

namespace Swapwright.Tests.Worksheets.Hoses;

/// <summary>Pieces out of lengths as sold, held against the fewest lengths that any way of cutting takes.</summary>
public class StockCuttingTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 200)];

    /// <summary>Every way to deal the pieces out is tried. First-fit decreasing takes at most 11/9 of the fewest and 6/9 (Dósa 2007, cited from memory).</summary>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void Count_AnyPieces_IsEnoughAndWithinTheBoundOfTheMethod(int seed)
    {
        var random = new Random(seed);
        var pieces = Enumerable.Range(0, 1 + random.Next(7)).Select(_ => (double)random.Next(100, 2000)).ToArray();
        var fewest = Fewest(pieces, 0, []);
        var count = StockCutting.Count(pieces, 2000);

        Assert.InRange(count, fewest, ((11 * fewest) + 6) / 9);
    }

    /// <summary>4.1 m out of lengths of 2 m: two whole ones and a stub of a third, which serves 1.9 m more; by hand.</summary>
    [Theory]
    [InlineData(3, 4100d)]
    [InlineData(3, 4100d, 1900d)]
    [InlineData(4, 4100d, 1901d)]
    [InlineData(0)]
    public void Count_PieceLongerThanALength_IsJoined(int expected, params double[] pieces) => Assert.Equal(expected, StockCutting.Count(pieces, 2000));

    /// <summary>What nobody can count one by one is not counted so: a base is read from strangers.</summary>
    [Theory]
    [InlineData(int.MaxValue, 1e-28, 800d)]
    [InlineData(int.MaxValue, 2000, 1e300)]
    [InlineData(800_000, 0.001, 800d)]
    public void Count_MoreLengthsThanAnybodyBuys_ComesToAnEnd(int expected, double stockMm, params double[] pieces) => Assert.Equal(expected, StockCutting.Count(pieces, stockMm));

    private static int Fewest(double[] pieces, int at, List<double> left)
    {
        if (at == pieces.Length)
        {
            return left.Count;
        }

        var best = Fewest(pieces, at + 1, [.. left, 2000 - pieces[at]]);
        for (var bin = 0; bin < left.Count; bin++)
        {
            if (left[bin] >= pieces[at])
            {
                best = Math.Min(best, Fewest(pieces, at + 1, [.. left.Take(bin), left[bin] - pieces[at], .. left.Skip(bin + 1)]));
            }
        }

        return best;
    }
}
