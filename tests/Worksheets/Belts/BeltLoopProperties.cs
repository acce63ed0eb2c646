using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>What must hold for any loop, tried on loops drawn from a seeded generator.</summary>
public sealed class BeltLoopProperties
{
    private const int Loops = 200;

    [Fact]
    public void Solve_AnyLoop_TurnsOnce()
    {
        foreach (var pulleys in RandomLoops(1))
        {
            var path = Path(Loop(pulleys));
            Assert.Equal(2 * Math.PI, path.Runs.Sum(run => (run.Side == BeltSide.Grooved ? 1 : -1) * run.WrapRad), 9);
        }
    }

    [Fact]
    public void RandomLoops_HaveRollersOnTheBackAndBothOrders()
    {
        var loops = RandomLoops(1).ToList();

        // Some tests hold convex loops only, or loops that have an order.
        Assert.All([7, 8], seed => Assert.True(RandomLoops(seed).Count(IsAllGrooved) > Loops / 8));
        Assert.All([2, 5], seed => Assert.True(RandomLoops(seed).Count(HasAnOrder) > Loops / 2));

        Assert.True(loops.Count(pulleys => pulleys.Any(pulley => pulley.Side == BeltSide.Back)) > Loops / 4);
        Assert.True(loops.Count(pulleys => Path(Loop(pulleys)).Anticlockwise) > Loops / 4);
        Assert.True(loops.Count(pulleys => !Path(Loop(pulleys)).Anticlockwise) > Loops / 4);
    }

    [Fact]
    public void Solve_Mirrored_KeepsLengthAndTurnsTheOrder()
    {
        foreach (var pulleys in RandomLoops(2).Where(HasAnOrder))
        {
            var mirrored = AssertSameRuns(pulleys, [.. pulleys.Select(pulley => pulley with { X = -pulley.X })]);
            Assert.NotEqual(Path(Loop(pulleys)).Anticlockwise, mirrored.Anticlockwise);
        }
    }

    [Fact]
    public void Solve_RotatedAndMoved_KeepsLengthAndOrder()
    {
        foreach (var pulleys in RandomLoops(3))
        {
            var (sin, cos) = Math.SinCos(pulleys[0].DiameterMm);
            var moved = AssertSameRuns(
                pulleys,
                [
                    .. pulleys.Select(pulley => pulley with
                    {
                        X = (pulley.X * cos) - (pulley.Y * sin) + 321,
                        Y = (pulley.X * sin) + (pulley.Y * cos) - 123,
                    }),
                ]);
            Assert.Equal(Path(Loop(pulleys)).Anticlockwise, moved.Anticlockwise);
        }
    }

    [Fact]
    public void Solve_OtherStartPulley_KeepsLength()
    {
        foreach (var pulleys in RandomLoops(4))
        {
            AssertSameRuns(pulleys, [.. pulleys.Skip(1), pulleys[0]]);
        }
    }

    [Fact]
    public void Solve_ReversedOrder_KeepsLengthAndWrapsAndSwapsContacts()
    {
        foreach (var pulleys in RandomLoops(5).Where(HasAnOrder))
        {
            var path = Path(Loop(pulleys));
            var reversed = Path(Loop([.. pulleys.Reverse()]));

            Assert.Equal(path.LengthMm, reversed.LengthMm, 6);
            Assert.NotEqual(path.Anticlockwise, reversed.Anticlockwise);
            foreach (var (run, other) in path.Runs.Zip(reversed.Runs.Reverse()))
            {
                Assert.Equal(run.WrapRad, other.WrapRad, 9);
                Assert.Equal(run.ContactStart.X, other.ContactEnd.X, 6);
                Assert.Equal(run.ContactStart.Y, other.ContactEnd.Y, 6);
            }
        }
    }

    [Fact]
    public void Solve_Scaled_ScalesLengthAndKeepsWraps()
    {
        foreach (var pulleys in RandomLoops(6))
        {
            var path = Path(Loop(pulleys));
            var scaled = Path(Loop([.. pulleys.Select(pulley =>
                pulley with { X = 2.5 * pulley.X, Y = 2.5 * pulley.Y, DiameterMm = 2.5 * pulley.DiameterMm })]));

            Assert.Equal(2.5 * path.LengthMm, scaled.LengthMm, 6);
            Assert.All(path.Runs.Zip(scaled.Runs), pair => Assert.Equal(pair.First.WrapRad, pair.Second.WrapRad, 9));
        }
    }

    [Fact]
    public void Solve_ConvexLoopWithAGrownPulley_IsLonger()
    {
        foreach (var pulleys in RandomLoops(7).Where(IsAllGrooved))
        {
            var length = Path(Loop(pulleys)).LengthMm;
            for (var i = 0; i < pulleys.Length; i++)
            {
                var grown = Path(Loop(pulleys.SetItem(i, pulleys[i] with { DiameterMm = pulleys[i].DiameterMm + 0.5 })));
                Assert.True(grown.LengthMm > length);
            }
        }
    }

    /// <summary>A belt round grooved pulleys is the convex hull of their discs; NetTopologySuite knows nothing of belts.</summary>
    [Fact]
    public void Solve_ConvexLoop_IsTheHullOfTheDiscs()
    {
        const int quadrantSegments = 128;
        foreach (var pulleys in RandomLoops(8).Where(IsAllGrooved))
        {
            var discs = pulleys.Select(pulley => new Point(pulley.X, pulley.Y).Buffer(pulley.DiameterMm / 2, quadrantSegments)).ToArray();
            var perimeter = new GeometryCollection(discs).ConvexHull().Length;

            // The buffer is a polygon inside the circle, so the hull is shorter by a few parts in a million.
            var length = Path(Loop(pulleys)).LengthMm;
            Assert.InRange(perimeter, length * (1 - 1e-5), length + 1e-6);
        }
    }

    /// <summary>Two pulleys read the same either way round.</summary>
    private static bool HasAnOrder(ImmutableArray<Pulley> pulleys) => pulleys.Length > 2;

    private static bool IsAllGrooved(ImmutableArray<Pulley> pulleys) => pulleys.All(pulley => pulley.Side == BeltSide.Grooved);

    private static BeltPath AssertSameRuns(ImmutableArray<Pulley> before, ImmutableArray<Pulley> after)
    {
        var path = Path(Loop(before));
        var other = Path(Loop(after));
        Assert.Equal(path.LengthMm, other.LengthMm, 6);
        var wraps = other.Runs.ToDictionary(run => run.StationId, run => run.WrapRad, StringComparer.Ordinal);
        Assert.All(path.Runs, run => Assert.Equal(run.WrapRad, wraps[run.StationId], 9));
        return other;
    }

    /// <summary>
    /// Grooved pulleys round a ring, some gaps with a roller pressed on the belt from outside; those that are no proper loop are drawn
    /// again.
    /// </summary>
    private static IEnumerable<ImmutableArray<Pulley>> RandomLoops(int seed)
    {
        var random = new Random(seed);
        var found = 0;
        while (found < Loops)
        {
            var pulleys = RandomLoop(random);
            if (BeltGeometry.Solve(pulleys).Faults.IsEmpty)
            {
                found++;
                yield return pulleys;
            }
        }
    }

    private static ImmutableArray<Pulley> RandomLoop(Random random)
    {
        var count = random.Next(2, 7);
        var pulleys = ImmutableArray.CreateBuilder<Pulley>();
        for (var i = 0; i < count; i++)
        {
            pulleys.Add(At(i, 230 + (40 * random.NextDouble()), 50 + (70 * random.NextDouble()), BeltSide.Grooved));
            if (random.Next(4) == 0)
            {
                pulleys.Add(At(i + 0.5, 150 + (60 * random.NextDouble()), 50 + (20 * random.NextDouble()), BeltSide.Back));
            }
        }

        return random.Next(2) == 0 ? pulleys.ToImmutable() : [.. pulleys.ToImmutable().Reverse()];

        Pulley At(double place, double distance, double diameter, BeltSide side)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * place / count);
            return Round(FormattableString.Invariant($"p{place}"), distance * cos, distance * sin, diameter, side);
        }
    }
}
