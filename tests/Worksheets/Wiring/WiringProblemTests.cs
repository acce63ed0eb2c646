using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class WiringProblemTests
{
    private static WiringProblem Only(WiringInput input, WiringProblemKind kind) =>
        Assert.Single(WiringWorksheet.Compute(input).Problems, problem => problem.Kind == kind);

    private static WiringInput WithSignal(Signal signal) => Empty with { Signals = Signals.SetItem(signal.Id, signal) };

    [Fact]
    public void Compute_UnknownNames_AreReportedEach()
    {
        var input = Empty
            .With(Device("a", "unheard-of", Origin, "1:coolant"), Device("b", "oval-2", Origin, "3:coolant"), Device("c", "oval-2", Origin, "1:unheard-of"))
            .WithPlug("a", Plug("unheard-of", Origin, "1:coolant"));

        Assert.Equal(["a", "harness plug a"], WiringWorksheet.Compute(input).Problems
            .Where(problem => problem.Kind == WiringProblemKind.UnknownConnector).Select(problem => problem.Subject));
        Assert.Equal(("b", "3"), (Only(input, WiringProblemKind.UnknownCavity).Subject, Only(input, WiringProblemKind.UnknownCavity).Cavity));
        Assert.Equal("unheard-of", Only(input, WiringProblemKind.UnknownSignal).Signal);
    }

    [Fact]
    public void Compute_CavityGivenTwice_KeepsTheFirst()
    {
        var input = Empty
            .With(Device("a", "oval-2", Origin, "1:coolant", "1:throttle"))
            .WithPlug("a", Plug("oval-2", Origin, "1:coolant"));

        Assert.Equal("throttle", Only(input, WiringProblemKind.DuplicateCavity).Signal);
        Assert.Equal("coolant", Assert.Single(WiringWorksheet.Compute(input).Plugs[0].Wires).Signal);
    }

    [Fact]
    public void Compute_RoleGivenTwice_IsReported()
    {
        var input = Empty.With(Device("a", "oval-2", Origin), Device("a", "flat-3", Origin));

        Assert.Equal("a", Only(input, WiringProblemKind.DuplicateRole).Subject);
    }

    [Fact]
    public void Compute_SharedSignalThatCannotBeTapped_IsRunSingly()
    {
        var input = WithSignal(Signals["coolant"] with { Shared = true })
            .With(Device("a", "oval-2", Origin, "1:coolant"))
            .WithPlug("other", Plug("oval-2", Origin, "1:coolant"))
            .WithEcus(null, Bench.Ecu("new", "ecu-10", "1:coolant"));

        Assert.Equal("coolant", Only(input, WiringProblemKind.KindConflict).Signal);
        Assert.Equal("new", WiringWorksheet.Compute(input).Runs.Single().To.Place);
    }

    [Theory]
    [InlineData(30, WiringProblemKind.CurrentBeyondTable)]
    [InlineData(12, WiringProblemKind.ThinWire)]
    [InlineData(-1, WiringProblemKind.BadNumber)]
    [InlineData(double.NaN, WiringProblemKind.BadNumber)]
    public void Compute_CurrentThatDoesNotFit_IsReported(double currentA, WiringProblemKind kind)
    {
        var input = WithSignal(Signals["purge"] with { CurrentA = currentA }).WithPlug("valve", Plug("oval-2", Origin, "1:purge"));

        Assert.Equal("purge", Only(input, kind).Subject);
    }

    [Fact]
    public void Compute_NumbersThatAreNone_AreMended()
    {
        var input = Empty
            .With(Device("a", "oval-2", new(double.NaN, 0, 0), "1:coolant"))
            .WithPlug("a", new Plug("oval-2", new(0, 0, 100), [new Pin("1", "coolant", "GNYE", double.PositiveInfinity)]));
        var sheet = WiringWorksheet.Compute(input with { Settings = new WiringSettings { SlackMm = double.NaN } });

        Assert.Equal(
            [(WiringProblemKind.UnknownColour, "harness plug a"), (WiringProblemKind.BadNumber, "a"), (WiringProblemKind.BadNumber, "harness plug a"), (WiringProblemKind.BadNumber, "slack")],
            sheet.Problems.Select(problem => (problem.Kind, problem.Subject)));
        Assert.Equal((180d, 0.5), (sheet.Runs.Single().LengthMm, sheet.Runs.Single().SizeMm2));
    }
}
