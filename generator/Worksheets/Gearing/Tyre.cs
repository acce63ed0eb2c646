using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Gearing;

public enum TyreConstruction
{
    Radial,
    Bias,
}

/// <summary>A tyre by its size; lengths in metres.</summary>
/// <param name="Aspect">Section height as a share of the width; null for a size of before the series, such as 165 R 13.</param>
public sealed record TyreSize(Given Width, Given? Aspect, Given Rim, TyreConstruction Construction)
{
    /// <summary>The aspect given, or the one that tyres without one were made to.</summary>
    public double AspectTaken => Aspect?.Si ?? Tyre.AspectOfOld(Construction);

    /// <summary>Whether its numbers are those of a wheel.</summary>
    public bool IsSound => Width.Si > 1e-3 && AspectTaken > 1e-3 && Rim.Si > 1e-3 && Diameter < 1e2;

    public double Diameter => Tyre.Diameter(Width.Si, AspectTaken, Rim.Si);

    public double Circumference => Tyre.Circumference(Diameter, Construction);
}

/// <summary>
/// The tyre as a wheel that rolls. Nothing is checked here: the worksheet asks <see cref="TyreSize.IsSound"/> and <see
/// cref="GearSet.IsSound"/> first, which leave out sizes and ratios of nought.
/// </summary>
public static class Tyre
{
    /// <summary>
    /// Outer diameter D = d + 2 W A, all in metres, the aspect a share of one (UN Regulation No. 30, 2.17: section height = 0.01 ×
    /// nominal aspect ratio × nominal width).
    /// </summary>
    public static double Diameter(double width, double aspect, double rim) => rim + (2 * width * aspect);

    /// <summary>
    /// Section height as a share of the width of a tyre whose size says none: 0.80 for radial, 0.95 for bias tyres. Common
    /// practice, no source; sizes of the time differ by some 3 per cent of the height.
    /// </summary>
    public static double AspectOfOld(TyreConstruction construction) => construction == TyreConstruction.Radial ? 0.80 : 0.95;

    /// <summary>
    /// Rolling circumference over outer diameter: 3.05 for radial, 2.99 for bias tyres (ETRTO, from memory; at 60 km/h, rated load
    /// and pressure). A rigid wheel would have π, 3 to 5 per cent more.
    /// </summary>
    public static double RollingFactor(TyreConstruction construction) => construction == TyreConstruction.Radial ? 3.05 : 2.99;

    /// <summary>Way in metres that the wheel rolls in one turn, U = f D.</summary>
    public static double Circumference(double diameter, TyreConstruction construction) => RollingFactor(construction) * diameter;

    /// <summary>Road speed in m/s at an engine speed in rad/s: v = U n ∕ (i_gear i_final) with n = ω ∕ 2π, slip left out.</summary>
    public static double Speed(double circumference, double overall, double engine) => circumference * engine / (2 * Math.PI) / overall;

    /// <summary>Engine speed in rad/s at a road speed in m/s, the inverse of <see cref="Speed"/>.</summary>
    public static double EngineSpeed(double circumference, double overall, double speed) => speed * 2 * Math.PI * overall / circumference;
}
