using System.Collections.Immutable;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Whose current a wire carries. Common practice, no source: sums by hand beside each.</summary>
public sealed class CurrentsTests
{
    private static readonly ImmutableDictionary<string, Signal> s_signals = Signals
        .SetItem("power-ground", Signals["power-ground"] with { CurrentA = 5 })
        .SetItem("oil-lamp", Signals["oil-lamp"] with { CurrentA = 0.3 })
        .Add("logic-ground", new Signal("logic-ground", "Logic ground", SignalKind.Ground, 0.2, 0.5, "BN", Shared: true, Shielded: false));

    /// <summary>A coil of 2.5 A with its driver inside: 2.5 A in by the feed and out by the power ground, 0.2 A by the driver's reference.</summary>
    [Theory]
    [InlineData("feed", 2.5)]
    [InlineData("power-ground", 2.5)]
    [InlineData("logic-ground", 0.2)]
    public void Compute_DeviceWithTwoGrounds_LoadsTheStrongerAlone(string signal, double current)
    {
        var coil = Device("coil", "ecu-8", new(0, 200, 0), "1:feed", "2:power-ground", "3:logic-ground") with { CurrentA = 2.5 };

        Assert.Equal(current, Current(Cabin("1:feed", "2:power-ground", "3:logic-ground").With(coil), "coil", signal));
    }

    /// <summary>The only ground takes all, whatever it is called.</summary>
    [Fact]
    public void Compute_DeviceWithOneGround_LoadsIt() => Assert.Equal(
        2.5, Current(Cabin("3:logic-ground").With(Device("coil", "oval-2", Origin, "1:logic-ground") with { CurrentA = 2.5 }), "coil", "logic-ground"));

    /// <summary>Two injectors of 1 A by their outputs, a heater of 9 A by its own word, a sensor that says nothing: 1 + 1 + 9 = 11 A, more than the 10 A of the signal.</summary>
    [Fact]
    public void Compute_FeedThatADeviceSupplies_CarriesWhatHangsOnIt()
    {
        var relay = Device("relay", "oval-2", new(0, 300, 0), "1:feed") with { Supplies = ["feed"] };
        var input = Cabin("1:feed").With(
            relay, Device("injector-1", "oval-2", Origin, "1:feed", "2:injector-1"), Device("injector-2", "oval-2", Origin, "1:feed", "2:injector-2"),
            Device("heater", "oval-2", Origin, "1:feed", "2:purge") with { CurrentA = 9 }, Device("sensor", "oval-2", Origin, "1:feed", "2:coolant"));

        Assert.Equal(11, Current(input, "relay", "feed"));
        Assert.Equal(10, Current(Cabin("1:feed").With(relay), "relay", "feed"));
    }

    /// <summary>Each supplies the other, and neither says what flows on from it: the 10 A of the signal for either. A base from a stranger may say so.</summary>
    [Fact]
    public void Compute_DevicesThatSupplyEachOther_TakeTheSignalsFigure()
    {
        var signals = s_signals.Add("behind-1", Behind("box-1")).Add("behind-2", Behind("box-2"));
        var input = (Empty with { Signals = signals }).WithBodies(Plug("bulkhead-6", new(0, 0, 500), "1:feed"), null).With(Box("box-1", "behind-1"), Box("box-2", "behind-2"));

        Assert.Equal(10, Current(input, "box-1", "feed"));
        Assert.Equal(10, Current(input, "box-2", "feed"));
    }

    /// <summary>A lamp of 0.3 A, not the 5 A of the ground's signal.</summary>
    [Fact]
    public void Compute_GroundOfASwitch_CarriesWhatItSwitches() => Assert.Equal(
        0.3, Current(Cabin("1:oil-lamp", "2:power-ground").With(Device("switch", "oval-2", Origin, "1:oil-lamp", "2:power-ground")), "switch", "power-ground"));

    /// <summary>1.25 × 3 A = 3.75 A: 4 A, where 1.25 × 1.5 A = 1.9 A would take 2 A. That a heater draws twice as much while it is cold is common practice, no source.</summary>
    [Theory]
    [InlineData(null, 2)]
    [InlineData(3.0, 4)]
    [InlineData(1.0, 2)]
    public void Fuses_HeaterThatDrawsMoreWhileCold_StandsThat(double? cold, double fuse) => Assert.Equal(
        fuse, Assert.Single(LoadProtection.Fuses(WiringWorksheet.Compute(Cabin("1:feed").With(Device("heater", "oval-2", Origin, "1:feed") with { CurrentA = 1.5, ColdA = cold, OwnFuse = true })))).FuseA);

    private static Signal Behind(string role) => new($"behind-{role}", "Behind", SignalKind.Power, null, 0.5, "RD", Shared: true, Shielded: false) { Through = role };

    private static Device Box(string role, string gives) => Device(role, "oval-2", Origin, "1:feed", $"2:{gives}") with { Supplies = ["feed"] };

    private static double? Current(WiringInput input, string role, string signal) =>
        WiringWorksheet.Compute(input).Runs.Single(run => run.Role == role && run.Signal == signal).Conductor?.For.CurrentA;

    private static WiringInput Cabin(params string[] pins) => (Empty with { Signals = s_signals }).WithBodies(Plug("bulkhead-6", new(0, 0, 500), pins), null);
}
