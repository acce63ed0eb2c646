using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>The plan of the bay and the drawing of a device's wires, read back as XML.</summary>
public sealed class BayPlanTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Around_Points_KeepsOneScaleAndPutsTheGearboxUpThePage()
    {
        var frame = PlanFrame.Around([new(-200, 50, 0), new(200, 900, 500)], width: 720, edge: 46);

        var (leftX, nearY) = frame.Of(new BayPoint(-200, 0, 0));
        var (rightX, farY) = frame.Of(new BayPoint(200, 0, 500));
        Assert.True(leftX < rightX && farY < nearY);
        Assert.Equal((rightX - leftX) / 400, (nearY - farY) / 500, 6);
        Assert.Equal(frame.Scale, (nearY - farY) / 500, 6);
        Assert.Equal(720 / 2.0, (leftX + rightX) / 2, 6);
    }

    [Fact]
    public void Of_PointBeyondThePlan_IsHeldAtItsEdge()
    {
        var frame = PlanFrame.Around([new(-200, 0, 0), new(200, 0, 500)], width: 720, edge: 46);

        Assert.False(frame.Holds(new BayPoint(0, 0, 3000)));
        Assert.Equal(46, frame.Of(new BayPoint(0, 0, 3000)).Y, 6);
        Assert.True(frame.Holds(new BayPoint(0, 400, 250)));
    }

    /// <summary>Nine letters of 0.62 × 11 and 2 are 63 wide; from 8 beyond 674 they would end at 745.</summary>
    [Theory]
    [InlineData(674, "end")]
    [InlineData(46, "start")]
    public void Place_SpotAtTheEdge_KeepsItsNumberWithinThePlan(double x, string anchor) =>
        Assert.Equal(anchor, new PlanLabels([(x, 200)], breadth: 720).Place(x, 200, "13 beyond").Anchor);

    [Fact]
    public void Place_ManySpotsNearTogether_GivesEachNumberRoomOfItsOwn()
    {
        var spots = Enumerable.Range(0, 6).Select(at => (X: 300.0 + (at * 14), Y: 200.0)).ToImmutableArray();
        var labels = new PlanLabels(spots, breadth: 720);
        var boxes = spots.Select((spot, at) =>
        {
            var text = (at + 10).ToString(CultureInfo.InvariantCulture);
            var (x, y, anchor) = labels.Place(spot.X, spot.Y, text);
            var width = 0.62 * PlanLabels.Size * text.Length;
            var left = anchor == "start" ? x : anchor == "end" ? x - width : x - (width / 2);
            return (Left: left, Right: left + width, Top: y - PlanLabels.Size + 2, Bottom: y + 2);
        }).ToList();

        for (var one = 0; one < boxes.Count; one++)
        {
            for (var other = one + 1; other < boxes.Count; other++)
            {
                Assert.False(boxes[one].Left < boxes[other].Right && boxes[other].Left < boxes[one].Right && boxes[one].Top < boxes[other].Bottom && boxes[other].Top < boxes[one].Bottom, FormattableString.Invariant($"{one} lies on {other}"));
            }
        }
    }

    [Fact]
    public void Svg_Plan_NumbersEveryPlugWithAPlaceAndTellsHowFarItsWiresGrow()
    {
        var sheet = Sheet();
        var drawing = XElement.Parse(BayPlan.Svg(sheet, [.. sheet.Plugs], "plan"));

        var numbers = drawing.Descendants(s_svg + "text").Where(text => (string)text.Attribute("class")! == "number").Select(text => text.Value).ToList();
        Assert.Equal(Enumerable.Range(1, sheet.Plugs.Length), numbers.Select(text => int.Parse(text.Split(' ')[0], CultureInfo.InvariantCulture)));
        foreach (var (plug, at) in sheet.Plugs.Select((plug, at) => (plug, at)))
        {
            var grown = plug.Wires.Select(wire => wire.ExtensionMm).DefaultIfEmpty(0).Max();
            Assert.Equal(grown > 0, numbers[at].Contains('+', StringComparison.Ordinal));
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{at + 1}: {plug.Title}, "), drawing.Element(s_svg + "desc")!.Value, StringComparison.Ordinal);
        }

        Assert.Contains(sheet.Plugs, plug => plug.Extended);
        Assert.Equal(sheet.Plugs.Count(plug => plug.Extended), drawing.Descendants(s_svg + "line").Count(line => (string)line.Attribute("class")! == "grown") - 1);
    }

    /// <summary>
    /// A pump three metres off is drawn at the edge; a lamp without a plug gets a wire to the bulkhead, a valve to the next device that has its ground,
    /// a sensor to the loom's trunk and so to the ECU.
    /// </summary>
    [Fact]
    public void Svg_NewWires_GoFromEachDeviceToWhereTheyEnd()
    {
        var input = Empty
            .With(
                Device("lamp", "oval-2", new(-100, 0, -50), "1:oil-lamp"), Device("pump", "oval-2", new(0, 0, 3000), "1:purge"),
                Device("sensor", "flat-3", new(80, 0, 120), "1:throttle"), Device("valve", "oval-2", new(0, 0, 200), "1:power-ground"))
            .WithPlug("pump", Plug("oval-2", new(0, 0, 3000), "1:purge"))
            .WithPlug("switch", Plug("oval-2", new(0, 0, 260), "1:power-ground"))
            .With(Device("switch", "oval-2", new(0, 0, 260), "1:power-ground"))
            .WithBodies(null, Plug("bulkhead-4", new(-200, 0, 400), "1:oil-lamp"))
            .WithEcus(Bench.Ecu("ecu", "ecu-8", "1:throttle"), Bench.Ecu("ecu", "ecu-8", "1:throttle"));
        var sheet = WiringWorksheet.Compute(input with { Needs = ["oil-lamp"] });
        var drawing = XElement.Parse(BayPlan.Svg(sheet, [.. sheet.Plugs], "plan"));

        var told = drawing.Element(s_svg + "desc")!.Value;
        Assert.Contains("lamp, 100 mm to the left, 50 mm in front of the crank's nose.", told, StringComparison.Ordinal);
        Assert.Contains("pump, on the crank's axis, 3000 mm towards the gearbox, beyond the edge of the plan.", told, StringComparison.Ordinal);
        Assert.Contains("sensor, 80 mm to the right, 120 mm towards the gearbox.", told, StringComparison.Ordinal);
        Assert.Single(drawing.Descendants(s_svg + "text"), text => text.Value.EndsWith(" beyond", StringComparison.Ordinal));

        // Lamp, sensor and valve are wired anew, each to one place; the key below shows one more.
        Assert.Equal(3 + 1, drawing.Descendants(s_svg + "line").Count(line => (string)line.Attribute("class")! == "run"));
    }

    [Fact]
    public void Svg_NothingWithAPlace_IsEmpty() => Assert.Equal("", BayPlan.Svg(WiringWorksheet.Compute(Empty), [], "plan"));

    [Fact]
    public void Svg_Device_ShowsEveryCavityItsColourAndWhereItEnds()
    {
        var sheet = Sheet();
        foreach (var plug in sheet.Plugs.Where(plug => !plug.Wires.IsEmpty))
        {
            var drawing = XElement.Parse(DeviceDrawing.Svg(sheet, plug, "wires"));
            var told = drawing.Element(s_svg + "desc")!.Value;
            Assert.All(plug.Wires, wire => Assert.Contains($"Cavity {wire.Cavity}, ", told, StringComparison.Ordinal));
            Assert.All(plug.Wires.Where(wire => wire.Action != WireAction.Unreached), wire => Assert.Contains(drawing.Descendants(s_svg + "text"), text => (string)text.Attribute("class")! == "code" && text.Value.StartsWith(wire.Colour, StringComparison.Ordinal)));
            var height = double.Parse((string)drawing.Attribute("height")!, CultureInfo.InvariantCulture);
            Assert.All(drawing.Descendants(s_svg + "text"), text => Assert.InRange((double)text.Attribute("y")!, 0, height));
        }
    }

    // One plug that reaches, one that has to grow, one that is changed, one that is added, one whose device is gone.
    private static WiringSheet Sheet() => WiringWorksheet.Compute(Empty
        .With(
            Device("coolant", "square-2", new(20, 0, 10), "1:coolant", "2:sensor-ground"),
            Device("throttle", "flat-3", new(250, 0, 300), "1:five-volt", "2:throttle", "3:sensor-ground"),
            Device("injector-1", "oval-2", new(-60, 0, 150), "1:feed", "2:injector-1"),
            Device("purge", "oval-2", new(-200, 0, 400), "1:feed", "2:purge"))
        .WithPlug("coolant", Plug("square-2", new(20, 0, 10), "1:coolant", "2:sensor-ground"))
        .WithPlug("throttle", Plug("flat-3", new(-100, 0, 60), "1:five-volt", "2:throttle", "3:sensor-ground"))
        .WithPlug("injector-1", Plug("square-2", new(-60, 0, 150), "1:feed", "2:injector-1"))
        .WithPlug("tach", Plug("square-2", new(90, 0, 90), "1:tach"))
        .WithEcus(Bench.Ecu("old", "ecu-8", "1:coolant", "2:throttle", "3:injector-1"), Bench.Ecu("old", "ecu-8", "1:coolant", "2:throttle", "3:injector-1", "4:purge")));
}
