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

    /// <summary>A folder that another run makes and takes away is never taken for somebody else's, whenever it is looked at.</summary>
    [Fact]
    public async Task RequireOwnOrEmpty_FolderThatComesAndGoes_IsTheProgramsOwn()
    {
        using var enough = new CancellationTokenSource();
        var other = Task.Factory.StartNew(() =>
        {
            while (!enough.IsCancellationRequested)
            {
                Directory.CreateDirectory(Target);
                using var held = OwnFolder.Hold(Path.Combine(Target, SiteFolder.Mark), Target);
                File.WriteAllText(Path.Combine(Target, "a.html"), "a");
                OwnFolder.Remove(Target, held);
            }
        }, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

        for (var look = 0; look < 20_000; look++)
        {
            OwnFolder.RequireOwnOrEmpty(Target);
        }

        await enough.CancelAsync();
        await other;
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
            SiteWriter.Write(Target, [new SiteWork("broken", [new PlannedPage("broken.html", broken)], [])], [], Templates.Embedded(), []));

        Assert.Equal("broken on purpose", fault.Message);
        Assert.True(File.Exists(Path.Combine(Target, "index.html")));
    }

    [Fact]
    public void Write_SameBytesAsBefore_KeepsTheFile()
    {
        using (var folder = SiteFolder.Open(Target))
        {
            folder.Write("same.html", "a");
            folder.Write("other.html", "b");
            folder.Write("gone.html", "c");
            folder.Finish();
        }

        var day = new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc);
        Array.ForEach(["same.html", "other.html"], name => File.SetLastWriteTimeUtc(Path.Combine(Target, name), day));

        using (var folder = SiteFolder.Open(Target))
        {
            folder.Write("same.html", "a");
            folder.Write("other.html", "B");
            folder.Finish();
        }

        Assert.Equal([SiteFolder.Mark, "other.html", "same.html"], Names(Target));
        Assert.Equal(day, File.GetLastWriteTimeUtc(Path.Combine(Target, "same.html")));
        Assert.NotEqual(day, File.GetLastWriteTimeUtc(Path.Combine(Target, "other.html")));
        Assert.Equal("B", File.ReadAllText(Path.Combine(Target, "other.html")));
    }

    [Fact]
    public void Write_FileChangedByHandWithItsLengthKept_IsWrittenAnew()
    {
        WriteSite("a.html", "right");
        File.WriteAllText(Path.Combine(Target, "a.html"), "wrong");

        WriteSite("a.html", "right");

        Assert.Equal("right", File.ReadAllText(Path.Combine(Target, "a.html")));
    }

    [Fact]
    public void Dispose_UnfinishedWithFilesThatDidNotChange_LeavesThePreviousSite()
    {
        WriteSite("a.html", "a");

        using (var folder = SiteFolder.Open(Target))
        {
            folder.Write("a.html", "a");
        }

        Assert.Equal("a", File.ReadAllText(Path.Combine(Target, "a.html")));
    }

    [Fact]
    public void Write_DiskRefuses_SaysWhichFileAndLeavesThePreviousSite()
    {
        WriteSite("a.html", "a");

        using (var folder = SiteFolder.Open(Target))
        {
            folder.Write("b", "a file where a folder is wanted");
            var fault = Assert.Throws<SiteFolderException>(() => folder.Write("b/c.html", "c"));
            Assert.StartsWith("`b/c.html` of the site cannot be written: ", fault.Message, StringComparison.Ordinal);
        }

        Assert.Equal("a", File.ReadAllText(Path.Combine(Target, "a.html")));
    }

    private static void WriteAll(string target)
    {
        var works = SamplePages.All().Select(page => new SiteWork(page.Frame.Path, [new PlannedPage(page.Frame.Path, () => page)], [])).Append(new SiteWork("picture", [], [PlannedFile.Of("pictures/a.png", () => new SiteFile("pictures/a.png", new byte[] { 1, 2 }))]));
        var templates = Templates.Embedded();
        var count = SiteWriter.Write(target, works, templates.Assets, templates, [new SiteFile("last.txt", new byte[] { 3 })]);
        Assert.Equal(SamplePages.All().Count, count.Pages);
        Assert.Equal([1, 2], File.ReadAllBytes(Path.Combine(target, "pictures", "a.png")));
        Assert.Equal([3], File.ReadAllBytes(Path.Combine(target, "last.txt")));
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
