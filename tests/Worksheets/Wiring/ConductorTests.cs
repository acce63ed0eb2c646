using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class ConductorTests
{
    [Fact]
    public void DropV_PublishedExample_Agrees()
    {
        // 4.17 A over 5 m of 12.7 mΩ/m: 0.265 V, 2.21 % of 12 V. Source: worked example, midmarchartsbooks.org (12.7 mΩ/m is 1.5 mm²).
        var drop = Conductor.DropV(4.17, 0.0127, 5000);

        Assert.Equal(0.265, drop, 3);
        Assert.Equal(2.21, drop / 12 * 100, 2);
    }

    [Theory]
    // Gauge, mm, mm², mΩ/m. Source: tables of tablesandcalc.online and daycounter.com; formula and 4/0, 36 gauge: ASTM B258-02.
    [InlineData(10, 2.588, 5.26, 3.277)]
    [InlineData(12, 2.053, 3.31, 5.211)]
    [InlineData(14, 1.628, 2.08, 8.286)]
    [InlineData(18, 1.024, 0.823, 20.95)]
    [InlineData(20, 0.812, 0.518, 33.3)]
    [InlineData(22, 0.644, 0.326, 53.0)]
    public void Awg_PublishedRows_Agree(int gauge, double diameterMm, double areaMm2, double milliohmPerMetre)
    {
        Assert.Equal(diameterMm, Conductor.AwgDiameterMm(gauge), 0.0006);
        Assert.Equal(areaMm2, Conductor.AwgAreaMm2(gauge), 0.006);
        Assert.Equal(1, Conductor.OhmPerMetre(Conductor.AwgAreaMm2(gauge)) * 1000 / milliohmPerMetre, 0.003);
    }

    [Fact]
    public void AwgDiameterMm_EndsOfTheScale_AreTheDefiningOnes()
    {
        // 4/0 = 0.4600 in, 36 = 0.0050 in, ratio of neighbours 1.1229322. Source: ASTM B258-02 as summarised at liquisearch.com.
        Assert.Equal(0.46 * 25.4, Conductor.AwgDiameterMm(-3), 9);
        Assert.Equal(0.005 * 25.4, Conductor.AwgDiameterMm(36), 9);
        Assert.Equal(1.1229322, Conductor.AwgDiameterMm(17) / Conductor.AwgDiameterMm(18), 7);
    }

    [Theory]
    // Maximum Ω/km of plain class 5 conductors at 20 °C. Source: IEC 60228 as tabled at mycableengineering.com and etechnik-synergie.com.
    [InlineData(0.5, 39)]
    [InlineData(0.75, 26)]
    [InlineData(1, 19.5)]
    [InlineData(1.5, 13.3)]
    [InlineData(2.5, 7.98)]
    [InlineData(4, 4.95)]
    [InlineData(6, 3.30)]
    [InlineData(10, 1.91)]
    public void OhmPerMetre_ClassFiveMaximum_LiesUpToFifteenPercentAbove(double sizeMm2, double maximumOhmPerKm)
    {
        var ratio = maximumOhmPerKm / (Conductor.OhmPerMetre(sizeMm2) * 1000);

        Assert.InRange(ratio, 1.0, 1.16);
    }

    [Fact]
    public void OhmPerMetre_At90Degrees_IsAbout28PercentHigher()
    {
        // About +28 % at 90 °C. Source: IEC 60028 coefficient; Industrial Power Engineering Handbook, p. 970.
        Assert.Equal(1.275, Conductor.OhmPerMetre(1, 90) / Conductor.OhmPerMetre(1), 3);
        Assert.Equal(0.017241, Conductor.OhmPerMetre(1), 9);
        Assert.True(double.IsNaN(Conductor.OhmPerMetre(0)));
    }

    [Theory]
    // Source: one body-builder manual, 2015; edges are inclusive.
    [InlineData(0, 0.5)]
    [InlineData(5, 0.5)]
    [InlineData(5.1, 0.85)]
    [InlineData(7, 0.85)]
    [InlineData(10.5, 1.25)]
    [InlineData(14, 2.0)]
    [InlineData(17.5, 3.0)]
    [InlineData(21, 5.0)]
    public void For_CurrentOfTheTable_GivesItsSize(double currentA, double sizeMm2) => Assert.Equal(sizeMm2, ConductorSize.For(currentA));

    [Theory]
    [InlineData(21.1)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void For_OutsideTheTable_GivesNone(double currentA) => Assert.Null(ConductorSize.For(currentA));

    [Theory]
    // Maximum Ω/km of plain class 5 conductors at 20 °C. Source: IEC 60228 as tabled at mycableengineering.com and etechnik-synergie.com.
    [InlineData(0.5, 39)]
    [InlineData(0.75, 26)]
    [InlineData(1, 19.5)]
    [InlineData(1.5, 13.3)]
    [InlineData(2.5, 7.98)]
    [InlineData(4, 4.95)]
    [InlineData(6, 3.30)]
    [InlineData(10, 1.91)]
    public void GreatestOhmPerMetre_SizeOfTheStandard_IsItsMaximum(double sizeMm2, double maximumOhmPerKm)
    {
        Assert.Equal(maximumOhmPerKm, 1000 * Conductor.GreatestOhmPerMetre(sizeMm2), 9);
        Assert.Equal(maximumOhmPerKm * (1 + (0.00393 * 65)), 1000 * Conductor.GreatestOhmPerMetre(sizeMm2, 85), 9);
    }

    [Fact]
    public void GreatestOhmPerMetre_SizeBetween_HasTheResistivityOfTheSmaller()
    {
        Assert.Equal(0.026 * 0.75 / 0.85, Conductor.GreatestOhmPerMetre(0.85), 12);
        Assert.Equal(0.039 * 0.5 / 0.35, Conductor.GreatestOhmPerMetre(0.35), 12);
        Assert.True(double.IsNaN(Conductor.GreatestOhmPerMetre(0)));
    }
}
