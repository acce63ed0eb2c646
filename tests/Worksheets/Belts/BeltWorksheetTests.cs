using System.Collections.Immutable;
using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

public sealed class BeltWorksheetTests
{
    private static readonly ImmutableArray<StockedBelt> Stock =
    [
        new(6, 1740, "a"), new(6, 1770, "b"), new(6, 1780, "c"), new(6, 1785, "d"), new(5, 1780, "e"), new(6, 1810, "f"),
    ];

    /// <summary>Our own computation, made before and apart from this code: 12 mm of travel either way gives 1756.7 to 1803.2 mm.</summary>
    [Fact]
    public void Compute_Serpentine_FindsTheWindow()
    {
        var window = BeltWorksheet.Compute(Serpentine(), Stock).Window!;

        Assert.Equal(1756.7, window.ShortestMm, 1);
        Assert.Equal(1803.2, window.LongestMm, 1);
    }

    [Fact]
    public void Compute_Serpentine_RecommendsTheBeltNearestToMidTravel()
    {
        var result = BeltWorksheet.Compute(Serpentine(), Stock);

        Assert.Equal("6PK1780", result.Designation);
        Assert.Equal("c", result.Recommended!.Belt.PartId);
        Assert.Equal(BeltChoiceReason.NearestMidTravel, result.Recommended.Reason);
        Assert.Equal("d", result.RunnerUp!.Belt.PartId);
        Assert.Equal(6 * 3.56, result.WidthMm, 9);
        Assert.Empty(result.Problems);
    }

    [Fact]
    public void Compute_Recommended_IsTightAtTheRunningPath()
    {
        var result = BeltWorksheet.Compute(Serpentine(), Stock);

        Assert.Equal(1780, result.Running!.LengthMm, 6);
        Assert.Equal(125 + result.Recommended!.TightAt!.Value, result.Running.Runs[2].Centre.X, 9);
        Assert.Equal(result.Window!.LongestMm - 1780, result.Recommended.TakeUpRoomMm, 9);
        Assert.Equal(1780 - result.Window.ShortestMm, result.Recommended.InstallRoomMm, 9);
    }

    [Theory]
    [InlineData(1765)] // 0.5 % less is 1756.2, shorter than the loop becomes
    [InlineData(1786)] // 1 % more is 1803.9, longer than the loop becomes
    public void Compute_BeltWithoutRoomToFitOrTighten_IsNotRecommended(double length)
    {
        var result = BeltWorksheet.Compute(Serpentine(), [new(6, length, "x")]);

        Assert.Null(result.Recommended);
        Assert.Single(result.Problems.OfType<NoStockedBelt>());
    }

    [Fact]
    public void Compute_OnlyOneBeltFits_SaysSo()
    {
        var result = BeltWorksheet.Compute(Serpentine(), [new(6, 1780, "c")]);

        Assert.Equal(BeltChoiceReason.OnlyOneThatFits, result.Recommended!.Reason);
        Assert.Null(result.RunnerUp);
    }

    [Fact]
    public void Compute_NoBeltFits_NamesTheNearestEitherWayOfTheRightRibs()
    {
        var result = BeltWorksheet.Compute(
            Serpentine(), [new(6, 1700, "far"), new(6, 1750, "shorter"), new(6, 1850, "longer"), new(5, 1780, "narrow")]);

        Assert.Equal(
            new NoStockedBelt(6, new StockedBelt(6, 1750, "shorter"), new StockedBelt(6, 1850, "longer")),
            Assert.Single(result.Problems));
        Assert.Equal("6PK1780", result.Designation);
    }

    [Fact]
    public void Compute_TravelWithALengthMaximumInside_FindsIt()
    {
        // The pulley swings through the far point of its circle, where the loop is longest.
        var loop = Loop(Round("crank", 0, 0, 120), Round("alternator", 300, 0, 60)) with
        {
            Adjuster = new SwingAdjuster("alternator", 200, 0, -0.4, 0.9),
        };
        var result = BeltWorksheet.Compute(loop, [new(6, 870, "x")]);
        var longest = Path(Loop(Round("crank", 0, 0, 120), Round("alternator", 300, 0, 60))).LengthMm;

        Assert.Equal(longest, result.Window!.LongestMm, 6);
        Assert.Equal(0, result.Window.LongestAt, 4);
        Assert.Equal(0.9, result.Window.ShortestAt, 9);
        Assert.Equal(870, result.Running!.LengthMm, 6);
        Assert.InRange(result.Recommended!.TightAt!.Value, 0, 0.9);
    }

    /// <summary>The swing above reads the same either way from its middle, so the belt is tight at two mirrored places.</summary>
    [Theory]
    [InlineData(-0.9, 1.1, 1)]
    [InlineData(-1.1, 0.9, -1)]
    public void Compute_BeltTightAtTwoPlaces_TakesTheOneNearerToMidTravel(double from, double to, int sign)
    {
        var loop = Loop(Round("crank", 0, 0, 120), Round("alternator", 300, 0, 60)) with
        {
            Adjuster = new SwingAdjuster("alternator", 200, 0, from, to),
        };

        Assert.Equal(sign, Math.Sign(BeltWorksheet.Compute(loop, [new(6, 870, "x")]).Recommended!.TightAt!.Value));
    }

    [Fact]
    public void Compute_SlideDirectionOfAnyLength_IsTakenAsADirection()
    {
        var once = BeltWorksheet.Compute(Serpentine(), Stock).Window;
        var tenfold = BeltWorksheet.Compute(
            Serpentine() with { Adjuster = new SlideAdjuster("tensioner", 10, 0, -12, 12) }, Stock).Window;

        Assert.Equal(once, tenfold);
    }

    [Fact]
    public void Compute_TravelIntoAnotherPulley_CountsOnlyThePossiblePart()
    {
        var result = BeltWorksheet.Compute(
            Serpentine() with { Adjuster = new SlideAdjuster("tensioner", 1, 0, -300, 300) }, Stock);

        var restricted = Assert.Single(result.Problems.OfType<TravelRestricted>());
        Assert.InRange(restricted.UsableFrom, -299, -12);
        Assert.InRange(restricted.UsableTo, 12, 299);
        Assert.True(double.IsFinite(result.Window!.ShortestMm) && double.IsFinite(result.Window.LongestMm));
    }

    [Fact]
    public void Compute_FixedCentres_AsksForTheExactLength()
    {
        var result = BeltWorksheet.Compute(ThreePoint(), [new(4, 921, "near"), new(4, 930, "far")]);

        Assert.Equal(922.6, Assert.Single(result.Problems.OfType<MissingAdjuster>()).LengthMm, 1);
        Assert.Equal("near", result.Recommended!.Belt.PartId);
        Assert.Equal(BeltChoiceReason.WithinFixedCentreTolerance, result.Recommended.Reason);
        Assert.Null(result.Window);
        Assert.Equal("4PK921", result.Designation);
    }

    [Fact]
    public void Compute_AlternatorWrapOf114_IsBelowItsLimit()
    {
        var below = Assert.Single(BeltWorksheet.Compute(ThreePoint(), []).Problems.OfType<WrapBelowLimit>());

        Assert.Equal("alternator", below.StationId);
        Assert.Equal(120 * Deg, below.LimitRad, 9);
    }

    [Fact]
    public void Compute_PlaneOffsetBeyondTheSpansAllowance_IsReportedForThatSpan()
    {
        var loop = ThreePoint().With("pump", pulley => pulley with { PlaneMm = -2 });
        var result = BeltWorksheet.Compute(loop, []);

        Assert.Equal(
            [("alternator", "pump", -2.0), ("pump", "crank", 2.0)],
            result.Problems.OfType<OutOfPlane>().Select(problem => (problem.FromId, problem.ToId, problem.OffsetMm)));
        Assert.True(result.Pulleys[0].PlaneWithinLimit);
        Assert.Equal(result.Pulleys[1].SpanToNextMm / 100, result.Pulleys[1].AllowedPlaneOffsetMm, 9);
    }

    [Fact]
    public void Compute_WiderPulley_IsOnlyANote()
    {
        var result = BeltWorksheet.Compute(ThreePoint().With("crank", pulley => pulley with { Ribs = 6 }), []);

        var mismatch = Assert.Single(result.Problems.OfType<RibMismatch>());
        Assert.Equal(new RibMismatch("crank", 6, 4), mismatch);
        Assert.Equal(BeltProblemWeight.Note, mismatch.Weight);
        Assert.Equal(4, result.Ribs);
    }

    /// <summary>45 mm is the smallest effective diameter of ISO 9981:2020, 5.2.</summary>
    [Theory]
    [InlineData(44.9, 1)]
    [InlineData(45, 0)]
    public void Compute_PulleyAtTheSmallestDiameter_IsJudged(double diameter, int problems) => Assert.Equal(
        problems,
        BeltWorksheet.Compute(ThreePoint().With("alternator", pulley => pulley with { DiameterMm = diameter }), [])
            .Problems.OfType<BelowMinimumDiameter>().Count());

    [Fact]
    public void Compute_FaceThatDoesNotSuitThePulley_IsReported()
    {
        var loop = Serpentine()
            .With("idler", pulley => pulley with { Ribs = 6 })
            .With("steering", pulley => pulley with { Ribs = 0 });

        Assert.Equal(
            [new FaceMismatch("steering", BeltSide.Grooved, 0), new FaceMismatch("idler", BeltSide.Back, 6)],
            BeltWorksheet.Compute(loop, Stock).Problems.OfType<FaceMismatch>());
    }
}
