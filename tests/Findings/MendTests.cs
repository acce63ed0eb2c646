using System.Text.RegularExpressions;
using Swapwright.Findings;
using Swapwright.Sheets;

namespace Swapwright.Tests.Findings;

/// <summary>Mends that are computed: doing what they say mends the base.</summary>
public sealed partial class MendTests
{
    [Fact]
    public void Contradiction_OneInsideTheOther_NamesTheOverrideAndItsFile()
    {
        var finding = Assert.Single(KnowledgeBaseCase.Read("contradiction-answers").Prove().Findings, finding => finding.Id == "contradiction");

        Assert.Contains("write `overrides: [alternator-own]` in `rules/charging/alternator-early.yaml`", finding.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Contradiction_NeitherInside_NarrowsTheWhen()
    {
        using var folder = KnowledgeBaseCase.CopyOf("crossings");
        File.WriteAllText(Path.Combine(folder.Path, "rules/fuel/exhaust-made.yaml"), "title: Made\nwhen: {choice.gearbox: donor}\nthen: {answers: {exhaust: {source: made, treatment: as-is}}}\n");

        var finding = Assert.Single(Proof.Of(folder.Path).Findings, finding => finding.Id == "contradiction" && finding.Message.Contains("`exhaust-own`", StringComparison.Ordinal));
        Assert.StartsWith("Add `choice.gearbox: chassis` to the `when` in `rules/fuel/exhaust-own.yaml`", finding.Mend, StringComparison.Ordinal);

        var own = Path.Combine(folder.Path, "rules/fuel/exhaust-own.yaml");
        File.WriteAllText(own, File.ReadAllText(own).Replace("when:\n", "when:\n  choice.gearbox: chassis\n", StringComparison.Ordinal));
        Assert.DoesNotContain(Proof.Of(folder.Path).Findings, finding => finding.Id == "contradiction" && finding.Message.Contains("`exhaust-own`", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("gap-partial")]
    [InlineData("gap-optional-fact")]
    [InlineData("gap-conditional-choice")]
    public void Gap_RuleAsSuggested_ClosesIt(string name)
    {
        using var folder = KnowledgeBaseCase.Read(name).Laid();
        var proof = Proof.Of(folder.Path);
        for (var at = 'a'; at < 'f' && proof.Findings.FirstOrDefault(finding => finding.Id == "gap") is { } gap; at++)
        {
            // One after the other: an answer that closes one gap may be what another position waits for.
            var position = Assert.Single(proof.Base.Positions.All, position => position.Place == gap.Place);
            var when = Suggested().Match(gap.Mend!);
            Assert.True(when.Success, gap.Mend);
            File.WriteAllText(Path.Combine(folder.Path, $"rules/fuel/closing-{at}.yaml"), $"title: Closing\nwhen: {when.Groups["when"].Value}\nthen: {{answers: {{{position.Id}: {{source: made, treatment: as-is}}}}}}\n");
            proof = Proof.Of(folder.Path);
        }

        Assert.DoesNotContain(proof.Findings, finding => finding.Id is "gap" or "contradiction");
    }

    [Fact]
    public void DeadRule_TermsThatNeverHoldTogether_AreNamed()
    {
        using var folder = KnowledgeBaseCase.CopyOf("crossings");
        File.WriteAllText(
            Path.Combine(folder.Path, "rules/fuel/pump-late.yaml"),
            "title: Late\nwhen: {choice.alternator: keep, chassis.fuel-delivery: carburettor, donor.power: {from: 60}, chassis.year: {from: 1988}}\nthen: {mistakes: [None.]}\n");

        var finding = Assert.Single(Proof.Of(folder.Path).Findings, finding => finding.Id == "dead-rule");
        Assert.StartsWith("Correct one of `chassis.fuel-delivery` and `chassis.year`, which never hold together.", finding.Mend, StringComparison.Ordinal);
        Assert.Equal(2, finding.Related.Length);
    }

    [Fact]
    public void Forced_ByAnOption_AreTheOptionsThatNothingElseGoesWith()
    {
        var resolution = Proof.Of(KnowledgeBaseCase.GoodFolder("crossings")).Resolution!;

        Assert.Equal(["alternator=keep"], Names(Forced.By(resolution, "quillet-early", "marn-18", [KeyValuePair.Create("gearbox", "chassis")])));
        Assert.Empty(Forced.By(resolution, "quillet-early", "marn-18", []));
        Assert.Equal(["gearbox=donor"], Names(Forced.By(resolution, "quillet-early", "marn-18", [KeyValuePair.Create("alternator", "donor")])));
        Assert.Empty(Forced.By(resolution, "quillet-early", "marn-18", [KeyValuePair.Create("alternator", "donor"), KeyValuePair.Create("gearbox", "chassis")]));
    }

    private static IEnumerable<string> Names(IEnumerable<KeyValuePair<string, string>> options) => options.Select(option => $"{option.Key}={option.Value}");

    [GeneratedRegex("^Add a rule with `when: (?<when>[^`]+)`", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 2000)]
    private static partial Regex Suggested();
}
