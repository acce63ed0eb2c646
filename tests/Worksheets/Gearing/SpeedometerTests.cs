using Swapwright.Worksheets.Gearing;

namespace Swapwright.Tests.Worksheets.Gearing;

public sealed class SpeedometerTests
{
    /// <summary>Upper limits of UN Regulation No. 39, 5.3, as published tables print them: 50 → 59, 70 → 81, 90 → 103, 110 → 125, 130 → 147 km/h.</summary>
    [Theory]
    [InlineData(50, 59)]
    [InlineData(70, 81)]
    [InlineData(90, 103)]
    [InlineData(110, 125)]
    [InlineData(130, 147)]
    public void MostShown_PublishedSpeed_IsThatOfTheTable(double trueKmh, double shown) => Assert.Equal(shown, Speedometer.MostShown(trueKmh), 9);

    [Theory]
    [InlineData(1, true)]
    [InlineData(0.999, false)]
    [InlineData(1.13, true)]
    [InlineData(1.14, false)]
    public void IsLawful_Factor_KeepsBothLimits(double factor, bool lawful) => Assert.Equal(lawful, Speedometer.IsLawful(factor));

    [Fact]
    public void TurnsPerMetre_BeforeTheFinalDrive_GrowsWithIt()
    {
        var tapped = new SpeedDrive(true, 6, 18, null);

        Assert.Equal(4.1 / 3.7, Speedometer.TurnsPerMetre(tapped, 18, 4.1, 1.8) / Speedometer.TurnsPerMetre(tapped, 18, 3.7, 1.8), 12);
        Assert.Equal(Speedometer.TurnsPerMetre(tapped with { BeforeFinal = false }, 18, 4.1, 1.8), Speedometer.TurnsPerMetre(tapped with { BeforeFinal = false }, 18, 3.7, 1.8));
    }

    [Theory]
    [InlineData(21.0 / 19, 19, 21)]
    [InlineData(1, 21, 21)]
    [InlineData(0.9, 20, 18)]
    [InlineData(1.07, 20, 21)]
    public void PinionTeeth_Factor_NeverShowsTooLittle(double factor, double teeth, int wanted)
    {
        Assert.Equal(wanted, Speedometer.PinionTeeth(factor, teeth));
        Assert.True(factor * teeth / wanted >= 1 - 1e-9);
    }
}
