namespace Swapwright.Worksheets.Hoses;

/// <summary>Classes of rubber fuel hose, SAE J30.</summary>
public enum FuelHoseClass
{
    R6,
    R7,
    R8,
    R9,
    R10,
    R11,
    R12,
}

/// <summary>
/// Which class may carry which pressure. The uses are those of the scope of SAE J30 (June 1998): R6, R7 and R8 for low
/// pressure, R9 for fuel injection at medium pressure, R10 inside the tank, R11 for filler and vent, R12 for feed and return
/// of low permeation.
/// </summary>
public static class FuelHoseClasses
{
    // 50 psi and 100 psi, both from memory; R8 is taken like R6 and R7, R12's pressure is not known here and taken as low.
    private const double LowPressureBar = 3.4;
    private const double InjectionPressureBar = 6.9;

    /// <summary>The lowest class that will do.</summary>
    /// <param name="pressureBar">Highest gauge pressure in use; null for an open pipe.</param>
    /// <param name="injectionBar">Pressure from which only a class made for injection will do, whatever low-pressure hose may stand.</param>
    public static FuelHoseClass Least(double? pressureBar, double injectionBar) => pressureBar >= injectionBar ? FuelHoseClass.R9 : FuelHoseClass.R6;

    /// <summary>Whether a hose of the class may be used outside the tank at a pressure.</summary>
    public static bool Suits(FuelHoseClass hose, double? pressureBar, double injectionBar) => hose switch
    {
        FuelHoseClass.R9 => !(pressureBar > InjectionPressureBar),
        // Made to lie in fuel; outside the tank its cover is not asked to resist anything.
        FuelHoseClass.R10 => false,
        FuelHoseClass.R11 => pressureBar is null or 0,
        _ => !(pressureBar >= injectionBar) && !(pressureBar > LowPressureBar),
    };
}
