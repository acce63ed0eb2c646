namespace Swapwright.Worksheets.Fuel;

/// <summary>
/// Flow of injectors. Cubic metres a second, pascals, watts, kilograms a joule and a cubic metre; shares and counts are plain numbers. What is
/// divided by nought gives no finite number, which the ledger turns into a gap.
/// </summary>
public static class InjectorFlow
{
    /// <summary>
    /// Volume of fuel for a power: V̇ = P b ∕ ρ, with the consumption b of the engine at that power
    /// (the injector size formula q = P × BSFC ∕ (N × DC) of carburetor-manual.com, solved for the whole flow).
    /// </summary>
    public static double Fuel(double power, double consumption, double density) => power * consumption / density;

    /// <summary>
    /// Static flow that one injector must have: q = P b ∕ (ρ N d) (carburetor-manual.com: P × BSFC ∕ (N × DC) with a share of
    /// open time d of 0.80 to 0.90).
    /// </summary>
    public static double Needed(double power, double consumption, double density, double count, double duty) => Fuel(power, consumption, density) / (count * duty);

    /// <summary>Share of the time that the injectors are open: d = P b ∕ (ρ N q); the same formula solved for the duty.</summary>
    public static double Duty(double power, double consumption, double density, double count, double flow) => Fuel(power, consumption, density) / (count * flow);

    /// <summary>
    /// Flow at another pressure: q₂ = q₁ √(p₂ ∕ p₁) (pumaracing.co.uk). Both pressures are differences over the injector,
    /// so manifold pressure counts where the regulator does not follow it.
    /// </summary>
    public static double AtPressure(double flow, double from, double to) => flow * Math.Sqrt(to / from);
}
