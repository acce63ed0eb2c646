using Swapwright.Source;

namespace Swapwright.Tests.Source;

public sealed class KnowledgeFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("knowledge-").FullName;

    public KnowledgeFolderTests()
    {
        foreach (var name in KnowledgeLayout.TopFiles.Keys.Where(name => name is not ("register.yaml" or "glossary.yaml")))
        {
            Write(name, "title: x\n");
        }
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Read_EveryFolder_GivesKindAndIdInOrdinalOrder()
    {
        foreach (var folder in KnowledgeLayout.Folders.Keys.Where(folder => folder is not ("articles" or "pages" or "pictures")))
        {
            Write($"{folder}/b-1.yaml", "title: x\n");
        }

        Write("rules/inner/deep/a.yaml", "title: x\n");
        Write("articles/start.md", "---\ntitle: x\n---\n# Hello\n");
        Write("pictures/crimps/good-crimp.svg", "<svg/>");
        Write("glossary.yaml", "terms: {}\n");
        var tree = KnowledgeFolder.Read(_folder);

        Assert.Empty(tree.Findings);
        Assert.Equal(tree.Files.Select(file => file.Path).Order(StringComparer.Ordinal), tree.Files.Select(file => file.Path));
        Assert.Equal(
            ["article:start", "chassis:b-1", "choice:b-1", "connector:b-1", "ecu:b-1", "engine:b-1", "gearbox:b-1", "glossary:glossary", "kb:kb", "part:b-1", "picture:good-crimp", "positions:positions", "rule:a", "rule:b-1", "sources:sources", "task:b-1", "vocabulary:vocabulary"],
            tree.Files.Select(file => $"{file.Kind}:{file.Id}").Order(StringComparer.Ordinal));
        Assert.Equal("rule", tree.Find("rules/inner/deep/a.yaml")!.Kind);
        Assert.Equal("<svg/>", tree.Find("pictures/crimps/good-crimp.svg")!.Text);
        Assert.Null(tree.Find("rules/none.yaml"));
    }

    [Fact]
    public void Read_Article_SplitsFrontMatterAndBody()
    {
        Write("articles/start.md", "---\r\ntitle: Hello\r\n---\r\n\r\n# Hello\r\n\tcode\r\n");
        var file = KnowledgeFolder.Read(_folder).Find("articles/start.md")!;

        Assert.Equal("2:8-2:13", Reading.Span(file.Root!["title"]!.Place));
        Assert.Equal(("\r\n# Hello\r\n\tcode\r\n", 4), (file.Body, file.BodyLine));
        Assert.Equal(["---", "title: Hello", "# Hello", "", null, null], new[] { 1, 2, 5, 7, 8, 0 }.Select(file.Line));
    }

    [Theory]
    [InlineData("# Hello\n", "1:1-1:1", "does not begin with its front matter")]
    [InlineData("---\ntitle: x\n", "1:1-1:4", "front matter is not closed")]
    [InlineData("", "1:1-1:1", "empty")]
    [InlineData("---\n---\nText\n", "1:1-1:1", "empty")]
    [InlineData("---\ntitle: *x\n---\nText\n", "2:8-2:10", "alias")]
    [InlineData("---\ntitle: x\n---\nText \u202E\n", "4:6-4:7", "U+202E")]
    public void Read_MalformedArticle_IsFinding(string text, string span, string message)
    {
        Write("articles/start.md", text);
        var finding = Assert.Single(KnowledgeFolder.Read(_folder).Findings);

        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.Equal(("articles/start.md", span), (finding.Place.File, Reading.Span(finding.Place)));
    }

    [Theory]
    [InlineData("kb.yaml")]
    [InlineData("vocabulary.yaml")]
    [InlineData("positions.yaml")]
    public void Read_MissingTopFile_IsFinding(string name)
    {
        File.Delete(Path.Combine(_folder, name));
        var finding = Assert.Single(KnowledgeFolder.Read(_folder).Findings);

        Assert.Equal(($"the file `{name}` is missing", name), (finding.Message, finding.Place.File));
    }

    [Fact]
    public void Read_RefusedTopFile_IsNotAlsoMissing()
    {
        File.Move(Path.Combine(_folder, "kb.yaml"), Path.Combine(_folder, ".kb"));
        File.CreateSymbolicLink(Path.Combine(_folder, "kb.yaml"), Path.Combine(_folder, ".kb"));

        Assert.Contains("symbolic link", Assert.Single(KnowledgeFolder.Read(_folder).Findings).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("engine/a.yaml", "engine", "no folder", "`engines`")]
    [InlineData("vocabulery.yaml", "vocabulery.yaml", "no file", "`vocabulary.yaml`")]
    [InlineData("rules/a.yml", "rules/a.yml", "`.yaml`", "Rename")]
    [InlineData("articles/a.yaml", "articles/a.yaml", "`.md`", "Rename")]
    [InlineData("rules/Left_Mount.yaml", "rules/Left_Mount.yaml", "is no id", "hyphens")]
    [InlineData("rules/a--b.yaml", "rules/a--b.yaml", "is no id", "hyphens")]
    [InlineData("pictures/a.png", "pictures/a.png", "`.svg`", "Rename")]
    [InlineData("pictures/A.svg", "pictures/A.svg", "is no id", "hyphens")]
    public void Read_StrayFile_IsFinding(string path, string place, string message, string mend)
    {
        Write(path, "title: x\n");
        var tree = KnowledgeFolder.Read(_folder);
        var finding = Assert.Single(tree.Findings);

        Assert.Contains(message, finding.Message, StringComparison.Ordinal);
        Assert.Contains(mend, finding.Mend, StringComparison.Ordinal);
        Assert.Equal(place, finding.Place.File);
        Assert.Null(tree.Find(path));
    }

    [Fact]
    public void Read_FilesBesideTheKnowledge_AreIgnored()
    {
        foreach (var path in new[] { "README.md", "LICENSE", ".editorconfig", ".git/config", "rules/README.md", "pictures/README.md" })
        {
            Write(path, "x");
        }

        var tree = KnowledgeFolder.Read(_folder);

        Assert.Empty(tree.Findings);
        Assert.Equal(4, tree.Files.Length);
    }

    [Fact]
    public void Read_SameIdTwice_PointsAtBothFiles()
    {
        Write("rules/a/one.yaml", "title: x\n");
        Write("rules/b/one.yaml", "title: x\n");
        Write("tasks/one.yaml", "title: x\n");
        var finding = Assert.Single(KnowledgeFolder.Read(_folder).Findings);

        Assert.Equal("rules/b/one.yaml", finding.Place.File);
        Assert.Equal("rules/a/one.yaml", Assert.Single(finding.Related).Place.File);
    }

    [Fact]
    public void Read_SymbolicLinks_AreRefused()
    {
        Write("rules/one.yaml", "title: x\n");
        File.CreateSymbolicLink(Path.Combine(_folder, "rules", "two.yaml"), Path.Combine(_folder, "rules", "one.yaml"));
        File.CreateSymbolicLink(Path.Combine(_folder, "rules", "gone.yaml"), Path.Combine(_folder, "nowhere"));
        Directory.CreateSymbolicLink(Path.Combine(_folder, "tasks"), Path.Combine(_folder, "rules"));
        Directory.CreateSymbolicLink(Path.Combine(_folder, "rules", "loop"), _folder);
        var tree = KnowledgeFolder.Read(_folder);

        Assert.Equal(["rules/gone.yaml", "rules/loop", "rules/two.yaml", "tasks"], tree.Findings.Select(finding => finding.Place.File));
        Assert.All(tree.Findings, finding => Assert.Contains("symbolic link", finding.Message, StringComparison.Ordinal));
        Assert.Equal(5, tree.Files.Length);
    }

    [Fact]
    public void Read_OneBadFile_DoesNotStopTheOthers()
    {
        Write("rules/a.yaml", "a: [1\nb: 2\n");
        Write("rules/b.yaml", "");
        Write("rules/c.yaml", "title: good\n");
        File.WriteAllBytes(Path.Combine(_folder, "rules", "d.yaml"), [0xFF, 0xFE, 0x61, 0x00]);
        var tree = KnowledgeFolder.Read(_folder);

        Assert.Equal(["rules/a.yaml", "rules/b.yaml", "rules/d.yaml"], tree.Findings.Select(finding => finding.Place.File));
        Assert.Null(tree.Find("rules/a.yaml")!.Root);
        Assert.NotNull(tree.Find("rules/c.yaml")!.Root);
    }

    [Fact]
    public void Read_TooManyFiles_IsFinding()
    {
        Write("rules/a.yaml", "title: x\n");
        var finding = Assert.Single(KnowledgeFolder.Read(_folder, new SourceLimits { MaxFiles = 5 }).Findings); // four at the top, the folder, the rule

        Assert.Equal(("the knowledge base has more than 5 files; this one and the ones after it are not read", "vocabulary.yaml"), (finding.Message, finding.Place.File));
    }

    [Fact]
    public void Read_TooLargeFile_IsFindingWithoutReadingIt()
    {
        Write("rules/a.yaml", new string('#', 101));
        var tree = KnowledgeFolder.Read(_folder, new SourceLimits { MaxFileBytes = 100 });

        Assert.Equal("the file is larger than 100 bytes", Assert.Single(tree.Findings).Message);
        Assert.Empty(tree.Find("rules/a.yaml")!.Text);
    }

    [Fact]
    public void Read_TooLargeTogether_IsFindingAtTheFirstFileBeyond()
    {
        var findings = KnowledgeFolder.Read(_folder, new SourceLimits { MaxTotalBytes = 27 }).Findings; // four files of nine bytes

        Assert.Contains(findings, finding => finding.Place.File == "vocabulary.yaml" && finding.Message.Contains("larger than 27 bytes", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_FoldersTooDeep_IsFinding()
    {
        Write("rules/a/b/c.yaml", "title: x\n");
        var finding = Assert.Single(KnowledgeFolder.Read(_folder, new SourceLimits { MaxFolderDepth = 2 }).Findings);

        Assert.Equal(("folders are nested deeper than 2", "rules/a/b"), (finding.Message, finding.Place.File));
    }

    [Fact]
    public void Read_NoFolder_Throws() => Assert.Throws<DirectoryNotFoundException>(() => KnowledgeFolder.Read(Path.Combine(_folder, "none")));

    [Fact]
    public void Read_Cancelled_Throws() => Assert.ThrowsAny<OperationCanceledException>(() => KnowledgeFolder.Read(_folder, null, new CancellationToken(canceled: true)));

    private void Write(string path, string text)
    {
        var whole = Path.Combine(_folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(whole)!);
        File.WriteAllText(whole, text);
    }
}
