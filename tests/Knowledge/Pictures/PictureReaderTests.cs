using System.Text;
using Swapwright.Diagnostics;
using Swapwright.Knowledge.Pictures;
using Swapwright.Source;

namespace Swapwright.Tests.Knowledge.Pictures;

public sealed class PictureReaderTests
{
    private const string Open = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 50\">";
    private const string Head = "<title>A &amp; b</title><desc>Two letters.</desc>";

    [Fact]
    public void Read_SoundPicture_ArrivesWithItsTree()
    {
        var (picture, findings) = Read($"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!-- drawn by hand -->\n{Open}{Head}<g class=\"thin fill-metal\"><path d=\"M0 0 L10,10Z\"/></g><text x=\"1\" y=\"2\">1 &lt; 2<tspan dy=\"4\">&#233;</tspan></text></svg>\n");

        Assert.Empty(findings);
        Assert.Equal(("one", "A & b", "Two letters.", 100m, 50m), (picture!.Id, picture.Title, picture.Description, picture.Width, picture.Height));
        Assert.Equal(["g", "text"], picture.Content.Cast<PictureElement>().Select(element => element.Name));
        Assert.Equal("M0 0 L10,10Z", Assert.IsType<PictureElement>(((PictureElement)picture.Content[0]).Children[0]).Attributes[0].Value);
        Assert.Equal(new PictureWords("1 < 2"), ((PictureElement)picture.Content[1]).Children[0]);
    }

    [Theory]
    [InlineData("<script>alert(1)</script>", "the element `script`")]
    [InlineData("<g><script xmlns=\"http://www.w3.org/1999/xhtml\">alert(1)</script></g>", "the element `script`")]
    [InlineData("<foreignObject><body xmlns=\"http://www.w3.org/1999/xhtml\"><iframe src=\"//evil\"/></body></foreignObject>", "the element `foreignObject`")]
    [InlineData("<style>@import url(//evil)</style>", "the element `style`")]
    [InlineData("<image href=\"//evil/x.png\"/>", "the element `image`")]
    [InlineData("<use href=\"#a\"/>", "the element `use`")]
    [InlineData("<a href=\"javascript:alert(1)\"><path d=\"M0 0\"/></a>", "the element `a`")]
    [InlineData("<animate attributeName=\"href\" to=\"javascript:alert(1)\"/>", "the element `animate`")]
    [InlineData("<set attributeName=\"onclick\" to=\"alert(1)\"/>", "the element `set`")]
    [InlineData("<filter/>", "the element `filter`")]
    [InlineData("<svg><path d=\"M0 0\"/></svg>", "the element `svg`")]
    [InlineData("<path xmlns=\"\" d=\"M0 0\"/>", "the element `path`")]
    [InlineData("<PATH d=\"M0 0\"/>", "the element `PATH`")]
    [InlineData("<path onclick=\"alert(1)\" d=\"M0 0\"/>", "the attribute `onclick`")]
    [InlineData("<path style=\"fill:red\" d=\"M0 0\"/>", "the attribute `style`")]
    [InlineData("<path href=\"#a\" d=\"M0 0\"/>", "the attribute `href`")]
    [InlineData("<path xmlns:x=\"http://www.w3.org/1999/xlink\" d=\"M0 0\"/>", "the attribute `x`")]
    [InlineData("<path xml:base=\"//evil\" d=\"M0 0\"/>", "the attribute `base`")]
    [InlineData("<path filter=\"url(#a)\" d=\"M0 0\"/>", "the attribute `filter`")]
    [InlineData("<path tabindex=\"0\" d=\"M0 0\"/>", "the attribute `tabindex`")]
    [InlineData("<path d=\"M0 0&quot; onload=&quot;x\"/>", "the value of `d`")]
    [InlineData("<path fill=\"#ff0000\" d=\"M0 0\"/>", "the value of `fill`")]
    [InlineData("<path fill=\"url(//evil#a)\" d=\"M0 0\"/>", "the value of `fill`")]
    [InlineData("<path marker-end=\"url(//evil#a)\" d=\"M0 0\"/>", "the value of `marker-end`")]
    [InlineData("<path marker-end=\"url(#a)\" d=\"M0 0\"/>", "no marker `a`")]
    [InlineData("<g id=\"a\"/><path marker-end=\"url(#a)\" d=\"M0 0\"/>", "no marker `a`")]
    [InlineData("<g id=\"a\"/><g id=\"a\"/>", "the id `a` is used twice")]
    [InlineData("<path class=\"skip\" d=\"M0 0\"/>", "no class `skip`")]
    [InlineData("<path class=\"fill-metel\" d=\"M0 0\"/>", "no class `fill-metel` for pictures; did you mean `fill-metal`?")]
    [InlineData("<rect width=\"1e9\"/>", "the value of `width`")]
    [InlineData("<rect width=\"100%\"/>", "the value of `width`")]
    [InlineData("<g>words</g>", "words cannot stand inside `g`")]
    [InlineData("<g><![CDATA[words]]></g>", "words cannot stand inside `g`")]
    [InlineData("<path d=\"M0 0\"><g/></path>", "`g` cannot stand inside `path`")]
    [InlineData("<text><path d=\"M0 0\"/></text>", "`path` cannot stand inside `text`")]
    [InlineData("<g><?php x?></g>", "an instruction is not allowed")]
    [InlineData("<g><title>Again</title></g>", "`title` stands only directly inside `svg`")]
    [InlineData("<text>a&#x202E;b</text>", "U+202E")]
    [InlineData("<text>a&#x85;b</text>", "U+0085")]
    [InlineData("<desc>Again</desc>", "the picture has `desc` more than once")]
    public void Read_SomethingThatIsNotOnTheList_IsOneFindingAndNoPicture(string inside, string message)
    {
        var (picture, findings) = Read($"{Open}{Head}\n{inside}</svg>");

        Assert.Null(picture);
        var finding = Assert.Single(findings);
        Assert.Equal((FindingKinds.Article, "pictures/one.svg"), (finding.Kind, finding.Place.File));
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.NotNull(finding.Mend);
        Assert.Equal(message.Contains("than once", StringComparison.Ordinal) ? 1 : 2, finding.Place.Line);
    }

    [Theory]
    [InlineData("<!DOCTYPE svg [<!ENTITY a SYSTEM \"file:///etc/passwd\">]><svg>&a;</svg>", "1:1", "a document type")]
    [InlineData("<!doctype svg><svg/>", "1:1", "a document type")]
    [InlineData("<svg>\n  <g>\n</svg>", "3:3", "not well-formed")]
    [InlineData("<svg>&a;</svg>", "1:7", "not well-formed")]
    [InlineData("words", "1:1", "not well-formed")]
    [InlineData("<html><body/></html>", "1:2", "begins with `html`")]
    [InlineData("<svg viewBox=\"0 0 9 9\"/>", "1:2", "not with `svg` of its namespace")]
    [InlineData("<?xml-stylesheet href=\"//evil\"?><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 90 90\"><title>a</title><desc>b</desc></svg>", "1:3", "the instruction `xml-stylesheet`")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\"><title>a</title><desc>b</desc></svg>", "1:2", "no `viewBox`")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 90 9000\"><title>a</title><desc>b</desc></svg>", "1:2", "no `viewBox`")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 90 90\"><title>a</title></svg>", "1:2", "no `desc`")]
    [InlineData("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 90 90\"><title> </title><desc>b</desc></svg>", "1:2", "no `title`")]
    public void Read_WholeThatIsNoPicture_IsOneFinding(string text, string at, string message)
    {
        var (picture, findings) = Read(text);

        Assert.Null(picture);
        var finding = Assert.Single(findings);
        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.Equal("pictures/one.svg:" + at, finding.Place.ToString());
    }

    [Fact]
    public void Read_TooMuchOfAnything_IsOneFindingAndEnds()
    {
        string[] much =
        [
            Open + Head + string.Concat(Enumerable.Repeat("<g>", 500)) + string.Concat(Enumerable.Repeat("</g>", 500)) + "</svg>",
            Open + Head + string.Concat(Enumerable.Repeat("<g/>", PictureForm.MostElements + 50)) + "</svg>",
            Open + Head + $"<path d=\"{new string(' ', PictureForm.LongestValue + 1)}\"/></svg>",
            Open + Head + $"<text>{new string('a', PictureForm.LongestWords + 1)}</text></svg>",
            Open + Head + new string(' ', PictureForm.MostCharacters) + "</svg>",
        ];

        Assert.All(much, text => Assert.Single(Read(text).Findings));
    }

    [Fact]
    public void Read_ManyFaults_IsBounded()
    {
        var findings = Read(Open + Head + string.Concat(Enumerable.Repeat("<b/>", 1000)) + "</svg>").Findings;

        Assert.Equal(SourceLimits.Default.MaxFindingsPerFile, findings.Length);
    }

    [Fact]
    public void Message_OfAHostileName_StaysOnOneLineAndShort()
    {
        var name = new string('é', 5000);

        Assert.True(Assert.Single(Read($"{Open}{Head}<{name}/></svg>").Findings).Message.Length < 200);
    }

    /// <summary>Whatever is done to a picture, reading ends, and what is let through has only what is on the list.</summary>
    [Fact]
    public void Read_PicturesDamagedAtRandom_LetThroughOnlyWhatIsListed()
    {
        var random = new Random(20260301);
        string[] pieces = ["<script>", "</script>", " onload=\"x\"", "<!DOCTYPE a>", "&lt;", "&#x3c;", "\"", "'", "<g>", "</g>", "<![CDATA[", "]]>", "url(//evil)", "\0", "<!--", "-->", "xmlns=\"x\""];
        var sound = $"{Open}{Head}<g class=\"thin\"><path d=\"M0 0 L10 10\"/><text x=\"1\" y=\"2\">words</text></g></svg>";
        var shown = 0;
        for (var round = 0; round < 3000; round++)
        {
            var text = new StringBuilder(sound);
            for (var i = random.Next(1, 4); i > 0; i--)
            {
                text.Insert(random.Next(text.Length), pieces[random.Next(pieces.Length)]);
            }

            var (picture, findings) = Read(text.ToString());
            Assert.Equal(picture is null, !findings.IsEmpty);
            shown += picture is null ? 0 : 1;
            Assert.All(picture?.Content.SelectMany(Elements) ?? [], element =>
            {
                Assert.True(PictureForm.Elements.Contains(element.Name), element.Name);
                Assert.All(element.Attributes, attribute => Assert.True(PictureForm.IsKnown(attribute.Key) && PictureForm.Accepts(attribute.Key, attribute.Value)));
            });
        }

        Assert.InRange(shown, 20, 1500);
    }

    private static IEnumerable<PictureElement> Elements(PictureNode node) => node is PictureElement element ? element.Children.SelectMany(Elements).Prepend(element) : [];

    private static (Picture? Picture, System.Collections.Immutable.ImmutableArray<Finding> Findings) Read(string text) =>
        PictureReader.Read(new SourceFile("pictures/one.svg", "picture", "one", text, null, null, 0));
}
