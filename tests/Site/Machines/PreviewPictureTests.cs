using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Swapwright.Site.Machines;

namespace Swapwright.Tests.Site.Machines;

public sealed class PreviewPictureTests
{
    private static readonly XNamespace s_svg = "http://www.w3.org/2000/svg";

    private static readonly PreviewLines s_preview = new("Quillet transplants", "Marn 16, 1992–94", "Quillet C", "own gearbox", "48–70 hours", "1,480–2,720 EUR", "Invented scenario.");

    [Fact]
    public void Draw_Guide_SaysWhatItSavesTheReaderFromOpening()
    {
        var words = Draw(s_preview).Elements(s_svg + "text").Select(text => text.Value).ToList();

        Assert.Equal(["Quillet transplants", "Marn 16, 1992–94", "Quillet C", "into, own gearbox", "Work", "48–70 hours", "Money", "1,480–2,720 EUR", "Invented scenario."], words);
    }

    [Fact]
    public void Draw_LongTitle_GetsSmallerLettersAndStaysOnTheCard()
    {
        var size = Draw(s_preview with { Donor = new string('W', 90) }).Elements(s_svg + "text").ElementAt(1).Attribute("font-size")!.Value;

        Assert.InRange(int.Parse(size, CultureInfo.InvariantCulture), 8, 30);
    }

    [Fact]
    public void Draw_MarkupInATitle_StaysText()
    {
        var svg = Draw(s_preview with { Chassis = "<script>alert(1)</script>\u0001" });

        Assert.DoesNotContain(svg.Descendants(), element => element.Name.LocalName == "script");
        Assert.Contains(svg.Elements(s_svg + "text"), text => text.Value == "<script>alert(1)</script>\uFFFD");
    }

    private static XElement Draw(PreviewLines preview) => XDocument.Parse(Encoding.UTF8.GetString(PreviewPicture.Svg(preview))).Root!;
}
