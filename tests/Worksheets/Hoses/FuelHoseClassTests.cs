using Swapwright.Worksheets.Hoses;

namespace Swapwright.Tests.Worksheets.Hoses;

/// <summary>
/// Uses of the classes from the scope of SAE J30 (June 1998): R6, R7 and R8 low pressure, R9 fuel injection, R10 inside the tank,
/// R11 filler and vent. 50 psi = 3.45 bar and 100 psi = 6.9 bar are from memory.
/// </summary>
public class FuelHoseClassTests
{
    [Theory]
    [InlineData(FuelHoseClass.R6, 0.35, true)]
    [InlineData(FuelHoseClass.R7, 0.35, true)]
    [InlineData(FuelHoseClass.R8, 0.35, true)]
    [InlineData(FuelHoseClass.R6, 1.1, false)]
    [InlineData(FuelHoseClass.R7, 2.8, false)]
    [InlineData(FuelHoseClass.R12, 3.0, false)]
    [InlineData(FuelHoseClass.R9, 0.35, true)]
    [InlineData(FuelHoseClass.R9, 3.5, true)]
    [InlineData(FuelHoseClass.R9, 6.9, true)]
    [InlineData(FuelHoseClass.R9, 7.0, false)]
    [InlineData(FuelHoseClass.R10, null, false)]
    [InlineData(FuelHoseClass.R11, null, true)]
    [InlineData(FuelHoseClass.R11, 0.3, false)]
    public void Suits_ClassAtAPressure_FollowsItsUse(FuelHoseClass known, double? bar, bool suits) => Assert.Equal(suits, FuelHoseClasses.Suits(known, bar, 0.5));

    /// <summary>Even where the limit for injection is set too high, 50 psi is the end of low-pressure hose.</summary>
    [Fact]
    public void Suits_LowPressureHoseAboveItsRating_Never() => Assert.False(FuelHoseClasses.Suits(FuelHoseClass.R7, 4, 20));

    [Theory]
    [InlineData(null, FuelHoseClass.R6)]
    [InlineData(0.35, FuelHoseClass.R6)]
    [InlineData(0.5, FuelHoseClass.R9)]
    [InlineData(3.0, FuelHoseClass.R9)]
    public void Least_Pressure_AsksForInjectionHoseFromTheLimit(double? bar, FuelHoseClass least) => Assert.Equal(least, FuelHoseClasses.Least(bar, 0.5));
}
