using Swapwright.Site.Models;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site.Rendering;

/// <summary>Pieces that many pages have: what was written of one is written again where it would come out the same, and nowhere else.</summary>
public sealed class RepeatedPiecesTests
{
    private const string Include = "{{ for task in page.checks }}{{ include 'piece' task 'h3' }}{{ end }}";

    // From the second time on what is written of a piece is kept, so the third page has it from there.
    private static readonly string[] s_pages = ["one page", "another page", "a third page"];

    [Fact]
    public void KeptPiece_OnManyPages_IsWrittenAsTheEngineWritesIt()
    {
        var templates = Of(Include, "{{ $1 }} {{ $0.title }}{{ for one in $0.after }} {{ link one }}{{ end }}");
        var piece = Kept("<First>");

        Assert.All(s_pages, title => IsAsByEngine(templates, Page(title, piece)));
    }

    [Fact]
    public void CopyOfAKeptPiece_IsWrittenWithWhatItHas()
    {
        var templates = Of(Include, "{{ $0.title }}");
        var piece = Kept("first");
        Assert.All(s_pages, title => Assert.Equal("first", Compiled(templates, Page(title, piece))));

        Assert.Equal("second", Compiled(templates, Page("a", piece with { Title = "second" })));
        Assert.Equal("first", Compiled(templates, Page("a", piece)));
    }

    [Theory]
    [InlineData("{{ $0.title }} of {{ page.title }}")]
    [InlineData("{{ $0.title }} {{ include 'inner' $0 }}")]
    public void TemplateThatLooksAtThePage_IsWrittenForEach(string piece)
    {
        var templates = Of(Include, piece);
        var task = Kept("first");

        Assert.All(s_pages, title =>
        {
            IsAsByEngine(templates, Page(title, task));
            Assert.Contains(title, Compiled(templates, Page(title, task)), StringComparison.Ordinal);
        });
    }

    [Fact]
    public void PagesOfOtherDepths_LeadToTheRootEachTheirOwnWay()
    {
        var templates = Of(Include, "{{ for one in $0.after }}{{ link one }}{{ end }}");
        var piece = Kept("first");

        Assert.All(s_pages, title => Assert.All(["a.html", "a/b.html", "a/b/c.html"], path =>
        {
            var page = Page(title, piece);
            IsAsByEngine(templates, page with { Frame = page.Frame with { Path = path } });
        }));
    }

    [Fact]
    public void PlacesOfATemplate_WriteThePieceEachAsItIsTold()
    {
        var templates = Of(Include + "|{{ for task in page.checks }}{{ include 'piece' task 'h4' }}{{ include 'piece' task page.title }}{{ end }}", "{{ $1 }} {{ $0.title }};");
        var piece = Kept("first");

        Assert.All(s_pages, title => Assert.Equal($"h3 first;|h4 first;{title} first;", Compiled(templates, Page(title, piece))));
    }

    [Fact]
    public void TurnsOfAKeptPiece_CountAsOftenAsItIsWritten()
    {
        var templates = Of("{{ for task in page.checks }}{{ for one in task.after }}{{ include 'piece' task }}{{ end }}{{ end }}", "{{ for one in $0.after }}{{ one.text }}{{ end }}");
        GuideTask Long(int links)
        {
            var piece = Task("first", links);
            piece.Keep();
            return piece;
        }

        Assert.True(templates.TryCompiled(Page("a", Long(400)), static _ => { }));
        Assert.False(templates.TryCompiled(Page("a", Long(600)), static _ => { }));
    }

    private static Templates Of(string layout, string piece) => Templates.FromText(new Dictionary<string, string>
    {
        ["layout.sbn-html"] = layout,
        ["piece.sbn-html"] = piece,
        ["inner.sbn-html"] = "{{ $0.title }} on {{ page.title }}",
    });

    private static GuidePage Page(string title, params GuideTask[] tasks)
    {
        var page = SampleGuide.Page();
        return page with { Title = title, Checks = tasks, Frame = page.Frame with { Path = "guide/a/b.html" } };
    }

    private static GuideTask Kept(string title)
    {
        var piece = Task(title, links: 2);
        piece.Keep();
        return piece;
    }

    private static GuideTask Task(string title, int links) =>
        new() { Id = "first", Title = title, After = [.. Enumerable.Range(0, links).Select(_ => new PageLink("<other>", "tasks.html#task-a"))] };

    private static void IsAsByEngine(Templates templates, Page page)
    {
        var engine = "";
        templates.RenderByEngine(page, text => engine = text.ToString());
        Assert.Equal(engine, Compiled(templates, page));
    }

    private static string Compiled(Templates templates, Page page)
    {
        var html = "";
        Assert.True(templates.TryCompiled(page, text => html = text.ToString()), "it takes the engine");
        return html;
    }
}
