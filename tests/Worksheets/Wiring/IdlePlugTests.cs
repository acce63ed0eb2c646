using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Wires that end in a plug which nothing takes: led to where they are wanted, never left beside a new one.</summary>
public sealed class IdlePlugTests
{
    private static readonly Device s_crank = Device("crank-sensor", "oval-2", new(0, 0, -300), "1:throttle");

    /// <summary>A distributor's harness: its plug carries the signal to an ECU that is exchanged for another.</summary>
    private static readonly WiringInput s_distributor = Empty
        .WithPlug("distributor", Plug("oval-2", new(0, 0, -100), "1:throttle", "2:coolant"))
        .WithEcus(Ecu("old", "ecu-8", "1:throttle", "2:coolant"), Ecu("new", "ecu-10", "5:throttle"));

    /// <summary>200 mm from plug to sensor: 1.2 × 200 + 60. By way of the trunk to the ECU it would be 1,620 mm, and a second wire in its cavity.</summary>
    [Fact]
    public void Compute_SignalWhoseOnlyPlugIsIdle_LengthensThatWire()
    {
        var sheet = WiringWorksheet.Compute(s_distributor.With(s_crank));
        var run = Assert.Single(sheet.Runs, one => one.Purpose == WirePurpose.Device);

        Assert.Equal((WireEndKind.Splice, "distributor", "1", 300.0, true), (run.To.Kind, run.To.Place, run.To.Cavity, run.LengthMm, run.TakesOver));
        Assert.Equal(WireAction.TakesOver, sheet.Plugs.Single(plug => plug.Role == "crank-sensor").Wires.Single().Action);
        Assert.Single(sheet.Runs, one => one.From.Place == "new" || one.To.Place == "new");
        Assert.Equal(JointKind.InLine, Assert.Single(Joints.Splices(sheet)).Kind);
    }

    [Fact]
    public void LooseEnds_WireOfAnIdlePlugThatIsTakenOver_IsCutOutAndTheRestCapped()
    {
        var ends = LooseEnds.Of(WiringWorksheet.Compute(s_distributor.With(s_crank))).Where(end => end.Place == "distributor").ToDictionary(end => end.Cavity);

        Assert.Equal(LooseAction.CutOut, ends["1"].Action);
        Assert.Contains("goes to crank-sensor, 1", ends["1"].Reason, StringComparison.Ordinal);
        Assert.Equal(LooseAction.Cap, ends["2"].Action);
        Assert.DoesNotContain("whole", ends["2"].Reason, StringComparison.Ordinal);
    }

    /// <summary>Where the new ECU has no such input the old wire leads nowhere.</summary>
    [Fact]
    public void Compute_IdleWireThatLeadsNowhere_IsLeft()
    {
        var sheet = WiringWorksheet.Compute(s_distributor.WithEcus(Ecu("old", "ecu-8", "1:throttle"), Ecu("new", "ecu-10", "5:coolant")).With(s_crank));

        Assert.DoesNotContain(sheet.Runs, run => run.TakesOver);
    }

    /// <summary>A feed from an idle plug: two devices hang on the wire that is cut out, one end to end, one laid against it.</summary>
    [Fact]
    public void Compute_FeedOfAnIdlePlug_IsCutOutForAllThatHangOnIt()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithPlug("switch", Plug("oval-2", Origin, "1:feed", "2:oil-lamp"))
            .With(Device("lamp", "oval-2", new(0, 100, 0), "1:feed") with { CurrentA = 1 }, Device("sensor", "oval-2", new(0, 200, 0), "1:feed") with { CurrentA = 1 }));

        Assert.Equal(["lamp", "sensor"], sheet.Plugs.Single(plug => plug.Role == "switch").Capped[0].Takers.Select(end => end.Place));
        Assert.Equal([JointKind.InLine, JointKind.Branch], Joints.Splices(sheet).Select(joint => joint.Kind).Order());
        Assert.Equal(2, sheet.Counts.Joined);
        Assert.Equal(["lengthens", "new"], sheet.Runs.Select(run => WiringWords.Purpose(sheet, run)));
    }

    [Fact]
    public void LooseEnds_IdlePlugOfWhichNothingIsTaken_IsCappedWhole() => Assert.All(
        LooseEnds.Of(WiringWorksheet.Compute(s_distributor)).Where(end => end.Place == "distributor"),
        end => Assert.Contains("cap the plug whole", end.Reason, StringComparison.Ordinal));
}
