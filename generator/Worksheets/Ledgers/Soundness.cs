namespace Swapwright.Worksheets.Ledgers;

/// <summary>
/// A number that no measurement gives (not finite, or beyond anything of a vehicle either way) is taken for one that is not known, so that a formula behind
/// never meets it and its gap says what is wanted.
/// </summary>
internal static class Soundness
{
    /// <summary>In SI no quantity of a vehicle is larger: a bolt's proof strength comes nearest, with some 10⁹ Pa.</summary>
    private const double Beyond = 1e12;

    /// <summary>Nor is any smaller that is not nought: an injector's flow comes nearest, with some 10⁻⁶ m³/s.</summary>
    private const double Below = 1e-12;

    public static bool IsNumber(double value) => value == 0 || (Math.Abs(value) > Below && Math.Abs(value) < Beyond);

    public static Given? IfNumber(this Given? given) => given is { } one && IsNumber(one.Si) ? one : null;
}
