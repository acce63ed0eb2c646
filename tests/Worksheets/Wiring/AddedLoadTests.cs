using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Fuses, relays and conductors of loads that the harness did not have. The margin of 1.25 is common practice, no source.</summary>
public sealed class AddedLoadTests
{
    [Theory]
    [InlineData(0.5, 1)]
    [InlineData(2, 3)]
    [InlineData(4, 5)]
    [InlineData(6, 7.5)]
    [InlineData(12, 15)]
    [InlineData(12.1, 20)]
    [InlineData(32, 40)]
    public void FuseFor_Current_IsTheNextBladeOfAQuarterMore(double current, double fuse) => Assert.Equal(fuse, LoadProtection.FuseFor(current));

    [Theory]
    [InlineData(33)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void FuseFor_NoSuchCurrent_IsNone(double current) => Assert.Null(LoadProtection.FuseFor(current));

    [Fact]
    public void Fuses_NewFeedOfALoad_GetsOneThatItsWireStandsBehind()
    {
        var sheet = WiringWorksheet.Compute(Fed(Fan(12)));
        var fuse = Assert.Single(LoadProtection.Fuses(sheet));

        Assert.Equal(("fan", "feed", 12.0, 15.0), (fuse.Role, fuse.Signal, fuse.CurrentA, fuse.FuseA));
        Assert.True(fuse.SizeStandsA >= fuse.FuseA);
        Assert.Equal(sheet.Runs.Single(run => run.Label == fuse.Run).SizeMm2, fuse.SizeMm2);
    }

    [Fact]
    public void Fuses_FeedThatWasThereOrIsNoLoad_GetsNone()
    {
        var known = Fan(12);
        Assert.Empty(LoadProtection.Fuses(WiringWorksheet.Compute(Fed(known).WithPlug("fan", Plug("square-2", known.Location, "1:feed", "2:power-ground")))));
        Assert.Empty(LoadProtection.Fuses(WiringWorksheet.Compute(Fed(known with { OwnFuse = false }))));
    }

    [Fact]
    public void Compute_CurrentOfTheDevice_SizesItsFeedAndGroundAndNoSignal()
    {
        var device = Device("heater", "flat-3", new(0, 200, 0), "1:feed", "2:power-ground", "3:coolant") with { CurrentA = 18 };
        var runs = WiringWorksheet.Compute(Fed(device).WithEcus(null, Ecu("brain", "ecu-8", "1:coolant"))).Runs;

        Assert.All(runs.Where(run => run is { Role: "heater", Signal: "feed" or "power-ground" }), run => Assert.Equal(18, run.Conductor!.For.CurrentA));
        Assert.Equal(2, runs.Count(run => run is { Role: "heater", Conductor: not null }));
        Assert.Null(runs.Single(run => run.Signal == "coolant").Conductor);
    }

    [Fact]
    public void Compute_SmallDeviceOnAStrongSignal_GoesByTheDevice() => Assert.Equal(
        0.2, WiringWorksheet.Compute(Fed(Fan(0.2))).Runs.Single(run => run.Signal == "feed").Conductor!.For.CurrentA); // the signal says 10 A

    [Fact]
    public void Compute_LengthenedWireThinnerThanItsLoad_IsToldAndGrows()
    {
        var fan = Fan(18);
        var sheet = WiringWorksheet.Compute(Fed(fan).WithPlug("fan", Plug("square-2", new(0, 700, 0), "1:feed", "2:power-ground")));

        Assert.Equal(2, sheet.Problems.Count(problem => problem is { Kind: WiringProblemKind.ThinWire, Subject: "fan" }));
        Assert.All(sheet.Runs, run => Assert.True(run.SizeMm2 >= ConductorSize.For(18)));
    }

    [Theory]
    [InlineData(-1, WiringProblemKind.BadNumber)]
    [InlineData(double.NaN, WiringProblemKind.BadNumber)]
    [InlineData(30, WiringProblemKind.CurrentBeyondTable)]
    public void Compute_CurrentThatCannotBe_IsAProblem(double current, WiringProblemKind kind) =>
        Assert.Contains(WiringWorksheet.Compute(Fed(Fan(current))).Problems, problem => problem.Kind == kind && problem.Subject == "fan");

    [Theory]
    [InlineData(1.5, 1.0, true)]
    [InlineData(0.9, 1.0, false)]
    [InlineData(1.5, null, false)] // the setting's 2 A
    [InlineData(2.5, null, true)]
    public void Relays_LoadOnAnOutputOfTheEcu_GetsOneBeyondItsLimit(double current, double? limit, bool asked)
    {
        var heater = Device("heater", "flat-3", new(0, 200, 0), "1:feed", "2:purge") with { CurrentA = current, OwnFuse = true };
        var sheet = WiringWorksheet.Compute(Fed(heater).WithEcus(null, Ecu("brain", "ecu-8", "1:purge") with { DriverA = limit }));

        Assert.Equal(asked ? ["purge"] : [], LoadProtection.Relays(sheet).Select(relay => relay.Signal));
        Assert.All(LoadProtection.Relays(sheet), relay => Assert.Equal(limit is null, relay.ByRule));
    }

    private static Device Fan(double current) => Device("fan", "square-2", new(0, 200, 0), "1:feed", "2:power-ground") with { CurrentA = current, OwnFuse = true };

    private static WiringInput Fed(Device device) => Empty.With(device).WithBodies(Plug("bulkhead-4", new(0, 0, 500), "1:feed", "2:power-ground"), null);
}
