using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>Trimming a wider belt and bringing pulleys into plane: both common practice, no source.</summary>
public sealed class TrimAndShimTests
{
    [Fact]
    public void Compute_RightRibsNotStocked_OffersAWiderOneToTrim()
    {
        var result = BeltWorksheet.Compute(Serpentine(), [new(7, 1780, "wide"), new(8, 1780, "wider")]);

        Assert.Equal("7PK1780", result.Recommended!.Designation);
        Assert.Equal(6, result.Ribs);
        Assert.Equal(new TrimmedBelt(6, 7), Assert.Single(result.Problems));
    }

    [Theory]
    [InlineData(6, 1780)] // the right belt
    [InlineData(6, 900)] // the right ribs in a length that does not fit
    public void Compute_RightRibsStocked_OffersNoTrimming(int ribs, double length)
    {
        var result = BeltWorksheet.Compute(Serpentine(), [new(ribs, length, "right"), new(7, 1780, "wide")]);

        Assert.Empty(result.Problems.OfType<TrimmedBelt>());
        Assert.True(result.Recommended is null or { Belt.Ribs: 6 });
    }

    [Fact]
    public void Compute_MoreRibsTooManyThanMayBeCut_FindsNoBelt()
    {
        Assert.Null(BeltWorksheet.Compute(Serpentine(), [new(8, 1780, "wider")]).Recommended);
        Assert.NotNull(BeltWorksheet.Compute(Serpentine(), [new(8, 1780, "wider")], new BeltLimits { MostTrimmedRibs = 2 }).Recommended);
        Assert.Null(BeltWorksheet.Compute(Serpentine(), [new(7, 1780, "wide")], new BeltLimits { MostTrimmedRibs = 0 }).Recommended);
    }

    [Fact]
    public void Compute_OnePulleyOutOfPlane_IsTheOneToMove()
    {
        Assert.Equal([new PlaneShim("pump", 2)], Shims("pump", -2));
        Assert.Equal([new PlaneShim("alternator", -3)], Shims("alternator", 3));
        Assert.Equal([new PlaneShim("crank", -4)], Shims("crank", 4)); // the two others agree: it is the crank pulley that is wrong
    }

    [Fact]
    public void Compute_TwoPulleys_MoveTheOneThatIsNotTheCrank()
    {
        var loop = TwoPoint().With("steering", pulley => pulley with { PlaneMm = 5 });

        Assert.Equal([new PlaneShim("steering", -5)], BeltWorksheet.Compute(loop, []).Shims.AsEnumerable());
    }

    [Fact]
    public void Compute_OffsetWithinTheLimit_AsksForNoShim() => Assert.Empty(Shims("pump", 0.5));

    private static PlaneShim[] Shims(string id, double plane) =>
        [.. BeltWorksheet.Compute(ThreePoint().With(id, pulley => pulley with { PlaneMm = plane }), []).Shims];
}
