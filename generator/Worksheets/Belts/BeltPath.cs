using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace Swapwright.Worksheets.Belts;

/// <summary>A point of the belt's plane in millimetres, x right and y up.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct BeltPoint(double X, double Y)
{
    public double DistanceTo(BeltPoint other) =>
        Math.Sqrt(((other.X - X) * (other.X - X)) + ((other.Y - Y) * (other.Y - Y)));
}

/// <summary>The belt on one pulley and on its way to the next one in belt order.</summary>
/// <param name="ContactStart">Where the belt, coming from the previous pulley, meets this one.</param>
/// <param name="ContactEnd">Where it leaves for the next one.</param>
/// <param name="SpanToNextMm">Free length between this pulley and the next.</param>
public sealed record PulleyRun(
    string StationId,
    BeltPoint Centre,
    double RadiusMm,
    BeltSide Side,
    double WrapRad,
    BeltPoint ContactStart,
    BeltPoint ContactEnd,
    double SpanToNextMm);

/// <summary>The belt's effective line round all pulleys: arcs joined by straight spans.</summary>
/// <param name="LengthMm">Effective length, see <see cref="BeltGeometry"/>.</param>
/// <param name="Anticlockwise">Whether the belt order runs anticlockwise as drawn (y up).</param>
/// <param name="Runs">One for each pulley, in the order of the loop.</param>
public sealed record BeltPath(double LengthMm, bool Anticlockwise, ImmutableArray<PulleyRun> Runs);
