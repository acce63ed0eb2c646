using System.Text;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;
using Swapwright.Tests.Drafting;

namespace Swapwright.Tests.Site;

/// <summary>What a base puts in the place of the built-in templates, and what it cannot do with it.</summary>
public sealed class OwnTemplatesTests : IDisposable
{
    private readonly TemporaryFolder _folder = DraftedBases.Copy("new");

    private string KnowledgeBase => Path.Combine(_folder.Path, "swap-kb");

    private string Target => Path.Combine(_folder.Path, "out");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Over_OneFile_ReplacesThatOneOnly()
    {
        _folder.Write("swap-kb/site-template/not-found.sbn-html", "<h1>Lost?</h1>\n");
        _folder.Write("swap-kb/site-template/assets/mark.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\"/>\n");
        _folder.Write("swap-kb/site-template/README.md", "Why we changed this.\n");
        Render();
        Assert.Contains("<h1>Lost?</h1>", File.ReadAllText(Path.Combine(Target, "404.html")), StringComparison.Ordinal);
        Assert.Equal("<svg xmlns=\"http://www.w3.org/2000/svg\"/>\n", File.ReadAllText(Path.Combine(Target, "assets/mark.svg")));
        Assert.Contains("Find your build", File.ReadAllText(Path.Combine(Target, "index.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Over_AnEmptyFile_LeavesThatPartEmpty()
    {
        _folder.Write("swap-kb/site-template/partials/sources.sbn-html", "");
        _folder.Write("swap-kb/site-template/not-found.sbn-html", "");
        Render();
        var page = File.ReadAllText(Path.Combine(Target, "404.html"));
        Assert.Contains("<main", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<h1", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Render_OwnTemplate_StillEscapes()
    {
        _folder.Write("swap-kb/site-template/not-found.sbn-html", "<h1>{{ \"<b>\" }}</h1>\n");
        Render();
        Assert.Contains("<h1>&lt;b&gt;</h1>", File.ReadAllText(Path.Combine(Target, "404.html")), StringComparison.Ordinal);
    }

    public static TheoryData<string, string> Hostile => new()
    {
        { "{{ for a in 1..100000 }}{{ for b in 1..100000 }}{{ b + 1 }}{{ end }}{{ end }}", "comes? to an end|come to an end|limit" },
        { "{{ while true }}{{ end }}", "limit" },
        { "{{ include \"not-found\" }}", "recursive|deeply" },
        { "{{ func again; again; end; again }}", "recursive|deeply" },
        { "{{ x = \"aaaaaaaaaaaaaaaa\"; for i in 1..60 }}{{ x = x + x }}{{ end }}", "longer than any page" },
        { "{{ x = \"aaaaaaaaaaaaaaaa\" * 500000000 }}", "not multiplied" },
        { "{{ x = 500000000 * \"aaaaaaaaaaaaaaaa\" }}", "not multiplied" },
        { "{{ for i in 1..100000 }}{{ for j in 1..1000 }}aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa{{ end }}{{ end }}", "beyond 32|come to an end|limit" },
        { "a\n{{ page.secret }}", "" },
        { "{{ include \"../../kb.yaml\" }}", "no template" },
        { "{{ import file }}", "" },
        { "{{ if x }}", "" },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public void Render_AHostileTemplate_EndsWithItsPlace(string template, string words)
    {
        _folder.Write("swap-kb/site-template/not-found.sbn-html", template);
        var problem = Assert.Throws<TemplateException>(() => Render());
        Assert.StartsWith($"{KnowledgeBase}/site-template/not-found.sbn-html:", problem.Message, StringComparison.Ordinal);
        Assert.Matches(words, problem.Message);
        Assert.False(Directory.Exists(Target));
    }

    [Theory]
    [InlineData("{{ if true }}", "{{ end }}")]
    [InlineData("{{ (((((((((((((((((((", "}}")]
    public void Over_BlocksWithoutEnd_AreRefused(string open, string close)
    {
        _folder.Write("swap-kb/site-template/not-found.sbn-html", string.Concat(Enumerable.Repeat(open, 4000)) + string.Concat(Enumerable.Repeat(close, 4000)));
        Assert.Contains("blocks", Assert.Throws<TemplateException>(() => TemplateFolder.Of(KnowledgeBase)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("server.php", 10, "is of no kind")]
    [InlineData("a b.css", 10, "has a name")]
    [InlineData("large.css", 2 * 1024 * 1024 + 1, "is larger")]
    [InlineData("large.sbn-html", 128 * 1024 + 1, "is larger")]
    public void Of_WhatDoesNotBelong_IsRefused(string name, int length, string words)
    {
        _folder.Write($"swap-kb/site-template/{name}", new string('a', length));
        Assert.Contains($"site-template/{name}:1:1: {words}", Assert.Throws<TemplateException>(() => TemplateFolder.Of(KnowledgeBase)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_ALinkOutOfTheFolder_IsRefused()
    {
        Directory.CreateDirectory(Path.Combine(KnowledgeBase, "site-template"));
        File.CreateSymbolicLink(Path.Combine(KnowledgeBase, "site-template/layout.sbn-html"), "/etc/passwd");
        Assert.Contains("symbolic link", Assert.Throws<TemplateException>(() => TemplateFolder.Of(KnowledgeBase)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pages_OfTheBase_AreLinkedAndEscaped()
    {
        _folder.Write("swap-kb/pages/how-to-help.md", "---\ntitle: \"How to <help>\"\nlinked: navigation\n---\n## Measure\n\nSee [the first look](article:first-look). <script>alert(1)</script> [bad](javascript:alert(1))\n");
        _folder.Write("swap-kb/pages/who-we-are.md", "---\ntitle: Who we are\nsummary: A club.\n---\nWe meet. [Help](page:how-to-help).\n");
        Assert.Equal(["article", "unregistered-id", "unregistered-id"], Render().Select(finding => finding).Order(StringComparer.Ordinal));
        var page = File.ReadAllText(Path.Combine(Target, "page/how-to-help.html"));
        Assert.Contains("<h1>How to &lt;help&gt;</h1>", page, StringComparison.Ordinal);
        Assert.Contains("href=\"../article/first-look.html\"", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>alert", page, StringComparison.Ordinal);
        Assert.DoesNotContain("javascript:", page, StringComparison.Ordinal);
        var start = File.ReadAllText(Path.Combine(Target, "index.html"));
        Assert.Contains("<li><a href=\"page/how-to-help.html\">How to &lt;help&gt;</a></li>", start, StringComparison.Ordinal);
        Assert.Contains("<p><a href=\"page/who-we-are.html\">Who we are</a></p>", start, StringComparison.Ordinal);
    }

    private IEnumerable<string> Render()
    {
        var proof = Proof.Of(KnowledgeBase);
        SiteBuilder.Render(proof, Target, BuiltIn.Templates.Over(TemplateFolder.Of(KnowledgeBase)));
        return proof.Findings.Select(finding => finding.Id);
    }
}
