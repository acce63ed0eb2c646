using System.Text;
using Swapwright.Site;
using Swapwright.Site.Models;
using Swapwright.Site.Output;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Site;

public sealed class SiteFolderTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("swapwright-").FullName;

    private string Target => Path.Combine(_root, "site");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Theory]
    [InlineData("../up.html")]
    [InlineData("a/../../up.html")]
    [InlineData("/etc/up.html")]
    [InlineData("a//b.html")]
    [InlineData("./a.html")]
    [InlineData("a\\..\\b.html")]
    [InlineData("C:/x.html")]
    [InlineData(".swapwright-site")]
    [InlineData("a/.hidden")]
    [InlineData("a/b.")]
    [InlineData("a b.html")]
    [InlineData("a\0.html")]
    [InlineData("")]
    [InlineData("a/")]
    public void Write_PathThatIsNotPlain_IsRefused(string path)
    {
        using var folder = SiteFolder.Open(Target);

        Assert.Throws<SiteFolderException>(() => folder.Write(path, "x"));
    }

    [Fact]
    public void Write_SamePathTwice_IsRefusedAlsoInAnotherCase()
    {
        using var folder = SiteFolder.Open(Target);
        folder.Write("rule/a.html", "x");

        Assert.Throws<SiteFolderException>(() => folder.Write("rule/a.html", "y"));
        Assert.Throws<SiteFolderException>(() => folder.Write("Rule/A.html", "y"));
    }

    [Fact]
    public void Open_FolderOfSomebodyElse_IsRefusedAndUntouched()
    {
        Directory.CreateDirectory(Target);
        File.WriteAllText(Path.Combine(Target, "thesis.txt"), "years of work");

        Assert.Throws<SiteFolderException>(() => SiteFolder.Open(Target));

        Assert.Equal(["site"], Directory.EnumerateFileSystemEntries(_root).Select(path => Path.GetFileName(path)!));
        Assert.Equal("years of work", File.ReadAllText(Path.Combine(Target, "thesis.txt")));
    }

    [Fact]
    public void Open_File_IsRefused()
    {
        File.WriteAllText(Target, "x");

        Assert.Throws<SiteFolderException>(() => SiteFolder.Open(Target));
    }

    [Fact]
    public void Open_SiblingOfSomebodyElse_IsRefused()
    {
        var sibling = Directory.CreateDirectory(Path.Combine(_root, ".site.swapwright-new")).FullName;
        File.WriteAllText(Path.Combine(sibling, "mine.txt"), "x");

        Assert.Throws<SiteFolderException>(() => SiteFolder.Open(Target));

        Assert.True(File.Exists(Path.Combine(sibling, "mine.txt")));
    }

    [Fact]
    public void Finish_OverThePreviousSite_LeavesOnlyTheNewOne()
    {
        WriteSite("index.html", "first");
        WriteSite("other.html", "second");

        Assert.Equal([".swapwright-site", "other.html"], Names(Target));
        Assert.Equal(["site"], Names(_root));
    }

    [Fact]
    public void Dispose_WithoutFinish_LeavesThePreviousSiteWhole()
    {
        WriteSite("index.html", "first");

        using (var folder = SiteFolder.Open(Target))
        {
            folder.Write("index.html", "half");
        }

        Assert.Equal("first", File.ReadAllText(Path.Combine(Target, "index.html")));
        Assert.Equal(["site"], Names(_root));
    }

    [Fact]
    public void Open_AfterARunThatDiedBetweenItsRenames_PutsThePreviousSiteBack()
    {
        WriteSite("index.html", "first");
        Directory.Move(Target, Path.Combine(_root, ".site.swapwright-old"));

        SiteFolder.Open(Target).Dispose();

        Assert.Equal("first", File.ReadAllText(Path.Combine(Target, "index.html")));
        Assert.Equal(["site"], Names(_root));
    }

    [Fact]
    public void Open_AfterARunThatDiedWhileWriting_StartsClean()
    {
        var left = Directory.CreateDirectory(Path.Combine(_root, ".site.swapwright-new", "rule")).FullName;
        File.WriteAllText(Path.Combine(left, "old.html"), "x");
        File.WriteAllText(Path.Combine(_root, ".site.swapwright-new", SiteFolder.Mark), "x");

        WriteSite("index.html", "new");

        Assert.Equal([".swapwright-site", "index.html"], Names(Target));
    }

    [Fact]
    public void Open_WhileAnotherRunWrites_IsRefused()
    {
        using var first = SiteFolder.Open(Target);

        Assert.Throws<SiteFolderException>(() => SiteFolder.Open(Target));

        first.Write("index.html", "x");
        first.Finish();
        Assert.True(File.Exists(Path.Combine(Target, "index.html")));
    }

    [Fact]
    public void Finish_TargetIsALink_ReplacesWhatItNames()
    {
        var real = Path.Combine(_root, "real");
        Directory.CreateDirectory(real);
        File.CreateSymbolicLink(Target, real);

        WriteSite("index.html", "x");

        Assert.True(File.Exists(Path.Combine(real, "index.html")));
        Assert.NotNull(new DirectoryInfo(Target).LinkTarget);
    }

    [Fact]
    public void Write_Text_IsUtf8WithLineFeedsAndNoMark()
    {
        WriteSite("a.html", "ö\r\nb\rc");

        Assert.Equal(Encoding.UTF8.GetBytes("ö\nb\nc"), File.ReadAllBytes(Path.Combine(Target, "a.html")));
    }

    [Fact]
    public void SiteWriter_Twice_WritesTheSameBytes()
    {
        var first = Path.Combine(_root, "first");
        WriteAll(first);
        WriteAll(Target);

        var files = Directory.EnumerateFiles(first, "*", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(first, path)).Order(StringComparer.Ordinal).ToList();
        Assert.Contains("index.html", files);
        Assert.Contains(Path.Combine("assets", "site.css"), files);
        Assert.All(files, file => Assert.Equal(File.ReadAllBytes(Path.Combine(first, file)), File.ReadAllBytes(Path.Combine(Target, file))));
    }

    [Fact]
    public void SiteWriter_PageThatFails_LeavesThePreviousSiteAndNamesTheFault()
    {
        WriteAll(Target);
        Func<Page> broken = () => throw new InvalidOperationException("broken on purpose");

        var fault = Assert.Throws<InvalidOperationException>(() =>
            SiteWriter.Write(Target, [broken], [], Templates.Embedded(), _ => []));

        Assert.Equal("broken on purpose", fault.Message);
        Assert.True(File.Exists(Path.Combine(Target, "index.html")));
    }

    private static void WriteAll(string target)
    {
        var pages = SamplePages.All().Select(page => (Func<Page>)(() => page));
        var count = SiteWriter.Write(target, pages, [() => new SiteFile("pictures/a.png", new byte[] { 1, 2 })], Templates.Embedded(), paths => [new SiteFile("paths.txt", Encoding.UTF8.GetBytes(string.Join('\n', paths)))]);
        Assert.Equal(SamplePages.All().Count, count);
        Assert.Equal(SamplePages.All().Select(page => page.Frame.Path).Order(StringComparer.Ordinal), File.ReadAllLines(Path.Combine(target, "paths.txt")));
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFileSystemEntries(folder).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal);

    private void WriteSite(string path, string text)
    {
        using var folder = SiteFolder.Open(Target);
        folder.Write(path, text);
        folder.Finish();
    }
}
