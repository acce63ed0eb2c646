using Swapwright.Worksheets.Load;

namespace Swapwright.Tests.Worksheets.Load;

public sealed class LoadFormulasTests
{
    /// <summary>Bhandari, example 11.1, as worked in the FOSSEE Scilab companion 764: d 100, D 200 mm, μ 0.2, one face, F 15,707.96 N: 235.619 N m.</summary>
    [Fact]
    public void ClutchTorque_TextbookPlate_IsThatOfTheBook() =>
        Assert.Equal(235.619, LoadFormulas.ClutchTorque(1, 0.2, 15707.96, 0.2, 0.1), 0.001);

    /// <summary>Bhandari, example 11.6: 250 N m, μ 0.35, 175 and 250 mm, nine springs of 800 N, two faces: worn, it carries 2.1420 times the torque.</summary>
    [Fact]
    public void ClutchTorque_TextbookCarPlate_IsThatOfTheBook() =>
        Assert.Equal(2.1420, LoadFormulas.ClutchTorque(2, 0.35, 9 * 800, 0.25, 0.175) / 250, 0.00005);

    /// <summary>Minus 150 kg at 0.2 m, plus 120 kg at −0.05 m, 2.5 m between the axles: front −15.6, rear −14.4 kg (worked out by hand).</summary>
    [Fact]
    public void OnRear_ExchangedEngine_MovesBothAxles()
    {
        var rear = LoadFormulas.OnRear(-150, 0.2, 2.5) + LoadFormulas.OnRear(120, -0.05, 2.5);

        Assert.Equal(-14.4, rear, 9);
        Assert.Equal(-15.6, -30 - rear, 9);
    }

    /// <summary>Weight shift of the FAA handbook: 100 lb from 30 to 150 in, 8,000 lb in all: the centre moves 1.5 in, from 77.0 to 78.5.</summary>
    [Fact]
    public void OnRear_MovedLoad_ShiftsTheCentreAsTheHandbookSays() =>
        Assert.Equal(78.5, 77.0 + ((LoadFormulas.OnRear(100, 150, 1) - LoadFormulas.OnRear(100, 30, 1)) / 8000), 9);

    /// <summary>The same handbook: to move the centre of 7,800 lb by 1 in, 65 lb go 120 in further.</summary>
    [Fact]
    public void OnRear_WeightToShift_IsThatOfTheHandbook() => Assert.Equal(1, LoadFormulas.OnRear(65, 120, 1) / 7800, 9);

    /// <summary>An engine on a test bed gave 91.9 kW of work and 56.2 kW of heat to its coolant (student report, coursehero pr5707q): within the shares reckoned with.</summary>
    [Fact]
    public void Coolant_EngineOnATestBed_LiesWithinTheShares() => Assert.InRange(56.2 / 91.9, LoadFormulas.CoolantLeast, LoadFormulas.CoolantMost);

    [Theory]
    [InlineData(0.0, 0.7)]
    [InlineData(-0.1, 0.6)]
    public void OnSecond_Mirrored_ChangesTheMountsOver(double first, double second)
    {
        var onSecond = LoadFormulas.OnSecond(first, second, (110, 0.23), (32, 0.62));
        var mirrored = LoadFormulas.OnSecond(-second, -first, (110, -0.23), (32, -0.62));

        Assert.Equal(LoadFormulas.Gravity * 142, onSecond + mirrored, 6);
    }
}
