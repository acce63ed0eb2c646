using System.Collections.Immutable;
using BenchmarkDotNet.Attributes;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Benchmarks.Functions;

/// <summary>The length of one loop, with an accessory more each time and a roller on the belt's back at last.</summary>
public class Belts
{
    private static readonly Pulley s_crank = Grooved("crank", 0, 0, 150);
    private static readonly Pulley s_compressor = Grooved("compressor", 230, 60, 120);
    private static readonly Pulley s_roller = new("roller", "Roller", StationRole.Idler, 125, 165, 76, 0, 0, BeltSide.Back);
    private static readonly Pulley s_alternator = Grooved("alternator", 205, 265, 58);
    private static readonly Pulley s_steering = Grooved("steering", -95, 285, 130);
    private readonly ImmutableArray<Pulley> _three = [s_crank, s_alternator, s_steering];
    private readonly ImmutableArray<Pulley> _four = [s_crank, s_compressor, s_alternator, s_steering];
    private readonly ImmutableArray<Pulley> _five = [s_crank, s_compressor, s_roller, s_alternator, s_steering];

    [Benchmark(Description = "belt over three pulleys")]
    public double Three() => Length(_three);

    [Benchmark(Description = "belt over four pulleys")]
    public double Four() => Length(_four);

    [Benchmark(Description = "belt over five pulleys")]
    public double Five() => Length(_five);

    private static Pulley Grooved(string id, double x, double y, double diameter) => new(id, id, StationRole.Other, x, y, diameter, 6, 0, BeltSide.Grooved);

    private static double Length(ImmutableArray<Pulley> pulleys) =>
        BeltGeometry.Solve(pulleys) is (not null and var path, []) ? path.LengthMm : throw new InvalidOperationException("no belt runs over these pulleys");
}
