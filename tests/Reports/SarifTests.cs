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
