using System.Collections.Immutable;
using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Feeds that pass a device, feeds that a device gives, lines that partners share, wires that too many would hang on.</summary>
public sealed class FedThroughTests
{
    private static readonly WiringInput s_base = Empty with
    {
        Signals = Signals
            .Add("feed-1", new Signal("feed-1", "Feed of injector 1", SignalKind.Power, 2, 0.75, "PK", Shared: true, Shielded: false) { Through = "ballast" })
            .Add("bus", new Signal("bus", "Data bus", SignalKind.Data, 0.1, 0.5, "OG", Shared: false, Shielded: false)),
    };

    private static readonly Device s_injector = Device("injector", "oval-2", new(300, 0, 0), "1:feed-1", "2:injector-1");

    private static readonly Device s_ballast = Device("ballast", "square-2", new(0, 300, 0), "1:feed", "2:feed-1");

    private static readonly Plug s_injectorPlug = Plug("oval-2", new(300, 0, 0), "1:feed-1", "2:injector-1");

    /// <summary>A harness that was made without the pack feeds the injector straight: left on, that wire bypasses the resistor.</summary>
    [Fact]
    public void Compute_PackThatTheHarnessNeverHad_CutsTheOldFeedOffAndRunsOneFromThePack()
    {
        var sheet = WiringWorksheet.Compute(s_base.With(s_injector, s_ballast).WithPlug("injector", s_injectorPlug));
        var plug = sheet.Plugs.Single(one => one.Role == "injector");
        var run = Assert.Single(sheet.Runs, one => one.Signal == "feed-1");

        Assert.Equal([WireAction.Runs, WireAction.Stays], plug.Wires.Select(wire => wire.Action));
        Assert.Equal((PlugOutcome.RePinned, "1", false), (plug.Outcome, Assert.Single(plug.Capped).Cavity, plug.Capped[0].StaysInHousing));
        Assert.Equal([("ballast", "2", WireEndKind.Terminal), ("injector", "1", WireEndKind.Terminal)], new[] { run.From, run.To }.Select(end => (end.Place, end.Cavity, end.Kind)).Order());
        Assert.Equal(("ballast", "2", true), LooseEnds.Of(sheet).Where(end => end.Signal == "feed-1" && end.Action == LooseAction.RunNew).Select(end => (end.Place, end.Cavity, end.Reason.Contains("injector, 1", StringComparison.Ordinal))).Single());
        Assert.Contains("bypass the ballast", LooseEnds.Of(sheet).Single(end => end.Signal == "feed-1" && end.Action == LooseAction.Cap).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void Compute_PackOfItsOwnHarness_LeavesEveryWire()
    {
        var sheet = WiringWorksheet.Compute(s_base.With(s_injector, s_ballast).WithPlug("injector", s_injectorPlug).WithPlug("ballast", Plug("square-2", new(0, 300, 0), "1:feed", "2:feed-1")));

        Assert.Empty(sheet.Runs);
        Assert.All(sheet.Plugs, plug => Assert.Equal(PlugOutcome.StraightIn, plug.Outcome));
    }

    [Fact]
    public void Compute_NoPackFitted_LeavesTheFeed() =>
        Assert.Equal(PlugOutcome.StraightIn, WiringWorksheet.Compute(s_base.With(s_injector).WithPlug("injector", s_injectorPlug)).Plugs.Single().Outcome);

    /// <summary>The pack draws what it passes on: 2 A, where its feed alone would be reckoned with 10.</summary>
    [Fact]
    public void Compute_FeedOfThePack_CarriesWhatItsOutletsDraw() => Assert.Equal(
        2, WiringWorksheet.Compute(s_base.With(s_injector, s_ballast).WithPlug("injector", s_injectorPlug).WithPlug("valve", Plug("oval-2", Origin, "1:feed"))).Runs.Single(run => run.Signal == "feed").Conductor!.For.CurrentA);

    [Theory]
    [InlineData(false, 1.5)]
    [InlineData(true, 4)]
    public void Compute_DeviceThatGivesAFeed_GetsAWireAsThickAsTheOneItFeeds(bool gives, double size)
    {
        var relay = Device("relay", "oval-2", new(0, 100, 0), "1:feed") with { CurrentA = 5, Supplies = gives ? ["feed"] : [] };
        var thick = new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 4)]);

        Assert.Equal(size, WiringWorksheet.Compute(s_base.With(relay).WithPlug("valve", thick)).Runs.Single().SizeMm2);
    }

    /// <summary>Three partners in a row: each is joined to the one before it, whatever their names are.</summary>
    [Fact]
    public void Compute_PartnersOfADataLine_AreChainedFromTheEcu()
    {
        var sheet = WiringWorksheet.Compute(s_base
            .With(Device("a-far", "oval-2", new(0, 0, -900), "1:bus"), Device("b-near", "oval-2", new(0, 0, -100), "1:bus"), Device("c-middle", "oval-2", new(0, 0, -500), "1:bus"))
            .WithEcus(null, Ecu("brain", "ecu-8", "1:bus")));

        Assert.Equal([("a-far", "c-middle"), ("b-near", "brain"), ("c-middle", "b-near")], sheet.Runs.Select(run => (run.From.Place, run.To.Place)).Order());
    }

    /// <summary>A module and its coil have a line of their own: one wire, not one from either end.</summary>
    [Fact]
    public void Compute_TwoPartnersThatNothingElseKnows_ShareOneWire() => Assert.Single(
        WiringWorksheet.Compute(s_base.With(Device("coil", "oval-2", new(0, 0, -900), "1:bus"), Device("module", "oval-2", new(0, 0, -100), "1:bus"))).Runs);

    /// <summary>The cabin has no use for the lamp wire, and a new lamp hangs on it: it is not said to be capped, nor told twice.</summary>
    [Fact]
    public void Compute_HarnessWireThatADeviceHangsOn_IsNotCapped()
    {
        var input = s_base.With(Device("lamp", "oval-2", new(0, 0, 100), "1:oil-lamp"));
        var sheet = WiringWorksheet.Compute(input with
        {
            Harness = input.Harness with { Body = Plug("bulkhead-6", Origin, "1:oil-lamp", "2:gauge") },
            Body = Plug("bulkhead-4", Origin, "1:gauge"),
        });

        var row = sheet.BodyAdapter!.Rows.Single(one => one.Signal == "oil-lamp");
        Assert.Equal((AdapterAction.Branch, "lamp, 1"), (row.Action, row.Note));
        Assert.Equal(["lamp"], LooseEnds.Of(sheet).Where(end => end.Signal == "oil-lamp").Select(end => end.Place));
    }

    /// <summary>Two loads of 8 A on a wire of 1.25 mm², which carries 10.5 A by the table; 16 A with a quarter more is a blade of 20 A.</summary>
    [Theory]
    [InlineData(8, true)]
    [InlineData(5, false)]
    public void SharedFeeds_TwoLoadsOnOneWire_AreAddedUp(double current, bool tooMuch)
    {
        Device Load(string role, int y) => Device(role, "oval-2", new(0, y, 0), "1:feed") with { CurrentA = current };
        var sheet = WiringWorksheet.Compute(s_base.With(Load("one", 200), Load("two", 300)).WithPlug("valve", new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 1.25)])));

        if (!tooMuch)
        {
            Assert.Empty(sheet.Overloads);
            return;
        }

        var feed = Assert.Single(sheet.Overloads);
        Assert.Equal(("valve", "1", 10.5, 16.0, 20.0), (feed.Place, feed.Cavity, feed.CarriesA, feed.CurrentA, feed.FuseA));
        Assert.Equal(["one", "two"], feed.Members.ToList());
        Assert.True(ConductorSize.FuseFor(feed.FeedMm2!.Value) >= feed.FuseA);
    }

    [Theory]
    [InlineData("blade-2-8", "blade 2.8")]
    [InlineData("pin-1-0", "pin 1.0")]
    [InlineData("ring-6", "ring 6")]
    [InlineData("stud", "stud")]
    public void Terminal_Id_IsSpokenAfterFamilyAndWidth(string id, string words) => Assert.Equal(words, WiringWords.Terminal(id));
}
