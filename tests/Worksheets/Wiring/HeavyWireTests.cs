using System.Collections.Immutable;
using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>What an existing wire does not carry, and what nobody splices.</summary>
public sealed class HeavyWireTests
{
    private static readonly WiringSheet s_overloaded = WiringWorksheet.Compute(Empty
        .With(Load("one", 200), Load("two", 300))
        .WithPlug("valve", new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 1.25)])));

    private static readonly WiringSheet s_short = WiringWorksheet.Compute((Empty with { Harness = Empty.Harness with { Trunk = new(0, 300, 0), EcuPlace = new(0, 300, 400) } })
        .With(Device("stud", "oval-2", new(0, 100, 0), "1:feed"))
        .WithPlug("stud", new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 16)])));

    /// <summary>Two loads of 8 A on a wire for 10.5: only the relay's coil may hang there, and the loads' wires start at its contact.</summary>
    [Fact]
    public void Compute_LoadsThatAWireDoesNotCarry_StartAtARelay()
    {
        var ends = s_overloaded.Runs.Select(run => (run.From.Place, run.From.Cavity, run.To.Place, run.To.Cavity)).Order().ToList();

        Assert.Equal([("one", "1", "relay 1", "87"), ("relay 1", "30", "battery post", ""), ("relay 1", "85", "body metal", ""), ("relay 1", "86", "valve", "1"), ("two", "1", "relay 1", "87")], ends);
        Assert.Equal(3, s_overloaded.Bill.Splices); // the coil onto the old wire, the second load onto the first one's, the contact's feed onto the tail of its fuse holder
        Assert.Contains("added relay 1", LooseEnds.Of(s_overloaded).First(end => end.Place == "one").Reason, StringComparison.Ordinal);
        Assert.Contains("added relay 1 of the cutting list", WiringWords.Shared(s_overloaded.Overloads[0], s_overloaded.Data!, 1), StringComparison.Ordinal);
    }

    /// <summary>
    /// 16 A over a 20 A fuse ask for 3 mm² by the table of one body-builder manual (2015), 4 of the sizes sold. Where the battery stands no base says: from the
    /// valve by way of the trunk to the ECU's place, 1.2 times as much and 60 mm.
    /// </summary>
    [Fact]
    public void Compute_ContactOfAnAddedRelay_IsOnTheListWithItsTerminals()
    {
        var run = s_overloaded.Runs.Single(run => run.Cavity == "30");

        Assert.Equal((4.0, 16.0, 20.0), (run.SizeMm2, run.Conductor!.For.CurrentA, run.Conductor.For.FuseA));
        Assert.Equal(1260, run.LengthMm);
        Assert.Equal(run.LengthMm, s_overloaded.Bill.Cuts.Single(cut => cut.Label == run.Label).LengthMm);
        Assert.Equal(4, s_overloaded.Bill.Terminals.Single(line => line.Connector == "relay").Count); // 30, 85, 86, 87
        Assert.Equal(2, s_overloaded.Bill.Terminals.Single(line => line.Connector == "ring").Count); // the coil's ground, the battery's clamp
        Assert.Equal(4, s_overloaded.Overloads[0].FeedMm2);
    }

    /// <summary>
    /// A battery at the other end: from the valve by way of the trunk 4000 mm, 1.2 times as much and 60 make 4860. At 16 A and 85 °C 4 mm² lose 4.95 mΩ/m × 1.25545
    /// × 4.86 m × 16 A = 0.48 V, 6 mm² 0.32 V, 10 mm² 0.19 V (IEC 60228 class 5, IEC 60028): only the last stays below 0.3.
    /// </summary>
    [Fact]
    public void Compute_ContactWhoseBatteryIsStated_IsAsLongAndAsThickAsTheWayAsks()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Load("one", 200), Load("two", 300)).WithPlug("valve", new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 1.25)])) with
        {
            Battery = new("the joint of the main cable", new(0, 0, -4000)),
        });
        var run = sheet.Runs.Single(run => run.Cavity == "30");

        Assert.Equal((4860.0, 10.0, ConductorReason.Drop), (run.LengthMm, run.SizeMm2, run.Conductor!.Reason));
        Assert.Equal(run.SizeMm2, sheet.Overloads[0].FeedMm2);
        Assert.Equal("the joint of the main cable, over its fuse", sheet.Data!.TitleOf(run.To.Place));
        Assert.EndsWith("feed its contact 30 from the joint of the main cable with 10 mm² over a 20 A fuse as close to its terminal as it goes.", WiringWords.Shared(sheet.Overloads[0], sheet.Data, 1), StringComparison.Ordinal);
        Assert.EndsWith("from the battery with 4 mm² over a 20 A fuse as close to its terminal as it goes; measure that wire on the car.", WiringWords.Shared(s_overloaded.Overloads[0], s_overloaded.Data!, 1), StringComparison.Ordinal);
    }

    [Fact]
    public void Purchases_RelayThatIsAskedFor_IsBoughtWithBaseAndFuse()
    {
        ImmutableArray<WiringStock> stock = [new("a-relay", WiringGood.Relay, null), new("a-base", WiringGood.RelayBase, null), new("a-holder", WiringGood.FuseHolder, null)];

        Assert.Equal(
            [("a-relay", 1), ("a-base", 1), ("a-holder", 1)],
            WiringPurchases.Of(s_overloaded, stock).Where(want => want.Part is not null).Select(want => (want.Part!, want.Amount)));
    }

    /// <summary>By way of the trunk to the ECU's place: 200 and 400 mm, 1.2 times as much and 60 mm, in one piece.</summary>
    [Fact]
    public void Compute_CableThatIsTooShortAndTooHeavyToSplice_IsRenewedWhole()
    {
        var run = Assert.Single(s_short.Runs);

        Assert.Equal((WirePurpose.Renewal, 780.0, 16.0, 0), (run.Purpose, run.LengthMm, run.SizeMm2, run.Splices));
        Assert.Equal([WireEndKind.Ring, WireEndKind.Ring], [run.From.Kind, run.To.Kind]);
        Assert.Equal(2, s_short.Bill.Terminals.Single(line => line.Terminal == "ring").Count);
        Assert.True(Assert.Single(s_short.Plugs).Wires.Single().IsRenewed);
        Assert.Equal(1, s_short.Counts.ExtendedOnly);
        Assert.Contains(WiringPurchases.Of(s_short, [new("cable", WiringGood.Wire, 16)]), want => want is { Part: "cable", Amount: 1 });
    }

    private static Device Load(string role, int y) => Device(role, "oval-2", new(0, y, 0), "1:feed") with { CurrentA = 8 };
}
