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
