using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Thick new feeds on thinner wires of the harness. Currents and fuses by the table of one body-builder manual (2015): 0.5 mm² 5 A and 7.5 A, 1.25 mm² 10.5 A and 15 A, 3 mm² 17.5 A and 25 A.</summary>
public sealed class ThinFeedTests
{
    /// <summary>A relay box feeds two loads over the harness's wire: 16 A ask for 3 mm² (4 of the sizes sold), 8 A for 1.25 mm² (1.5), the wire that is there has its own size.</summary>
    [Theory]
    [InlineData(8, 1.5, null, null)] // as thick as the new one
    [InlineData(4, 0.75, 5.0, 7.5)]
    [InlineData(8, 0.75, 5.0, 7.5)]
    [InlineData(16, 1.5, 10.5, 15.0)]
    public void Of_FeedOnAThinnerWire_TellsWhatThatCarries(double current, double wire, double? carries, double? fuse)
    {
        var feeds = ThinFeeds.Of(Fed(current, wire));

        Assert.Equal(carries is null ? [] : [(wire, current, carries.Value, fuse!.Value)], feeds.Select(feed => (feed.SizeMm2, feed.CurrentA, feed.CarriesA, feed.FuseA)));
    }

    [Fact]
    public void Thin_MoreThanTheWireCarries_SaysWhatToDo()
    {
        var feed = Assert.Single(ThinFeeds.Of(Fed(16, 1.5)));

        Assert.Equal(
            "Switched feed: the 4 mm² of relay-box end at the harness's wire of 1.5 mm² (the harness's bulkhead plug, 3), and from that splice on the thinner wire carries the current. It carries 10.5 A, and 16 A may flow with everything on: lead the thick wire on into the loom to where the loads branch off, or give those that draw most a feed and a fuse of their own. Fuse the feed for it, with 15 A at the most.",
            WiringWords.Thin(feed, "the harness's bulkhead plug"));
    }

    [Fact]
    public void Thin_NoMoreThanTheWireCarries_NamesTheFuseAlone()
    {
        var feed = Assert.Single(ThinFeeds.Of(Fed(4, 0.75)));

        Assert.EndsWith("It carries 5 A, and 4 A may flow. Fuse the feed for it, with 7.5 A at the most.", WiringWords.Thin(feed, "there"), StringComparison.Ordinal);
    }

    private static WiringSheet Fed(double current, double wire)
    {
        var harness = new Plug("bulkhead-6", Origin, [new Pin("3", "feed", "RD", wire)]);
        var far = new BayPoint(0, 500, 0);
        var signals = Signals.SetItem("feed", Signals["feed"] with { CurrentA = 1 });
        return WiringWorksheet.Compute((Empty with { Signals = signals }).WithBodies(harness, null).WithPlug("load", Plug("oval-2", far, "1:feed"))
            .With(Device("relay-box", "oval-2", Origin, "1:feed") with { Supplies = ["feed"] }, Device("load", "oval-2", far, "1:feed") with { CurrentA = current }));
    }
}
