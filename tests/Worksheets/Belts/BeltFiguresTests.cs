using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

/// <summary>The numbers of a loop as they are told to somebody who asks why.</summary>
public sealed class BeltFiguresTests
{
    /// <summary>
    /// Two pulleys of 100 mm, 300 mm apart: two spans of 300 and half a turn round each, 2 × 300 + π × 100 = 914.16 mm; 180° of wrap on both.
    /// </summary>
    [Fact]
    public void Add_TwoEqualPulleys_IsTheElementaryLoop()
    {
        var ledger = Figures(Even(BeltSide.Grooved), [new StockedBelt(6, 914, "belt")]);

        Assert.Equal(914.16, ledger.Value("loop-loop"), 0.005);
        Assert.Equal(300, ledger.Value("loop-span-a"), 1e-9);
        Assert.Equal(300, ledger.Value("loop-longest-span"), 1e-9);
        Assert.Equal(180, ledger.Value("loop-crank-wrap"), 1e-9);
        Assert.Equal(180, ledger.Value("loop-alternator-wrap"), 1e-9);
        Assert.Equal(6, ledger.Value("loop-ribs"));
        Assert.Equal(914, ledger.Value("loop-length"));
        Assert.Equal("the stocked length within the tolerance of the loop", ledger.Figure("loop-length")!.Formula);
        Assert.Null(ledger.Figure("loop-shortest"));
        Assert.Equal("every pulley is in plane", ledger.Figure("loop-spacer")!.Remark);
    }

    /// <summary>The alternator slides 10 mm either way from the middle: each millimetre away makes both spans longer, 20 mm of belt less or more.</summary>
    [Fact]
    public void Add_SlidingAlternator_TellsBothEndsOfItsTravel()
    {
        var ledger = Figures(Even(BeltSide.Grooved) with { Adjuster = new SlideAdjuster("b", 1, 0, -10, 10) }, [new StockedBelt(6, 915, "belt")]);

        Assert.Equal(ledger.Value("loop-loop") - 20, ledger.Value("loop-shortest"), 1e-6);
        Assert.Equal(ledger.Value("loop-loop") + 20, ledger.Value("loop-longest"), 1e-6);
        Assert.Equal("mm", ledger.Figure("loop-shortest")!.From[0].Unit);
        // 915 mm lie (915 − 894.16) ∕ 40 along the travel.
        Assert.Equal((915 - ledger.Value("loop-shortest")) / 40 * 100, ledger.Value("loop-position"), 0.01);
    }

    /// <summary>An adjuster that swings is told by its angle.</summary>
    [Fact]
    public void Add_SwingingAlternator_StandsAtAnAngle()
    {
        var ledger = Figures(Even(BeltSide.Grooved) with { Adjuster = new SwingAdjuster("b", 300, -200, -5 * Deg, 5 * Deg) }, [new StockedBelt(6, 915, "belt")]);

        var stands = ledger.Figure("loop-shortest")!.From[0];
        Assert.Equal(("°", 5.0), (stands.Unit, Math.Round(Math.Abs(stands.Value), 6)));
    }

    /// <summary>6 mm out of plane over 300 mm of span, where a fraction of that is allowed: told at the span, and the shim that mends it.</summary>
    [Fact]
    public void Add_PulleyOutOfPlane_TellsTheSpacer()
    {
        var loop = Even(BeltSide.Grooved).With("b", pulley => pulley with { PlaneMm = 6 });
        var ledger = Figures(loop, []);

        Assert.Equal(("out of plane", FigureWeight.Caution), (ledger.Figure("loop-plane-a")!.Remark, ledger.Figure("loop-plane-a")!.Weight));
        Assert.Equal(6, ledger.Value("loop-spacer"), 1e-9);
        Assert.Contains(" by ", ledger.Figure("loop-spacer")!.Remark, StringComparison.Ordinal);
        Assert.Null(ledger.Figure("loop-length"));
    }

    /// <summary>A string without mass, with a tension below nought or a spread beyond all of it has no note.</summary>
    [Fact]
    public void Compute_SettingsThatNoStringHas_GiveNoNote()
    {
        var sliding = Even(BeltSide.Grooved) with { Adjuster = new SlideAdjuster("b", 1, 0, -10, 10) };
        BeltLimits[] odd = [BeltLimits.Default with { RibMassKgPerM = 0 }, BeltLimits.Default with { NewTensionN = -1 }, BeltLimits.Default with { RunInTensionN = -1 }, BeltLimits.Default with { TensionSpreadPercent = 101 }, BeltLimits.Default with { TensionSpreadPercent = double.NaN }];

        Assert.NotNull(BeltWorksheet.Compute(sliding, [], BeltLimits.Default).Tone);
        Assert.All(odd, limits => Assert.Null(BeltWorksheet.Compute(sliding, [], limits).Tone));
    }

    [Fact]
    public void Add_LoopThatCannotBe_TellsNothing() => Assert.Empty(Figures(Loop(Round("a", 0, 0, 100), Round("b", 0, 0, 100)), []).Figures);

    private static BeltLoop Even(BeltSide side) => Loop(
        new Pulley("a", "Crankshaft", StationRole.Crank, 0, 0, 100, 6, 0, side), new Pulley("b", "Alternator", StationRole.Alternator, 300, 0, 100, 6, 0, side));

    private static Ledger Figures(BeltLoop loop, StockedBelt[] stock)
    {
        var builder = new LedgerBuilder("belt", "Belts");
        BeltFigures.Add(builder, loop, BeltWorksheet.Compute(loop, [.. stock]), BeltLimits.Default);
        return builder.Build();
    }
}
