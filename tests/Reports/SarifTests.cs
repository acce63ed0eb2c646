using System.Text.Json;
using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Reports;

namespace Swapwright.Tests.Reports;

/// <summary>
/// Members that SARIF 2.1.0 (OASIS Standard, 27 March 2020) asks for: §3.13 sarifLog, §3.14 run, §3.18 tool, §3.19
/// toolComponent, §3.20 invocation, §3.27 result, §3.28 location, §3.29 physicalLocation, §3.30 region, §3.49 reportingDescriptor.
/// </summary>
public class SarifTests
{
    private static readonly string[] Levels = ["none", "note", "warning", "error"];

    [Fact]
    public void Write_Findings_HaveTheMembersOfTheStandard()
    {
        using var spoilt = SmallBase.Copy(
            ("rules/front/clash.yaml", "title: Clash\nthen: {answers: {front-mount: {source: new, treatment: as-is}}}\nsources: [bench]\n"),
            ("rules/front/never.yaml", "title: Never\nwhen: {chassis.fuel: carburettor, chassis.variant: hazel-93}\nthen: {mistakes: [None.]}\n"));
        var proof = Proof.Of(spoilt.Path);
        using var log = JsonDocument.Parse(CheckSarif.Write(proof, "my base"));
        Assert.Equal("2.1.0", log.RootElement.GetProperty("version").GetString());
        var run = Assert.Single(log.RootElement.GetProperty("runs").EnumerateArray());
        var driver = run.GetProperty("tool").GetProperty("driver");
        Assert.Equal(Product.Name, driver.GetProperty("name").GetString());
        var rules = driver.GetProperty("rules").EnumerateArray().Select(rule => rule.GetProperty("id").GetString()).ToList();
        Assert.Equal(rules.Distinct(StringComparer.Ordinal), rules);
        Assert.Equal(FindingKinds.All.Select(kind => kind.Id), rules);
        Assert.All(run.GetProperty("invocations").EnumerateArray(), invocation => Assert.True(invocation.GetProperty("executionSuccessful").GetBoolean()));

        var results = run.GetProperty("results").EnumerateArray().ToList();
        Assert.Equal(proof.Findings.Length, results.Count);
        Assert.Contains(results, result => result.GetProperty("ruleId").GetString() == "dead-rule");
        foreach (var result in results)
        {
            Assert.Equal(rules[result.GetProperty("ruleIndex").GetInt32()], result.GetProperty("ruleId").GetString());
            Assert.Contains(result.GetProperty("level").GetString(), Levels);
            Assert.NotEmpty(result.GetProperty("message").GetProperty("text").GetString()!);
            Assert.All(result.GetProperty("locations").EnumerateArray(), Located);
            Assert.All(result.GetProperty("relatedLocations").EnumerateArray(), related =>
            {
                Located(related);
                Assert.NotEmpty(related.GetProperty("message").GetProperty("text").GetString()!);
            });
        }
    }

    [Theory]
    [InlineData("", "kb.yaml")]
    [InlineData(".", "kb.yaml")]
    [InlineData("kb/", "kb/kb.yaml")]
    [InlineData("my base", "my%20base/kb.yaml")]
    public void Write_Folder_IsPrefixedAsAnAddress(string folder, string address)
    {
        using var empty = new TemporaryFolder();
        using var log = JsonDocument.Parse(CheckSarif.Write(Proof.Of(empty.Path), folder));
        var addresses = log.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray()
            .Select(result => result.GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("artifactLocation").GetProperty("uri").GetString());
        Assert.Contains(address, addresses);
    }

    [Fact]
    public void Write_EveryKind_IsDescribedInFull()
    {
        using var log = JsonDocument.Parse(CheckSarif.Write(SmallBase.Proof, "kb"));
        foreach (var (rule, kind) in Rules(log).Zip(FindingKinds.All))
        {
            Assert.Equal(kind.Title + ".", rule.GetProperty("shortDescription").GetProperty("text").GetString());
            Assert.EndsWith(".", rule.GetProperty("fullDescription").GetProperty("text").GetString(), StringComparison.Ordinal);
            Assert.Equal(kind.Severity.ToString().ToLowerInvariant(), rule.GetProperty("defaultConfiguration").GetProperty("level").GetString());
            var help = rule.GetProperty("help");
            var page = File.ReadAllText(Path.Combine(Source.Reading.Repository(), "site-template", "findings", kind.Id + ".md"));
            Assert.Equal(page, help.GetProperty("markdown").GetString());
            var plain = help.GetProperty("text").GetString()!;
            Assert.Contains("\nHow to mend it:\n", plain, StringComparison.Ordinal);
            Assert.Contains("\nExample:\n    ", plain, StringComparison.Ordinal);
            Assert.DoesNotContain("```", plain, StringComparison.Ordinal);
            Assert.DoesNotContain("\n## ", plain, StringComparison.Ordinal);
            Assert.False(rule.TryGetProperty("helpUri", out _));
        }
    }

    [Theory]
    [InlineData("https://swaps.example/", "https://swaps.example/finding/gap.html")]
    [InlineData("https://swaps.example/quillet", "https://swaps.example/quillet/finding/gap.html")]
    [InlineData("javascript:alert(1)", null)]
    [InlineData("/relative", null)]
    [InlineData(null, null)]
    public void Write_HelpAddress_IsGivenWhereTheSiteIsPublished(string? site, string? wanted)
    {
        using var log = JsonDocument.Parse(CheckSarif.Write(SmallBase.Proof, "kb", kind => Swapwright.Site.SitePaths.Address(site, Swapwright.Site.SitePaths.Finding(kind.Id))));
        var gap = Rules(log).Single(rule => rule.GetProperty("id").GetString() == "gap");

        Assert.Equal(wanted, gap.TryGetProperty("helpUri", out var address) ? address.GetString() : null);
    }

    private static List<JsonElement> Rules(JsonDocument log) => [.. log.RootElement.GetProperty("runs")[0].GetProperty("tool").GetProperty("driver").GetProperty("rules").EnumerateArray()];

    private static void Located(JsonElement location)
    {
        var physical = location.GetProperty("physicalLocation");
        Assert.True(Uri.IsWellFormedUriString(physical.GetProperty("artifactLocation").GetProperty("uri").GetString(), UriKind.Relative));
        var region = physical.GetProperty("region");
        var (line, column) = (region.GetProperty("startLine").GetInt32(), region.GetProperty("startColumn").GetInt32());
        Assert.True(line >= 1 && column >= 1);
        var (endLine, endColumn) = (region.GetProperty("endLine").GetInt32(), region.GetProperty("endColumn").GetInt32());
        Assert.True(endLine > line || (endLine == line && endColumn >= column));
    }
}
