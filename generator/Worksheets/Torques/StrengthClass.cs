namespace Swapwright.Worksheets.Torques;

/// <summary>Proof strength of bolts by strength class.</summary>
public static class StrengthClass
{
    /// <summary>
    /// Stress under proof load in pascals, ISO 898-1 table 3. 580 MPa of class 8.8 up to M16 is printed with the torque table at
    /// cncexpo.com; the others are from memory. Null for a class that is not known, or not made in this size.
    /// </summary>
    /// <param name="diameter">Nominal, in metres: class 8.8 is stronger above 16 mm, and 9.8 ends there.</param>
    public static double? Proof(string name, double diameter) => (name, diameter <= 0.016) switch
    {
        ("4.6", _) => 225e6,
        ("4.8", _) => 310e6,
        ("5.6", _) => 280e6,
        ("5.8", _) => 380e6,
        ("6.8", _) => 440e6,
        ("8.8", true) => 580e6,
        ("8.8", false) => 600e6,
        ("9.8", true) => 650e6,
        ("10.9", _) => 830e6,
        ("12.9", _) => 970e6,
        _ => null,
    };
}
