using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Swapwright.Worksheets.Drawings;
using Swapwright.Worksheets.Wiring;
using static Swapwright.Tests.Worksheets.Wiring.Bench;

namespace Swapwright.Tests.Worksheets.Wiring;

public sealed class DrawingTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    private static AdapterHarness Adapter()
    {
        var odd = Signals.SetItem("coolant", Signals["coolant"] with { Title = "<b>\"Coolant\"</b> & 'more'" });
        return WiringWorksheet.Compute((Empty with { Signals = odd })
            .With(Device("throttle", "oval-2", Origin, "1:throttle"))
            .WithEcus(
                Bench.Ecu("old", "ecu-8", "1:power-ground", "2:power-ground", "3:coolant", "4:purge", "5:knock"),
                Bench.Ecu("new", "ecu-10", "9:coolant", "8:knock", "7:power-ground", "6:throttle", "5:tach"))).EcuAdapter!;
    }

    private static IEnumerable<string> Texts(XElement drawing, string classes) =>
        drawing.Descendants(Ns + "text").Where(text => (string?)text.Attribute("class") == classes).Select(text => text.Value);

    private static void IsAccessible(XElement drawing)
    {
        Assert.Equal("img", (string?)drawing.Attribute("role"));
        var ids = ((string)drawing.Attribute("aria-labelledby")!).Split(' ');
        Assert.Equal([(string)drawing.Element(Ns + "title")!.Attribute("id")!, (string)drawing.Element(Ns + "desc")!.Attribute("id")!], ids);
        Assert.All(drawing.DescendantsAndSelf(), element => Assert.Null(element.Attribute("style")));
        Assert.Empty(drawing.Descendants(Ns + "style"));
    }

    [Fact]
    public void Svg_Adapter_WritesEveryCavityOnceAndEveryColour()
    {
        var adapter = Adapter();
        var drawing = XElement.Parse(AdapterDrawing.Svg(adapter, "ecu"));

        IsAccessible(drawing);
        var cavities = adapter.Rows.Select(row => row.From).Distinct().Concat(adapter.Rows.Select(row => row.To).Distinct()).OfType<string>().ToList();
        Assert.Equal(cavities.Order(StringComparer.Ordinal), Texts(drawing, "cavity").Order(StringComparer.Ordinal));
        Assert.Equal(cavities.Count, Texts(drawing, "code").Count(code => code == "BN"));
    }

    [Fact]
    public void Svg_Adapter_TellsEveryActionInWords()
    {
        var adapter = Adapter();
        var drawing = XElement.Parse(AdapterDrawing.Svg(adapter, "ecu"));
        var notes = string.Join('\n', Texts(drawing, "note"));

        Assert.Contains("Purge valve, 0.75 mm²: capped", notes, StringComparison.Ordinal);
        Assert.Contains("Throttle sensor, 0.5 mm²: new wire to throttle, 1", notes, StringComparison.Ordinal);
        Assert.Contains("Tachometer, 0.75 mm²: not used", notes, StringComparison.Ordinal);
        Assert.Contains(Texts(drawing, "signal"), text => text.EndsWith("(joins the wire of a7)", StringComparison.Ordinal));
        Assert.Contains(Texts(drawing, "signal"), text => text.StartsWith("<b>\"Coolant\"</b> & 'more'", StringComparison.Ordinal));
    }

    [Fact]
    public void Svg_Adapter_StaysInsideItsFrame()
    {
        var drawing = XElement.Parse(AdapterDrawing.Svg(Adapter(), "ecu"));
        var height = double.Parse((string)drawing.Attribute("height")!, CultureInfo.InvariantCulture);

        Assert.All(drawing.Descendants(Ns + "text"), text => Assert.InRange((double)text.Attribute("y")!, 0, height));
        Assert.All(drawing.Descendants(Ns + "text"), text => Assert.InRange((double)text.Attribute("x")!, 0, 720));
    }

    /// <summary>
    /// One row of each sort, by hand: a screened pair, a second harness cavity on the same ECU cavity and the other way round, a wire that a device
    /// hangs on, one that is missing, one that nobody uses, an end whose colour nobody knows.
    /// </summary>
    [Fact]
    public void Svg_RowsOfEverySort_AreToldAndDrawnEachInItsWay()
    {
        AdapterRow Row(string? from, string? to, AdapterAction action, string note = "", bool optional = false, bool shielded = false, string? left = "GN/YE", string? right = "BU") =>
            new("s", "Signal", SignalKind.Analogue, from is null ? null : "a", from, to is null ? null : "b", to, action, shielded, note, from is null ? null : left, to is null ? null : right, 0.5, optional, action == AdapterAction.Join ? "run" : null);
        var adapter = new AdapterHarness(
            new AdapterSide("Harness", [KeyValuePair.Create("a", "ecu-8")]),
            new AdapterSide("ECU", [KeyValuePair.Create("", "ecu-10")]),
            PlugsTogether: false,
            [
                Row("1", "11", AdapterAction.Join, shielded: true), Row("2", "11", AdapterAction.Join, "joins the wire of 11"), Row("1", "12", AdapterAction.Join, "joins the wire of 1"),
                Row("3", null, AdapterAction.Branch, "lamp, 1"), Row("4", null, AdapterAction.Cap, left: "plum"), Row(null, "13", AdapterAction.AddWire, "new wire to valve, 1"),
                Row(null, "14", AdapterAction.Missing), Row(null, "15", AdapterAction.Missing, optional: true), Row("5", "16", AdapterAction.Join, left: "RD", right: null),
            ]);
        var drawing = XElement.Parse(AdapterDrawing.Svg(adapter, "adapter"));

        IsAccessible(drawing);
        Assert.Equal(
            "1 to 11: Signal, GN/YE to BU. 2 to 11: Signal, GN/YE to BU. 1 to 12: Signal, GN/YE to BU. 3: Signal, to lamp, 1. 4: Signal, capped. 13: Signal, new wire to valve, 1. 14: Signal, no wire. 15: Signal, no wire. 5 to 16: Signal, RD to .",
            drawing.Element(Ns + "desc")!.Value);
        Assert.Equal(["1", "11", "12", "13", "14", "15", "16", "2", "3", "4", "5"], Texts(drawing, "cavity").Order(StringComparer.Ordinal));
        Assert.Equal(["Signal, 0.5 mm²: to lamp, 1", "Signal, 0.5 mm²: capped", "Signal, 0.5 mm²: new wire to valve, 1", "Signal, 0.5 mm²: MISSING", "Signal, 0.5 mm²: not used"], Texts(drawing, "note").Where(text => text.StartsWith("Signal", StringComparison.Ordinal)));
        Assert.Equal(["a: ecu-8", "ecu-10"], Texts(drawing, "note").Take(2));
        IEnumerable<string> Classes(string name) => drawing.Descendants(Ns + name).Select(shape => (string)shape.Attribute("class")!);

        // Splices where two cavities share one, and where a device hangs on the wire; one more of each sign in the key below.
        Assert.Equal(3 + 1, Classes("circle").Count(one => one == "splice"));
        Assert.Equal(1 + 1, Classes("path").Count(one => one == "shield"));
        Assert.Equal(2 + 1, Classes("path").Count(one => one == "missing"));
        Assert.Single(Classes("path"), one => one == "wire joined shield base-bu");
        Assert.Single(Classes("path"), one => one == "wire cap"); // a colour that nobody knows is painted in none
        Assert.Single(Classes("path"), one => one == "wire joined base-rd"); // the other end's, where this one has none
        Assert.Contains("wire add base-gn", Classes("path"));
        Assert.Contains("tracer tracer-ye", Classes("path"));
    }

    [Fact]
    public void Svg_Face_NumbersTheRowsInOrder()
    {
        ImmutableArray<ImmutableArray<string>> rows = [["1", "2", "3"], ["4", "5"]];
        var drawing = XElement.Parse(ConnectorFace.Svg("face", "Plug & socket", rows, new Dictionary<string, string>(StringComparer.Ordinal) { ["5"] = "GN/YE" }));

        IsAccessible(drawing);
        Assert.Equal(["1", "2", "3", "4", "5"], Texts(drawing, "cavity"));
        Assert.Equal(["GN/YE"], Texts(drawing, "code"));
        Assert.Equal("Row 1: 1, 2, 3. Row 2: 4, 5 (GN/YE).", drawing.Element(Ns + "desc")!.Value);
        Assert.Equal("Face of Plug & socket", drawing.Element(Ns + "title")!.Value);
    }

    [Fact]
    public void Svg_OddText_IsEscapedAndNeverAnException()
    {
        Assert.Equal("a&lt;b&gt;&amp;&quot;&#39; ?", Drawing.Escape("a<b>&\"'\n\u0001"));
        Assert.NotNull(XElement.Parse(ConnectorFace.Svg("x\"y", "\uD800", default)));
        Assert.NotNull(XElement.Parse(ConnectorFace.Svg("face", "none", [default, []])));
    }
}
