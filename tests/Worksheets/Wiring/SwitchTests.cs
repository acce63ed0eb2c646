using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>
/// A switch has one giver, and the ECU is none. A cabin that heard the neutral switch of its automatic gearbox listens still; one that has the switch at its
/// pedal gives it. Common practice, no source.
/// </summary>
public sealed class SwitchTests
{
    private static readonly WiringInput s_base = Empty with
    {
        Signals = Signals
            .Add("neutral", new("neutral", "Neutral switch", SignalKind.Switch, null, 0.5, "GN", Shared: false, Shielded: false))
            .Add("bus", new("bus", "Data line", SignalKind.Data, null, 0.5, "GY", Shared: false, Shielded: false)),
        CabinHears = ["neutral"],
    };

    private static readonly Ecu s_ecu = Ecu("ecu", "ecu-8", "6:neutral");

    private static readonly Plug s_cabin = Plug("bulkhead-4", Origin, "3:neutral");

    private static readonly Device s_switch = Device("neutral-switch", "oval-2", Origin, "1:neutral", "2:power-ground");

    private static readonly Device s_control = Device("control-unit", "flat-3", Origin, "1:neutral", "2:bus");

    private static WiringInput WithoutAWire => s_base.WithEcus(s_ecu, s_ecu).WithBodies(Plug("bulkhead-6", Origin, "2:feed"), s_cabin);

    /// <summary>The wire that was drawn from the cabin's plug to the ECU ended in two inputs.</summary>
    [Fact]
    public void Compute_CabinAndEcuBothListenToASwitchThatIsGone_AreNotJoined()
    {
        var sheet = WiringWorksheet.Compute(WithoutAWire);

        Assert.Empty(sheet.Runs);
        Assert.Equal((AdapterAction.Missing, true, "nothing fitted gives it"), Told(sheet.BodyAdapter!, "3"));
        Assert.Equal((LooseAction.LeaveOff, "nothing fitted gives it"), LooseEnds.Of(sheet).Where(end => end.Place == "body").Select(end => (end.Action, end.Reason)).Single());
    }

    [Fact]
    public void Compute_CabinThatNeedsASwitchWhichNothingGives_IsNotFedByTheEcu()
    {
        var sheet = WiringWorksheet.Compute(WithoutAWire with { CabinHears = [], Needs = ["neutral"] });

        Assert.Empty(sheet.Runs);
        Assert.Equal((AdapterAction.Missing, false, "nothing fitted gives it"), Told(sheet.BodyAdapter!, "3"));
        Assert.Equal(NeedSupply.Unsupplied, sheet.Needs.Single().Supply);
    }

    /// <summary>The brake pedal's switch: no device of the engine bay ever gave it, so the cabin does.</summary>
    [Fact]
    public void Compute_SwitchThatTheCabinGives_GoesToTheEcu()
    {
        var run = Assert.Single(WiringWorksheet.Compute(WithoutAWire with { CabinHears = [] }).Runs);

        Assert.Equal(("body", "3", "ecu", "a6"), (run.From.Place, run.From.Cavity, run.To.Place, run.To.Cavity));
    }

    [Fact]
    public void Compute_SwitchThatIsFitted_GoesToBoth() =>
        Assert.Equal(["ecu", "neutral-switch"], WiringWorksheet.Compute(WithoutAWire.With(s_switch)).Runs.Where(run => run.Signal == "neutral").Select(run => run.To.Place).Order(StringComparer.Ordinal));

    /// <summary>The harness leads the one listener to the other by way of the capped plug of the switch.</summary>
    [Fact]
    public void Compute_HarnessThatWouldJoinTwoListeners_IsNotJoined()
    {
        var sheet = WiringWorksheet.Compute(OverTheHarness);

        Assert.DoesNotContain(sheet.Runs, run => run.Signal == "neutral");
        Assert.Equal((AdapterAction.Cap, true, "nothing fitted gives it"), Told(sheet.BodyAdapter!, "4"));
        Assert.Equal((AdapterAction.Missing, true, "nothing fitted gives it"), Told(sheet.BodyAdapter!, "3"));
    }

    [Fact]
    public void Compute_EcuAdapterOfAHarnessWithoutTheSwitch_LeavesTheInputEmpty()
    {
        var sheet = WiringWorksheet.Compute(OverTheHarness.WithEcus(Ecu("old", "ecu-8", "6:neutral"), Ecu("new", "ecu-10", "9:neutral")));

        Assert.DoesNotContain(sheet.Runs, run => run.Signal == "neutral");
        Assert.Equal((AdapterAction.Missing, true, "nothing fitted gives it"), Told(sheet.EcuAdapter!, "a9"));
    }

    /// <summary>A control unit on the data line is a third listener.</summary>
    [Theory]
    [InlineData(false, AdapterAction.Missing)]
    [InlineData(true, AdapterAction.Join)]
    public void Compute_HarnessWithAControlUnit_IsJoinedWhereTheSwitchIsFitted(bool fitted, AdapterAction expected)
    {
        var input = OverTheHarness.With(s_control);
        var rows = WiringWorksheet.Compute(fitted ? input.With(s_switch) : input).BodyAdapter!.Rows;

        Assert.Equal(expected, rows.Single(row => row.To == "3").Action);
    }

    private static WiringInput OverTheHarness => s_base.WithEcus(s_ecu, s_ecu)
        .WithPlug("neutral-switch", Plug("oval-2", Origin, "1:neutral", "2:power-ground"))
        .WithBodies(Plug("bulkhead-6", Origin, "4:neutral"), s_cabin);

    private static (AdapterAction Action, bool Optional, string Note) Told(AdapterHarness adapter, string cavity)
    {
        var row = adapter.Rows.Single(row => row.Signal == "neutral" && (row.To ?? row.From) == cavity);
        return (row.Action, row.Optional, row.Note);
    }
}
