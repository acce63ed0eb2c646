using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Resistance of copper wire and the voltage lost along it.</summary>
public static class Conductor
{
    /// <summary>Resistivity of annealed copper at 20 °C, Ω·mm²/m. Source: IEC 60028.</summary>
    public const double CopperResistivity = 0.017241;

    /// <summary>Temperature coefficient of copper's resistance at 20 °C, 1/K. Source: IEC 60028.</summary>
    public const double CopperTemperatureCoefficient = 0.00393;

    /// <summary>
    /// From this size up, mm², a cable is replaced by a longer one with lugs, not spliced: common practice, no source.
    /// </summary>
    public const double HeaviestSplicedMm2 = 6;

    /// <summary>
    /// Resistance of one metre, Ω/m: ρ/A, times 1 + α(t − 20). The nominal area of a stranded wire is smaller than its name and its
    /// strands are longer than the wire, so that maximum values of standards lie up to 15 % above this.
    /// </summary>
    /// <param name="sizeMm2">Conductor, mm²; NaN comes back for a size that is not above 0.</param>
    public static double OhmPerMetre(double sizeMm2, double celsius = 20) =>
        sizeMm2 > 0 ? CopperResistivity / sizeMm2 * (1 + (CopperTemperatureCoefficient * (celsius - 20))) : double.NaN;

    /// <summary>
    /// Greatest resistance at 20 °C that a flexible copper conductor of plain strands (class 5) may have, mΩ/m, which is Ω/km. Source: IEC
    /// 60228, as tabled at mycableengineering.com and etechnik-synergie.com. The sizes are those that new wire is chosen from.
    /// </summary>
    public static readonly ImmutableArray<(double SizeMm2, double MilliohmPerM)> ClassFive =
        [(0.5, 39), (0.75, 26), (1, 19.5), (1.5, 13.3), (2.5, 7.98), (4, 4.95), (6, 3.30), (10, 1.91)];

    /// <summary>
    /// Greatest resistance of one metre of wire, Ω/m, at a temperature of its conductor: the value of <see cref="ClassFive"/>, times 1 + α(t − 20).
    /// A size between two of the table has the resistivity of the smaller.
    /// </summary>
    /// <param name="sizeMm2">Conductor, mm²; NaN comes back for a size that is not above 0.</param>
    public static double GreatestOhmPerMetre(double sizeMm2, double celsius = 20)
    {
        if (!(sizeMm2 > 0))
        {
            return double.NaN;
        }

        var at = ClassFive.Length - 1;
        while (at > 0 && ClassFive[at].SizeMm2 > sizeMm2)
        {
            at--;
        }

        var (size, milliohm) = ClassFive[at];
        return milliohm / 1000 * size / sizeMm2 * (1 + (CopperTemperatureCoefficient * (celsius - 20)));
    }

    /// <summary>Voltage lost along one conductor, V: ΔV = I·R′·l. Double the length where the return is a wire as well.</summary>
    public static double DropV(double currentA, double ohmPerMetre, double lengthMm) => currentA * ohmPerMetre * lengthMm / 1000;

    /// <summary>Diameter of a gauge, mm: 0.127 mm × 92^((36 − n)/39), n = −3 for 4/0. Source: ASTM B258-02.</summary>
    public static double AwgDiameterMm(int gauge) => 0.127 * Math.Pow(92, (36 - gauge) / 39.0);

    /// <summary>Area of a solid conductor of a gauge, mm²: π d²/4.</summary>
    public static double AwgAreaMm2(int gauge) => Math.PI * Math.Pow(AwgDiameterMm(gauge), 2) / 4;
}
