using System.Collections.Immutable;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>Loops that several tests share. The serpentine ones are invented and their expected numbers our own computations.</summary>
internal static class SampleLoops
{
    public const double Deg = Math.PI / 180;

    public static Pulley Round(string id, double x, double y, double diameter, BeltSide side = BeltSide.Grooved, int ribs = 6) =>
        new(id, id, StationRole.Other, x, y, diameter, side == BeltSide.Back ? 0 : ribs, 0, side);

    public static BeltLoop Loop(params ImmutableArray<Pulley> pulleys) => new("loop", "Loop", "PK", 3.56, pulleys, null);

    public static BeltLoop ThreePoint() => Loop(
        new Pulley("crank", "Crankshaft", StationRole.Crank, 0, 0, 135, 4, 0, BeltSide.Grooved),
        new Pulley("alternator", "Alternator", StationRole.Alternator, 190, 150, 58, 4, 0, BeltSide.Grooved),
        new Pulley("pump", "Water pump", StationRole.Other, 15, 175, 120, 4, 0, BeltSide.Grooved));

    public static BeltLoop TwoPoint() => Loop(
        new Pulley("crank", "Crankshaft", StationRole.Crank, 0, 0, 130, 3, 0, BeltSide.Grooved),
        new Pulley("steering", "Steering pump", StationRole.Other, -200, 120, 135, 3, 0, BeltSide.Grooved));

    public static BeltLoop Serpentine() => Loop(
        new Pulley("crank", "Crankshaft", StationRole.Crank, 0, 0, 150, 6, 0, BeltSide.Grooved),
        new Pulley("compressor", "Compressor", StationRole.Other, 230, 60, 120, 6, 0, BeltSide.Grooved),
        new Pulley("tensioner", "Tensioner", StationRole.Idler, 125, 165, 76, 0, 0, BeltSide.Back),
        new Pulley("alternator", "Alternator", StationRole.Alternator, 205, 265, 58, 6, 0, BeltSide.Grooved),
        new Pulley("steering", "Steering pump", StationRole.Other, -95, 285, 130, 6, 0, BeltSide.Grooved),
        new Pulley("idler", "Idler", StationRole.Idler, -20, 160, 70, 0, 0, BeltSide.Back)) with
    {
        Adjuster = new SlideAdjuster("tensioner", 1, 0, -12, 12),
    };

    public static BeltLoop With(this BeltLoop loop, string id, Func<Pulley, Pulley> change) =>
        loop with { Pulleys = [.. loop.Pulleys.Select(pulley => pulley.Id == id ? change(pulley) : pulley)] };

    public static BeltPath Path(BeltLoop loop)
    {
        var (path, faults) = BeltGeometry.Solve(loop.Pulleys);
        Assert.Empty(faults);
        return path!;
    }
}
