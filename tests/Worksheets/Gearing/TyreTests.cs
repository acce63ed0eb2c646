using Swapwright.Worksheets.Gearing;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Tests.Worksheets.Gearing;

public sealed class TyreTests
{
    /// <summary>205/65 R 15: 647 mm and 245/70 R 16: 749 mm, as a tyre dealer's table rounds them down (2ndhandtyresales.com.au); unrounded 647.5 and 749.4.</summary>
    [Theory]
    [InlineData(205, 0.65, 15, 647.5)]
    [InlineData(245, 0.70, 16, 749.4)]
    public void Diameter_PublishedSize_IsThatOfTheTable(double widthMm, double aspect, double rimInches, double mm) =>
        Assert.Equal(mm, Tyre.Diameter(widthMm / 1000, aspect, rimInches * 0.0254) * 1000, 0.05);

    /// <summary>205/55 R 16: 632 mm and 185/60 R 14: 578 mm in UN Regulation No. 30, annex 5 (from memory).</summary>
    [Theory]
    [InlineData(205, 0.55, 16, 632)]
    [InlineData(185, 0.60, 14, 578)]
    public void Diameter_SizeOfTheRegulation_IsWithinItsRounding(double widthMm, double aspect, double rimInches, double mm) =>
        Assert.Equal(mm, Tyre.Diameter(widthMm / 1000, aspect, rimInches * 0.0254) * 1000, 0.6);

    /// <summary>
    /// 70 mph, overall 3.55, a wheel of 26 in: 3211 rpm in a published calculator that takes 336 (calchorsepower); the exact
    /// constant 63360 ∕ (60 π) = 336.135 gives 3212.7.
    /// </summary>
    [Fact]
    public void EngineSpeed_PublishedExample_AgreesWithinItsConstant()
    {
        var rigid = Math.PI * 26 * 0.0254;
        var rpm = Tyre.EngineSpeed(rigid, 3.55, 70 * 0.44704) * 60 / (2 * Math.PI);

        Assert.Equal(3212.7, rpm, 0.1);
        Assert.Equal(3211, rpm, 2.0);
    }

    [Theory]
    [InlineData(1.754, 3.08, 30)]
    [InlineData(1.669, 14.9, 3)]
    public void EngineSpeed_OfSpeed_GivesItBack(double circumference, double overall, double speed) =>
        Assert.Equal(speed, Tyre.Speed(circumference, overall, Tyre.EngineSpeed(circumference, overall, speed)), 9);

    [Fact]
    public void Circumference_Radial_RollsFurtherThanBiasAndLessThanARigidWheel()
    {
        var radial = Tyre.Circumference(0.6, TyreConstruction.Radial);

        Assert.InRange(radial, Tyre.Circumference(0.6, TyreConstruction.Bias), Math.PI * 0.6);
    }

    /// <summary>165 R 13 measures some 596 mm and 5.60-15 some 660 mm (tyre tables of the time, from memory).</summary>
    [Theory]
    [InlineData(165, 13, TyreConstruction.Radial, 596)]
    [InlineData(142.2, 15, TyreConstruction.Bias, 660)]
    public void Diameter_SizeWithoutSeries_IsNearTheTableOfItsTime(double widthMm, double rimInches, TyreConstruction construction, double mm)
    {
        Given Metres(double value) => new(value, new FigureInput("", value, "m", ""));
        var tyre = new TyreSize(Metres(widthMm / 1000), null, Metres(rimInches * 0.0254), construction);

        Assert.InRange(tyre.Diameter * 1000, mm * 0.98, mm * 1.02);
    }
}
