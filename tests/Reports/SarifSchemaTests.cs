using Newtonsoft.Json.Linq;
using NJsonSchema;
using Swapwright.Reports;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Reports;

/// <summary>
/// The report against the published JSON Schema of SARIF 2.1.0 (OASIS; revision rtm.5, a draft-04 schema, as shipped in the
/// npm package @microsoft/jest-sarif).
/// </summary>
public sealed class SarifSchemaTests
{
    private static readonly Lazy<JsonSchema> Published = new(() => JsonSchema.FromJsonAsync(File.ReadAllText(
        Path.Combine(Reading.Repository(), "tests", "npm", "node_modules", "@microsoft", "jest-sarif", "lib", "schemas", "sarif-2.1.0-rtm.5.json"))).GetAwaiter().GetResult());

    public static TheoryData<string> BrokenBases() => [.. KnowledgeBaseCase.Broken];

    [Theory]
    [MemberData(nameof(BrokenBases))]
    public void Write_EveryBrokenBase_SatisfiesThePublishedSchema(string name) =>
        Assert.Empty(Published.Value.Validate(CheckSarif.Write(KnowledgeBaseCase.Read(name).Prove(), "swap-kb", kind => $"https://swaps.example/{kind.Id}")).Select(error => error.ToString()));

    [Theory]
    [InlineData("version")]
    [InlineData("runs[0].tool.driver.name")]
    [InlineData("runs[0].results[0].message")]
    public void Validate_ReportWithoutARequiredMember_IsRefused(string member)
    {
        var log = JToken.Parse(CheckSarif.Write(KnowledgeBaseCase.Read("contradiction-answers").Prove(), "swap-kb"));
        log.SelectToken(member)!.Parent!.Remove();

        Assert.NotEmpty(Published.Value.Validate(log));
    }
}
