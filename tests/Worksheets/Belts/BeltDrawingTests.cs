using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Swapwright.Worksheets.Belts;
using static Swapwright.Tests.Worksheets.Belts.SampleLoops;

namespace Swapwright.Tests.Worksheets.Belts;

public sealed partial class BeltDrawingTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    [Fact]
    public void Svg_Serpentine_NamesItselfByIdsOfThePrefix()
    {
        var svg = Draw(Serpentine(), "belt 1<");

        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("belt-1--title belt-1--desc", svg.Attribute("aria-labelledby")!.Value);
        Assert.Equal("Belt loop: Loop", svg.Element(Ns + "title")!.Value);
        Assert.Contains("6PK1780", svg.Element(Ns + "desc")!.Value, StringComparison.Ordinal);
        Assert.Contains(
            "Tensioner, flat, diameter 76 mm, on the back of the belt, wrap 157°",
            svg.Element(Ns + "desc")!.Value,
            StringComparison.Ordinal);
        Assert.Equal(["belt-1--title", "belt-1--desc"], svg.Descendants().Attributes("id").Select(id => id.Value));
    }

    [Fact]
    public void Svg_Serpentine_HasNoStyleAndOnlyShortNumbers()
    {
        var svg = Draw(Serpentine(), "b");

        Assert.Empty(svg.DescendantsAndSelf().Attributes("style"));
        Assert.Empty(svg.Descendants(Ns + "style"));
        Assert.DoesNotMatch(LongNumber(), svg.ToString());
        Assert.DoesNotContain("NaN", svg.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The drawn path is walked, arcs by radius and chord, and must be as long as the computed belt.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Svg_Serpentine_PathIsAsLongAsTheBelt(bool reversed)
    {
        var loop = reversed ? Serpentine() with { Pulleys = [.. Serpentine().Pulleys.Reverse()] } : Serpentine();

        Assert.Equal(1780, LengthOf(BeltOf(Draw(loop, "b"))!.Attribute("d")!.Value), 0.2);
    }

    /// <summary>
    /// Each pulley's arc must bulge over the pulley: its middle lies on the pulley's rim and not on the far side of the chord.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Svg_Serpentine_ArcsLieOnTheirPulleys(bool reversed)
    {
        var loop = reversed ? Serpentine() with { Pulleys = [.. Serpentine().Pulleys.Reverse()] } : Serpentine();
        var svg = Draw(loop, "b");
        var arcs = SvgArc.AllOf(BeltOf(svg)!.Attribute("d")!.Value);
        var centres = PulleysOf(svg).Select(group => group.Element(Ns + "circle")!).ToList();

        Assert.Equal(centres.Count, arcs.Count);
        foreach (var (circle, arc) in centres.Zip(arcs))
        {
            Assert.Equal(Value(circle, "cx"), arc.CentreX, 0.1);
            Assert.Equal(Value(circle, "cy"), arc.CentreY, 0.1);
        }
    }

    [Fact]
    public void Svg_HostileTitles_AreEscapedAndDroppedWhereXmlCannotCarryThem()
    {
        const string hostile = "</title><script>alert(1)</script> \" & ' \u0000\uD800 \U0001F527";
        var loop = Serpentine().With("crank", pulley => pulley with { Title = hostile }) with { Title = hostile, Profile = "<PK>" };
        var text = BeltDrawing.Svg(loop, BeltWorksheet.Compute(loop, []), new BeltDrawingOptions("b"));

        Assert.DoesNotContain("<script", text, StringComparison.Ordinal);
        var svg = XElement.Parse(text);
        Assert.Equal("Belt loop: " + hostile.Replace('\u0000', '\uFFFD').Replace('\uD800', '\uFFFD'), svg.Element(Ns + "title")!.Value);
    }

    [Fact]
    public void Svg_LongTitles_AreBrokenAndShortened()
    {
        var title = string.Concat(Enumerable.Repeat("accessory ", 20));
        var loop = Serpentine();
        loop = loop with { Pulleys = [.. loop.Pulleys.Select(pulley => pulley with { Title = title })] };
        var svg = Draw(loop, "b");

        Assert.All(svg.Descendants(Ns + "tspan"), line => Assert.InRange(line.Value.Length, 1, 24));
        Assert.Equal(6, svg.Descendants(Ns + "tspan").Count(line => line.Value.EndsWith('…')));
    }

    [Fact]
    public void Svg_Serpentine_LabelsCoverNeitherEachOtherNorThePulleys()
    {
        var svg = Draw(Serpentine(), "b");
        var size = Value(svg, "font-size");
        var boxes = svg.Elements(Ns + "text").Where(text => text.Elements(Ns + "tspan").Any()).Select(text => Box(text, size)).ToList();
        var circles = svg.Descendants(Ns + "circle").ToList();

        Assert.Equal(6, boxes.Count);
        foreach (var box in boxes)
        {
            Assert.DoesNotContain(boxes, other => other != box
                && box.Left < other.Right && other.Left < box.Right && box.Top < other.Bottom && other.Top < box.Bottom);
            Assert.DoesNotContain(circles, circle => Math.Sqrt(
                Math.Pow(Value(circle, "cx") - Math.Clamp(Value(circle, "cx"), box.Left, box.Right), 2)
                + Math.Pow(Value(circle, "cy") - Math.Clamp(Value(circle, "cy"), box.Top, box.Bottom), 2)) < Value(circle, "r"));
        }
    }

    [Fact]
    public void Svg_SlideAndSwing_ShowTheTravelToScale()
    {
        var slide = Draw(Serpentine(), "b").Elements(Ns + "g").Single(group => group.Attribute("class")!.Value == "belt-adjuster");
        Assert.Equal([113.0, 137.0], slide.Elements(Ns + "circle").Select(circle => Value(circle, "cx")));
        Assert.StartsWith("M113 -165L137 -165", slide.Elements(Ns + "path").First().Attribute("d")!.Value, StringComparison.Ordinal);

        // A quarter turn anticlockwise about (125, 100) from straight above it ends straight to its left.
        var swing = Draw(Serpentine() with { Adjuster = new SwingAdjuster("tensioner", 125, 100, -0.1, Math.PI / 2) }, "b")
            .Elements(Ns + "g").Single(group => group.Attribute("class")!.Value == "belt-adjuster");
        Assert.Equal(60, Value(swing.Elements(Ns + "circle").ElementAt(1), "cx"), 2);
        Assert.Equal(-100, Value(swing.Elements(Ns + "circle").ElementAt(1), "cy"), 2);
        Assert.Contains(
            swing.Elements(Ns + "path"),
            path => path.Attribute("d")!.Value.Contains("A65 65 0 0 0 60 -100", StringComparison.Ordinal));
    }

    [Fact]
    public void Svg_NoPath_DrawsThePulleysAlone()
    {
        var svg = Draw(Serpentine().With("idler", pulley => pulley with { X = 5, Y = 5 }), "b");

        Assert.Null(BeltOf(svg));
        Assert.Equal(6, PulleysOf(svg).Count());
        Assert.Contains("No belt path can be drawn", svg.Element(Ns + "desc")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Svg_ImpossiblePath_IsDashedAndSaysSo()
    {
        var svg = Draw(Loop(Round("a", 0, 0, 100), Round("b", 300, 0, 100, BeltSide.Back)), "b");

        Assert.NotNull(BeltOf(svg)!.Attribute("stroke-dasharray"));
        Assert.Null(BeltOf(Draw(Serpentine(), "b"))!.Attribute("stroke-dasharray"));
        Assert.StartsWith("No belt can run as drawn", svg.Element(Ns + "desc")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Svg_NothingToDraw_IsStillADrawing()
    {
        var svg = Draw(new BeltLoop("l", "L", "PK", 3.56, default, null), "b");

        Assert.Equal(4, svg.Attribute("viewBox")!.Value.Split(' ').Length);
    }

    private static XElement Draw(BeltLoop loop, string prefix) => XElement.Parse(
        BeltDrawing.Svg(loop, BeltWorksheet.Compute(loop, [new(6, 1780, "c")]), new BeltDrawingOptions(prefix)));

    private static XElement? BeltOf(XElement svg) =>
        svg.Elements(Ns + "path").SingleOrDefault(path => path.Attribute("class")?.Value == "belt-path");

    private static IEnumerable<XElement> PulleysOf(XElement svg) =>
        svg.Elements(Ns + "g").Where(group => group.Attribute("class")!.Value.StartsWith("belt-pulley", StringComparison.Ordinal));

    private static double Value(XElement element, string attribute) =>
        double.Parse(element.Attribute(attribute)!.Value, CultureInfo.InvariantCulture);

    private static (double Left, double Top, double Right, double Bottom) Box(XElement text, double size)
    {
        var lines = text.Elements(Ns + "tspan").ToList();
        var half = lines.Max(line => line.Value.Length) * 0.5 * size / 2;
        var middle = Value(lines[0], "x");
        return (middle - half, Value(lines[0], "y") - (0.8 * size), middle + half, Value(lines[^1], "y") + (0.2 * size));
    }

    private static double LengthOf(string data)
    {
        var arcs = SvgArc.AllOf(data);
        var length = 0.0;
        for (var i = 0; i < arcs.Count; i++)
        {
            var next = arcs[(i + 1) % arcs.Count];
            length += Math.Sqrt(Math.Pow(next.FromX - arcs[i].ToX, 2) + Math.Pow(next.FromY - arcs[i].ToY, 2)) + arcs[i].Length;
        }

        return length;
    }

    [GeneratedRegex(@"\d\.\d{3,}|\d[eE][+-]?\d", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex LongNumber();
}
