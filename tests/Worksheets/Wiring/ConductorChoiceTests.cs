using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>
/// Resistances: IEC 60228, class 5, as tabled at mycableengineering.com. Currents: one body-builder manual, 2015. Allowances: common practice, no source.
/// </summary>
public sealed class ConductorChoiceTests
{
    [Fact]
    public void Choose_ShortWireOfASensor_IsTheMechanicalMinimum()
    {
        var choice = ConductorSize.Choose(Need(asked: 0.35, current: 0.1, length: 500));

        Assert.Equal((0.5, ConductorReason.Mechanical), (choice.SizeMm2, choice.Reason));
    }

    [Fact]
    public void Choose_ShortWireOfALoad_GoesByTheCurrent()
    {
        var choice = ConductorSize.Choose(Need(asked: 0.5, current: 12, length: 300));

        Assert.Equal((2.5, ConductorReason.Current, 2.5), (choice.SizeMm2, choice.Reason, choice.ByCurrentMm2)); // the manual: 2 mm² for up to 14 A
    }

    [Fact]
    public void Choose_LongWire_GoesByTheDrop()
    {
        // 5 A over 4 m at 20 °C: 0.5 mm² loses 0.78 V, 0.75 mm² 0.52 V, 1 mm² 0.39 V, 1.5 mm² 5 × 0.0133 × 4 = 0.266 V.
        var choice = ConductorSize.Choose(Need(asked: 0.5, current: 5, length: 4000));

        Assert.Equal((1.5, ConductorReason.Drop, 1.5), (choice.SizeMm2, choice.Reason, choice.ByDropMm2));
        Assert.Equal(0.266, choice.DropV, 9);
        Assert.Equal(13.3, choice.MilliohmPerM, 9);
    }

    /// <summary>4.17 A over 5 m of 1.5 mm² (12.7 mΩ/m) lose 0.265 V: worked example, midmarchartsbooks.org. IEC 60228 allows 13.3 mΩ/m, hence 0.277 V.</summary>
    [Fact]
    public void Choose_PublishedExample_TakesItsSize()
    {
        var choice = ConductorSize.Choose(Need(asked: 0.5, current: 4.17, length: 5000));

        Assert.Equal(1.5, choice.SizeMm2);
        Assert.Equal(0.265 * 13.3 / 12.7, choice.DropV, 0.001);
    }

    [Fact]
    public void Choose_WarmConductor_LosesMoreAndMayGrow()
    {
        // 1.5 mm² at 85 °C: 0.277 V × 1.255 = 0.348 V, more than 0.3 V.
        var choice = ConductorSize.Choose(Need(asked: 0.5, current: 4.17, length: 5000) with { Celsius = 85 });

        Assert.Equal((2.5, ConductorReason.Drop), (choice.SizeMm2, choice.Reason));
    }

    [Fact]
    public void Choose_FusedFeed_StandsBehindItsFuse()
    {
        // 4 A take a 5 A fuse; the manual puts 0.5 mm² behind 7.5 A. A 15 A fuse asks for 1.25 mm², which is 1.5 mm² of the series.
        Assert.Equal(0.5, ConductorSize.Choose(Need(0.5, 4, 300) with { FuseA = 5 }).SizeMm2);
        var choice = ConductorSize.Choose(Need(0.5, 4, 300) with { FuseA = 15 });
        Assert.Equal((1.5, ConductorReason.Fuse), (choice.SizeMm2, choice.Reason));
    }

    [Fact]
    public void Choose_WireThatDoes_KeepsItsSize()
    {
        var thick = ConductorSize.Choose(Need(asked: 2.5, current: 5, length: 500));
        Assert.Equal((2.5, 0.5), (thick.SizeMm2, thick.NeededMm2));

        // 0.85 mm² lies between two sizes of the series and carries the 7 A of the manual.
        Assert.Equal(0.85, ConductorSize.Choose(Need(asked: 0.85, current: 7, length: 500)).SizeMm2);
    }

    [Fact]
    public void Choose_CurrentBeyondTheTable_TakesTheLargest()
    {
        var choice = ConductorSize.Choose(Need(asked: 0.5, current: 80, length: 300));

        Assert.Equal((10.0, null, ConductorReason.Current), (choice.SizeMm2, choice.ByCurrentMm2, choice.Reason));
        Assert.Equal(25, ConductorSize.Choose(Need(asked: 25, current: 80, length: 300)).SizeMm2);
    }

    [Theory]
    [InlineData(0.35, 0)]
    [InlineData(0.5, 7.5)]
    [InlineData(0.75, 7.5)]
    [InlineData(1, 10)]
    [InlineData(1.5, 15)]
    [InlineData(2.5, 20)]
    [InlineData(4, 25)]
    [InlineData(6, 30)]
    public void FuseFor_Size_IsTheManualsFuseOfTheNextSmallerRow(double sizeMm2, double fuseA) => Assert.Equal(fuseA, ConductorSize.FuseFor(sizeMm2));

    private static ConductorNeed Need(double asked, double current, double length) => new(asked, current, length, 0.3, 20, 0.5);
}
