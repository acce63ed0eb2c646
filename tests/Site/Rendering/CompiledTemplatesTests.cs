using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Rendering;
using Swapwright.Tests.Findings;

namespace Swapwright.Tests.Site.Rendering;

/// <summary>Compiled templates against the engine that parsed them: the same bytes, or its word on what is wrong.</summary>
public sealed class CompiledTemplatesTests
{
    private static readonly Templates s_embedded = Templates.Embedded();

    [Fact]
    public void BuiltInTemplates_AreAllCompiled() => Assert.Empty(s_embedded.NotCompiled);

    [Theory]
    [MemberData(nameof(Samples))]
    public void SamplePage_IsTheSameBothWays(string name)
    {
        var page = SamplePages.All().Single(page => page.GetType().Name == name);

        Assert.Equal(ByEngine(s_embedded, page), Compiled(s_embedded, page));
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void PageWithEveryMemberFilled_IsTheSameBothWays(string name)
    {
        var type = SamplePages.All().Single(page => page.GetType().Name == name).GetType();
        var page = FilledModel.Of(type, member => $"<{member}> & 'all'\0", "rule/x.html");

        Assert.Equal(ByEngine(s_embedded, page), Compiled(s_embedded, page));
    }

    [Theory]
    [InlineData("small")]
    [InlineData("likes")]
    [InlineData("plumbing")]
    [InlineData("workshop")]
    public void EveryPageOfABase_IsTheSameBothWays(string name)
    {
        var plan = new SitePlan(Proof.Of(KnowledgeBaseCase.GoodFolder(name)), s_embedded);

        var pages = plan.SharedPages.Concat(plan.Guides.Where((_, at) => at % 4 == 0).SelectMany(guide => guide.Pages)).ToList();

        Assert.True(pages.Count > 20, "the base has to hold pages");
        Assert.All(pages, planned =>
        {
            var page = planned.Build();
            Assert.Equal(ByEngine(s_embedded, page), Compiled(s_embedded, page));
        });
    }

    [Theory]
    [InlineData("")]
    [InlineData("{{ page.title }}|{{ frame.prefix }}|{{ template }}|{{ \"<q>\" }}|{{ 12 }}|{{ true }}|{{ false }}|{{ null }}")]
    [InlineData("a {{~ # a note ~}}\n b {{- 1 -}} c\n  {{~ if true ~}}\n d \n{{~ end ~}}\n e")]
    [InlineData("{{ if null }}a{{ else if '' }}b{{ else }}c{{ end }}{{ if 0 }}d{{ end }}{{ if !page.title }}e{{ else }}f{{ end }}")]
    [InlineData("{{ if false }}a{{ else if 1 == 2 }}b{{ else if template != 'page' && has page.title }}c{{ end }}")]
    [InlineData("{{ if frame.canonical || false }}a{{ end }}{{ false || false }}{{ null || 1 }}{{ true && null }}{{ !null }}")]
    [InlineData("{{ for x in page.links }}{{ for.index }}{{ for.first }}{{ for.last }}{{ x.text }}{{ link x }}{{ href x.href }};{{ end }}")]
    [InlineData("{{ for x in page.links }}{{ for y in page.links }}{{ x.text }}{{ y.text }}{{ for.index + 1 }}{{ end }}{{ for.index - 2 }}{{ end }}")]
    [InlineData("{{ for x in page.links }}{{ for x in page.links }}{{ x.href }}{{ end }}{{ x.text }}{{ end }}")]
    [InlineData("{{ for x in frame.canonical }}a{{ else }}b{{ end }}|{{ for x in frame.navigation }}{{ x.text }}{{ x.is_current }}{{ else }}b{{ end }}")]
    [InlineData("{{ $a = page.links[1] }}{{ $a.text }}{{ $b = $a }}{{ $b.href }}{{ page.links[0].text }}{{ $a = 'x' }}{{ $a }}")]
    [InlineData("{{ for x in page.links }}{{ if for.first }}{{ $a = x.text }}{{ end }}{{ page.links[for.index].text }}{{ $a }}{{ end }}{{ $a }}")]
    [InlineData("{{ capture $a }}<i>{{ page.title }}</i>{{ end }}{{ $a }}{{ has $a }}{{ capture $c }}{{ end }}{{ has $c }}")]
    [InlineData("{{ include 'one' page.title 'x' }}{{ include 'one' 'y' page.links }}{{ include 'two' page 1 2 3 4 5 6 }}")]
    [InlineData("{{ css page.title }}{{ css 'Plain Word--x' }}{{ css 'plain' }}{{ css null }}{{ css true }}{{ css 12 }}")]
    [InlineData("{{ href null }}{{ href 'javascript:x' }}{{ href '#a' }}{{ href 'https://a.example/?b&c' }}{{ href 'a/b.html#c' }}{{ link null }}")]
    [InlineData("{{ 1 < 2 }}{{ 2 <= 2 }}{{ 1 > 2 }}{{ 3 >= 4 }}{{ 1 == 1 }}{{ 1 != 1 }}{{ 'a' == 'A' }}{{ 2 + 3 - 1 }}")]
    [InlineData("{{ verb null }}{{ has '' }}{{ has page.links }}{{ has 0 }}{{ (has frame.canonical) || (has page.title) }}{{ has (link page.links[0]) }}")]
    public void TemplateOfTheKnownWords_IsTheSameBothWays(string layout)
    {
        var templates = Of(layout);
        Assert.DoesNotContain(templates.NotCompiled, IsLayout);

        Assert.Equal(ByEngine(templates, Page), Compiled(templates, Page));
    }

    [Fact]
    public void NumbersAndEnumerations_AreWrittenTheSameBothWays()
    {
        var templates = Of("{{ page.standing }}{{ if page.standing == 'Built' }}a{{ end }}{{ if 'Measured' != page.standing }}b{{ end }}{{ css page.standing }}");
        Assert.DoesNotContain(templates.NotCompiled, IsLayout);
        var rule = (RulePage)SamplePages.All().Single(page => page is RulePage) with { Standing = Swapwright.Site.Models.Standing.Measured };

        Assert.Equal("Measuredmeasured", ByEngine(templates, rule));
        Assert.Equal("Measuredmeasured", Compiled(templates, rule));
    }

    [Theory]
    [InlineData("{{ page.title + 'x' }}", null)]
    [InlineData("{{ 1.5 }}", "1:4: ScriptLiteral")]
    [InlineData("a\n {{ x = 1 }}{{ x }}", "2:5: ScriptAssignExpression")]
    [InlineData("{{ for i in 1..3 }}{{ i }}{{ end }}", "1:13: ScriptBinaryExpression")]
    [InlineData("{{ for x in page.links limit:1 }}{{ x.text }}{{ end }}", "1:4: ScriptForStatement")]
    [InlineData("{{ for page in page.links }}{{ page.text }}{{ end }}", "1:8: ScriptVariableGlobal")]
    [InlineData("{{ for x in page.links }}{{ break }}{{ end }}", "1:29: ScriptBreakStatement")]
    [InlineData("{{ for x in page.links }}{{ for.even }}{{ end }}", "1:29: ScriptMemberExpression")]
    [InlineData("{{ func f(x); ret x; end; f page.title }}", "1:4: ScriptFunction")]
    [InlineData("{{ page.title | css }}", "1:4: ScriptPipeCall")]
    [InlineData("{{ frame.canonical ?? 'none' }}", "1:4: ScriptBinaryExpression")]
    [InlineData("{{ include 'own' page.title }}!", null)]
    [InlineData("{{ for x in page.links }}{{ include 'outer' }}{{ end }}", null)]
    [InlineData("{{ 2147483647 + 1 }}", null)]
    [InlineData("{{ 'a' < 'b' }}{{ page.links.size }}{{ page['title'] }}{{ null == null }}", null)]
    [InlineData("{{ page.links[-1].text }}", "1:15: ScriptUnaryExpression")]
    [InlineData("{{ for c in 'abc' }}{{ c }}{{ end }}", null)]
    public void WhatIsNotCompiled_IsRenderedByTheEngine(string layout, string? place)
    {
        var templates = Of(layout);

        Assert.Equal(place is not null, templates.NotCompiled.Any(IsLayout));
        Assert.True(place is null || templates.NotCompiled.Any(line => line.StartsWith($"layout.sbn-html:{place} ", StringComparison.Ordinal)), string.Join('\n', templates.NotCompiled));
        Assert.False(templates.TryCompiled(Page, static _ => { }));
        Assert.Equal(ByEngine(templates, Page), templates.Render(Page));
    }

    [Theory]
    [InlineData("{{ nobody }}")]
    [InlineData("one\n  {{ page.nothing }}")]
    [InlineData("{{ frame.canonical.length }}")]
    [InlineData("{{ include 'missing' }}")]
    [InlineData("a\n{{ include 'two' page.title }}")]
    [InlineData("{{ include 'layout' }}")]
    [InlineData("{{ link page.title }}")]
    [InlineData("{{ $a }}")]
    [InlineData("{{ if !page.title }}{{ $a = 1 }}{{ end }}\n{{ $a }}")]
    [InlineData("{{ for x in page.links }}{{ end }}{{ x }}")]
    [InlineData("{{ for x in 12 }}{{ end }}")]
    [InlineData("{{ page.links[9] }}")]
    [InlineData("{{ page.title = 'x' }}")]
    [InlineData("{{ $1 }}")]
    public void Fault_IsToldTheSameWayAsByTheEngine(string layout)
    {
        var templates = Of(layout);

        Assert.False(templates.TryCompiled(Page, static _ => { }));
        var expected = Assert.Throws<TemplateException>(() => ByEngine(templates, Page));
        Assert.Equal(expected.Message, Assert.Throws<TemplateException>(() => templates.Render(Page)).Message);
    }

    [Fact]
    public void LoopsWithinLoops_EndAtTheSamePlaceEveryTime()
    {
        var templates = Of(string.Concat(Enumerable.Repeat("{{ for x in page.links }}", 20)) + "{{ x.text }}" + string.Concat(Enumerable.Repeat("{{ end }}", 20)));
        Assert.DoesNotContain(templates.NotCompiled, IsLayout);
        var page = Page with { Links = [.. Enumerable.Repeat(Page.Links[0], 9)] };

        Assert.False(templates.TryCompiled(page, static _ => { }));
        var first = Assert.Throws<TemplateException>(() => templates.Render(page)).Message;
        Assert.StartsWith("layout.sbn-html:1:", first, StringComparison.Ordinal);
        Assert.Equal(first, Assert.Throws<TemplateException>(() => templates.Render(page)).Message);
    }

    [Fact]
    public void TextBeyondAnyPage_IsNotWritten()
    {
        var templates = Of("{{ for x in page.links }}{{ page.title }}{{ end }}");
        var page = Page with { Title = new string('a', 4_000_000), Links = [.. Enumerable.Repeat(Page.Links[0], 9)] };

        Assert.False(templates.TryCompiled(page, static _ => { }));
        Assert.Contains("beyond 32 MiB", Assert.Throws<TemplateException>(() => templates.Render(page)).Message, StringComparison.Ordinal);
        Assert.Equal(4_000_000, Compiled(templates, page with { Links = [Page.Links[0]] }).Length);
    }

    [Fact]
    public void PageOfOneWorker_AfterOneThatFailed_IsWhole()
    {
        var templates = Of("{{ $a = page.title }}{{ include 'one' $a (page.links[0].text) }}");
        Assert.False(templates.TryCompiled(Page with { Links = [] }, static _ => { }));

        Assert.Equal(ByEngine(templates, Page), Compiled(templates, Page));
    }

    public static TheoryData<string> Samples() => [.. SamplePages.All().Select(page => page.GetType().Name)];

    private static NotFoundPage Page
    {
        get
        {
            var page = SamplePages.All().OfType<NotFoundPage>().Single();
            return page with
            {
                Title = "<b> & \"more\"",
                Links = [new PageLink("A <first>", "guide/a.html"), new PageLink("Second", "javascript:alert(1)"), new PageLink("Third & last", "#third")],
                Frame = page.Frame with { Path = "deep/er/404.html", Canonical = null! },
            };
        }
    }

    private static Templates Of(string layout) => Templates.FromText(new Dictionary<string, string>
    {
        ["layout.sbn-html"] = layout,
        ["one.sbn-html"] = "<u>{{ $a = $1 }}{{ $0 }}{{ has $a }}</u>",
        ["two.sbn-html"] = "\n{{ $2 }}{{ $0.title }}{{ include 'one' $0.title $1 }}",
        // Neither of these is compiled: the one sets a variable for all, the other takes those of the loop around it.
        ["own.sbn-html"] = "{{ y = $0 }}{{ y }}",
        ["outer.sbn-html"] = "{{ x.text }}{{ for.index }}",
    });

    private static bool IsLayout(string line) => line.StartsWith("layout.sbn-html:", StringComparison.Ordinal);

    private static string Compiled(Templates templates, Page page)
    {
        var html = "";
        Assert.True(templates.TryCompiled(page, text => html = text.ToString()), "it takes the engine");
        return html;
    }

    private static string ByEngine(Templates templates, Page page)
    {
        var html = "";
        templates.RenderByEngine(page, text => html = text.ToString());
        return html;
    }
}
