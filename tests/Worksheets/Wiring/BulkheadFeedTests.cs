using System.Collections.Immutable;
using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>
/// What hangs behind a feed that cabin and harness share. Sums by hand beside each; sizes and fuses by the table of one body-builder manual (2015): 0.85 mm²
/// 7 A, 1.25 mm² 10.5 A and 15 A, 3 mm² 17.5 A. That loads add up is common practice, no source.
/// </summary>
public sealed class BulkheadFeedTests
{
    private static readonly ImmutableDictionary<string, Signal> s_signals = Signals
        .SetItem("feed", Signals["feed"] with { CurrentA = 5 })
        .Add("coil-negative", new Signal("coil-negative", "Coil negative", SignalKind.Ignition, 5, 1, "VT", Shared: false, Shielded: false))
        .Add("lamps", new Signal("lamps", "Reversing lamps", SignalKind.Power, 4, 0.75, "GN/BK", Shared: false, Shielded: false))
        .Add("feed-1", new Signal("feed-1", "Feed of injector 1", SignalKind.Power, 2, 0.75, "PK", Shared: true, Shielded: false) { Through = "ballast", BranchOf = "feed" })
        .Add("feed-2", new Signal("feed-2", "Feed of injector 2", SignalKind.Power, 2, 0.75, "PK", Shared: true, Shielded: false) { Through = "ballast", BranchOf = "feed" });

    private static readonly Device[] s_coils = [Coil(1), Coil(2), Coil(3), Coil(4)];

    /// <summary>Four coils of 2.5 A and lamps of 4 A make 14 A, where the signal alone would say 5; nothing else hangs there, so 5 it stays.</summary>
    [Fact]
    public void Compute_JoinedFeed_CarriesWhatHangsBehindIt()
    {
        var joined = Joined(Compute(1.25, [.. s_coils, Lamps()]));

        Assert.Equal((14.0, 2.5), (joined.Conductor!.For.CurrentA, joined.SizeMm2));
        Assert.Equal((5.0, 1.25), (Joined(Compute(1.25)).Conductor!.For.CurrentA, Joined(Compute(1.25)).SizeMm2));
        Assert.Equal(5, Joined(Compute(1.25, Coil(1))).Conductor!.For.CurrentA);
    }

    /// <summary>An igniter of 4 A switches the coil of 4 A: one current, in by the coil's feed and out by the igniter's ground.</summary>
    [Fact]
    public void Compute_CoilAndItsIgniter_CountOnce()
    {
        var igniter = Device("igniter", "ecu-8", Origin, "1:feed", "2:coil-negative", "3:power-ground") with { CurrentA = 4 };
        var coil = Device("coil", "oval-2", Origin, "1:feed", "2:coil-negative") with { CurrentA = 4 };

        Assert.Equal(8, Joined(Compute(1.25, igniter, coil, Lamps())).Conductor!.For.CurrentA);
    }

    /// <summary>Two injectors of 1 A by their outputs and 6 A besides make 8 A; with a pack between it is the pack that hangs there, with the 2 A of each outlet: 10 A.</summary>
    [Theory]
    [InlineData(false, 8)]
    [InlineData(true, 10)]
    public void Compute_FeedThatOthersBranchFrom_CarriesThemOrThePackBetween(bool pack, double current)
    {
        Device[] devices =
        [
            Device("injector-1", "oval-2", Origin, "1:feed-1", "2:injector-1"), Device("injector-2", "oval-2", Origin, "1:feed-2", "2:injector-2"),
            Device("heater", "oval-2", Origin, "1:feed") with { CurrentA = 6 },
            .. pack ? [Device("ballast", "ecu-8", Origin, "1:feed", "2:feed-1", "3:feed-2")] : Array.Empty<Device>(),
        ];

        Assert.Equal(current, Joined(Compute(1.25, devices)).Conductor!.For.CurrentA);
        var box = Device("box", "oval-2", Origin, "1:feed") with { Supplies = ["feed"] };
        Assert.Equal(current, Compute(1.25, [.. devices, box]).Runs.Single(run => run.Role == "box").Conductor!.For.CurrentA);
        Assert.Equal(5, Joined(Compute(1.25, [.. devices, box])).Conductor!.For.CurrentA);
    }

    /// <summary>Two new loads of 8 A start at a relay that the battery feeds, so that the cabin's wire carries the lamps alone, with the 5 A of the signal.</summary>
    [Fact]
    public void Compute_LoadsThatStartAtAnAddedRelay_DoNotCountAtTheBulkhead()
    {
        Device Load(string role) => Device(role, "square-2", new(0, 0, 600), "1:feed") with { CurrentA = 8 };
        var sheet = WiringWorksheet.Compute(Input(1.25, Lamps(), Load("one"), Load("two")));

        Assert.Single(sheet.Overloads);
        Assert.Equal(5, Joined(sheet).Conductor!.For.CurrentA);
        Assert.Empty(sheet.BulkheadFeeds);
    }

    /// <summary>17 A on wires for 10.5. The lamps are one wire's work but leave 13; the coils leave 7. 10 A and a quarter more is a blade of 15 A, which 1.5 mm² of those sold stand behind.</summary>
    [Fact]
    public void Compute_MoreThanTheWiresCarry_TellsWhatToFeedOverARelay()
    {
        var sheet = Compute(1.25, [.. s_coils, Lamps(), Device("heater", "oval-2", Origin, "1:feed") with { CurrentA = 3 }]);
        var feed = Assert.Single(sheet.BulkheadFeeds);

        Assert.Equal(("1", "3", 1.25, 10.5, 17.0, 10.0), (feed.CabinCavity, feed.HarnessCavity, feed.SizeMm2, feed.CarriesA, feed.CurrentA, feed.MovedA));
        Assert.Equal(
            "Switched feed: 17 A hang behind the bulkhead plug with everything on that stays on, and the wires of 1.25 mm² there (cabin 1, harness 3) carry 10.5 A. Feed coil-1, coil-2, coil-3, coil-4 (10 A) over a relay instead: its coil on this wire, its contact 30 fed from the battery with 1.5 mm² over a 15 A fuse.",
            WiringWords.Bulkhead(feed, sheet.Data!));
        Assert.Contains(WiringPurchases.Of(sheet, []), want => want is { Good: WiringGood.Relay, Amount: 1 });
    }

    /// <summary>14 A on wires for 10.5: coils and lamps each suffice, and the lamps are one wire. Of wires for 17.5 A nothing is to be said.</summary>
    [Fact]
    public void Compute_MoreThanTheWiresCarry_MovesWhatThereIsLeastWorkOn()
    {
        Assert.Equal(["lamps"], Assert.Single(Compute(1.25, [.. s_coils, Lamps()]).BulkheadFeeds).Moved.ToList());
        Assert.Empty(Compute(3, [.. s_coils, Lamps()]).BulkheadFeeds);
    }

    /// <summary>Coils of 10 A and a module of 0.6 on wires for 10.5: the module alone would do, but is not worth a relay.</summary>
    [Fact]
    public void Compute_SmallLoadThatWouldSuffice_IsLeftWhereItIs() => Assert.Equal(
        ["coil-1", "coil-2", "coil-3", "coil-4"], Assert.Single(Compute(1.25, [.. s_coils, Device("module", "oval-2", Origin, "1:feed") with { CurrentA = 0.6 }]).BulkheadFeeds).Moved.Order());

    /// <summary>Lamps that are on for seconds leave 10 A on wires for 10.5; the new wire between the plugs carries 14 all the same.</summary>
    [Fact]
    public void Compute_LoadThatIsBrief_IsNotHeldAgainstTheWiresAsFound()
    {
        var sheet = Compute(1.25, [.. s_coils, Lamps() with { IsBrief = true }]);

        Assert.Empty(sheet.BulkheadFeeds);
        Assert.Equal(14, Joined(sheet).Conductor!.For.CurrentA);
    }

    /// <summary>A heater of 2 A that draws 4 while it is cold: a quarter more than 4 is a blade of 5 A. 12 A hang on wires for 10.5.</summary>
    [Fact]
    public void Compute_MovedHeater_GetsAFuseThatStandsItCold() => Assert.Equal(
        5, Assert.Single(Compute(1.25, [.. s_coils, Device("heater", "oval-2", Origin, "1:feed") with { CurrentA = 2, ColdA = 4 }]).BulkheadFeeds).FuseA);

    /// <summary>Two loads of 8 A on wires for 7: neither suffices alone, and their 16 A ask for a fuse of 20 A.</summary>
    [Fact]
    public void Compute_NoLoadSufficesAlone_MovesWhatDrawsMost()
    {
        Device Load(string role) => Device(role, "oval-2", Origin, "1:feed") with { CurrentA = 8 };

        Assert.Equal(["one", "two"], Assert.Single(Compute(0.85, Load("one"), Load("two")).BulkheadFeeds).Moved.Order());
        var sheet = Compute(0.85, Load("one") with { CurrentA = 16 }, Load("two") with { CurrentA = 16 }, Load("three") with { CurrentA = 16 });
        Assert.EndsWith(
            "Share one, three, two (48 A) out between relays instead: their coils on this wire, each contact fed from the battery over a fuse.",
            WiringWords.Bulkhead(Assert.Single(sheet.BulkheadFeeds), sheet.Data!), StringComparison.Ordinal);
    }

    private static Device Coil(int number) =>
        Device(FormattableString.Invariant($"coil-{number}"), "flat-3", Origin, "1:feed", "2:power-ground") with { CurrentA = 2.5, Position = "coils" };

    private static Device Lamps() => Device("lamps", "oval-2", Origin, "1:feed", "2:lamps");

    private static WireRun Joined(WiringSheet sheet) => sheet.Runs.Single(run => run is { Purpose: WirePurpose.BodyAdapter, Signal: "feed" });

    private static WiringSheet Compute(double size, params Device[] devices) =>
        WiringWorksheet.Compute(devices.Aggregate(Input(size, devices), (input, device) => device.Supplies.IsEmpty ? input.WithPlug(device.Role, new(device.Connector, device.Location, [.. device.Pins.Select(pin => new Pin(pin.Key, pin.Value, "BN", 0.75))])) : input));

    private static WiringInput Input(double size, params Device[] devices) => (Empty with { Signals = s_signals })
        .WithBodies(new Plug("bulkhead-6", new(0, 0, 500), [new Pin("3", "feed", "RD", size)]), new Plug("bulkhead-4", new(0, 0, 500), [new Pin("1", "feed", "RD", size)]))
        .With(devices);
}
