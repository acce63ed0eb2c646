using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>The smallest conductor that a current asks for.</summary>
public static class ConductorSize
{
    /// <summary>
    /// Current that each size carries, A, smallest first. Source: one body-builder manual (2015), with fuses of 7.5, 10, 15, 20, 25
    /// and 30 A in that order. A single maker's table: other tables differ.
    /// </summary>
    public static readonly ImmutableArray<(double SizeMm2, double CurrentA)> Table =
        [(0.5, 5), (0.85, 7), (1.25, 10.5), (2.0, 14), (3.0, 17.5), (5.0, 21)];

    /// <summary>Smallest size of the table, mm²; null for a current beyond the table or one that is not a number of at least 0.</summary>
    public static double? For(double currentA)
    {
        if (!(currentA >= 0))
        {
            return null;
        }

        foreach (var (size, limit) in Table)
        {
            if (currentA <= limit)
            {
                return size;
            }
        }

        return null;
    }

    /// <summary>
    /// The size asked for where it does, else the smallest of the table that carries the current and loses no more than
    /// <paramref name="allowedDropV"/> over the length (20 °C, one way); the table's largest where none does.
    /// </summary>
    public static double AtLeast(double askedMm2, double currentA, double lengthMm, double allowedDropV)
    {
        bool Does(double size) =>
            size >= (For(currentA) ?? 0) && Conductor.DropV(currentA, Conductor.OhmPerMetre(size), lengthMm) <= allowedDropV;

        if (Does(askedMm2))
        {
            return askedMm2;
        }

        foreach (var (size, _) in Table)
        {
            if (size > askedMm2 && Does(size))
            {
                return size;
            }
        }

        return Math.Max(askedMm2, Table[^1].SizeMm2);
    }
}
