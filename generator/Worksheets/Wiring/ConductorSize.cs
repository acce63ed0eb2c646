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
    /// Largest blade fuse that each size stands behind, A, by the row of <see cref="Table"/>. Source: the same manual.
    /// </summary>
    private static readonly ImmutableArray<double> s_fuses = [7.5, 10, 15, 20, 25, 30];

    /// <summary>Largest fuse that a conductor stands behind, A; 0 for one smaller than the table's first.</summary>
    public static double FuseFor(double sizeMm2)
    {
        var fuse = 0.0;
        for (var row = 0; row < Table.Length && Table[row].SizeMm2 <= sizeMm2; row++)
        {
            fuse = s_fuses[row];
        }

        return fuse;
    }

    /// <summary>
    /// The size asked for where it does, else the smallest of <see cref="Conductor.ClassFive"/> that is at least the mechanical minimum,
    /// carries the current, stands behind the fuse and loses no more than what is allowed over the length (one way); the table's largest
    /// where none does.
    /// </summary>
    public static ConductorChoice Choose(ConductorNeed need)
    {
        var largest = Conductor.ClassFive[^1].SizeMm2;
        double Drop(double size) => Conductor.DropV(need.CurrentA, Conductor.GreatestOhmPerMetre(size, need.Celsius), need.LengthMm);
        bool Carries(double size) => size >= (For(need.CurrentA) ?? largest);
        bool StandsBehind(double size) => FuseFor(size) >= (need.FuseA ?? 0);
        bool Loses(double size) => Drop(size) <= need.AllowedDropV;
        double? Smallest(Func<double, bool> does)
        {
            foreach (var (size, _) in Conductor.ClassFive)
            {
                if (does(size))
                {
                    return size;
                }
            }

            return null;
        }

        var (byCurrent, byDrop) = (For(need.CurrentA) is null ? null : Smallest(Carries), Smallest(Loses));
        (ConductorReason Reason, double SizeMm2)[] needs =
        [
            (ConductorReason.Mechanical, need.LeastMm2),
            (ConductorReason.Current, byCurrent ?? largest),
            (ConductorReason.Fuse, need.FuseA is null ? 0 : Smallest(StandsBehind) ?? largest),
            (ConductorReason.Drop, byDrop ?? largest),
        ];
        var (reason, needed) = needs.MaxBy(one => one.SizeMm2);

        // What is asked for may lie between two sizes of the table and still do.
        var asked = need.AskedMm2;
        var size = asked >= need.LeastMm2 && Carries(asked) && StandsBehind(asked) && Loses(asked) ? asked : Math.Max(asked, needed);
        return new(size, Math.Min(size, needed), reason, byCurrent, byDrop, need, Drop(size), 1000 * Conductor.GreatestOhmPerMetre(size, need.Celsius));
    }
}

/// <summary>What asks for the most copper.</summary>
public enum ConductorReason
{
    /// <summary>Thinner wire breaks where it is handled.</summary>
    Mechanical,

    Current,

    /// <summary>The wire has to carry what its fuse lets through.</summary>
    Fuse,

    Drop,
}

/// <summary>What a conductor is chosen for.</summary>
/// <param name="AskedMm2">Conductor of the signal or of the wire as found, mm².</param>
/// <param name="CurrentA">Steady current, A.</param>
/// <param name="LengthMm">Length of the piece, one way, mm.</param>
/// <param name="AllowedDropV">Voltage that the piece may lose, V.</param>
/// <param name="Celsius">Temperature of the conductor: what its insulation stands, °C.</param>
/// <param name="LeastMm2">Mechanical minimum, mm².</param>
/// <param name="FuseA">Fuse that goes into the wire, A; null where the fuse is there already.</param>
public sealed record ConductorNeed(
    double AskedMm2, double CurrentA, double LengthMm, double AllowedDropV, double Celsius, double LeastMm2, double? FuseA = null);

/// <summary>A conductor and why it has its size.</summary>
/// <param name="NeededMm2">Smallest size that does; <see cref="SizeMm2"/> is larger where the wire as found or the signal is, or where no thinner one is sold.</param>
/// <param name="Reason">What asks for the most; the first named of equals.</param>
/// <param name="ByCurrentMm2">What the current alone asks for; null beyond the table.</param>
/// <param name="ByDropMm2">What the voltage drop alone asks for; null beyond the table.</param>
/// <param name="DropV">Voltage lost along the piece, V.</param>
/// <param name="MilliohmPerM">Greatest resistance of a metre at the temperature, mΩ/m.</param>
public sealed record ConductorChoice(
    double SizeMm2, double NeededMm2, ConductorReason Reason, double? ByCurrentMm2, double? ByDropMm2, ConductorNeed For, double DropV, double MilliohmPerM);
