using System.Collections.Immutable;

namespace Swapwright.Worksheets.Gearing;

/// <summary>What a speedometer is turned by, and what the law lets it show.</summary>
public static class Speedometer
{
    /// <summary>The road speeds at which UN Regulation No. 39 has it tested, km/h (from memory).</summary>
    public static readonly ImmutableArray<double> TestSpeedsKmh = [40, 80, 120];

    /// <summary>
    /// Turns of the speedometer's drive for a metre: 1 ∕ U at the wheel, times the final drive where the shaft before it is
    /// tapped, times drive teeth over pinion teeth (follows from the gearing). The worksheet leaves out a drive that is not
    /// <see cref="SpeedDrive.IsSound"/>, and with it teeth of nought.
    /// </summary>
    /// <param name="circumference">Metres that the wheel rolls in one turn.</param>
    public static double TurnsPerMetre(SpeedDrive drive, double pinionTeeth, double final, double circumference) =>
        (drive.BeforeFinal ? final : 1) / circumference * drive.DriveTeeth / pinionTeeth;

    /// <summary>
    /// The most that may be shown at a true speed, km/h: V2 + 0.1 V2 + 4 (UN Regulation No. 39, 5.3: 0 ≤ V1 − V2 ≤ 0.1 V2 + 4). The
    /// least is V2 itself.
    /// </summary>
    public static double MostShown(double trueKmh) => trueKmh + (0.1 * trueKmh) + 4;

    /// <summary>
    /// Whether an instrument that shows <paramref name="factor"/> times the true speed keeps the limits at every test speed. A
    /// rounding error in the twelfth place is none.
    /// </summary>
    public static bool IsLawful(double factor) => factor >= 1 - 1e-12 && TestSpeedsKmh.All(speed => factor * speed <= MostShown(speed) + 1e-9);

    /// <summary>
    /// The most teeth of a pinion that still show no less than the true speed: more teeth turn the drive slower, and an
    /// instrument that shows too little is lawful nowhere (UN Regulation No. 39, 5.3).
    /// </summary>
    /// <param name="factor">What it shows with <paramref name="teeth"/> over the true speed.</param>
    public static int PinionTeeth(double factor, double teeth) => (int)Math.Floor((factor * teeth) + 1e-9);
}
