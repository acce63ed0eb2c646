using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Tests.Drafting;

namespace Swapwright.Tests.Findings;

/// <summary>A file that cannot be read is told once, and not again for every name that stands in it.</summary>
public class EchoesTests
{
    [Theory]
    [InlineData("vocabulary.yaml")]
    [InlineData("positions.yaml")]
    [InlineData("sources.yaml")]
    [InlineData("glossary.yaml")]
    [InlineData("engines/first-engine.yaml")]
    [InlineData("choices/radiator.yaml")]
    [InlineData("parts/larger-radiator.yaml")]
    [InlineData("tasks/make-mount-plate.yaml")]
    [InlineData("rules/cooling/radiator-own.yaml")]
    public void Of_AFileThatCannotBeRead_IsOneError(string path)
    {
        using var folder = DraftedBases.Copy("new");
        folder.Write("swap-kb/engines/second.yaml", "title: Second\nlike: first-engine\n");
        folder.Write("swap-kb/engines/third.yaml", "title: Third\nlike: second\n");
        var kb = Path.Combine(folder.Path, "swap-kb");
        File.AppendAllText(Path.Combine(kb, path), "x: [\n");
        var error = Assert.Single(Proof.Of(kb).Findings, finding => finding.Severity == Severity.Error);
        Assert.Equal((FindingKinds.Schema, path), (error.Kind, error.Place.File));
    }

    [Fact]
    public void Of_AFileThatCannotBeRead_HidesNoNameThatStandsNowhere()
    {
        using var folder = DraftedBases.Copy("new");
        var kb = Path.Combine(folder.Path, "swap-kb");
        File.AppendAllText(Path.Combine(kb, "vocabulary.yaml"), "x: [\n");
        var rule = Path.Combine(kb, "rules/cooling/radiator-own.yaml");
        File.WriteAllText(rule, File.ReadAllText(rule).Replace("first-build", "first-biuld", StringComparison.Ordinal));
        var errors = Proof.Of(kb).Findings.Where(finding => finding.Severity == Severity.Error).Select(finding => $"{finding.Id} {finding.Place.File}");
        Assert.Equal(["reference rules/cooling/radiator-own.yaml", "schema vocabulary.yaml"], errors.Order(StringComparer.Ordinal));
    }
}
