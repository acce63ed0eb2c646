using Swapwright.Site.Models;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site;

/// <summary>Nothing that stands in a knowledge base may become markup, a script or a followed "javascript:".</summary>
public sealed class HostilePagesTests
{
    private static readonly Templates Templates = Templates.Embedded();

    private static readonly string[] Hostile =
    [
        "\"><script>alert(1)</script>{{7*7}}'",
        """' onmouseover='alert(1)' x="<img src=x onerror=alert(1)>""",
        "javascript:alert(1)",
        "JaVaScRiPt&colon;alert(1)//</title></textarea></style></script><svg/onload=alert(1)>",
        "data:text/html;base64,PHNjcmlwdD5hbGVydCgxKTwvc2NyaXB0Pg==",
        "--><!-- ]]> {{ page.title | object.eval }} {%raw%} <base href=//evil.example>",
        "//evil.example/x",
        "../../../../etc/passwd",
    ];

    public static TheoryData<string, int> Pages()
    {
        var data = new TheoryData<string, int>();
        foreach (var page in PageTypes())
        {
            for (var i = 0; i < Hostile.Length; i++)
            {
                data.Add(page.Name, i);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Render_EveryTextHostile_NothingBecomesMarkup(string pageName, int number)
    {
        var hostile = Hostile[number];
        var page = FilledModel.Of(PageTypes().Single(type => type.Name == pageName), _ => hostile, "rule/x.html");

        var document = ParsedPage.Of(Templates.Render(page)).Document;

        var scripts = document.QuerySelectorAll("script:not([type])");
        Assert.Equal(["../assets/site.js", "../assets/search.js", .. page.Scripts.Select(path => $"../{path}")], scripts.Select(script => script.GetAttribute("src")!));
        Assert.All(scripts, script => Assert.Equal("", script.TextContent));
        Assert.Equal("application/ld+json", Assert.Single(document.QuerySelectorAll("script[type]")).GetAttribute("type"));
        Assert.Empty(document.QuerySelectorAll("base, iframe, object, embed, form, style, svg, img[onerror], textarea"));
        Assert.Single(document.QuerySelectorAll("title"));
        Assert.DoesNotContain(
            document.All.SelectMany(element => element.Attributes),
            attribute => attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase) || attribute.Name is "style" or "srcdoc");
        foreach (var address in document.QuerySelectorAll("[href], [src]").Select(element => element.GetAttribute("href") ?? element.GetAttribute("src")!))
        {
            Assert.True(IsSafe(address), address);
        }

        Assert.Contains(hostile, document.Title, StringComparison.Ordinal);
        Assert.Equal(hostile, document.QuerySelector("h1")!.TextContent);
        Assert.DoesNotContain("49", document.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
    }

    /// <summary>Members that a page carries without showing them, each for a reason.</summary>
    private static readonly string[] Silent =
    [
        // Needed to place the page, not to read it.
        "Frame.Path",
        // Only the about page lists sources with an anchor; elsewhere the link to the source carries its title.
        "Sources.Title", "RulePage.Sources.Id", "ArticlePage.Sources.Id", "Confidence.Sources.Id", "AboutPage.Sources.Link.Text", "AboutPage.Sources.Link.Href",
        // Who told it and what a source is about stand on the page that its title leads to.
        "Confidence.Sources.About", "Confidence.Sources.By", "OtherwisePage.Sources.Id", "OtherwisePage.Sources.About", "OtherwisePage.Sources.By",
        // The shopping list leads on to a part and says where it comes from.
        "Lines.Parts.Part.Href", "Lines.Parts.From", "Line.Parts.Part.Href", "Line.Parts.From",
        // A rule's own page need not name the rule.
        "RulePage.Values.Rule.Text", "RulePage.Values.Rule.Href",
        // Said only where a list has no lines.
        "HealthPage.Lists.Empty",
    ];

    [Theory]
    [MemberData(nameof(PageNames))]
    public void Render_EveryText_IsShown(string pageName)
    {
        var texts = new List<(string Member, string Text)>();
        var page = FilledModel.Of(
            PageTypes().Single(type => type.Name == pageName),
            member =>
            {
                texts.Add((member, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"mk{texts.Count}z")));
                return texts[^1].Text;
            },
            "rule/x.html");

        var html = Templates.Render(page);

        var hidden = string.Join('\n', texts
            .Where(text => !html.Contains(text.Text, StringComparison.Ordinal))
            .Select(text => text.Member)
            .Where(member => !Array.Exists(Silent, end => member.EndsWith(end, StringComparison.Ordinal)))
            .Distinct());
        Assert.True(hidden.Length == 0, hidden);
    }

    public static TheoryData<string> PageNames() => [.. PageTypes().Select(type => type.Name)];

    [Fact]
    public void PageTypes_OfTheModels_AllHaveASampleAndATemplate()
    {
        Assert.Equal(
            PageTypes().Select(type => type.Name).Order(StringComparer.Ordinal),
            SamplePages.All().Select(page => page.GetType().Name).Order(StringComparer.Ordinal));
        Assert.All(SamplePages.All(), page => Assert.Contains(page.Template, Templates.Names));
    }

    private static IEnumerable<Type> PageTypes() =>
        typeof(Page).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(Page)) && !type.IsAbstract).OrderBy(type => type.Name, StringComparer.Ordinal);

    private static bool IsSafe(string address) =>
        address.StartsWith("https://", StringComparison.Ordinal)
        || address.StartsWith('#')
        || (address.StartsWith("../", StringComparison.Ordinal)
            && !address[3..].Contains("..", StringComparison.Ordinal)
            && !address.Contains(':', StringComparison.Ordinal));
}
