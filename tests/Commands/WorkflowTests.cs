using System.Text.Json;
using Swapwright.Source;
using Swapwright.Tests.Drafting;

namespace Swapwright.Tests.Commands;

/// <summary>The workflow that a new base brings, its commands run as the host runs them, over a change that contradicts what is there.</summary>
public sealed class WorkflowTests : IDisposable
{
    private const string Workflow = ".github/workflows/check.yml";

    // A second rule for the radiator, as a newcomer writes it who has not seen the first.
    private const string Contradiction = "title: Our radiator is a new one\nwhen: {choice.radiator: own}\nthen: {answers: {radiator: {source: new, treatment: as-is, part: larger-radiator}}}\nbecause: We always do it so.\nsources: [first-build]\nstanding: reported\nchecked: 2026-02-01\n";

    private readonly TemporaryFolder _folder = DraftedBases.Copy("new");
    private readonly TemporaryFolder _runner = new();

    public WorkflowTests()
    {
        // What the steps before have put in place: the tool where it was installed, and the host's own command for comments.
        _runner.Write("swapwright/swapwright", $"#!/bin/sh\nexec dotnet '{Hostile.SmallRuns.Program}' \"$@\"\n");
        _runner.Write("host/gh", "#!/bin/sh\necho \"gh $*\"\n");
        Shell("chmod +x \"$RUNNER_TEMP\"/*/*; git init -q -b main . && git add -A && git -c user.name=a -c user.email=a@b.example commit -qm first && git update-ref refs/remotes/origin/main HEAD");
    }

    public void Dispose()
    {
        _folder.Dispose();
        _runner.Dispose();
    }

    [Fact]
    public void Steps_AChangeThatContradicts_IsStoppedWithAFindingAtItsLine()
    {
        _folder.Write("swap-kb/rules/cooling/ours.yaml", Contradiction);
        var (exit, output) = Shell(Step("Check"));
        Assert.Equal(1, exit);

        // What a newcomer needs is in the log: both places, where they meet, and what to do.
        Assert.Contains("error contradiction", output, StringComparison.Ordinal);
        Assert.Contains("swap-kb/rules/cooling/ours.yaml:3:", output, StringComparison.Ordinal);
        Assert.Contains("swap-kb/rules/cooling/radiator-own.yaml:", output, StringComparison.Ordinal);
        Assert.Contains("seen in  first-car first-engine radiator=", output, StringComparison.Ordinal);
        Assert.Contains("overrides: [", output, StringComparison.Ordinal);

        // And beside the lines: the report that the next step uploads.
        using var sarif = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(_folder.Path, "findings.sarif")));
        var results = sarif.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().ToList();
        Assert.Contains(results, result => result.GetProperty("ruleId").GetString() == "contradiction"
            && result.GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("artifactLocation").GetProperty("uri").GetString()!.StartsWith("swap-kb/rules/cooling/", StringComparison.Ordinal));

        // Mended as the finding says, the same step lets it through.
        _folder.Write("swap-kb/rules/cooling/ours.yaml", Contradiction + "overrides: [radiator-own]\n");
        var (_, mended) = Shell(Step("Check"));
        Assert.DoesNotContain("error contradiction", mended, StringComparison.Ordinal);
    }

    [Fact]
    public void Steps_AChange_IsToldInAComment()
    {
        var rule = Path.Combine(_folder.Path, "swap-kb/rules/cooling/radiator-larger.yaml");
        File.WriteAllText(rule, File.ReadAllText(rule).Replace("source: new", "source: other", StringComparison.Ordinal));
        Assert.Equal(0, Shell(Step("Check")).Exit);
        var (exit, output) = Shell(Step("Say what changes for readers"));
        Assert.True(exit == 0, output);
        Assert.Contains("gh pr comment 7 --body-file impact.md", output, StringComparison.Ordinal);
        Assert.Contains("1 of 2 combinations gets another answer at 1 position", File.ReadAllText(Path.Combine(_folder.Path, "impact.md")), StringComparison.Ordinal);
        Assert.True(Shell(Step("Render the site")).Exit == 0);
        Assert.True(File.Exists(Path.Combine(_folder.Path, "out/site/index.html")));
    }

    private (int Exit, string Output) Shell(string script) => NewcomersShell.Run(
        _folder.Path,
        $"set -eo pipefail\nPATH=\"$RUNNER_TEMP/host:$PATH\"\n{script}",
        ("RUNNER_TEMP", _runner.Path), ("BASE", "main"), ("NUMBER", "7"));

    /// <summary>The command of a step by its name. The file is read as YAML, as the host reads it.</summary>
    private string Step(string name)
    {
        var (root, findings) = SourceReader.Parse(Workflow, File.ReadAllBytes(Path.Combine(_folder.Path, Workflow)));
        Assert.Empty(findings);
        var steps = ((root!["jobs"] as MappingNode)!["check"] as MappingNode)!["steps"] as SequenceNode;
        var step = Assert.Single(steps!.Items.OfType<MappingNode>(), step => step["name"] is ScalarNode named && named.Text == name);
        return Assert.IsType<ScalarNode>(step["run"]).Text;
    }
}
