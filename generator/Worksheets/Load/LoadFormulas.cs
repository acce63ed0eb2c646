namespace Swapwright.Worksheets.Load;

/// <summary>
/// The formulas of the load worksheet, in SI: kilograms, metres, newtons. A length of nought beneath the stroke gives no finite
/// number, which the ledger turns into a gap.
/// </summary>
public static class LoadFormulas
{
    /// <summary>Standard acceleration of free fall, m/s² (ISO 80000-3).</summary>
    public const double Gravity = 9.80665;

    /// <summary>
    /// Shares of the fuel's heat at full load of a spark-ignition engine: work 25 to 28, coolant 17 to 26 per cent (Heywood,
    /// Internal Combustion Engine Fundamentals, table 12.1, from memory). Heat to the coolant over work lies between these two.
    /// </summary>
    public const double CoolantLeast = 17.0 / 28;

    /// <inheritdoc cref="CoolantLeast"/>
    public const double CoolantMost = 26.0 / 25;

    /// <summary>
    /// Change of the mass on the rear axle, ΔF_r = m x ∕ L, of a mass <paramref name="mass"/> at <paramref name="place"/> behind
    /// the front axle (moments about the front axle; follows from the lever). The front axle gets what is left of the mass.
    /// </summary>
    public static double OnRear(double mass, double place, double wheelbase) => mass * place / wheelbase;

    /// <summary>
    /// Torque that a worn dry clutch carries, T = n μ F (D + d) ∕ 4: uniform wear (Bhandari, Design of Machine Elements,
    /// chapter 11, as worked in the FOSSEE Scilab companion 764). It is the lower of the two theories; new facings carry a little more.
    /// </summary>
    /// <param name="faces">Friction faces: two for a single plate.</param>
    /// <param name="clamp">N.</param>
    /// <param name="outer">Outer diameter, m.</param>
    /// <param name="inner">Inner diameter, m.</param>
    public static double ClutchTorque(double faces, double friction, double clamp, double outer, double inner) => faces * friction * clamp * (outer + inner) / 4;

    /// <summary>
    /// Load in N on the second of two supports at <paramref name="first"/> and <paramref name="second"/> of masses on a line, by moments
    /// about the first: F = g Σ m (z − z₁) ∕ (z₂ − z₁). The first carries the rest; either may be negative where the masses lie outside.
    /// </summary>
    public static double OnSecond(double first, double second, params ReadOnlySpan<(double Mass, double Place)> masses)
    {
        var moment = 0.0;
        foreach (var (mass, place) in masses)
        {
            moment += mass * (place - first);
        }

        return Gravity * moment / (second - first);
    }
}
