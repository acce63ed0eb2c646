namespace Swapwright.Worksheets.Fuel;

/// <summary>Charging of an ignition coil. Seconds, henries, ohms, volts, radians a second.</summary>
public static class CoilCharge
{
    /// <summary>
    /// Time from switching on to a current: t = −(L ∕ R) ln(1 − I R ∕ U), the step response of a coil with resistance (any
    /// textbook of circuits: 63.2 % of U ∕ R after one L ∕ R). Null where the supply can never drive that current.
    /// </summary>
    public static double? Time(double inductance, double resistance, double supply, double current)
    {
        var share = current * resistance / supply;
        return share is > 0 and < 1 && inductance > 0 ? -(inductance / resistance) * Math.Log(1 - share) : null;
    }

    /// <summary>
    /// Time from one spark of a coil to its next: t = 2 × 2π ∕ (ω s), with the sparks s that the coil gives in the two turns of a
    /// four-stroke cycle: one a cylinder for a coil with distributor, two for a coil that fires two plugs in every turn (definition).
    /// </summary>
    /// <param name="speed">Of the engine, rad/s; above 0.</param>
    /// <param name="sparks">In two turns of the engine; above 0.</param>
    public static double Between(double speed, double sparks) => 4 * Math.PI / (speed * sparks);
}
