using System.Diagnostics;
using System.Text.Json;
using Swapwright.Tests.Reports;

namespace Swapwright.Tests.Commands;

/// <summary>The command over folders and over revisions of a repository that is made for the test.</summary>
public sealed class ImpactCommandTests : IDisposable
{
    private const string Rule = "kb/rules/cooling/radiator-wide.yaml";
    private readonly TemporaryFolder _repository = new();
    private readonly TemporaryFolder _temporary = new();

    public ImpactCommandTests()
    {
        foreach (var file in Directory.EnumerateFiles(SmallBase.Folder, "*", SearchOption.AllDirectories))
        {
            _repository.Write(Path.Combine("kb", Path.GetRelativePath(SmallBase.Folder, file)), File.ReadAllText(file));
        }
    }

    public void Dispose()
    {
        // Nothing of a revision stays behind, however the run ended.
        Assert.Empty(Directory.EnumerateFileSystemEntries(_temporary.Path, "swapwright-*"));
        _repository.Dispose();
        _temporary.Dispose();
    }

    [Fact]
    public void Impact_Folders_TellsByTheExitCodeWhetherAnythingChanged()
    {
        var same = Run("impact", "kb", "kb");
        Assert.Equal((0, ""), (same.Exit, same.Error));
        Assert.StartsWith("Nothing changes for readers", same.Output, StringComparison.Ordinal);

        using var edited = SmallBase.Copy(("rules/front/alternator.yaml", "title: Another\nthen:\n  answers:\n    alternator: {source: new, treatment: as-is}\nbecause: It is new.\nsources: [bench]\n"));
        var changed = Run("impact", "kb", edited.Path, "--as", "json", "--to", "impact.json");
        Assert.Equal((1, "", ""), (changed.Exit, changed.Output, changed.Error));
        using var report = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(_repository.Path, "impact.json")));
        Assert.Equal("9", report.RootElement.GetProperty("combinations").GetProperty("answered").GetString());
    }

    [Fact]
    public void Impact_Revisions_AreComparedWithEachOtherAndWithFolders()
    {
        Commit("first");
        _repository.Write(Rule, File.ReadAllText(Path.Combine(_repository.Path, Rule)).Replace("source: new", "source: other", StringComparison.Ordinal));

        // Attributes that rule exports must not hide a file; a link is left out, as it is in a folder.
        _repository.Write(".gitattributes", "kb/rules/** export-ignore\n");
        File.CreateSymbolicLink(Path.Combine(_repository.Path, "kb", "parts", "outside.yaml"), "/etc/hostname");
        Commit("second");

        var between = Run("impact", "HEAD~1", "HEAD", "--base", "kb", "--as", "markdown");
        Assert.Equal((1, ""), (between.Exit, between.Error));
        Assert.Contains("3 of 9 combinations get another answer at 1 position", between.Output, StringComparison.Ordinal);
        Assert.StartsWith("**", between.Output, StringComparison.Ordinal);

        // The same from a folder below: the path of the base begins at the root of the repository.
        var inside = BuiltProgram.Run(Path.Combine(_repository.Path, "kb"), Environment(), "impact", "HEAD~1", "HEAD", "--base", "./kb/", "--as", "markdown");
        Assert.Equal((between.Exit, between.Output), (inside.Exit, inside.Output));

        File.Delete(Path.Combine(_repository.Path, "kb", "parts", "outside.yaml"));
        var withFolder = Run("impact", "HEAD", "kb", "--base", "kb");
        Assert.Equal((0, ""), (withFolder.Exit, withFolder.Error));
    }

    [Theory]
    [InlineData("`no-such` is neither a folder nor a revision of the repository here", "impact", "no-such", "kb")]
    [InlineData("`HEAD:kb` is neither a folder nor a revision of the repository here", "impact", "HEAD:kb", "kb")]
    [InlineData("the revision `HEAD` has no folder `swap-kb`; say with `--base` where the knowledge base is inside the repository", "impact", "HEAD", "kb")]
    [InlineData("`kb/rules` of the revision `HEAD` is no knowledge base: it has no kb.yaml", "impact", "HEAD", "kb", "--base", "kb/rules")]
    [InlineData("`--base ../kb` leads out of the repository", "impact", "HEAD", "kb", "--base", "../kb")]
    [InlineData("no folder `./nowhere`", "impact", "./nowhere", "kb")]
    [InlineData("no form of report `xml`; known: text, markdown, json", "impact", "kb", "kb", "--as", "xml")]
    public void Impact_NothingToCompare_Exits2AndSaysWhy(string message, params string[] arguments)
    {
        Commit("first");
        var run = Run(arguments);
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Impact_NoRepository_Exits2() =>
        Refused("no git repository holds the working directory; name two folders instead", Run("impact", "HEAD", "kb", "--base", "kb"));

    [Fact]
    public void Impact_NoGit_Exits2()
    {
        var environment = Environment();
        var dotnet = Path.GetDirectoryName(System.Environment.ProcessPath)!;
        environment["PATH"] = dotnet;
        Refused("git is not installed, or not on the PATH", BuiltProgram.Run(_repository.Path, environment, "impact", "HEAD", "kb", "--base", "kb"));
    }

    [Fact]
    public void Impact_SideWithErrorsInItsFiles_Exits2WithItsFindings()
    {
        Commit("first");
        _repository.Write("kb/choices/gearbox.yaml", "title: [\n");
        Commit("second");
        var run = Run("impact", "HEAD~1", "HEAD", "--base", "kb");
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.StartsWith("`HEAD` has errors that keep its combinations from being known:\n", run.Error, StringComparison.Ordinal);
        Assert.Contains("choices/gearbox.yaml:", run.Error, StringComparison.Ordinal);
    }

    private static void Refused(string message, Run run)
    {
        Assert.Equal((2, ""), (run.Exit, run.Output));
        Assert.StartsWith($"swapwright: {message}", run.Error, StringComparison.Ordinal);
    }

    private Run Run(params string[] arguments) => BuiltProgram.Run(_repository.Path, Environment(), arguments);

    // No repository above the temporary folder is found, and revisions go where the test can look.
    private Dictionary<string, string> Environment() => new(StringComparer.Ordinal)
    {
        ["TMPDIR"] = _temporary.Path,
        ["GIT_CEILING_DIRECTORIES"] = Path.GetDirectoryName(_repository.Path)!,
    };

    private void Commit(string message)
    {
        Git("init", "--quiet");
        Git("add", "--all");
        Git("-c", "user.name=Test", "-c", "user.email=test@swaps.example", "-c", "commit.gpgsign=false", "commit", "--quiet", "--message", message);
    }

    private void Git(params string[] arguments)
    {
        var start = new ProcessStartInfo("git", arguments) { WorkingDirectory = _repository.Path, UseShellExecute = false };
        using var process = Process.Start(start)!;
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
    }
}
