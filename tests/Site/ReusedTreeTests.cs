using Swapwright.Site.Output;

namespace Swapwright.Tests.Site;

/// <summary>A site that is begun with the tree of the one before the previous: what comes of it is what an empty folder would have become.</summary>
public sealed class ReusedTreeTests : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("swapwright-").FullName;

    private string Target => Path.Combine(_root, "site");

    private string Left => Path.Combine(_root, ".site.swapwright-new");

    public void Dispose() => Directory.Delete(_root, recursive: true);

    [Fact]
    public void Finish_ThatKeeps_LeavesThePreviousTreeToTheNextRun()
    {
        Write(("a.html", "one"), ("in/b.html", "same"));

        Write(("a.html", "two"), ("in/b.html", "same"));

        Assert.Equal([".site.swapwright-new", "site"], Names(_root));
        Assert.Equal(("two", "same"), (Text(Target, "a.html"), Text(Target, "in/b.html")));
        Assert.Equal(("one", "same"), (Text(Left, "a.html"), Text(Left, "in/b.html")));
    }

    /// <summary>Both trees have one file under two names: who wrote over it would spoil the site that readers see while the next is made.</summary>
    [Fact]
    public void Write_FileThatBothTreesHave_LeavesThePreviousSiteAsItIs()
    {
        Write(("a.html", "one"), ("in/b.html", "same"));
        Write(("a.html", "two"), ("in/b.html", "same"));

        using var folder = SiteFolder.Open(Target, reuse: true);
        folder.Write("a.html", "three");
        folder.Write("in/b.html", "else");

        Assert.Equal(("two", "same"), (Text(Target, "a.html"), Text(Target, "in/b.html")));
        folder.Finish(keep: true);
        Assert.Equal(("three", "else"), (Text(Target, "a.html"), Text(Target, "in/b.html")));
        Assert.Equal(("two", "same"), (Text(Left, "a.html"), Text(Left, "in/b.html")));
    }

    [Fact]
    public void TryKeep_FileThatLiesThereAlready_IsTheFileOfThePreviousSite()
    {
        Write(("a.html", "one"), ("in/b.html", "same"));
        Write(("a.html", "two"), ("in/b.html", "same"));

        Keep("a.html", "in/b.html");

        Assert.Equal(("two", "same"), (Text(Target, "a.html"), Text(Target, "in/b.html")));
        Assert.Equal([SiteFolder.Mark, "a.html", "in", "in/b.html"], All(Target));
    }

    /// <summary>Where a disk tells times by the second, an older file may have the stamp of a newer one.</summary>
    [Fact]
    public void TryKeep_OlderFileWithTheSameStamp_IsNotTakenForTheNewer()
    {
        var second = new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc);
        Write(("a.html", "one"));
        File.SetLastWriteTimeUtc(Path.Combine(Target, "a.html"), second);
        Write(("a.html", "two"));
        File.SetLastWriteTimeUtc(Path.Combine(Target, "a.html"), second);
        Assert.Equal(FileStamp.Of(Path.Combine(Target, "a.html")), FileStamp.Of(Path.Combine(Left, "a.html")));

        Keep("a.html");

        Assert.Equal("two", Text(Target, "a.html"));
    }

    [Fact]
    public void Finish_WhatTheNewSiteDoesNotHave_IsTakenAway()
    {
        Write(("a.html", "one"), ("in/deep/down/b.html", "b"), ("in/c.html", "c"));
        Write(("a.html", "two"), ("in/deep/down/b.html", "b"), ("in/c.html", "c"));
        Directory.CreateDirectory(Path.Combine(Left, "empty", "too"));
        File.WriteAllText(Path.Combine(Left, "in", "deep", "stray.html"), "stray");
        File.WriteAllText(Path.Combine(Left, "A.html"), "in another case");

        Write(("a.html", "three"), ("in/c.html", "c"));

        Assert.Equal([SiteFolder.Mark, "a.html", "in", "in/c.html"], All(Target));
    }

    [Fact]
    public void Write_LinksInThePlaceOfFoldersAndFiles_AreNotFollowed()
    {
        Write(("a.html", "one"), ("in/b.html", "b"), ("on/c.html", "c"));
        Write(("a.html", "two"), ("in/b.html", "b"), ("on/c.html", "c"));
        var outside = Directory.CreateDirectory(Path.Combine(_root, "outside")).FullName;
        File.WriteAllText(Path.Combine(outside, "b.html"), "mine");
        File.WriteAllText(Path.Combine(outside, "other.html"), "mine too");
        Directory.Delete(Path.Combine(Left, "in"), recursive: true);
        Directory.CreateSymbolicLink(Path.Combine(Left, "in"), outside);
        Directory.CreateSymbolicLink(Path.Combine(Left, "stray"), outside);
        File.Delete(Path.Combine(Left, "a.html"));
        File.CreateSymbolicLink(Path.Combine(Left, "a.html"), Path.Combine(outside, "other.html"));

        Write(("a.html", "three"), ("in/b.html", "b"), ("on/c.html", "c"));

        Assert.Equal([SiteFolder.Mark, "a.html", "in", "in/b.html", "on", "on/c.html"], All(Target));
        Assert.Null(new DirectoryInfo(Path.Combine(Target, "in")).LinkTarget);
        Assert.Equal(("three", "b"), (Text(Target, "a.html"), Text(Target, "in/b.html")));
        Assert.Equal(["b.html", "other.html"], Names(outside));
        Assert.Equal(("mine", "mine too"), (Text(outside, "b.html"), Text(outside, "other.html")));
    }

    [Fact]
    public void Write_FolderInThePlaceOfAFileAndFileInThatOfAFolder_GiveWay()
    {
        Write(("a.html", "one"), ("in/b.html", "b"));
        Write(("a.html", "two"), ("in/b.html", "b"));
        File.Delete(Path.Combine(Left, "a.html"));
        Directory.CreateDirectory(Path.Combine(Left, "a.html", "x"));
        Directory.Delete(Path.Combine(Left, "in"), recursive: true);
        File.WriteAllText(Path.Combine(Left, "in"), "x");

        Write(("a.html", "three"), ("in/b.html", "b"));

        Assert.Equal([SiteFolder.Mark, "a.html", "in", "in/b.html"], All(Target));
        Assert.Equal("three", Text(Target, "a.html"));
    }

    /// <summary>A run that was killed leaves its half-made tree, with the mark in it.</summary>
    [Fact]
    public void Open_ReusingWhatAKilledRunLeft_MakesTheSiteWhole()
    {
        Write(("a.html", "one"), ("in/b.html", "b"));
        Directory.CreateDirectory(Path.Combine(Left, "in"));
        File.WriteAllText(Path.Combine(Left, SiteFolder.Mark), "x");
        File.WriteAllText(Path.Combine(Left, "in", "b.html"), "ha");

        Keep("a.html", "in/b.html");

        Assert.Equal(("one", "b"), (Text(Target, "a.html"), Text(Target, "in/b.html")));
        Assert.Equal([SiteFolder.Mark, "a.html", "in", "in/b.html"], All(Target));
    }

    [Fact]
    public void Open_WithoutReuse_BeginsEmpty()
    {
        Write(("a.html", "one"), ("b.html", "b"));
        Write(("a.html", "two"), ("b.html", "b"));

        using var folder = SiteFolder.Open(Target);

        Assert.Equal([SiteFolder.Mark], All(Left));
    }

    private void Write(params ReadOnlySpan<(string Path, string Text)> files)
    {
        using var folder = SiteFolder.Open(Target, reuse: true);
        foreach (var (path, text) in files)
        {
            folder.Write(path, text);
        }

        folder.Finish(keep: true);
    }

    private void Keep(params string[] paths)
    {
        var stamps = paths.Select(path => FileStamp.Of(Path.Combine(Target, path))!.Value).ToArray();
        using var folder = SiteFolder.Open(Target, reuse: true);
        Assert.True(folder.TryKeep(paths, stamps));
        folder.Finish(keep: true);
    }

    private static string Text(string folder, string path) => File.ReadAllText(Path.Combine(folder, path));

    private static IEnumerable<string> Names(string folder) => Directory.EnumerateFileSystemEntries(folder).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal);

    private static IEnumerable<string> All(string folder) =>
        Directory.EnumerateFileSystemEntries(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None }).Select(path => Path.GetRelativePath(folder, path)).Order(StringComparer.Ordinal);
}
