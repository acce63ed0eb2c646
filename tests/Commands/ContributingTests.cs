using System.Text.RegularExpressions;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Tests.Drafting;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Commands;

/// <summary>What CONTRIBUTING.md tells a newcomer to type, typed in that order in a copy of the shipped base.</summary>
public sealed partial class ContributingTests
{
    [Fact]
    public void Blocks_InOrder_DoWhatTheTextSays()
    {
        using var copy = DraftedBases.Copy("shipped");
        var blocks = Blocks().Matches(File.ReadAllText(Path.Combine(Reading.Repository(), "CONTRIBUTING.md"))).Select(match => match.Groups["body"].Value).ToList();
        Assert.Contains("swapwright() {", blocks[0], StringComparison.Ordinal);
        Assert.True(blocks.Count >= 6);

        var program = Path.ChangeExtension(typeof(Product).Assembly.Location, ".dll");
        var lines = string.Concat(blocks).Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(line => !line.StartsWith("swapwright() {", StringComparison.Ordinal));
        foreach (var line in lines)
        {
            var (exit, output) = NewcomersShell.Run(copy.Path, $"swapwright() {{ dotnet '{program}' \"$@\"; }}\n{line}\n");
            Assert.True(exit == (line.EndsWith("# finds an error", StringComparison.Ordinal) ? 1 : 0), $"{line}\n{output}");
            if (line.EndsWith("# finds an error", StringComparison.Ordinal))
            {
                Assert.Contains("error contradiction", output, StringComparison.Ordinal);
            }
        }

        Assert.Empty(Proof.Of(Path.Combine(copy.Path, "swap-kb")).Findings);
    }

    /// <summary>The rule and the engine that the text shows as files agree with the shipped base as they stand there.</summary>
    [Fact]
    public void Samples_AsFilesOfTheBase_AreSound()
    {
        using var copy = DraftedBases.Copy("shipped");
        var samples = Samples().Matches(File.ReadAllText(Path.Combine(Reading.Repository(), "CONTRIBUTING.md"))).ToDictionary(match => match.Groups["kind"].Value, match => match.Groups["body"].Value, StringComparer.Ordinal);
        copy.Write("swap-kb/rules/cooling/sample-rule.yaml", samples["rule"]);
        copy.Write("swap-kb/engines/sample-engine.yaml", samples["engine"]);

        // New ids, and nothing else.
        var findings = Proof.Of(Path.Combine(copy.Path, "swap-kb")).Findings;
        Assert.Equal(["unregistered-id", "unregistered-id"], findings.Select(finding => finding.Id));
    }

    [GeneratedRegex("^```yaml\n(?<body># yaml-language-server: [^\n]*/(?<kind>[a-z]+)\\.schema\\.json\n.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Samples();

    [GeneratedRegex("^```sh\n(?<body>.*?)^```", RegexOptions.Multiline | RegexOptions.Singleline | RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Blocks();
}
