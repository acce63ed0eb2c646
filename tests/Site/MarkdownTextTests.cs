using Swapwright.Site;
using Swapwright.Site.Texts;

namespace Swapwright.Tests.Site;

public sealed class MarkdownTextTests
{
    private static readonly MarkdownText Text = new((kind, id) => (kind, id) switch
    {
        ("article", "extending-wires") => SitePaths.Article(id),
        ("part", "plate") => SitePaths.Part(id),
        ("rule", "hostile") => "javascript:alert(1)",
        _ => null,
    });

    [Theory]
    [InlineData("[x](javascript:alert(1))")]
    [InlineData("[x](JAVASCRIPT:alert(1))")]
    [InlineData("[x](java&#115;cript:alert(1))")]
    [InlineData("[x](java&Tab;script:alert(1))")]
    [InlineData("[x](&#1;javascript:alert(1))")]
    [InlineData("[x](%6aavascript:alert(1))")]
    [InlineData("[x](javascript&colon;alert(1))")]
    [InlineData("[x](data:text/html,x)")]
    [InlineData("[x](vbscript:x)")]
    [InlineData("[x](file:///etc/passwd)")]
    [InlineData("[x](//evil.example/x)")]
    [InlineData("[x](\\\\evil.example\\x)")]
    [InlineData("[x](../../up.html)")]
    [InlineData("[x](rule/%2e%2e/%2e%2e/up.html)")]
    [InlineData("[x](/root.html)")]
    [InlineData("[x][r]\n\n[r]: javascript:alert(1)")]
    [InlineData("[x](rule:hostile)")]
    [InlineData("[x](unknown:id)")]
    public void Block_UnsafeLink_IsTextOnly(string markdown)
    {
        var html = Text.Block(markdown, "../").Html.Value;

        Assert.Equal("<p>x</p>", html);
    }

    [Theory]
    [InlineData("<javascript:alert(1)>")]
    [InlineData("<data:text/html,x>")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("<img src=x onerror=alert(1)>")]
    [InlineData("<svg/onload=alert(1)>")]
    [InlineData("<!-- --><b>")]
    [InlineData("p {onclick=alert(1)}")]
    [InlineData("![x](javascript:alert(1))")]
    [InlineData("![x](https://evil.example/x.png)")]
    [InlineData("![x](pictures/../../x.png)")]
    [InlineData("![\" onerror=\"alert(1)](pictures/x.gif \"a\\\" onload=\\\"b\")")]
    [InlineData("[x](https://example.org/\"onclick=\"alert(1))")]
    public void Block_Markup_NeverBecomesMoreThanText(string markdown)
    {
        var parsed = ParsedPage.Of("<!doctype html><title>t</title>" + Text.Block(markdown, "../").Html.Value);

        Assert.Empty(parsed.Document.QuerySelectorAll("script, svg, b"));
        Assert.DoesNotContain(
            parsed.Document.All.SelectMany(element => element.Attributes), attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal));
        Assert.All(
            parsed.Document.QuerySelectorAll("a, img"),
            element => Assert.DoesNotMatch("(?i)javascript|data:|evil|\\.\\./\\.\\.", element.GetAttribute("href") ?? element.GetAttribute("src")!));
    }

    [Theory]
    [InlineData("[x](https://example.org/a?b=c&d)", "<p><a href=\"https://example.org/a?b=c&amp;d\">x</a></p>")]
    [InlineData("[x](mailto:a@example.org)", "<p><a href=\"mailto:a@example.org\">x</a></p>")]
    [InlineData("[x](rules.html)", "<p><a href=\"../rules.html\">x</a></p>")]
    [InlineData("[x](#here)", "<p><a href=\"#here\">x</a></p>")]
    [InlineData("[x](article:extending-wires)", "<p><a href=\"../article/extending-wires.html\">x</a></p>")]
    [InlineData("[x](article:extending-wires#join)", "<p><a href=\"../article/extending-wires.html#join\">x</a></p>")]
    [InlineData("[x](part:plate)", "<p><a href=\"../parts.html#part-plate\">x</a></p>")]
    [InlineData("![a drawing](pictures/a.png)", "<p>a drawing</p>")]
    public void Block_SafeLink_IsKeptAndMadeRelative(string markdown, string expected) =>
        Assert.Equal(expected, Text.Block(markdown, "../").Html.Value);

    [Fact]
    public void Block_UnknownId_ShowsTheWordsAndReports()
    {
        var result = Text.Block("first\n\nsee [the *plate*](part:plaet) and [this](article:none)", "");

        Assert.Equal("<p>first</p>\n<p>see the <em>plate</em> and this</p>", result.Html.Value);
        Assert.Equal(
            [new("part:plaet", "there is no part `plaet`", 3), new("article:none", "there is no article `none`", 3)], result.Problems);
    }

    [Fact]
    public void Block_SameTextTwice_ReportsEachTime()
    {
        var text = new MarkdownText((_, _) => null);

        Assert.Single(text.Block("[x](rule:y)", "").Problems);
        Assert.Single(text.Block("[x](rule:y)", "").Problems);
    }

    [Fact]
    public void Block_Picture_OfAnotherSiteIsReported()
    {
        var result = Text.Block("![a <drawing>](https://example.org/x.png)", "");

        Assert.Equal("<p>a &lt;drawing&gt;</p>", result.Html.Value);
        Assert.Single(result.Problems);
    }

    [Fact]
    public void Inline_SeveralBlocks_HasNoBlockElements()
    {
        var html = Text.Inline("# One\n\ntwo **three**\n\n- four\n- five\n\n```\n<six>\n```", "").Html.Value;

        Assert.Equal("One two <strong>three</strong> four five <code>&lt;six&gt;</code>", html);
    }

    [Fact]
    public void Block_Heading_IsNoHeadingOfThePage() =>
        Assert.Equal("<p><strong>Title</strong></p>\n<p>text</p>", Text.Block("# Title\ntext", "").Html.Value);

    [Fact]
    public void Article_Headings_StartAtTheSecondOrderWithAnchors()
    {
        var result = Text.Article("# Top\n\n## Cut & join\n\n### Deep\n\n## Cut & join", "");

        Assert.Equal(
            "<h2 id=\"top\">Top</h2>\n<h2 id=\"cut--join\">Cut &amp; join</h2>\n<h3 id=\"deep\">Deep</h3>\n<h2 id=\"cut--join-1\">Cut &amp; join</h2>",
            result.Html.Value);
        Assert.Equal([("Top", "#top"), ("Cut & join", "#cut--join"), ("Cut & join", "#cut--join-1")], result.Contents.Select(link => (link.Text, link.Href)));
    }

    [Fact]
    public void Block_Table_AlignsByClassAndCarriesScopes()
    {
        var html = Text.Block("| a | b |\n| --- | ---: |\n| 1 | 2 |", "").Html.Value;

        Assert.DoesNotContain("style", html, StringComparison.Ordinal);
        var cells = ParsedPage.Of(html).Document.QuerySelectorAll("th, td");
        Assert.Equal(["col", "col", null, null], cells.Select(cell => cell.GetAttribute("scope")));
        Assert.Equal([null, "to-right", null, "to-right"], cells.Select(cell => cell.GetAttribute("class")));
    }

    [Fact]
    public void Block_NestedWithoutEnd_IsShownAsTextAndReported()
    {
        var deep = new string('>', 5000) + " x";

        var result = Text.Block(deep, "");

        Assert.DoesNotContain("<blockquote>", result.Html.Value, StringComparison.Ordinal);
        Assert.Single(result.Problems);
    }
}
