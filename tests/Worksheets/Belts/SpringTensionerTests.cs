using System.Collections.Immutable;
using System.Xml.Linq;
using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>The serpentine loop with a spring in place of the slide: towards +x its roller slackens the belt. That the arm stands in the middle part is common practice, no source.</summary>
public sealed class SpringTensionerTests
{
    private static readonly ImmutableArray<StockedBelt> Stock = [.. Enumerable.Range(340, 30).Select(step => new StockedBelt(6, step * 5, "belt"))];

    [Fact]
    public void Compute_SpringInTheMiddle_TakesTheBeltNearestToTheMark()
    {
        var result = BeltWorksheet.Compute(Sprung(0), Stock);

        Assert.Equal("6PK1780", result.Designation);
        Assert.Equal(BeltChoiceReason.NearestMark, result.Recommended!.Reason);
        Assert.Equal(BeltChoiceReason.FurtherFromMark, result.RunnerUp!.Reason);
        Assert.InRange(result.Recommended.TravelPercent!.Value, 45, 55);
    }

    [Fact]
    public void Compute_MarkTowardsTheSlackEnd_TakesAShorterBelt()
    {
        var result = BeltWorksheet.Compute(Sprung(5), Stock);

        Assert.Equal(5, result.NominalAt);
        Assert.Equal(Path(At(5)).LengthMm, result.Nominal!.LengthMm, 9);
        Assert.True(result.Recommended!.Belt.LengthMm < 1780);
        Assert.InRange(result.Recommended.TightAt!.Value, -1, 11); // half the travel of 24 mm about the mark
    }

    [Fact]
    public void Compute_ArmOutsideTheMiddlePart_IsNotRecommended()
    {
        // 1793 mm fits the slide with room to slip on and to take up, but leaves the arm at four fifths of its travel.
        ImmutableArray<StockedBelt> near = [new(6, 1785, "near")], far = [new(6, 1793, "far")];
        var slide = (SlideAdjuster)Serpentine().Adjuster!;

        Assert.NotNull(BeltWorksheet.Compute(Sprung(0), near).Recommended);
        Assert.Null(BeltWorksheet.Compute(Sprung(0), far).Recommended);
        Assert.NotNull(BeltWorksheet.Compute(Serpentine() with { Adjuster = slide with { FromMm = -30 } }, far).Recommended);
        Assert.NotNull(BeltWorksheet.Compute(Sprung(0), far, new BeltLimits { SpringMiddlePercent = 90 }).Recommended);
    }

    [Fact]
    public void Compute_Spring_IsFittedByPushingTheArmBackToItsStop()
    {
        var result = BeltWorksheet.Compute(Sprung(0), Stock);

        Assert.Equal(1780 - Path(At(12)).LengthMm, result.Recommended!.InstallRoomMm, 6);
        Assert.Null(BeltWorksheet.Compute(Sprung(0), [new(6, 1780, "belt")], new BeltLimits { InstallSlackPercent = 2 }).Recommended);
        Assert.NotNull(BeltWorksheet.Compute(Sprung(0), [new(6, 1780, "belt")], new BeltLimits { TakeUpPercent = 5 }).Recommended); // the spring takes up
    }

    [Fact]
    public void Compute_SpringOnAnArm_TurnsAboutItsPivot()
    {
        var loop = Serpentine() with { Adjuster = new SpringAdjuster(new SwingAdjuster("tensioner", 125, 235, -10 * Deg, 10 * Deg), 2 * Deg) };
        var result = BeltWorksheet.Compute(loop, Stock);
        var roller = result.Running!.Runs[2].Centre;

        Assert.Equal(70, Math.Sqrt(Math.Pow(roller.X - 125, 2) + Math.Pow(roller.Y - 235, 2)), 6);
        Assert.Equal(result.Recommended!.Belt.LengthMm, result.Running.LengthMm, 6);
        Assert.Null(result.Tone);
    }

    [Theory]
    [InlineData(12.1)]
    [InlineData(-12.1)]
    [InlineData(double.NaN)]
    public void Compute_MarkOutsideTheTravel_IsInvalid(double nominal) => Assert.Contains(
        new InvalidInput(nameof(SpringAdjuster.Nominal), "tensioner"), BeltWorksheet.Compute(Sprung(nominal), Stock).Problems);

    [Fact]
    public void Compute_SpringWithinASpring_IsInvalid() => Assert.Contains(
        BeltWorksheet.Compute(Serpentine() with { Adjuster = new SpringAdjuster(new SpringAdjuster(Serpentine().Adjuster!, 0), 0) }, Stock).Problems,
        problem => problem is InvalidInput);

    [Fact]
    public void Svg_Spring_ShowsItsMark()
    {
        var loop = Sprung(4);
        var svg = XElement.Parse(BeltDrawing.Svg(loop, BeltWorksheet.Compute(loop, Stock), new BeltDrawingOptions("x")));

        Assert.Single(svg.Descendants(), element => element.Attribute("class")?.Value == "belt-nominal");
    }

    private static BeltLoop Sprung(double nominal) => Serpentine() with { Adjuster = new SpringAdjuster(Serpentine().Adjuster!, nominal) };

    private static BeltLoop At(double travel) => Serpentine().With("tensioner", pulley => pulley with { X = pulley.X + travel });
}
