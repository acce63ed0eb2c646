using System.Collections.Immutable;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Tests.Worksheets.Hoses.HoseBench;

namespace Swapwright.Tests.Worksheets.Hoses;

/// <summary>How the numbers of the hoses were got: what a figure says went in has to give the figure.</summary>
public class HoseFiguresTests
{
    private static readonly HosePoint s_near = new(0, 0, 0);

    // 3-4-5: 500 mm from the origin.
    private static readonly HosePoint s_far = new(300, 400, 0);

    /// <summary>1.25 × 500 + 60 = 685, by hand.</summary>
    [Fact]
    public void Length_PlainHose_FollowsFromWhatWentIn()
    {
        var figure = Figures([Port("a", 16, s_near), Port("b", 16, s_far)], [Hose("h", "a", "b")]).Figure("h-length")!;

        Assert.Equal(("L = ⌈k d + s⌉", 685d, ""), (figure.Formula, figure.Value, figure.Remark));
        Assert.Equal([500, 1.25, 60], figure.From.Select(input => input.Value));
    }

    /// <summary>1.25 × 500 + 60 = 685; a part of 70 mm in it takes the place of 70 mm and wants 60 mm for two more ends: 685 − 70 + 60 = 675, by hand.</summary>
    [Fact]
    public void Length_HoseWithAPartCutIn_NamesWhatItTakesAndWants()
    {
        var figure = Figures([Port("a", 16, s_near), Port("b", 16, s_far)], [Hose("h", "a", "b") with { CutIn = [new("adapter", 70)] }]).Figure("h-length")!;

        Assert.Equal((675d, "L = ⌈k d + s⌉; s − c more for each part that is cut into it"), (figure.Value, figure.Formula));
        Assert.Equal([500, 1.25, 60, 70], figure.From.Select(input => input.Value));
    }

    /// <summary>1.25 × 500 = 625, parted 100 mm from the port: 160 + 585 = 745, by hand.</summary>
    [Fact]
    public void Length_SteppedHose_NamesBothPieces()
    {
        var figure = Figures([Port("a", 19, s_near), Port("b", 16, s_far)], [Hose("h", "a", "b", joiners: [new StepJoiner("step", 16, 19)])]).Figure("h-length")!;

        Assert.Equal(745, figure.Value);
        Assert.Equal("pieces of 160 mm and 585 mm", figure.Remark);
        Assert.Contains("parted at the stepped joiner", figure.Formula, StringComparison.Ordinal);
        Assert.Contains(figure.From, input => input is { Title: "joiner from the port", Value: 100 });
    }

    [Fact]
    public void Length_EndThatNobodyMeasured_IsAGap()
    {
        var ledger = Figures([Port("a", 16), Port("b", 16, s_far)], [Hose("h", "a", "b")]);

        Assert.Null(ledger.Figure("h-length"));
        Assert.Equal("Length of Hose h", Assert.Single(ledger.Gaps).About);
    }

    [Fact]
    public void Pressure_OneEndKnown_IsTakenFromThatEndAlone()
    {
        var ledger = Figures([Fuel("a", s_near, 3), Fuel("b", s_far, null)], [Hose("h", "a", "b", circuit: HoseCircuit.Fuel)]);
        var figure = ledger.Figure("h-pressure")!;

        Assert.Equal((3d, "class R9"), (figure.Value, figure.Remark));
        Assert.Equal(["Port a"], figure.From.SkipLast(1).Select(input => input.Title));
    }

    [Fact]
    public void Pressure_BothEndsKnown_IsTheHigher()
    {
        var figure = Figures([Fuel("a", s_near, 0.2), Fuel("b", s_far, 0.3)], [Hose("h", "a", "b", circuit: HoseCircuit.Fuel)]).Figure("h-pressure")!;

        Assert.Equal((0.3, "class R6, R7 or R9"), (figure.Value, figure.Remark));
        Assert.Equal(figure.Value, figure.From.SkipLast(1).Max(input => input.Value));
    }

    [Theory]
    [InlineData(HoseCircuit.Fuel)]
    [InlineData(HoseCircuit.Coolant)]
    public void Pressure_NobodySaysOne_IsNoFigure(HoseCircuit circuit) =>
        Assert.Null(Figures([Port("a", 8, s_near, circuit), Port("b", 8, s_far, circuit)], [Hose("h", "a", "b", circuit: circuit)]).Figure("h-pressure"));

    /// <summary>Each total is the sum of the pieces that it names, which are those of its circuit, bore and class.</summary>
    [Fact]
    public void Totals_SeveralBoresAndClasses_AddUpTheirOwnPieces()
    {
        ImmutableArray<Port> ports =
        [
            Fuel("a", s_near, 3), Fuel("b", s_far, 3), Fuel("c", s_near, 0.1), Fuel("d", s_far, 0.1), Port("e", 16, s_near), Port("f", 16, s_far), Port("g", 16.5, s_near), Port("h", 16.5),
            Port("i", 32, s_near, HoseCircuit.BrakeBooster), Port("j", 32, s_far, HoseCircuit.BrakeBooster),
        ];
        var ledger = Figures(
            ports,
            [
                Hose("feed", "a", "b", circuit: HoseCircuit.Fuel), Hose("return", "c", "d", circuit: HoseCircuit.Fuel), Hose("heater", "e", "f"), Hose("unmeasured", "g", "h"),
                Hose("booster", "i", "j", circuit: HoseCircuit.BrakeBooster),
            ]);

        Assert.Equal(
            ["total-brake-booster-32", "total-fuel-8-r6", "total-fuel-8-r9", "total-heater-16", "total-heater-16-5"],
            ledger.Figures.Select(figure => figure.Id).Where(id => id.StartsWith("total-", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.All(ledger.Figures.Where(figure => figure.Id.StartsWith("total-", StringComparison.Ordinal)), figure => Assert.Equal(figure.From.SkipLast(1).Sum(input => input.Value), figure.Value));
        Assert.Equal(685, ledger.Figure("total-fuel-8-r9")!.Value);
        Assert.Equal(0, ledger.Figure("total-heater-16-5")!.Value);
    }

    [Fact]
    public void Buy_LengthsSetsAndJoiners_SayHowEachIsCounted()
    {
        var set = Stock("set", null, set: true, piece: null);
        var ledger = Figures(
            [Port("a", 19, s_near), Port("b", 16, s_far), Port("c", 25, s_near), Port("d", 25, s_far), Port("e", 25, s_near), Port("f", 25, s_far)],
            [Hose("h", "a", "b", stock: [Stock("roll", 16)], joiners: [new StepJoiner("step", 16, 19)]), Hose("i", "c", "d", stock: [set]), Hose("j", "e", "f", stock: [set])]);

        Assert.Equal((1d, "one for each hose between two sizes"), Told(ledger, "buy-step"));
        Assert.Equal((1d, "one set"), Told(ledger, "buy-set"));
        Assert.Equal(2, Assert.Single(ledger.Figure("buy-set")!.From).Value);
        Assert.StartsWith("lengths as sold", ledger.Figure("buy-roll")!.Formula, StringComparison.Ordinal);
        Assert.Equal([585d, 10], ledger.Figure("buy-roll")!.From.Select(input => input.Value));
        Assert.Equal("1,415 mm left over", ledger.Figure("buy-roll")!.Remark);
    }

    /// <summary>A moulded hose of one bore is of no use where it goes over neither end.</summary>
    [Theory]
    [InlineData(25, HoseAction.Set)]
    [InlineData(19, HoseAction.Set)]
    [InlineData(12, HoseAction.Cut)]
    public void Compute_MouldedHoseOfOneBore_IsTakenWhereItFitsAnEnd(double bore, HoseAction action) =>
        Assert.Equal(action, Assert.Single(Sheet([Port("a", 19, s_near), Port("b", 25, s_far)], [Hose("h", "a", "b", stock: [Stock("set", bore, set: true, piece: null)])]).Runs).Action);

    [Theory]
    [InlineData(PortKind.Thread, "", "plug, 8 mm")]
    [InlineData(PortKind.Quick, "", "blanking connector, 8 mm")]
    [InlineData(PortKind.Barb, "M12", "cap, 8 mm")]
    public void Blank_KindOfPort_IsClosedWithItsOwn(PortKind kind, string thread, string words) => Assert.Equal(words, HoseWords.Blank(Port("a", 8, kind: kind, thread: thread)));

    /// <summary>The drawing says in words what each hose is and how it is held to its ports.</summary>
    [Fact]
    public void Drawing_MouldedHoseOnAThread_TellsBoth()
    {
        var sheet = Sheet([Port("a", 8, s_near, kind: PortKind.Thread, thread: "M12"), Port("b", 8, s_far)], [Hose("h", "a", "b", stock: [Stock("set", null, set: true, piece: null)])]);
        var drawing = HoseDrawing.Svg(sheet, HoseCircuit.Heater, "h");

        Assert.Contains("Hose h: Port a to Port b, 8 mm, 685 mm, moulded.", drawing, StringComparison.Ordinal);
        Assert.Contains("donor, 8 mm, M12", drawing, StringComparison.Ordinal);
    }

    [Fact]
    public void PortUsedTwice_SameHoses_IsTheSameProblem()
    {
        var problem = new PortUsedTwice("a", ["g", "h"]);

        Assert.Equal(problem, new PortUsedTwice("a", ["g", "h"]));
        Assert.Equal(problem.GetHashCode(), new PortUsedTwice("a", ["g", "h"]).GetHashCode());
        Assert.NotEqual(problem, new PortUsedTwice("a", ["g", "i"]));
        Assert.NotEqual(problem, new PortUsedTwice("b", ["g", "h"]));
        Assert.False(problem.Equals(null));
    }

    [Fact]
    public void IsEmpty_AnythingToDoOrToTell_IsNot()
    {
        Assert.True(Sheet([], []).IsEmpty);
        Assert.False(Sheet([Port("a", 16, s_near), Port("b", 16, s_far)], [Hose("h", "a", "b")]).IsEmpty);
        Assert.False(Sheet([Port("a", 16, closed: true)], []).IsEmpty);
        Assert.False(Sheet([Port("a", 16, open: "it breathes")], []).IsEmpty);
        Assert.False(Sheet([Port("a", 16)], []).IsEmpty);
    }

    private static (double Value, string Formula) Told(Ledger ledger, string id) => (ledger.Figure(id)!.Value, ledger.Figure(id)!.Formula);

    private static Port Fuel(string id, HosePoint at, double? bar) => Port(id, 8, at, HoseCircuit.Fuel, bar);

    private static Ledger Figures(ImmutableArray<Port> ports, ImmutableArray<Hose> hoses)
    {
        var ledger = new LedgerBuilder("hoses", "Hoses");
        HoseFigures.Add(ledger, Sheet(ports, hoses), Limits);
        return ledger.Build();
    }
}
