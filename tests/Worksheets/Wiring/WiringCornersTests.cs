using System.Xml.Linq;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>Vocabularies with slips, plans without room, faces without captions, and wires whose colour nobody can paint.</summary>
public sealed class WiringCornersTests
{
    /// <summary>A vocabulary may be wrong itself: told at the signal, and the new wire has a size that exists.</summary>
    [Theory]
    [InlineData("PINKISH", 0.5, WiringProblemKind.UnknownColour)]
    [InlineData("GN", 0, WiringProblemKind.BadNumber)]
    [InlineData("GN", double.NaN, WiringProblemKind.BadNumber)]
    public void Compute_SignalWithASlip_IsTold(string colour, double size, WiringProblemKind kind)
    {
        var input = Empty with { Signals = Signals.SetItem("throttle", Signals["throttle"] with { Colour = colour, SizeMm2 = size }) };
        var sheet = WiringWorksheet.Compute(input.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithEcus(null, Ecu("new", "ecu-8", "1:throttle")));

        Assert.Equal([(kind, "throttle")], sheet.Problems.Select(problem => (problem.Kind, problem.Subject)));
        Assert.True(Assert.Single(sheet.Runs).SizeMm2 >= WiringSettings.Default.LeastMm2);
    }

    /// <summary>What is marked shared and cannot be tapped is run singly, and a current below nought is none.</summary>
    [Fact]
    public void Compute_SignalThatCannotBeShared_IsRunSingly()
    {
        var input = Empty with { Signals = Signals.SetItem("throttle", Signals["throttle"] with { Shared = true, CurrentA = -1 }) };
        var sheet = WiringWorksheet.Compute(input.With(Device("one", "oval-2", Origin, "1:throttle"), Device("two", "oval-2", Origin, "1:throttle")).WithEcus(null, Ecu("new", "ecu-8", "1:throttle", "2:throttle")));

        Assert.Equal([WiringProblemKind.BadNumber, WiringProblemKind.KindConflict], sheet.Problems.Select(problem => problem.Kind).Order());
        Assert.All(sheet.Runs, run => Assert.Null(run.Conductor));
        Assert.DoesNotContain(sheet.Plugs.SelectMany(plug => plug.Wires), wire => wire.Action == WireAction.Joins);
    }

    /// <summary>A wire of a colour that is none is drawn plain, one of two colours with a tracer.</summary>
    [Theory]
    [InlineData("GN/YE", "wire,tracer")]
    [InlineData("GN", "wire")]
    [InlineData("GNYE", "wire")]
    public void Drawing_ColourOfAWire_IsPaintedWhereItIsOne(string colour, string classes)
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithPlug("sensor", new Plug("oval-2", Origin, [new Pin("1", "throttle", colour, 0.75)])));
        var paths = XElement.Parse(DeviceDrawing.Svg(sheet, sheet.Plugs[0], "wires")).Descendants().Where(one => one.Name.LocalName == "path").Select(path => (string)path.Attribute("class")!).ToList();

        Assert.Equal(classes, string.Join(',', paths.Select(name => name.Split(' ')[0])));
        Assert.Equal(colour == "GNYE", paths.Contains("wire"));
    }

    /// <summary>A cable in one piece says so on the drawing, and its far end has a name on the list.</summary>
    [Fact]
    public void Drawing_CableThatIsRenewed_SaysSo()
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("stud", "oval-2", new(0, 100, 0), "1:feed")).WithPlug("stud", new Plug("oval-2", Origin, [new Pin("1", "feed", "RD", 16)])));

        Assert.Contains("renew in one piece", DeviceDrawing.Svg(sheet, sheet.Plugs[0], "wires"), StringComparison.Ordinal);
        Assert.Equal("the old cable's far end", sheet.Data!.TitleOf(Assert.Single(sheet.Runs).To.Place));
    }

    /// <summary>A wire of a lead that is lengthened besides: both are told.</summary>
    [Fact]
    public void Drawing_LeadToAPlugFarAway_TellsBoth()
    {
        var input = Empty with { Leads = [new AdapterLead("lead", "square-2", "oval-2")] };
        var sheet = WiringWorksheet.Compute(input.With(Device("sensor", "oval-2", Origin, "1:throttle")).WithPlug("sensor", Plug("square-2", new(0, 0, -200), "1:throttle")));

        Assert.Equal(PlugOutcome.Lead, sheet.Plugs[0].Outcome);
        Assert.Contains("by the adapter lead, let in 300 mm", DeviceDrawing.Svg(sheet, sheet.Plugs[0], "wires"), StringComparison.Ordinal);
    }

    [Fact]
    public void Face_WithoutCaptions_NamesEveryCavityPlainly()
    {
        var plain = XElement.Parse(ConnectorFace.Svg("face", "Plug", [["1", "2"], ["3"]]));
        var told = XElement.Parse(ConnectorFace.Svg("face", "Plug", [["1", "2"], ["3"]], new Dictionary<string, string>(StringComparer.Ordinal) { ["2"] = "GN/YE" }));

        Assert.Equal("Row 1: 1, 2. Row 2: 3.", Description(plain));
        Assert.Equal("Row 1: 1, 2 (GN/YE). Row 2: 3.", Description(told));
        Assert.DoesNotContain(plain.Descendants(), one => (string?)one.Attribute("class") == "cavity-box used");
        Assert.Single(told.Descendants(), one => (string?)one.Attribute("class") == "cavity-box used");
    }

    /// <summary>Letters of one plug run into the numbers of its cavities; two numbers are parted by a dot.</summary>
    [Theory]
    [InlineData("", "5", "5")]
    [InlineData("a", "5", "a5")]
    [InlineData("1", "5", "1.5")]
    [InlineData("a", "b5", "a.b5")]
    [InlineData("a", "", "a.")]
    public void Name_PlugAndCavity_AreToldApart(string plug, string cavity, string name) => Assert.Equal(name, new SidePin(plug, 0, "ecu-8", new Pin(cavity, "tach", "BN", 0.5)).Name);

    [Theory]
    [InlineData(0, 0, true)]
    [InlineData(101, 0, true)]
    [InlineData(102, 0, false)]
    [InlineData(-102, 0, false)]
    [InlineData(0, 202, false)]
    [InlineData(0, -202, false)]
    public void Holds_PointBeyondEitherEdge_IsOutside(double x, double z, bool inside) => Assert.Equal(inside, new PlanFrame(-100, 200, 100, -200, 1, 10, 420).Holds(new BayPoint(x, 0, z)));

    /// <summary>Where every place is taken the number still stands within the plan.</summary>
    [Fact]
    public void Place_NoRoomAtAll_StaysWithinThePlan()
    {
        var labels = new PlanLabels(Enumerable.Range(0, 200).SelectMany(x => Enumerable.Range(0, 30).Select(y => (x * 4.0, y * 10.0))), breadth: 720);
        var (x, _, anchor) = labels.Place(700, 150, "13 beyond");

        Assert.InRange(anchor == "end" ? x : anchor == "start" ? x + 65 : x + 33, 0, 720);
    }

    /// <summary>A distance from a place that is none is nought, not a number that poisons every length.</summary>
    [Theory]
    [InlineData(3, 4, 0, 5)]
    [InlineData(double.NaN, 0, 0, 0)]
    [InlineData(double.PositiveInfinity, 0, 0, 0)]
    [InlineData(double.MaxValue, double.MaxValue, 0, 0)]
    public void DistanceTo_PlaceThatCannotBe_IsNought(double x, double y, double z, double distance) => Assert.Equal(distance, new BayPoint(x, y, z).DistanceTo(Origin));

    [Theory]
    [InlineData(1.5, "sold-1.5")]
    [InlineData(2.0, "sold-2.5")]
    [InlineData(4.0, "any")]
    public void Purchases_Wire_IsOfTheNextSizeThatIsSold(double size, string part)
    {
        var sheet = WiringWorksheet.Compute((Empty with { Signals = Signals.SetItem("throttle", Signals["throttle"] with { SizeMm2 = size }) })
            .With(Device("sensor", "oval-2", Origin, "1:throttle")).WithEcus(null, Ecu("new", "ecu-8", "1:throttle")));

        Assert.Equal(part, WiringPurchases.Of(sheet, [new("any", WiringGood.Wire, null), new("sold-2.5", WiringGood.Wire, 2.5), new("sold-1.5", WiringGood.Wire, 1.5)]).Single(want => want.Good == WiringGood.Wire).Part);
    }

    /// <summary>A cut wire that is live when its relay is on wants a cap, and the cap wants buying.</summary>
    [Fact]
    public void Purchases_EndsThatAreCapped_BuyACapEach()
    {
        var sheet = WiringWorksheet.Compute(Empty
            .WithPlug("valve", Plug("flat-3", Origin, "1:purge", "2:feed", "3:battery"))
            .With(Device("valve", "oval-2", Origin, "1:purge")));

        Assert.Equal(2, sheet.Bill.Caps);
        Assert.Contains(new WiringPurchase(WiringGood.WireCap, null, 2, "cap"), WiringPurchases.Of(sheet, [new("cap", WiringGood.WireCap, null)]));
    }

    /// <summary>A screen is grounded at one end alone (common practice, no source), and the grounds of cabin and ECU are told with those of the engine.</summary>
    [Fact]
    public void Grounds_OfEveryPlace_AreGroupedBySignal()
    {
        var input = Empty with { Signals = Signals.Add("screen", new Signal("screen", "Screen", SignalKind.Shield, null, 0.5, "BK", Shared: true, Shielded: false)) };
        var groups = GroundGroups.Of(WiringWorksheet.Compute(input
            .With(Device("knock", "flat-3", Origin, "1:knock", "2:screen")).WithEcus(null, Ecu("new", "ecu-10", "1:knock", "2:screen", "3:power-ground", "4:sensor-ground"))
            .WithBodies(null, Plug("bulkhead-4", Origin, "1:power-ground"))));

        Assert.Equal(["power-ground", "screen", "sensor-ground"], groups.Select(group => group.Signal));
        Assert.Contains("at the ECU's end only", groups[1].Point, StringComparison.Ordinal);
        Assert.Equal([("body", "1"), ("new", "a3")], groups[0].Members.Select(member => (member.Place, member.Cavity)).Order());
        Assert.All(groups, group => Assert.Equal(groups.Length - 1, group.Apart.Length + group.Meets.Length));
    }

    /// <summary>A new wire that ends at the bulkhead, on the cabin's plug or spliced to the harness's own.</summary>
    [Theory]
    [InlineData(true, "to bulkhead plug 2.")]
    [InlineData(false, "to bulkhead plug 1, splice.")]
    public void Drawing_NewWireToTheBulkhead_SaysToWhichHalf(bool cabin, string told)
    {
        var sheet = WiringWorksheet.Compute(Empty.With(Device("lamp", "oval-2", Origin, "1:battery")).WithBodies(Plug("bulkhead-6", Origin, cabin ? "1:tach" : "1:battery"), cabin ? Plug("bulkhead-4", Origin, "2:battery") : null));

        Assert.EndsWith(told, Description(XElement.Parse(DeviceDrawing.Svg(sheet, sheet.Plugs[0], "wires"))), StringComparison.Ordinal);
        Assert.Contains("class=\"run\"", BayPlan.Svg(sheet, [.. sheet.Plugs], "plan"), StringComparison.Ordinal);
    }

    private static string Description(XElement drawing) => drawing.Elements().Single(one => one.Name.LocalName == "desc").Value;
}
