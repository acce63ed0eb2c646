using System.Text.RegularExpressions;
using Swapwright.Findings;
using Swapwright.Knowledge.Pictures;
using Swapwright.Site.Texts;
using Swapwright.Source;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Site;

public sealed class PictureMarkupTests
{
    private static readonly Picture s_arrow = PictureReader.Read(new SourceFile("pictures/arrow.svg", "picture", "arrow", """
        <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 40"><title>An "arrow"</title><desc>It points &lt; left.</desc>
        <defs><marker id="tip" refX="2" orient="auto"><path d="M0 0 L4 2 L0 4Z"/></marker></defs>
        <path class="thin stroke-bad" d="M0 0 H9" marker-end="url(#tip)"/><text x="1" y="2" class="small">a &amp; b</text></svg>
        """, null, null, 0)).Picture!;

    private static readonly MarkdownText s_text = new((_, _) => null, id => id == "arrow" ? s_arrow : null, term => term == "splice" ? "Where \"wires\" meet." : null);

    [Fact]
    public void Article_PictureAlone_IsAFigureWithNamesOfItsOwn()
    {
        var html = s_text.Article("![Points *left*](picture:arrow)", "../").Html.Value;

        Assert.Equal(
            "<figure class=\"picture\"><svg viewBox=\"0 0 90 40\" role=\"img\" aria-labelledby=\"pic-arrow--title pic-arrow--desc\">"
            + "<title id=\"pic-arrow--title\">An &quot;arrow&quot;</title><desc id=\"pic-arrow--desc\">It points &lt; left.</desc>"
            + "<defs><marker id=\"pic-arrow--at-tip\" refX=\"2\" orient=\"auto\"><path d=\"M0 0 L4 2 L0 4Z\"/></marker></defs>"
            + "<path class=\"pic-thin pic-stroke-bad\" d=\"M0 0 H9\" marker-end=\"url(#pic-arrow--at-tip)\"/><text x=\"1\" y=\"2\" class=\"pic-small\">a &amp; b</text></svg>"
            + "<figcaption>Points <em>left</em></figcaption></figure>",
            html);
    }

    [Fact]
    public void Article_SamePictureTwice_UsesEachIdOnce()
    {
        var page = ParsedPage.Of("<!doctype html><title>t</title>" + s_text.Article("![One](picture:arrow)\n\n1. Step\n\n   ![Two](picture:arrow)", "").Html.Value).Document;

        var ids = page.QuerySelectorAll("[id]").Select(element => element.Id).ToList();
        Assert.Equal(6, ids.Count);
        Assert.Equal(ids.Distinct(), ids);
        Assert.Equal(2, page.QuerySelectorAll("figure svg").Length);
    }

    [Theory]
    [InlineData("![Words](picture:nothing)", "<p>Words</p>")]
    [InlineData("See ![words](picture:arrow) here.", "<p>See words here.</p>")]
    [InlineData("[![Words](picture:arrow)](picture:arrow)", "<p>Words</p>")]
    [InlineData("![Words](pictures/arrow.svg)", "<p>Words</p>")]
    public void Article_PictureThatCannotBeShown_IsItsWordsAndAProblem(string text, string html)
    {
        var result = s_text.Article(text, "");

        Assert.Equal(html, result.Html.Value);
        Assert.NotEmpty(result.Problems);
    }

    [Fact]
    public void Block_Picture_IsItsWords() => Assert.Equal("<p>Words</p>", s_text.Block("![Words](picture:arrow)", "").Html.Value);

    [Fact]
    public void Link_ToATerm_SaysItsShortLine()
    {
        var text = new MarkdownText((kind, id) => $"glossary.html#{kind}-{id}", null, _ => "Where \"wires\" meet.");

        Assert.Equal("<p><a href=\"../glossary.html#term-splice\" class=\"term\" title=\"Where &quot;wires&quot; meet.\">splices</a></p>", text.Block("[splices](term:splice)", "../").Html.Value);
    }

    /// <summary>A class that the style sheet does not draw would be black on black.</summary>
    [Fact]
    public void Classes_OfPictures_AreDrawnByTheStyleSheet()
    {
        var css = File.ReadAllText(Path.Combine(Reading.Repository(), "site-template", "assets", "reading.css"));

        Assert.Equal(PictureForm.Classes.AsEnumerable().Order(StringComparer.Ordinal), Regex.Matches(css, @"\.pic-(?<name>[a-z-]+)", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture).Select(match => match.Groups["name"].Value).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Words_ForThoseWhoDraw_NameWhatIsAllowed()
    {
        var words = Regex.Matches(File.ReadAllText(Path.Combine(Reading.Repository(), "swap-kb", "pictures", "README.md")), "`(?<word>[a-z-]+)`", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture)
            .Select(match => match.Groups["word"].Value).ToHashSet(StringComparer.Ordinal);

        Assert.Superset(PictureForm.Classes.Concat(PictureForm.Elements).Where(name => name != "svg").ToHashSet(StringComparer.Ordinal), words);
    }

    [Fact]
    public void ShippedPictures_Rendered_HoldNothingThatActs()
    {
        var pictures = ShippedKnowledge.Base.Pictures;

        Assert.NotEmpty(pictures.All);
        foreach (var picture in pictures.All)
        {
            var page = ParsedPage.Of("<!doctype html><title>t</title>" + PictureMarkup.Svg(picture, 1)).Document;
            Assert.Empty(page.QuerySelectorAll("script, style, a, image, use, foreignObject, [href], [style]"));
            Assert.NotEqual("", page.QuerySelector("svg > desc")!.TextContent);
        }
    }
}
