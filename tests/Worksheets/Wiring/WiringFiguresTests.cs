using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>How the numbers of the wiring were got: what a figure says went in has to give the figure.</summary>
public sealed class WiringFiguresTests
{
    private static readonly BayPoint s_aside = new(0, 200, 0);

    /// <summary>Sums over random wirings, most of them with something wrong: each is the sum of its parts, and each length follows from its way.</summary>
    [Fact]
    public void Add_AnyWiring_AddsUp()
    {
        var random = new RandomWiring(11);
        for (var at = 0; at < 60; at++)
        {
            var sheet = WiringWorksheet.Compute(random.Next());
            var ledger = Figures(sheet);

            Assert.All(["wire", "terminals"], id => Assert.Equal(Parts(ledger, id).Sum(), ledger.Value(id), 1e-6));
            Assert.Equal(ledger.Figure("pieces")!.From.SkipLast(2).Sum(input => input.Value), ledger.Value("pieces"));
            Assert.Equal(sheet.Plugs.Length, sheet.Counts.ExtendedOnly + new[] { "straight-in", "re-pinned", "changed", "lead", "added", "capped" }.Sum(id => ledger.Value("plugs-" + id)));
            Assert.All(ledger.Figures.Where(figure => figure.Formula == "L = ⌈k d + s⌉"), figure => Assert.Equal(Math.Ceiling((figure.From[1].Value * figure.From[0].Value) + figure.From[2].Value - 1e-6), figure.Value));
            Assert.InRange(ledger.Figures.Where(figure => figure.Id.StartsWith("length-", StringComparison.Ordinal)).Select(figure => figure.Value).DefaultIfEmpty(0).Max(), 0, ledger.Value("longest-wire"));
        }
    }

    [Fact]
    public void Add_NothingToWire_IsNought()
    {
        var ledger = Figures(WiringWorksheet.Compute(Empty));

        Assert.All(ledger.Figures, figure => Assert.Equal(0, figure.Value));
        Assert.Equal(["pieces"], ledger.Figure("longest-wire")!.From.Select(input => input.Title));
        Assert.Empty(ledger.Gaps);
    }

    /// <summary>A wire that is let in, one that is run anew, one of either adapter, and a cable in one piece.</summary>
    [Fact]
    public void Add_PiecesOfEveryPurpose_AreCountedByIt()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .With(Device("valve", "square-2", s_aside, "1:purge"), Device("sensor", "oval-2", Origin, "1:throttle"), Device("stud", "oval-2", s_aside, "1:feed"))
            .WithPlug("valve", Plug("square-2", Origin, "1:purge")).WithPlug("stud", new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 16)]))
            .WithEcus(Ecu("old", "ecu-8", "1:purge"), Ecu("new", "ecu-10", "5:purge", "6:throttle"))
            .WithBodies(Plug("bulkhead-6", Origin, "3:gauge"), Plug("bulkhead-4", Origin, "2:gauge")));

        Assert.Equal(
            [("pieces let in", 1d), ("cables renewed", 1d), ("new wires of devices", 1d), ("wires of the ECU's adapter", 1d), ("wires of the bulkhead's adapter", 1d)],
            Figures(sheet).Figure("pieces")!.From.SkipLast(2).Select(input => (input.Title, input.Value)));
    }

    /// <summary>A fan of 12 A has a fuse of 15 A before its feed; the size is no less than each of what asked for it.</summary>
    [Fact]
    public void Add_FeedOfALoad_SaysWhatAskedForItsSize()
    {
        var figure = Size(12, "fan", own: true);

        Assert.Equal((12d, 15d), (Input(figure, "current I"), Input(figure, "fuse")));
        Assert.True(figure.Value >= Input(figure, "asked by the current") && figure.Value >= Input(figure, "asked by the drop"));
        Assert.Null(Input(Size(12, "lamp", own: false), "fuse"));
    }

    /// <summary>No row of the table carries 30 A, and no conductor of IEC 60228 up to its last keeps 5,000 A within 0.3 V: the figure then names neither.</summary>
    [Theory]
    [InlineData(20, true, true)]
    [InlineData(30, false, true)]
    [InlineData(5000, false, false)]
    public void Add_CurrentBeyondTheTables_IsNotSaidToAsk(double current, bool byCurrent, bool byDrop)
    {
        // What a device may draw is checked, and what a signal may carry is told as a problem alone.
        var input = Empty with { Signals = Signals.SetItem("feed", Signals["feed"] with { CurrentA = current }) };
        var sheet = WiringWorksheet.Compute(input.With(Device("fan", "square-2", s_aside, "1:feed")).WithBodies(Plug("bulkhead-4", new(0, 0, 500), "1:feed"), null));
        var figure = Figures(sheet).Figures.Single(figure => figure.Id.StartsWith("size-fan", StringComparison.Ordinal));

        Assert.Equal((byCurrent, byDrop), (Input(figure, "asked by the current") is not null, Input(figure, "asked by the drop") is not null));
    }

    [Fact]
    public void Add_SignalWithoutACurrent_IsAGap()
    {
        var ledger = Figures(WiringWorksheet.Compute(Empty.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithEcus(null, Ecu("new", "ecu-8", "1:throttle"))));

        Assert.Equal("Conductor of sensor/1 throttle", Assert.Single(ledger.Gaps).About);
        Assert.NotNull(ledger.Figure("length-sensor-1-throttle"));
    }

    [Fact]
    public void Add_LoadOnAnOutputThatIsTooWeak_NamesBothCurrents()
    {
        var heater = Device("heater", "flat-3", s_aside, "1:feed", "2:purge") with { CurrentA = 1.5, OwnFuse = true };
        var figure = Figures(WiringWorksheet.Compute(Empty.With(heater).WithEcus(null, Ecu("brain", "ecu-8", "1:purge") with { DriverA = 1 }))).Figure("relays")!;

        Assert.Equal(("current of heater, against 1 A", 1.5), (figure.From[0].Title, figure.From[0].Value));
        Assert.Equal(1, figure.Value);
    }

    private static Figure Size(double current, string role, bool own)
    {
        var device = Device(role, "square-2", s_aside, "1:feed") with { CurrentA = current, OwnFuse = own };
        return Figures(WiringWorksheet.Compute(Empty.With(device).WithBodies(Plug("bulkhead-4", new(0, 0, 500), "1:feed"), null))).Figures.Single(figure => figure.Id.StartsWith($"size-{role}", StringComparison.Ordinal));
    }

    private static double? Input(Figure figure, string title) => figure.From.Where(input => input.Title == title).Select(input => (double?)input.Value).SingleOrDefault();

    private static IEnumerable<double> Parts(Ledger ledger, string id) => ledger.Figure(id)!.From.SkipLast(1).Select(input => input.Value);

    private static Ledger Figures(WiringSheet sheet)
    {
        var ledger = new LedgerBuilder("wiring", "Wiring");
        WiringFigures.Add(ledger, sheet);
        return ledger.Build();
    }
}
