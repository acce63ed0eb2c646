using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Signals of one side only, at the ECU, at the bulkhead and behind the dash: what is done, and where the reader is sent.</summary>
public sealed class LooseEndCornersTests
{
    private static readonly Plug s_harnessBody = Plug("bulkhead-6", new(0, 0, 500), "1:tach", "2:feed");

    [Fact]
    public void Of_DeviceThatGivesTheCabinItsSignal_IsLedThereAlone()
    {
        var divider = Device("divider", "flat-3", new(0, 0, 700), "2:tach", "3:tach") with { ToCabin = ["3"], InCabin = true };
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(s_harnessBody, Plug("bulkhead-4", new(0, 0, 500), "4:tach")).With(divider) with { Needs = ["tach"] });
        var end = LooseEnds.Of(sheet).Single(end => end is { Place: "divider", Cavity: "3" });

        Assert.Equal(LooseAction.RunNew, end.Action);
        Assert.Equal("it gives the cabin the signal: lead it to the cabin's bulkhead plug, 4, where nothing else is joined", end.Reason);
        Assert.Contains("goes to: divider, 2", SignalTrace.Of(sheet, "tach")!.Cabin.Select(step => step.Work));
    }

    [Fact]
    public void Of_DeviceBehindTheDash_IsGroundedToTheBody()
    {
        var lamp = Device("lamp", "oval-2", new(0, 0, 700), "1:feed", "2:power-ground") with { InCabin = true };
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(s_harnessBody, Plug("bulkhead-4", new(0, 0, 500), "3:feed")).With(lamp));
        var end = LooseEnds.Of(sheet).Single(end => end is { Place: "lamp", Signal: "power-ground" });

        Assert.Equal((LooseAction.RunNew, "ground it to bare metal of the body beside it, with a ring terminal"), (end.Action, end.Reason));
        Assert.EndsWith("to body, ring.", Told(sheet, "lamp"), StringComparison.Ordinal);
    }

    /// <summary>An ECU runs without a sensor and not without its feed (common practice, no source).</summary>
    [Theory]
    [InlineData("tach", LooseAction.LeaveOff)]
    [InlineData("battery", LooseAction.Missing)]
    public void Of_CavityOfTheEcuThatNothingFeeds_IsLeftOffOrMissing(string signal, LooseAction action)
    {
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(null, Ecu("new", "ecu-10", $"5:{signal}")));

        Assert.Equal([("new", "a5", action)], LooseEnds.Of(sheet).Select(end => (end.Place, end.Cavity, end.Action)));
    }

    /// <summary>The harness has the signal at a plug and its ECU side has not: a wire from there, and for a feed or a ground that it is brought.</summary>
    [Theory]
    [InlineData("coolant", LooseAction.RunNew)]
    [InlineData("power-ground", LooseAction.FeedFrom)]
    [InlineData("feed", LooseAction.FeedFrom)]
    public void Of_CavityOfTheEcuThatAPlugHas_GetsAWireFromThere(string signal, LooseAction action)
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("sensor", "oval-2", Origin, $"1:{signal}")).WithPlug("sensor", Plug("oval-2", Origin, $"1:{signal}"))
            .WithEcus(null, Ecu("new", "ecu-10", $"5:{signal}")));

        Assert.Equal([("new", "a5", action)], LooseEnds.Of(sheet).Select(end => (end.Place, end.Cavity, end.Action)));
    }

    /// <summary>The harness was fed at a bulkhead that this cabin has not, and the ECU wants the feed: it is not capped and forgotten.</summary>
    [Fact]
    public void Of_FeedThatTheOtherBulkheadLacks_IsBroughtAnotherWay()
    {
        var ecu = Ecu("same", "ecu-10", "5:feed");
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(s_harnessBody, Plug("bulkhead-4", new(0, 0, 500), "4:tach")).WithEcus(ecu, ecu));
        var end = LooseEnds.Of(sheet).Single(end => end is { Signal: "feed", Place: "harness body" });

        Assert.Equal((LooseAction.FeedFrom, "2"), (end.Action, end.Cavity));
    }

    /// <summary>A harness that was made for an ECU, and no ECU in the car: every wire of its ECU side is over.</summary>
    [Fact]
    public void Of_NoEcuInTheCar_CapsTheHarnesssEcuSide()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithEcus(Ecu("old", "ecu-8", "1:tach"), null));

        Assert.Equal([("old", "a1", LooseAction.Cap)], LooseEnds.Of(sheet).Select(end => (end.Place, end.Cavity, end.Action)));
        Assert.Equal("capped", Assert.Single(SignalTrace.Of(sheet, "tach")!.Ecu).Work.Split(':')[0]);
    }

    /// <summary>Neither harness nor cabin has a bulkhead plug: nothing passes there, and nothing is said of it.</summary>
    [Fact]
    public void Of_NoBulkheadPlugs_SaysNothing()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithBodies(null, null));

        Assert.Empty(LooseEnds.Of(sheet));
        Assert.Empty(SignalTrace.Of(sheet, "tach")!.Cabin);
    }

    /// <summary>What has to be found comes first, what may be left comes last.</summary>
    [Fact]
    public void Of_AnyWiring_ComesInOrderOfUrgency()
    {
        LooseAction[] order = [LooseAction.Missing, LooseAction.FeedFrom, LooseAction.RunNew, LooseAction.CutOut, LooseAction.Cap, LooseAction.LeaveOff];
        var (random, seen) = (new RandomWiring(12), new HashSet<LooseAction>());
        for (var at = 0; at < 60; at++)
        {
            var ends = LooseEnds.Of(WiringWorksheet.Compute(random.Next()));
            var ranks = ends.Select(end => Array.IndexOf(order, end.Action)).ToList();

            Assert.Equal(ranks.Order(), ranks);
            Assert.All(ends, end => Assert.NotEmpty(end.Reason));
            seen.UnionWith(ends.Select(end => end.Action));
        }

        Assert.All(order, action => Assert.Contains(action, seen));
    }

    /// <summary>A sheet that was read and not computed says the same things of places that it cannot name.</summary>
    [Fact]
    public void Of_SheetWithoutItsData_TellsIdsInPlaceOfTitles()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithEcus(null, Ecu("new", "ecu-10", "5:throttle")) with { Needs = ["gauge"] });
        var bare = sheet with { Data = null };

        Assert.Equal(("Throttle sensor", "throttle"), (LooseEnds.Of(sheet).Single().Title, LooseEnds.Of(bare).Single().Title));
        Assert.Equal(LooseEnds.Of(sheet).Select(end => (end.Place, end.Cavity, end.Action)), LooseEnds.Of(bare).Select(end => (end.Place, end.Cavity, end.Action)));
        Assert.Empty(LoadProtection.Fuses(bare));
        Assert.Empty(LoadProtection.Relays(bare));
        Assert.Empty(GroundGroups.Of(bare));
        Assert.Null(TwistedPairs.Beside(bare, bare.Runs[0]));
    }

    private static string Told(WiringSheet sheet, string role) =>
        System.Xml.Linq.XElement.Parse(DeviceDrawing.Svg(sheet, sheet.Plugs.Single(plug => plug.Role == role), "wires")).Elements().Single(one => one.Name.LocalName == "desc").Value;
}
