using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Wires that a bought lead brings, and screens that come with their wire: laid, but neither cut nor bought again.</summary>
public sealed class BoughtLeadTests
{
    private static readonly DeviceLead s_lead = new("lead", "Pedal lead", ["1", "2"]);

    /// <summary>Two new wires to the ECU, each 1.2 × (400 + 1,000) + 60 = 1,740 mm; the lead brings them with their terminals at the device.</summary>
    [Theory]
    [InlineData(false, false, 2, 2)]
    [InlineData(true, false, 0, 2)]
    [InlineData(true, true, 0, 0)]
    public void Compute_WiresOfALead_AreNeitherCutNorBought(bool brought, bool farEnds, int atTheDevice, int atTheEcu)
    {
        var sheet = Pedal(brought ? s_lead with { HasFarEnds = farEnds } : null);

        Assert.Equal([1740, 1740], sheet.Runs.Select(run => run.LengthMm));
        Assert.Equal(brought ? 0 : 2, sheet.Bill.Cuts.Length);
        Assert.Equal(brought ? 0 : 3480, sheet.Bill.TotalLengthMm);
        Assert.Equal(brought ? ["pedal/2 throttle", "pedal/1 coolant"] : [], sheet.Bill.Uncut.Select(cut => cut.Label));
        Assert.Equal((atTheDevice, atTheEcu), (Terminals(sheet, "oval-2"), Terminals(sheet, "ecu-8")));
        Assert.Equal(atTheDevice + atTheEcu, Joints.Terminals(sheet).Sum(line => line.Count));
        var bought = WiringPurchases.Of(sheet, []);
        Assert.Equal(!brought, bought.Any(want => want.Good == WiringGood.Wire));
        Assert.Equal(1, bought.Single(want => want.Good == WiringGood.Housing).Amount);
    }

    [Fact]
    public void Compute_LeadWithItsPlug_WantsNoHousing()
    {
        var sheet = Pedal(s_lead with { HasPlug = true });

        Assert.Equal("ecu-8", Assert.Single(sheet.Bill.Housings).Name);
        Assert.DoesNotContain(WiringPurchases.Of(sheet, []), want => want.Good == WiringGood.Housing);
    }

    /// <summary>A lead that brings one wire of two leaves the other on the list, and the numbers of the list go on behind it.</summary>
    [Fact]
    public void Compute_LeadOfOneWire_LeavesTheOther()
    {
        var sheet = Pedal(s_lead with { Cavities = ["2"] });

        Assert.Equal(["pedal/1 coolant", "pedal/2 throttle"], sheet.Bill.Listed.Select(cut => cut.Label));
        Assert.Equal("pedal/1 coolant", Assert.Single(sheet.Bill.Cuts).Label);
        Assert.Equal("comes with: Pedal lead; wants 1,740 mm of it", Swapwright.Sheets.WiringWords.Uncut(sheet, sheet.Runs[1]));
        Assert.Equal(2, Swapwright.Sheets.WiringWords.Number(sheet, "pedal/2 throttle"));
        Assert.Contains(LooseEnds.Of(sheet), end => end.Cavity == "2" && end.Reason.EndsWith("; the wire comes with: Pedal lead", StringComparison.Ordinal));
    }

    /// <summary>The plug is there, 400 mm off: what is let in is the lead, and both its ends are spliced.</summary>
    [Fact]
    public void Compute_LeadThatLengthens_LeavesTheSplices()
    {
        var sheet = WiringWorksheet.Compute(Empty.WithPlug("pedal", Plug("oval-2", Origin, "1:coolant", "2:throttle"))
            .With(Device("pedal", "oval-2", new(0, 400, 0), "1:coolant", "2:throttle") with { Leads = [s_lead] }));

        Assert.Empty(sheet.Bill.Cuts);
        Assert.Equal(4, sheet.Bill.Splices);
    }

    /// <summary>A new screened wire to the ECU and its screen: one piece off the reel, with the screen laid on at the ECU's own cavity for it.</summary>
    [Fact]
    public void Compute_ScreenOfANewWire_ComesWithThatWire()
    {
        var sheet = Screened(Empty);
        var screen = sheet.Runs.Single(run => run.Signal == "screen");

        Assert.Equal("knock-sensor/1 knock", screen.ScreenOf);
        Assert.Equal(("brain", "a2"), (screen.To.Place, screen.To.Cavity));
        Assert.Equal("knock-sensor/1 knock", Assert.Single(sheet.Bill.Cuts).Label);
        Assert.Equal(1, WiringPurchases.Of(sheet, []).Count(want => want.SizeMm2 is not null));
        Assert.Equal((2, 2), (Terminals(sheet, "oval-2"), Terminals(sheet, "ecu-8")));
        Assert.Equal("the screen of No. 1, not a wire of its own", Swapwright.Sheets.WiringWords.Uncut(sheet, screen));
    }

    /// <summary>The screened wire goes on where the old plug was cut off; so does its screen.</summary>
    [Fact]
    public void Compute_ScreenOfAWireThatGoesOn_IsJoinedThere()
    {
        var old = Ecu("brain", "ecu-8", "1:knock", "2:screen");
        var sheet = Screened(Empty.WithEcus(old, null).WithPlug("old-sensor", Plug("flat-3", new(0, 100, 0), "1:knock")));
        var screen = sheet.Runs.Single(run => run.Signal == "screen");

        Assert.Equal((WireEndKind.Splice, "old-sensor", "1"), (screen.To.Kind, screen.To.Place, screen.To.Cavity));
        Assert.Contains(LooseEnds.Of(sheet), end => end.Signal == "screen" && end.Reason == "it is the screen of the new wire beside it: join it on at old-sensor, 1");
    }

    private static WiringSheet Pedal(DeviceLead? lead) => WiringWorksheet.Compute(Empty.WithEcus(null, Ecu("brain", "ecu-8", "1:coolant", "2:throttle"))
        .With(Device("pedal", "oval-2", new(0, 400, 0), "1:coolant", "2:throttle") with { Leads = lead is null ? [] : [lead] }));

    private static WiringSheet Screened(WiringInput input) => WiringWorksheet.Compute((input with
    {
        Signals = input.Signals.Add("screen", new Signal("screen", "Screen", SignalKind.Shield, null, 0.5, "GY", Shared: true, Shielded: false)),
    }).WithEcus(input.Harness.MadeFor, Ecu("brain", "ecu-8", "1:knock", "2:screen")).With(Device("knock-sensor", "oval-2", Origin, "1:knock", "2:screen")));

    private static int Terminals(WiringSheet sheet, string connector) => sheet.Bill.Terminals.Where(line => line.Connector == connector).Sum(line => line.Count);
}
