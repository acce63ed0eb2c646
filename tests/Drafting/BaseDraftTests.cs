using Swapwright.Drafting;
using Swapwright.Findings;
using Swapwright.Site;
using Swapwright.Site.Rendering;

namespace Swapwright.Tests.Drafting;

public sealed class BaseDraftTests : IDisposable
{
    private readonly TemporaryFolder _folder = DraftedBases.Copy("new");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Write_ANewBase_ChecksWithoutAFindingAndRenders()
    {
        var proof = Proof.Of(Path.Combine(_folder.Path, "swap-kb"));
        Assert.Empty(proof.Findings);
        Assert.Equal("Our swaps", proof.Base.Settings.Title);
        var site = Path.Combine(_folder.Path, "out/site");
        Assert.Equal(1, SiteBuilder.Render(proof, site, Templates.Embedded()).Guides);
        Assert.Contains("Our swaps", File.ReadAllText(Path.Combine(site, "guide/first-car/first-engine.html")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("README.md", "swapwright draft engine")]
    [InlineData(".github/pull_request_template.md", "swapwright register")]
    [InlineData(".github/ISSUE_TEMPLATE/wrong-answer.md", "name: An answer is wrong")]
    [InlineData(".github/workflows/check.yml", "check --report sarif --to findings.sarif")]
    [InlineData(".github/workflows/check.yml", "impact \"origin/$BASE\" swap-kb --as markdown")]
    [InlineData(".github/workflows/check.yml", "vars.SWAPWRIGHT_SOURCE")]
    public void Write_ANewBase_BringsWhatACommunityNeeds(string file, string says) =>
        Assert.Contains(says, File.ReadAllText(Path.Combine(_folder.Path, file)), StringComparison.Ordinal);

    /// <summary>What strangers can put into a title or a branch name must not become part of a command.</summary>
    [Fact]
    public void Write_TheWorkflow_PutsNoExpressionIntoACommand()
    {
        var inRun = false;
        var indent = 0;
        foreach (var line in File.ReadAllLines(Path.Combine(_folder.Path, ".github/workflows/check.yml")))
        {
            var depth = line.Length - line.TrimStart().Length;
            inRun = line.TrimStart().StartsWith("run:", StringComparison.Ordinal) || (inRun && depth > indent);
            indent = line.TrimStart().StartsWith("run:", StringComparison.Ordinal) ? depth : indent;
            Assert.False(inRun && line.Contains("${{", StringComparison.Ordinal), line);
        }
    }

    [Fact]
    public void Write_AFolderThatHoldsSomething_IsRefused()
    {
        using var taken = new TemporaryFolder();
        taken.Write("mine.txt", "mine");
        Assert.Throws<DraftProblemException>(() => BaseDraft.Write(taken.Path, "x"));
        Assert.Equal(["mine.txt"], Directory.EnumerateFileSystemEntries(taken.Path).Select(Path.GetFileName));
    }
}
