namespace Swapwright.Worksheets.Fuel;

/// <summary>
/// An injector, its resistor and the driver between supply and ground. Volts, amperes, ohms, watts. Ohm's law; the wires are left
/// out. Where resistance or limit is nought there is no finite number, which the ledger turns into a gap.
/// </summary>
public static class DriverLoad
{
    /// <summary>
    /// Up to here an injector is called low-ohm and from <see cref="HighOhm"/> high-ohm (injectorrx.com); between the two the sources
    /// disagree.
    /// </summary>
    public const double LowOhm = 4;

    public const double HighOhm = 12;

    /// <summary>Current at rest: I = U ∕ (R + Rₛ). The inductance only delays it.</summary>
    public static double Current(double supply, double injector, double series) => supply / (injector + series);

    /// <summary>Series resistance that keeps the current at the driver's limit: Rₛ = U ∕ I − R; nought or less where none is needed.</summary>
    public static double SeriesNeeded(double supply, double limit, double injector) => (supply / limit) - injector;

    /// <summary>What the resistor dissipates: P = I² Rₛ d, with the share d of the time that current flows.</summary>
    public static double Dissipation(double current, double series, double duty) => current * current * series * duty;
}
