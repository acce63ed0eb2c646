using System.Collections.Frozen;

namespace Swapwright.Worksheets.Torques;

/// <summary>Proof strength of bolts by strength class.</summary>
public static class StrengthClass
{
    // Up to 16 mm, and above: class 8.8 is stronger there, and 9.8 is not made.
    private static readonly FrozenDictionary<string, (double Small, double? Large)> s_proof = new Dictionary<string, (double, double?)>(StringComparer.Ordinal)
    {
        ["4.6"] = (225e6, 225e6),
        ["4.8"] = (310e6, 310e6),
        ["5.6"] = (280e6, 280e6),
        ["5.8"] = (380e6, 380e6),
        ["6.8"] = (440e6, 440e6),
        ["8.8"] = (580e6, 600e6),
        ["9.8"] = (650e6, null),
        ["10.9"] = (830e6, 830e6),
        ["12.9"] = (970e6, 970e6),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>
    /// Stress under proof load in pascals, ISO 898-1 table 3. 580 MPa of class 8.8 up to M16 is printed with the torque table at
    /// cncexpo.com; the others are from memory. Null for a class that is not known, or not made in this size.
    /// </summary>
    /// <param name="diameter">Nominal, in metres.</param>
    public static double? Proof(string name, double diameter) =>
        !s_proof.TryGetValue(name, out var proof) ? null : diameter <= 0.016 ? proof.Small : proof.Large;
}
