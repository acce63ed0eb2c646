using Swapwright.Worksheets.Fuel;

namespace Swapwright.Tests.Worksheets.Fuel;

/// <summary>Formulas of the fuel worksheet against published numbers, each with its source.</summary>
public sealed class PublishedFuelValuesTests
{
    private const double Horsepower = 745.69987158227022;
    private const double Pound = 0.45359237;
    private const double PoundAnHour = Pound / 3600;
    private const double HalfPound = 0.5 * Pound / (Horsepower * 3600);
    private const double PoundsALitre = 1.586 * Pound / 0.001;
    private const double CcPerMinute = 1e-6 / 60;

    /// <summary>carburetor-manual.com: q = P × BSFC ∕ (N × DC); 200 hp, 0.50, four injectors, 0.80 put in by hand give 31.25 lb/h.</summary>
    [Fact]
    public void Needed_TwoHundredHorsepower_IsThePublishedFormula()
    {
        var volume = InjectorFlow.Needed(200 * Horsepower, HalfPound, PoundsALitre, 4, 0.8);

        Assert.Equal(31.25, volume * PoundsALitre / PoundAnHour, 6);
    }

    /// <summary>pumaracing.co.uk: 200 cm³/min at 3.5 bar are 185 cm³/min at 3 bar.</summary>
    [Fact]
    public void AtPressure_TwoHundredAtThreeAndAHalfBar_Gives185AtThree() =>
        Assert.Equal(185, InjectorFlow.AtPressure(200, 3.5e5, 3e5), 0.5);

    /// <summary>sdsefi.com: petrol has 1.586 lb to the litre, so that 50 lb/h are 525 cm³/min (and the rule of thumb is × 10.5).</summary>
    [Fact]
    public void Fuel_FiftyPoundsAnHour_Are525CcAMinute()
    {
        var volume = InjectorFlow.Fuel(100 * Horsepower, HalfPound, PoundsALitre) / CcPerMinute;

        Assert.Equal(525.4, volume, 0.1);
        Assert.Equal(50 * 10.5, volume, 1.0);
    }

    /// <summary>sdsefi.com: 200 hp burn 100 lb/h; with its 1.586 lb to the litre that is 63.05 L/h.</summary>
    [Fact]
    public void Fuel_TwoHundredHorsepower_Is63LitresAnHour() =>
        Assert.Equal(63.05, InjectorFlow.Fuel(200 * Horsepower, HalfPound, PoundsALitre) * 3.6e6, 0.01);

    /// <summary>Ohm's law by hand: 14 V, 2.4 Ω and a driver of 1.5 A want 6.93 Ω, which dissipate 15.6 W while current flows.</summary>
    [Fact]
    public void SeriesNeeded_LowOhmInjector_IsOhmsLaw()
    {
        var ohms = DriverLoad.SeriesNeeded(14, 1.5, 2.4);

        Assert.Equal(6.93, ohms, 0.005);
        Assert.Equal(1.5, DriverLoad.Current(14, 2.4, ohms), 9);
        Assert.Equal(15.6, DriverLoad.Dissipation(1.5, ohms, 1), 0.05);
    }

    /// <summary>injectorrx.com: saturated injectors have 12 to 16 Ω, so that about 1 A flows; peak-and-hold ones 4 Ω and less.</summary>
    [Fact]
    public void Current_ClassesOfInjectors_AreWhatTheyAreCalled()
    {
        Assert.InRange(DriverLoad.Current(14, DriverLoad.HighOhm, 0), 0.8, 1.2);
        Assert.True(DriverLoad.Current(14, DriverLoad.LowOhm, 0) > 3);
    }

    /// <summary>The 24 values of a decade, IEC 60063, from memory: each is itself, and what is a little more takes the next.</summary>
    [Theory]
    [InlineData(6.93, 7.5)]
    [InlineData(6.8, 6.8)]
    [InlineData(9.2, 10)]
    [InlineData(0.47, 0.47)]
    [InlineData(47.1, 51)]
    [InlineData(1, 1)]
    public void AtLeast_AnyResistance_IsTheNextOfTheSeries(double wanted, double made) => Assert.Equal(made, PreferredValues.AtLeast(wanted)!.Value, 9);

    /// <summary>IEC 60063 makes the series by rounding 10 to the power of n ∕ 24; the steps of 2.7 to 4.7 and of 8.2 are its known exceptions. From memory.</summary>
    [Fact]
    public void E24_Steps_LieNearTheirPowers() =>
        Assert.All(PreferredValues.E24.Select((value, at) => (value, at)), step => Assert.InRange(step.value / Math.Pow(10, step.at / 24.0), 0.94, 1.06));

    /// <summary>Any textbook of circuits: after one L ∕ R the current has 63.2 % of its last value. From memory.</summary>
    [Fact]
    public void Time_ToSixtyThreePerCent_IsOneTimeConstant() =>
        Assert.Equal(0.005 / 0.5, CoilCharge.Time(0.005, 0.5, 14, (1 - Math.Exp(-1)) * 28)!.Value, 9);

    /// <summary>At 6000 turns a minute a turn takes 10 ms: four sparks in two turns are 5 ms apart, two are 10 ms.</summary>
    [Theory]
    [InlineData(4, 5)]
    [InlineData(2, 10)]
    [InlineData(1, 20)]
    public void Between_SixThousandTurns_IsByHand(double sparks, double milliseconds) => Assert.Equal(milliseconds, CoilCharge.Between(6000 * Math.PI / 30, sparks) * 1000, 9);
}
