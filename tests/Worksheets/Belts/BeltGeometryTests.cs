using System.Collections.Immutable;
using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

public sealed class BeltGeometryTests
{
    /// <summary>
    /// Shigley, equations 17-1 and 17-2; worked in Budynas' solutions manual, chapter 17: D 18, d 6, C 96 in gives 230.074 in.
    /// </summary>
    [Fact]
    public void Solve_ShigleyOpenBelt_ReproducesLengthAndAngles()
    {
        var path = Path(Loop(Round("large", 0, 0, 18), Round("small", 96, 0, 6)));

        Assert.Equal(230.074, path.LengthMm, 3);
        Assert.Equal(3.266674, path.Runs[0].WrapRad, 6);
        Assert.Equal(3.016511, path.Runs[1].WrapRad, 6);
    }

    /// <summary>Diameters 10 and 5, distance 20: bit1024.com prints 63.87; 63.8749 is our own evaluation of the exact formula.</summary>
    [Fact]
    public void Solve_TenAndFiveAtTwenty_ReproducesLength() =>
        Assert.Equal(63.8749, Path(Loop(Round("a", 0, 0, 10), Round("b", 20, 0, 5))).LengthMm, 4);

    /// <summary>Arc of contact on the smaller pulley by (D − d) ∕ C, in whole degrees: table 3-3 of a maker's catalogue, AS-703 page 16, manualshive.com.</summary>
    [Theory]
    [InlineData(0.5, 151)]
    [InlineData(0.7, 139)]
    [InlineData(1.0, 120)]
    [InlineData(1.2, 106)]
    [InlineData(1.4, 91)]
    [InlineData(1.5, 83)]
    public void Solve_TwoPulleys_EmbracesTheSmallerAsTheTableSays(double ratio, double degrees)
    {
        var path = Path(Loop(Round("large", 0, 0, 10 + (200 * ratio)), Round("small", 200, 0, 10)));

        Assert.Equal(degrees, path.Runs[1].WrapRad / Deg, 0.5);
    }

    /// <summary>Inputs from Tayal, Engineering Mechanics, chapter 7 (24, 12, distance 30 cm); exact values our own.</summary>
    [Fact]
    public void Solve_TayalOpenBelt_ReproducesLengthAndLaps()
    {
        var path = Path(Loop(Round("large", 0, 0, 24), Round("small", 30, 0, 12)));

        Assert.Equal(117.7527, path.LengthMm, 4);
        Assert.Equal(203.0739, path.Runs[0].WrapRad / Deg, 4);
        Assert.Equal(156.9261, path.Runs[1].WrapRad / Deg, 4);
    }

    /// <summary>
    /// Crossed belt, 450 and 200 mm at 1.95 m (inputs and formula from a FOSSEE textbook companion; the exact form is that of
    /// the Encyclopaedia Britannica, 11th edition, equation 32A with its sign mended; values our own).
    /// </summary>
    [Fact]
    public void Solve_CrossedBelt_ReproducesLengthAndReportsCrossing()
    {
        var (path, faults) = BeltGeometry.Solve(
            Loop(Round("large", 0, 0, 450), Round("small", 1950, 0, 200, BeltSide.Back)).Pulleys);

        Assert.Equal(4975.311, path!.LengthMm, 3);
        Assert.All(path.Runs, run => Assert.Equal(199.188, run.WrapRad / Deg, 3));
        Assert.Equal(0, BeltGeometry.Turns(path));
        Assert.Contains(new BeltCrossesItself("large", "small"), faults);
    }

    /// <summary>
    /// Crossed belt with Tayal's inputs (0.6, 0.3, distance 3.5 m); 8.47165 m is our own: the published 8.42015 m subtracts the radii in
    /// the last term.
    /// </summary>
    [Fact]
    public void Solve_TayalCrossedBelt_DiffersFromThePublishedSlip() => Assert.Equal(
        8.47165,
        BeltGeometry.Solve(Loop(Round("large", 0, 0, 600), Round("small", 3500, 0, 300, BeltSide.Back)).Pulleys).Path!.LengthMm / 1000,
        5);

    /// <summary>
    /// Equal grooved pulleys: the length is the perimeter of the convex polygon plus one circumference (our own computation).
    /// </summary>
    [Theory]
    [InlineData(100, 1214.1593, 0, 0, 300, 0, 150, 259.80762113533160)]
    [InlineData(40, 1325.6637, 0, 0, 400, 0, 0, 300)]
    public void Solve_EqualPulleysOnATriangle_IsPerimeterPlusCircumference(
        double diameter, double expected, double ax, double ay, double bx, double by, double cx, double cy)
    {
        var path = Path(Loop(Round("a", ax, ay, diameter), Round("b", bx, by, diameter), Round("c", cx, cy, diameter)));

        Assert.Equal(expected, path.LengthMm, 4);
    }

    /// <summary>Back-side test of our own; tangency verified independently.</summary>
    [Fact]
    public void Solve_OneRollerOnTheBack_ReproducesSpansAndWraps()
    {
        var path = Path(Loop(
            Round("a", 0, 0, 160), Round("b", 300, 0, 120), Round("c", 300, 250, 60), Round("d", 150, 140, 70, BeltSide.Back)));

        Assert.Equal(1335.7745, path.LengthMm, 4);
        AssertNear([299.3326, 248.1935, 174.2843, 169.9265], path.Runs.Select(run => run.SpanToNextMm), 4);
        AssertNear([174.886, 93.070, 139.815, 47.771], path.Runs.Select(run => run.WrapRad / Deg), 3);
        Assert.True(path.Anticlockwise);
    }

    /// <summary>
    /// The test of the open-source library BeltTransmission.jl (src/SegmentFree.jl) publishes 1231.345 mm. The difference of
    /// 14.0504 mm is the arc of its second pulley, counted twice there; 1217.2947 mm is right.
    /// </summary>
    [Fact]
    public void Solve_LibraryLoop_IsThePublishedLengthLessTheArcCountedTwice()
    {
        var (path, _) = BeltGeometry.Solve(Loop(
            Round("a", 100, 100, 20),
            Round("b", -100, 100, 20),
            Round("c", -100, -100, 86),
            Round("d", 100, -100, 28),
            Round("e", 80, -200, 28, BeltSide.Back)).Pulleys);

        Assert.Equal(1217.2947, path!.LengthMm, 4);
        Assert.Equal(1231.345, path.LengthMm + (path.Runs[1].RadiusMm * path.Runs[1].WrapRad), 3);
    }

    /// <summary>The following loops and lengths are invented and computed by ourselves, before and apart from this code.</summary>
    [Fact]
    public void Solve_ThreePointLoop_ReproducesLengthAndWraps()
    {
        var path = Path(ThreePoint());

        Assert.Equal(922.6, path.LengthMm, 1);
        AssertNear([145, 114, 101], path.Runs.Select(run => run.WrapRad / Deg), 0);
    }

    [Fact]
    public void Solve_TwoPointLoop_ReproducesLength() => Assert.Equal(882.8, Path(TwoPoint()).LengthMm, 1);

    [Fact]
    public void Solve_Serpentine_ReproducesLengthAndWraps()
    {
        var path = Path(Serpentine());

        Assert.Equal(1779.8, path.LengthMm, 1);
        AssertNear([144, 158, 157, 150, 175, 110], path.Runs.Select(run => run.WrapRad / Deg), 0);
    }

    [Fact]
    public void Solve_SerpentineWithOtherAccessories_ReproducesLengths()
    {
        var loop = Serpentine();

        Assert.Equal(1809.3, Path(loop.With("alternator", pulley => pulley with { X = 215, Y = 255, DiameterMm = 66 })).LengthMm, 1);
        Assert.Equal(1701.8, Path(loop.With("steering", pulley => pulley with { DiameterMm = 76 })).LengthMm, 1);
        Assert.Equal(1739.9, Path(loop.With("compressor", pulley => pulley with { DiameterMm = 90 })).LengthMm, 1);
    }

    /// <summary>Contact points lie on the rim, and each span leaves and arrives at right angles to the radius.</summary>
    [Fact]
    public void Solve_Serpentine_TouchesEveryPulleyAtATangent()
    {
        var runs = Path(Serpentine()).Runs;
        for (var i = 0; i < runs.Length; i++)
        {
            var (from, to) = (runs[i], runs[(i + 1) % runs.Length]);
            var (dx, dy) = (to.ContactStart.X - from.ContactEnd.X, to.ContactStart.Y - from.ContactEnd.Y);
            Assert.Equal(from.SpanToNextMm, Math.Sqrt((dx * dx) + (dy * dy)), 9);
            (BeltPoint, BeltPoint, double)[] ends =
                [(from.Centre, from.ContactEnd, from.RadiusMm), (to.Centre, to.ContactStart, to.RadiusMm)];
            foreach (var (centre, contact, radius) in ends)
            {
                var (rx, ry) = (contact.X - centre.X, contact.Y - centre.Y);
                Assert.Equal(radius, Math.Sqrt((rx * rx) + (ry * ry)), 9);
                Assert.Equal(0, ((rx * dx) + (ry * dy)) / (radius * from.SpanToNextMm), 9);
            }
        }
    }

    private static void AssertNear(ImmutableArray<double> expected, IEnumerable<double> actual, int decimals) =>
        Assert.Equal(expected.Select(value => Math.Round(value, decimals)), actual.Select(value => Math.Round(value, decimals)));
}
