using AngleSharp.Dom;
using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site;

public sealed class TemplatesTests
{
    private static readonly Templates Embedded = Templates.Embedded();

    [Theory]
    [MemberData(nameof(Samples))]
    public void Render_SamplePage_HasNoParseErrors(string name)
    {
        var parsed = ParsedPage.Of(Embedded.Render(Sample(name)));

        Assert.Empty(parsed.Errors);
    }

    /// <summary>The sum is a mean, and a phase tells what is likely: whoever adds the phases up comes to less, and has to know why.</summary>
    [Fact]
    public void Render_Guide_CallsSumsAveragesAndPhasesUsual()
    {
        var document = ParsedPage.Of(Embedded.Render(SampleGuide.Page())).Document;

        Assert.Equal("48 hours on average, 34–70", document.QuerySelector("[data-sum=work] dd")!.TextContent.Trim());
        Assert.Contains(" on average, ", document.QuerySelector("[data-sum=parts] dd")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Prepare 9 hours as a rule, 6–14", document.QuerySelector("[data-block=tasks] h3")!.TextContent.Trim());
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Render_SamplePage_IsAPlainAccessibleDocument(string name)
    {
        var document = ParsedPage.Of(Embedded.Render(Sample(name))).Document;

        Assert.Single(document.QuerySelectorAll("h1"));
        Assert.Single(document.QuerySelectorAll("main"));
        Assert.NotNull(document.GetElementById(document.QuerySelector(".skip")!.GetAttribute("href")![1..]));
        var levels = document.QuerySelectorAll("h1, h2, h3, h4, h5, h6").Select(heading => heading.TagName[1] - '0').ToList();
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.InRange(pair.Second, 1, pair.First + 1));
        Assert.All(document.QuerySelectorAll("table"), table => Assert.True(
            table.QuerySelector("caption") is not null || table.Closest(".prose, .notes") is not null, "a table without a caption"));
        Assert.All(document.QuerySelectorAll("th"), cell => Assert.True(cell.HasAttribute("scope")));
        Assert.All(document.QuerySelectorAll("input"), input => Assert.NotEqual("", input.Closest("label")!.TextContent.Trim()));
        var ids = document.QuerySelectorAll("[id]").Select(element => element.Id!).ToList();
        Assert.Equal(ids.Distinct(StringComparer.Ordinal).Count(), ids.Count);
        Assert.All(document.QuerySelectorAll("[aria-labelledby]"), element => Assert.Contains(element.GetAttribute("aria-labelledby"), ids));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Render_SamplePage_SaysTheScenarioIsInventedAndLinksRelatively(string name)
    {
        var page = Sample(name);
        var document = ParsedPage.Of(Embedded.Render(page)).Document;

        Assert.Contains("Invented scenario", document.QuerySelector("header .label")!.TextContent, StringComparison.Ordinal);
        var addresses = document.QuerySelectorAll("[href], [src]").Select(element => element.GetAttribute("href") ?? element.GetAttribute("src")!);
        Assert.All(addresses, address =>
        {
            Assert.DoesNotContain("://", address, StringComparison.Ordinal);
            Assert.False(address.StartsWith('/'), address);
            var file = address.Split('#')[0];
            Assert.True(file.Length == 0 || (file.StartsWith(page.Frame.Prefix, StringComparison.Ordinal) && Path.HasExtension(file)), address);
        });
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Render_EverythingOptionalLeftOut_StillRenders(string name)
    {
        var bare = Bare(Sample(name));

        Assert.Empty(ParsedPage.Of(Embedded.Render(bare)).Errors);
    }

    [Fact]
    public void Render_Guide_AsksItsQuestionsInOrder()
    {
        var document = ParsedPage.Of(Embedded.Render(SampleGuide.Page())).Document;

        Assert.Equal(
            ["cost", "first", "do", "gearbox", "belts", "wiring", "hoses", "ecu", "load", "work", "checks", "first-start", "mistakes", "cautions", "sure"],
            document.QuerySelectorAll(".guide-body > section > h2").Select(heading => heading.Id!));
        Assert.Equal(
            document.QuerySelectorAll(".guide-body > section > h2").Select(heading => "#" + heading.Id),
            document.QuerySelectorAll(".contents a").Select(link => link.GetAttribute("href")!));
    }

    [Fact]
    public void Render_Guide_WritesEachConditionInWords()
    {
        var document = ParsedPage.Of(Embedded.Render(SampleGuide.Page())).Document;

        Assert.Contains("where the alternator is kept", document.QuerySelector("#at-alternator .line")!.TextContent, StringComparison.Ordinal);
        Assert.All(document.QuerySelectorAll(".line"), line => Assert.NotNull(line.QuerySelector("details a[href^='../../rule/']")));
    }

    [Fact]
    public void Render_SameSampleOnManyWorkers_GivesTheSameBytes()
    {
        var expected = Embedded.Render(SampleGuide.Page());
        var texts = new string[64];

        Parallel.For(0, texts.Length, i => texts[i] = Embedded.Render(SampleGuide.Page()));

        Assert.All(texts, text => Assert.Equal(expected, text));
    }

    [Theory]
    [InlineData("{{ nobody }}", 1, 4, "nobody")]
    [InlineData("one\n  {{ page.nothing }}", 2, 11, "nothing")]
    [InlineData("{{ page.frame.nothing.deeper }}", 1, 15, "nothing")]
    [InlineData("{{ include 'missing' }}", 1, 4, "missing")]
    [InlineData("{{ 'x' | object.eval }}", 1, 10, "object")]
    [InlineData("{{ date.now }}", 1, 4, "date")]
    [InlineData("{{ html.escape 'x' }}", 1, 4, "html")]
    [InlineData("{{ math.random 1 2 }}", 1, 4, "math")]
    [InlineData("{{ 'x' | raw }}", 1, 10, "raw")]
    [InlineData("{{ page.title = 'other' }}", 1, 4, "title")]
    public void Render_WhatTheHostDoesNotOffer_IsAnErrorWithItsPlace(string layout, int line, int column, string word)
    {
        var templates = Templates.FromText(new Dictionary<string, string> { ["layout.sbn-html"] = layout });

        var fault = Assert.Throws<TemplateException>(() => templates.Render(Sample("NotFoundPage")));

        Assert.Equal(("layout.sbn-html", line), (fault.File, fault.Line));
        Assert.Contains(word, fault.Fault, StringComparison.Ordinal);
        Assert.InRange(fault.Column, column - 3, column + 5);
    }

    [Fact]
    public void Render_FaultInAPartial_NamesThePartial()
    {
        var templates = Templates.FromText(new Dictionary<string, string>
        {
            ["layout.sbn-html"] = "a\n{{ include 'partials/one' page }}",
            ["partials/one.sbn-html"] = "b\n\n{{ $0.titel }}",
        });

        var fault = Assert.Throws<TemplateException>(() => templates.Render(Sample("NotFoundPage")));

        Assert.Equal(("partials/one.sbn-html", 3), (fault.File, fault.Line));
    }

    [Fact]
    public void Render_AfterAFault_TheNextPageIsWhole()
    {
        var templates = Templates.FromText(new Dictionary<string, string>
        {
            ["layout.sbn-html"] = "<p>{{ page.title }}</p>{{ if page.title == 'bad' }}{{ nobody }}{{ end }}",
        });
        Assert.Throws<TemplateException>(() => templates.Render(Sample("NotFoundPage") with { Title = "bad" }));

        Assert.Equal("<p>good</p>", templates.Render(Sample("NotFoundPage") with { Title = "good" }));
    }

    [Theory]
    [InlineData("{{ page.title }}", "&lt;b&gt;&amp;&#39;&quot;")]
    [InlineData("{{ capture x }}<i>{{ page.title }}</i>{{ end }}{{ x }}", "<i>&lt;b&gt;&amp;&#39;&quot;</i>")]
    [InlineData("{{ page.title + frame.label }}", "&lt;b&gt;&amp;&#39;&quot;&lt;em&gt;ours&lt;/em&gt;")]
    [InlineData("{{ frame.label }}", "<em>ours</em>")]
    [InlineData("{{ $'{page.title}' }}", "&lt;b&gt;&amp;&#39;&quot;")]
    [InlineData("{{ [page.title] }}", "[&quot;&lt;b&gt;&amp;&#39;\\&quot;&quot;]")]
    [InlineData("{{ func f(x); ret x; end; f page.title }}", "&lt;b&gt;&amp;&#39;&quot;")]
    [InlineData("{{ include 'one' page.title }}", "<u>&lt;b&gt;&amp;&#39;&quot;</u>")]
    [InlineData("{{ capture x; include 'one' page.title; end; x }}", "<u>&lt;b&gt;&amp;&#39;&quot;</u>")]
    public void Render_EveryWayOfWriting_EscapesOnce(string layout, string expected)
    {
        var templates = Templates.FromText(new Dictionary<string, string>
        {
            ["layout.sbn-html"] = layout,
            ["one.sbn-html"] = "<u>{{ $0 }}</u>",
        });
        var page = Sample("NotFoundPage") with { Title = "<b>&'\"" };
        page = page with { Frame = page.Frame with { Label = new HtmlString("<em>ours</em>") } };

        Assert.Equal(expected, templates.Render(page));
    }

    [Fact]
    public void Render_LoopWithoutEnd_IsStopped()
    {
        var templates = Templates.FromText(new Dictionary<string, string> { ["layout.sbn-html"] = "{{ while true }}{{ end }}" });

        Assert.Throws<TemplateException>(() => templates.Render(Sample("NotFoundPage")));
    }

    [Theory]
    [InlineData("a\n{{ if x }}", 2, 9)]
    [InlineData("{{ end }}", 1, 6)]
    [InlineData("{{ page.", 1, 9)]
    [InlineData("a\nb{{ x =", 2, 8)]
    [InlineData("a\n{{ for\n", 2, 7)]
    public void Parse_BrokenTemplate_IsAnErrorWithItsPlace(string text, int line, int column)
    {
        var fault = Assert.Throws<TemplateException>(() => Templates.FromText(new Dictionary<string, string> { ["layout.sbn-html"] = text }));

        Assert.Equal(("layout.sbn-html", line, column), (fault.File, fault.Line, fault.Column));
    }

    [Fact]
    public void StyleSheet_Embedded_StaysSmallAndFetchesNothing()
    {
        var css = Text("assets/site.css") + Text("assets/reading.css") + Text("assets/search.css") + Text("assets/survey.css") + Text("assets/find.css") + Text("assets/guide.css");

        Assert.True(Text("assets/site.css").Length < 20_480, "the style sheet has grown");
        Assert.True(Text("assets/guide.css").Length < 10_240, "the style sheet of guides has grown");
        Assert.True(Text("assets/reading.css").Length < 8_192, "the style sheet of articles has grown");
        Assert.True(Text("assets/search.css").Length < 3_072, "the style sheet of the search field has grown");
        Assert.True(Text("assets/survey.css").Length < 6_144, "the style sheet of the overviews has grown");
        Assert.True(Text("assets/find.css").Length < 10_240, "the style sheet of finding and comparing has grown");
        Assert.True(Text("assets/guide.js").Length + Text("assets/site.js").Length < 21_504, "the scripts of guides have grown");
        Assert.True(Text("assets/search.js").Length < 16_384, "the script of the search has grown");
        Assert.DoesNotContain("url(", css, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", css, StringComparison.Ordinal);
    }

    [Fact]
    public void TemplateFiles_Attributes_AreAlwaysQuoted()
    {
        var folder = typeof(Templates).Assembly.GetManifestResourceNames().Where(name => name.EndsWith(".sbn-html", StringComparison.Ordinal));
        Assert.All(folder, name =>
        {
            using var reader = new StreamReader(typeof(Templates).Assembly.GetManifestResourceStream(name)!);
            Assert.DoesNotContain("={{", reader.ReadToEnd(), StringComparison.Ordinal);
        });
    }

    public static TheoryData<string> Samples() => [.. SamplePages.All().Select(page => page.GetType().Name)];

    private static string Text(string path) =>
        System.Text.Encoding.UTF8.GetString(Embedded.Assets.Single(asset => asset.Path == path).Bytes.Span);

    private static Page Sample(string name) => SamplePages.All().Single(page => page.GetType().Name == name);

    /// <summary>The page with nothing but what its model requires.</summary>
    private static Page Bare(Page page)
    {
        var frame = new SiteFrame { Path = page.Frame.Path, SiteTitle = "Site", PageTitle = "Page", AsOf = "today" };
        return page switch
        {
            GuidePage guide => new GuidePage { Frame = frame, Title = "T", Chassis = guide.Chassis, Donor = guide.Donor, Summary = new() { Verdict = "Yes" } },
            WiringPage bench => new WiringPage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            BeltsPage bench => new BeltsPage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            HosesPage bench => new HosesPage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            WorkPage bench => new WorkPage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            ShoppingPage bench => new ShoppingPage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            FiguresPage bench => new FiguresPage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            OtherwisePage bench => new OtherwisePage { Frame = frame, Title = "T", Head = new BenchHead { Guide = bench.Head.Guide, Kind = "K" } },
            RulePage => new RulePage { Frame = frame, Title = "T", Id = "x" },
            ArticlePage => new ArticlePage { Frame = frame, Title = "T", Body = HtmlString.Empty },
            GlossaryPage => new GlossaryPage { Frame = frame, Title = "T" },
            FindingPage => new FindingPage { Frame = frame, Title = "T", Id = "x", Severity = "note", Meaning = HtmlString.Empty, Mend = HtmlString.Empty },
            StartPage => new StartPage { Frame = frame, Title = "T" },
            ChassisPage => new ChassisPage { Frame = frame, Title = "T" },
            DonorPage => new DonorPage { Frame = frame, Title = "T" },
            WhichPage => new WhichPage { Frame = frame, Title = "T" },
            DifferPage differ => new DifferPage { Frame = frame, Title = "T", Chassis = differ.Chassis },
            PositionPage => new PositionPage { Frame = frame, Title = "T" },
            ConnectorPage => new ConnectorPage { Frame = frame, Title = "T" },
            IndexPage => new IndexPage { Frame = frame, Title = "T" },
            AboutPage => new AboutPage { Frame = frame, Title = "T" },
            SearchPage => new SearchPage { Frame = frame, Title = "T" },
            ChangesPage => new ChangesPage { Frame = frame, Title = "T" },
            HealthPage => new HealthPage { Frame = frame, Title = "T" },
            OwnPage own => new OwnPage { Frame = frame, Title = "T", Body = own.Body },
            NotFoundPage => new NotFoundPage { Frame = frame, Title = "T" },
            _ => throw new InvalidOperationException(page.GetType().Name),
        };
    }
}
