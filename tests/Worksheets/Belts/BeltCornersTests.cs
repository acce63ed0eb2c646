using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Drawings;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>Sprung tensioners, rollers on the back, loops without a crank, and measurements that cannot be.</summary>
public sealed class BeltCornersTests
{
    private static readonly ImmutableArray<StockedBelt> s_stock = [.. Enumerable.Range(340, 30).Select(step => new StockedBelt(6, step * 5, "belt"))];

    [Fact]
    public void Figures_SprungSlide_SayByWhatTheBeltIsChosen()
    {
        var ledger = Figures(Serpentine() with { Adjuster = new SpringAdjuster(Serpentine().Adjuster!, 0) }, s_stock);

        Assert.Contains("at the spring's mark", ledger.Figure("loop-length")!.Formula, StringComparison.Ordinal);
        Assert.Equal("mm", ledger.Figure("loop-shortest")!.From[0].Unit);
    }

    [Fact]
    public void Figures_SprungArm_StandsAtAnAngle()
    {
        var arm = new SwingAdjuster("tensioner", 125, 265, -6 * Deg, 6 * Deg);
        var ledger = Figures(Serpentine() with { Adjuster = new SpringAdjuster(arm, 0) }, s_stock);

        Assert.Equal(("°", 6.0), (ledger.Figure("loop-longest")!.From[0].Unit, Math.Round(Math.Abs(ledger.Figure("loop-longest")!.From[0].Value), 6)));
    }

    /// <summary>
    /// The span follows from what the figure says went in, D² − (s₁ r₁ − s₂ r₂)² = t²: a roller on the back counts with the other sign, since the belt
    /// crosses the line of the centres there.
    /// </summary>
    [Fact]
    public void Figures_RollersOnTheBack_GiveTheSpanFromTheirInputs()
    {
        var ledger = Figures(Serpentine(), s_stock);
        var spans = ledger.Figures.Where(figure => figure.Id.StartsWith("loop-span-", StringComparison.Ordinal)).ToList();

        Assert.Equal(6, spans.Count);
        Assert.All(spans, span => Assert.Equal(Math.Sqrt(Math.Pow(span.From[0].Value, 2) - Math.Pow(span.From[1].Value - span.From[2].Value, 2)), span.Value, 1e-6));
        Assert.Equal(["idler", "tensioner"], spans.Where(span => span.From[1].Value < 0).Select(span => span.Id["loop-span-".Length..]).Order(StringComparer.Ordinal));
        Assert.Equal(2, ledger.Figure("loop-loop")!.From.Count(input => input.Title.StartsWith("roller on the back", StringComparison.Ordinal)));
    }

    [Fact]
    public void Figures_NeitherCrankNorAlternator_NameTheWrapsByStation()
    {
        var ledger = Figures(Loop(Round("a", 0, 0, 100), Round("b", 300, 0, 100)), []);

        Assert.Equal(["loop-wrap-a", "loop-wrap-b"], ledger.Figures.Select(figure => figure.Id).Where(id => id.Contains("wrap", StringComparison.Ordinal)));
    }

    /// <summary>A small pulley close to a large one is embraced by less than half a turn: θ = π − 2 asin((R − r) ∕ D).</summary>
    [Fact]
    public void Figures_LittleWrap_IsACaution()
    {
        var ledger = Figures(Loop(Round("a", 0, 0, 300), new Pulley("b", "Alternator", StationRole.Alternator, 200, 0, 60, 6, 0, BeltSide.Grooved)), []);
        var wrap = ledger.Figure("loop-alternator-wrap")!;

        Assert.Equal(180 - (2 * Math.Asin((150 - 30) / 200.0) / Deg), wrap.Value, 9);
        Assert.Equal(("too little wrap", FigureWeight.Caution), (wrap.Remark, wrap.Weight));
    }

    /// <summary>f goes with 1 ∕ √m: a rib four times as heavy sounds an octave lower.</summary>
    [Fact]
    public void Figures_BeltThatSaysWhatARibWeighs_SoundsByThat()
    {
        var usual = Figures(Serpentine(), s_stock);
        var heavy = Figures(Serpentine(), [.. s_stock.Select(belt => belt with { RibMassKgPerM = BeltLimits.Default.RibMassKgPerM * 4 })]);

        Assert.Equal(usual.Value("loop-frequency") / 2, heavy.Value("loop-frequency"), 6);
        Assert.Equal(("setting of the base", "part belt"), (usual.Figure("loop-frequency")!.From[^1].Origin, heavy.Figure("loop-frequency")!.From[^1].Origin));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(0)]
    [InlineData(-3.56)]
    [InlineData(1e6)]
    public void Compute_ImpossibleRibPitch_IsInvalid(double pitch) => Assert.Equal([new InvalidInput("RibPitchMm", null)], Problems(TwoPoint() with { RibPitchMm = pitch }));

    [Fact]
    public void Compute_ImpossiblePulley_NamesEveryFieldAtFault()
    {
        var odd = TwoPoint().With("steering", pulley => pulley with { X = double.NaN, Y = double.NegativeInfinity, PlaneMm = double.NaN, Ribs = -1 });

        Assert.Equal(new[] { "X", "Y", "PlaneMm", "Ribs" }.Select(field => new InvalidInput(field, "steering")), Problems(odd));
    }

    /// <summary>A spring is held to its way and to its mark; a spring on a spring is no way at all.</summary>
    [Fact]
    public void Compute_ImpossibleSpring_NamesEveryFieldAtFault()
    {
        var slide = new SlideAdjuster("tensioner", 0, 0, 5, 5);
        var spring = new SpringAdjuster(slide, 20);

        Assert.Equal(new[] { "DirectionX", "FromMm", "Nominal" }.Select(field => new InvalidInput(field, "tensioner")), Problems(Serpentine() with { Adjuster = spring }));
        Assert.Equal([new InvalidInput("Adjuster", "tensioner")], Problems(Serpentine() with { Adjuster = new SpringAdjuster(spring, 0) }));
    }

    /// <summary>Neighbours far from the fault stay where they are, though they lie a little out of the common plane.</summary>
    [Fact]
    public void Compute_PulleyFarFromTheFault_IsNotMoved()
    {
        var loop = Serpentine().With("compressor", pulley => pulley with { PlaneMm = 5 }).With("steering", pulley => pulley with { PlaneMm = 0.3 });

        Assert.Equal([new PlaneShim("compressor", -5)], BeltWorksheet.Compute(loop, []).Shims.AsEnumerable());
    }

    [Theory]
    [InlineData(0, "flat, ⌀60")]
    [InlineData(1, "1 rib, ⌀60")]
    [InlineData(6, "6 ribs, ⌀60")]
    public void Label_Ribs_AreCounted(int ribs, string line) => Assert.Equal(line, DrawingText.Label(Round("a", 0, 0, 60, ribs: ribs))[^1]);

    /// <summary>No line is longer than twenty-four signs, no pair of surrogates is parted, and what was left out shows.</summary>
    [Theory]
    [InlineData("one two three", "one two three")]
    [InlineData("aaaaaaaaaaaaaaaaaaaa bbbbbbbbbbbbbbbbbbbb cccc", "aaaaaaaaaaaaaaaaaaaa|bbbbbbbbbbbbbbbbbbbb…")]
    [InlineData("aaaaaaaaaaaaaaaaaaaa bbbbbbbbbbbbbbbbbbbbbbbb cccc", "aaaaaaaaaaaaaaaaaaaa|bbbbbbbbbbbbbbbbbbbbbbb…")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", "aaaaaaaaaaaaaaaaaaaaaaa…")]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaa\U0001F697bbbb", "aaaaaaaaaaaaaaaaaaaaaa…")]
    public void Label_LongTitle_IsBrokenAndShortened(string title, string lines)
    {
        var label = DrawingText.Label(Round("a", 0, 0, 60) with { Title = title });

        Assert.Equal(lines, string.Join('|', label.SkipLast(1)));
        Assert.All(label, line => Assert.InRange(line.Length, 1, 24));
    }

    /// <summary>A label keeps off an upright or level stretch of belt as off any other.</summary>
    [Theory]
    [InlineData(60, -100, 60, 100)]
    [InlineData(-100, 60, 100, 60)]
    [InlineData(-100, -60, 100, -60)]
    public void Place_UprightOrLevelSpan_IsKeptClear(double fromX, double fromY, double toX, double toY)
    {
        var placement = new LabelPlacement(12);
        placement.Avoid(new BeltPoint(0, 0), 40);
        placement.Avoid(new BeltPoint(fromX, fromY), new BeltPoint(toX, toY));
        var box = placement.Place(new BeltPoint(0, 0), 40, 30, 12, new BeltPoint(-fromX - toX, -fromY - toY)).Box;

        Assert.False(box.Left <= Math.Max(fromX, toX) && box.Right >= Math.Min(fromX, toX) && box.Top <= Math.Max(fromY, toY) && box.Bottom >= Math.Min(fromY, toY));
    }

    /// <summary>The quick way of writing a coordinate writes what the format of the framework does.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(-0.04)]
    [InlineData(12.3)]
    [InlineData(-12)]
    [InlineData(99999999.9)]
    [InlineData(123456789.5)]
    [InlineData(-1e12)]
    public void N_AnyCoordinate_IsToATenth(double value) => Assert.Equal((Math.Round(value, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture), Drawing.N(value));

    private static BeltProblem[] Problems(BeltLoop loop) => [.. BeltWorksheet.Compute(loop, []).Problems];

    private static Ledger Figures(BeltLoop loop, ImmutableArray<StockedBelt> stock)
    {
        var builder = new LedgerBuilder("belt", "Belts");
        BeltFigures.Add(builder, loop, BeltWorksheet.Compute(loop, stock), BeltLimits.Default);
        return builder.Build();
    }
}
