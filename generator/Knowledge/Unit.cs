using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Swapwright.Knowledge;

/// <summary>
/// A unit of measurement: value in the dimension's coherent SI unit = value × <paramref name="Factor"/> + <paramref name="Offset"/>.
/// Factors of the inch, pound and metric horsepower are exact by definition (NIST SP 811, appendix B).
/// </summary>
public sealed record Unit(string Symbol, Dimension Dimension, decimal Factor, decimal Offset = 0)
{
    /// <summary>A plain number.</summary>
    public static readonly Unit One = new("", Dimension.None, 1);

    public static readonly Unit Millimetre = new("mm", Dimension.Length, 0.001m);
    public static readonly Unit SquareMillimetre = new("mm²", Dimension.Area, 0.000001m);
    public static readonly Unit Degree = new("°", Dimension.Angle, 0.0174532925199432957692m);
    public static readonly Unit Percent = new("%", Dimension.Share, 0.01m);
    public static readonly Unit Ampere = new("A", Dimension.Current, 1);
    public static readonly Unit Kilogram = new("kg", Dimension.Mass, 1);
    public static readonly Unit Litre = new("L", Dimension.Volume, 0.001m);
    public static readonly Unit Bar = new("bar", Dimension.Pressure, 100000);
    public static readonly Unit Newton = new("N", Dimension.Force, 1);
    public static readonly Unit Volt = new("V", Dimension.Voltage, 1);
    public static readonly Unit Celsius = new("°C", Dimension.Temperature, 1, 273.15m);
    public static readonly Unit Hertz = new("Hz", Dimension.Frequency, 1);
    public static readonly Unit NewtonMetre = new("N m", Dimension.Torque, 1);
    public static readonly Unit KilogramPerLitre = new("kg/L", Dimension.Density, 1000);
    public static readonly Unit GramPerKilowattHour = new("g/kWh", Dimension.Consumption, 0.001m / 3600000);
    public static readonly Unit Hour = new("h", Dimension.Duration, 3600);

    /// <summary>Every unit a knowledge base may write.</summary>
    public static readonly ImmutableArray<Unit> All =
    [
        One,
        Millimetre, new("cm", Dimension.Length, 0.01m), new("m", Dimension.Length, 1), new("km", Dimension.Length, 1000), new("in", Dimension.Length, 0.0254m), new("ft", Dimension.Length, 0.3048m),
        SquareMillimetre, new("cm²", Dimension.Area, 0.0001m),
        Litre, new("mL", Dimension.Volume, 0.000001m), new("cm³", Dimension.Volume, 0.000001m),
        Kilogram, new("g", Dimension.Mass, 0.001m), new("lb", Dimension.Mass, 0.45359237m),
        Degree, new("rad", Dimension.Angle, 1),
        Hour, new("min", Dimension.Duration, 60), new("s", Dimension.Duration, 1), new("ms", Dimension.Duration, 0.001m),
        new("km/h", Dimension.Speed, 0.2777777777777777777777777778m), new("mph", Dimension.Speed, 0.44704m), new("m/s", Dimension.Speed, 1),
        new("rpm", Dimension.RotationalSpeed, 0.1047197551196597746154m),
        Newton, new("kN", Dimension.Force, 1000), new("lbf", Dimension.Force, 4.4482216152605m),
        NewtonMetre, new("lb ft", Dimension.Torque, 1.3558179483314004m), new("lb in", Dimension.Torque, 0.1129848290276167m),
        new("kW", Dimension.Power, 1000), new("W", Dimension.Power, 1), new("PS", Dimension.Power, 735.49875m), new("hp", Dimension.Power, 745.69987158227022m),
        Bar, new("kPa", Dimension.Pressure, 1000), new("MPa", Dimension.Pressure, 1000000), new("psi", Dimension.Pressure, 6894.757293168361m),
        new("L/h", Dimension.VolumeFlow, 0.000000277777777777777777777778m), new("L/min", Dimension.VolumeFlow, 0.0000166666666666666666666667m), new("cm³/min", Dimension.VolumeFlow, 0.0000000166666666666666666666667m),
        Ampere, new("mA", Dimension.Current, 0.001m),
        Volt, new("mV", Dimension.Voltage, 0.001m),
        new("Ω", Dimension.Resistance, 1), new("kΩ", Dimension.Resistance, 1000), new("mΩ", Dimension.Resistance, 0.001m),
        new("H", Dimension.Inductance, 1), new("mH", Dimension.Inductance, 0.001m),
        KilogramPerLitre, new("kg/m³", Dimension.Density, 1),
        GramPerKilowattHour,
        Celsius, new("K", Dimension.Temperature, 1), new("°F", Dimension.Temperature, 0.5555555555555555555555555556m, 255.3722222222222222222222222m),
        Hertz,
        Percent,
    ];

    // What people type where the symbol is not on the keyboard.
    private static readonly FrozenDictionary<string, string> s_spellings = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["mm2"] = "mm²", ["cm2"] = "cm²", ["cm3"] = "cm³", ["cc"] = "cm³", ["l"] = "L", ["ml"] = "mL", ["deg"] = "°", ["Nm"] = "N m", ["N·m"] = "N m",
        ["lbft"] = "lb ft", ["lbin"] = "lb in", ["l/h"] = "L/h", ["l/min"] = "L/min", ["cc/min"] = "cm³/min", ["cm3/min"] = "cm³/min", ["ohm"] = "Ω", ["kohm"] = "kΩ",
        ["mohm"] = "mΩ", ["degC"] = "°C", ["degF"] = "°F", ["1/min"] = "rpm", ["inch"] = "in", ["hours"] = "h",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, Unit> s_bySymbol = All.ToFrozenDictionary(unit => unit.Symbol, StringComparer.Ordinal);

    /// <summary>The unit that a symbol or its keyboard spelling names; null where none does.</summary>
    public static Unit? Find(string symbol) =>
        s_bySymbol.GetValueOrDefault(s_spellings.GetValueOrDefault(symbol, symbol));

    /// <summary>The same quantity in another unit of the same dimension.</summary>
    /// <exception cref="ArgumentException">The dimensions differ.</exception>
    public decimal Convert(decimal value, Unit to)
    {
        if (to.Dimension != Dimension)
        {
            throw new ArgumentException($"a quantity in `{Symbol}` is no {to.Dimension}", nameof(to));
        }

        return to == this ? value : (((value * Factor) + Offset - to.Offset) / to.Factor).Rounded((Offset - to.Offset) / to.Factor);
    }
}

internal static class DecimalTail
{
    // Decimal division leaves a rounding tail in the 28th digit; this many significant digits are more than any workshop needs.
    private const int Digits = 14;

    /// <summary>Cuts the tail of a division off, however small the number is.</summary>
    /// <param name="offset">What was added last: where it cancels the number out, the tail has its size.</param>
    public static decimal Rounded(this decimal value, decimal offset)
    {
        var size = Math.Max(Math.Abs(value), Math.Abs(offset));
        var magnitude = size == 0 ? 0 : (int)Math.Floor(Math.Log10((double)size));
        return Math.Round(value, Math.Clamp(Digits - 1 - magnitude, 0, 28)).Normalized();
    }

    /// <summary>Drops trailing zeros, so that a converted number prints as a typed one does.</summary>
    public static decimal Normalized(this decimal value) => value / 1.000000000000000000000000000000000m;
}
