using Swapwright.Knowledge;
using UnitsNet;
using UnitsNet.Units;

namespace Swapwright.Tests.Knowledge;

/// <summary>Our conversion factors against those of UnitsNet, unit by unit.</summary>
public sealed class UnitTests
{
    /// <summary>Symbol → the same unit of UnitsNet and the coherent SI unit of its dimension.</summary>
    private static readonly Dictionary<string, (Enum Unit, Enum Si)> s_theirs = new(StringComparer.Ordinal)
    {
        ["mm"] = (LengthUnit.Millimeter, LengthUnit.Meter),
        ["cm"] = (LengthUnit.Centimeter, LengthUnit.Meter),
        ["m"] = (LengthUnit.Meter, LengthUnit.Meter),
        ["km"] = (LengthUnit.Kilometer, LengthUnit.Meter),
        ["in"] = (LengthUnit.Inch, LengthUnit.Meter),
        ["ft"] = (LengthUnit.Foot, LengthUnit.Meter),
        ["mm²"] = (AreaUnit.SquareMillimeter, AreaUnit.SquareMeter),
        ["cm²"] = (AreaUnit.SquareCentimeter, AreaUnit.SquareMeter),
        ["L"] = (VolumeUnit.Liter, VolumeUnit.CubicMeter),
        ["mL"] = (VolumeUnit.Milliliter, VolumeUnit.CubicMeter),
        ["cm³"] = (VolumeUnit.CubicCentimeter, VolumeUnit.CubicMeter),
        ["kg"] = (MassUnit.Kilogram, MassUnit.Kilogram),
        ["g"] = (MassUnit.Gram, MassUnit.Kilogram),
        ["lb"] = (MassUnit.Pound, MassUnit.Kilogram),
        ["°"] = (AngleUnit.Degree, AngleUnit.Radian),
        ["rad"] = (AngleUnit.Radian, AngleUnit.Radian),
        ["h"] = (DurationUnit.Hour, DurationUnit.Second),
        ["min"] = (DurationUnit.Minute, DurationUnit.Second),
        ["s"] = (DurationUnit.Second, DurationUnit.Second),
        ["ms"] = (DurationUnit.Millisecond, DurationUnit.Second),
        ["km/h"] = (SpeedUnit.KilometerPerHour, SpeedUnit.MeterPerSecond),
        ["mph"] = (SpeedUnit.MilePerHour, SpeedUnit.MeterPerSecond),
        ["m/s"] = (SpeedUnit.MeterPerSecond, SpeedUnit.MeterPerSecond),
        ["rpm"] = (RotationalSpeedUnit.RevolutionPerMinute, RotationalSpeedUnit.RadianPerSecond),
        ["N"] = (ForceUnit.Newton, ForceUnit.Newton),
        ["kN"] = (ForceUnit.Kilonewton, ForceUnit.Newton),
        ["lbf"] = (ForceUnit.PoundForce, ForceUnit.Newton),
        ["N m"] = (TorqueUnit.NewtonMeter, TorqueUnit.NewtonMeter),
        ["lb ft"] = (TorqueUnit.PoundForceFoot, TorqueUnit.NewtonMeter),
        ["lb in"] = (TorqueUnit.PoundForceInch, TorqueUnit.NewtonMeter),
        ["W"] = (PowerUnit.Watt, PowerUnit.Watt),
        ["kW"] = (PowerUnit.Kilowatt, PowerUnit.Watt),
        ["PS"] = (PowerUnit.MetricHorsepower, PowerUnit.Watt),
        ["bar"] = (PressureUnit.Bar, PressureUnit.Pascal),
        ["kPa"] = (PressureUnit.Kilopascal, PressureUnit.Pascal),
        ["MPa"] = (PressureUnit.Megapascal, PressureUnit.Pascal),
        ["psi"] = (PressureUnit.PoundForcePerSquareInch, PressureUnit.Pascal),
        ["L/h"] = (VolumeFlowUnit.LiterPerHour, VolumeFlowUnit.CubicMeterPerSecond),
        ["L/min"] = (VolumeFlowUnit.LiterPerMinute, VolumeFlowUnit.CubicMeterPerSecond),
        ["cm³/min"] = (VolumeFlowUnit.CubicCentimeterPerMinute, VolumeFlowUnit.CubicMeterPerSecond),
        ["A"] = (ElectricCurrentUnit.Ampere, ElectricCurrentUnit.Ampere),
        ["mA"] = (ElectricCurrentUnit.Milliampere, ElectricCurrentUnit.Ampere),
        ["V"] = (ElectricPotentialUnit.Volt, ElectricPotentialUnit.Volt),
        ["mV"] = (ElectricPotentialUnit.Millivolt, ElectricPotentialUnit.Volt),
        ["Ω"] = (ElectricResistanceUnit.Ohm, ElectricResistanceUnit.Ohm),
        ["Hz"] = (FrequencyUnit.Hertz, FrequencyUnit.Hertz),
        ["kΩ"] = (ElectricResistanceUnit.Kiloohm, ElectricResistanceUnit.Ohm),
        ["mΩ"] = (ElectricResistanceUnit.Milliohm, ElectricResistanceUnit.Ohm),
        ["H"] = (ElectricInductanceUnit.Henry, ElectricInductanceUnit.Henry),
        ["mH"] = (ElectricInductanceUnit.Millihenry, ElectricInductanceUnit.Henry),
        ["kg/L"] = (DensityUnit.KilogramPerLiter, DensityUnit.KilogramPerCubicMeter),
        ["kg/m³"] = (DensityUnit.KilogramPerCubicMeter, DensityUnit.KilogramPerCubicMeter),
        ["g/kWh"] = (BrakeSpecificFuelConsumptionUnit.GramPerKiloWattHour, BrakeSpecificFuelConsumptionUnit.KilogramPerJoule),
        ["°C"] = (TemperatureUnit.DegreeCelsius, TemperatureUnit.Kelvin),
        ["K"] = (TemperatureUnit.Kelvin, TemperatureUnit.Kelvin),
        ["°F"] = (TemperatureUnit.DegreeFahrenheit, TemperatureUnit.Kelvin),
        ["%"] = (RatioUnit.Percent, RatioUnit.DecimalFraction),
    };

    public static TheoryData<string> Symbols => [.. Unit.All.Select(unit => unit.Symbol).Where(symbol => symbol is not ("" or "hp"))];

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Factor_EveryUnit_IsThatOfUnitsNet(string symbol)
    {
        var ours = Unit.Find(symbol)!;
        Assert.True(s_theirs.TryGetValue(symbol, out var theirs), $"name the unit of UnitsNet that `{symbol}` is held against");

        foreach (var value in new[] { 0.001m, 1m, 37.5m, 12000m })
        {
            var expected = UnitConverter.Convert((double)value, theirs.Unit, theirs.Si);
            Near(expected, (double)((value * ours.Factor) + ours.Offset));
        }
    }

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Convert_ToEveryUnitOfTheDimension_IsAsUnitsNetConverts(string symbol)
    {
        var from = Unit.Find(symbol)!;
        foreach (var to in Unit.All.Where(other => other.Dimension == from.Dimension && other.Symbol != "hp"))
        {
            var expected = UnitConverter.Convert(37.5, s_theirs[symbol].Unit, s_theirs[to.Symbol].Unit);
            Near(expected, (double)from.Convert(37.5m, to));
        }
    }

    [Theory]
    [MemberData(nameof(Symbols))]
    public void Convert_ThereAndBack_GivesTheSame(string symbol)
    {
        var unit = Unit.Find(symbol)!;
        foreach (var other in Unit.All.Where(other => other.Dimension == unit.Dimension))
        {
            Near(37.5, (double)other.Convert(unit.Convert(37.5m, other), unit));
        }
    }

    /// <summary>UnitsNet rounds the horsepower to 745.69 W. It is 550 foot pounds-force a second, by definition (NIST SP 811, appendix B).</summary>
    [Fact]
    public void Factor_Horsepower_Is550FootPoundsForceASecond() =>
        Near(550 * UnitConverter.Convert(1, TorqueUnit.PoundForceFoot, TorqueUnit.NewtonMeter), (double)Unit.Find("hp")!.Factor);

    [Fact]
    public void Convert_OtherDimension_IsRefused() => Assert.Throws<ArgumentException>(() => Unit.Millimetre.Convert(1, Unit.Kilogram));

    [Theory]
    [InlineData("mm2", "mm²")]
    [InlineData("cc", "cm³")]
    [InlineData("Nm", "N m")]
    [InlineData("lbft", "lb ft")]
    [InlineData("ohm", "Ω")]
    [InlineData("deg", "°")]
    [InlineData("degF", "°F")]
    [InlineData("1/min", "rpm")]
    public void Find_KeyboardSpelling_IsTheUnit(string spelling, string symbol) => Assert.Equal(symbol, Unit.Find(spelling)?.Symbol);

    [Theory]
    [InlineData("MM")]
    [InlineData("kw")]
    [InlineData("stone")]
    public void Find_UnknownSymbol_IsNothing(string symbol) => Assert.Null(Unit.Find(symbol));

    private static void Near(double expected, double actual) => Assert.InRange(actual, expected - (1e-9 * Math.Abs(expected)), expected + (1e-9 * Math.Abs(expected)));
}
