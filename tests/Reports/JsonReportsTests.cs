using System.Text.Json;
using NJsonSchema;
using Swapwright.Findings;
using Swapwright.Reports;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Reports;

/// <summary>The JSON forms keep to the schemas that document them, and say what is so.</summary>
public class JsonReportsTests
{
    private const string Clash = "title: Another front mount\nthen: {answers: {front-mount: {source: new, treatment: as-is}}}\nsources: [bench]\n";

    [Fact]
    public void CheckJson_SoundBase_IsValidAndCounts()
    {
        Assert.Empty(SmallBase.Proof.Findings);
        using var report = Valid("check", CheckJson.Write(SmallBase.Proof));
        var summary = report.RootElement.GetProperty("summary");

        // Per chassis: one combination an engine without the choice of cooling, two with it; times two gearboxes.
        Assert.Equal("12", summary.GetProperty("combinations").GetString());
        Assert.Equal("9", summary.GetProperty("buildable").GetString());
        Assert.Equal(6, summary.GetProperty("guides").GetInt32());
        Assert.Equal(9, summary.GetProperty("rules").GetInt32());
        Assert.True(summary.GetProperty("proved").GetBoolean());
    }

    [Fact]
    public void CheckJson_Contradiction_GivesPlaceWitnessAndCount()
    {
        using var spoilt = SmallBase.Copy(("rules/front/clash.yaml", Clash));
        using var report = Valid("check", CheckJson.Write(Proof.Of(spoilt.Path)));
        var findings = report.RootElement.GetProperty("findings").EnumerateArray().ToList();
        Assert.Equal(["3", "6"], findings.Select(finding => finding.GetProperty("touches").GetString()).Order(StringComparer.Ordinal));
        Assert.All(findings, finding =>
        {
            Assert.Equal("contradiction", finding.GetProperty("id").GetString());
            Assert.Equal("rules/front/clash.yaml", finding.GetProperty("place").GetProperty("file").GetString());
            Assert.Equal("keep", finding.GetProperty("witness").GetProperty("choices").GetProperty("gearbox").GetString());
        });
    }

    [Fact]
    public void CheckJson_BrokenFiles_IsValidAndNotProved()
    {
        using var spoilt = SmallBase.Copy(("choices/gearbox.yaml", "title: [\n"), ("rules/front/front-mount.yaml", "title: A\nthem: {}\n"), ("kb.yaml", ""));
        using var report = Valid("check", CheckJson.Write(Proof.Of(spoilt.Path)));
        Assert.False(report.RootElement.GetProperty("summary").GetProperty("proved").GetBoolean());
        Assert.NotEqual(0, report.RootElement.GetProperty("findings").GetArrayLength());
    }

    [Fact]
    public void CheckJson_EmptyFolder_IsValidAndNotProved()
    {
        using var empty = new TemporaryFolder();
        using var report = Valid("check", CheckJson.Write(Proof.Of(empty.Path)));
        Assert.False(report.RootElement.GetProperty("summary").GetProperty("proved").GetBoolean());
    }

    [Theory]
    [InlineData("hazel-90", "alder-14")]
    [InlineData("hazel-90", "alder-16", "cooling=donor")]
    [InlineData("hazel-93", "alder-16", "gearbox=donor", "cooling=wide")]
    [InlineData("hazel-90", "alder-14", "gearbox=donor")]
    public void SheetJson_AnyCombination_IsValid(string chassis, string donor, params string[] choices)
    {
        using var report = Valid("sheet", new SheetJson(SmallBase.Sheet(chassis, donor, choices), SmallBase.Resolution).Write());
        Assert.Equal(chassis, report.RootElement.GetProperty("combination").GetProperty("chassis").GetString());
    }

    [Fact]
    public void SheetJson_Combination_SaysWhatStandsAndWhatElseCould()
    {
        using var report = Valid("sheet", new SheetJson(SmallBase.Sheet("hazel-93", "alder-16"), SmallBase.Resolution).Write());
        var answers = report.RootElement.GetProperty("answers").EnumerateArray().ToDictionary(answer => answer.GetProperty("position").GetString()!, StringComparer.Ordinal);
        Assert.Equal(["alternator", "engine-harness", "front-mount", "radiator"], answers.Keys.Order(StringComparer.Ordinal));
        Assert.Equal("front-mount", Assert.Single(answers["front-mount"].GetProperty("overridden").EnumerateArray()).GetString());
        Assert.Equal("wide-radiator", answers["radiator"].GetProperty("part").GetString());
        var alternative = Assert.Single(answers["radiator"].GetProperty("alternatives").EnumerateArray());
        Assert.Equal("donor", alternative.GetProperty("choices").GetProperty("cooling").GetString());
        Assert.Equal(5, report.RootElement.GetProperty("belts")[0].GetProperty("ribs").GetInt32());
        Assert.Equal(2, report.RootElement.GetProperty("wiring").GetProperty("plugs").GetProperty("straightIn").GetInt32());
        Assert.Equal(["lift-in"], report.RootElement.GetProperty("effort").GetProperty("tasks").EnumerateArray().Select(task => task.GetString()));
    }

    [Fact]
    public void SheetJson_NotBuildable_NamesTheRule()
    {
        using var report = Valid("sheet", new SheetJson(SmallBase.Sheet("hazel-90", "alder-14", "gearbox=donor"), SmallBase.Resolution).Write());
        Assert.False(report.RootElement.GetProperty("buildable").GetBoolean());
        var rule = Assert.Single(report.RootElement.GetProperty("excludedBy").EnumerateArray());
        Assert.Equal("no-donor-box-early", rule.GetProperty("rule").GetString());
        Assert.Equal("The early subframe leaves no room for the donor's gearbox.", rule.GetProperty("because").GetString());
    }

    [Fact]
    public void SheetJson_MarksThatTurnTheDirection_AreEscapedAndReadBack()
    {
        const string Turning = "a\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069\u200E\u200F\u061C\u2028z";
        var sheet = SmallBase.Sheet("hazel-90", "alder-16", "gearbox=donor");
        sheet = sheet with { ExcludedBy = [sheet.ExcludedBy[0] with { ExcludeText = Turning, Because = Turning }] };
        var json = new SheetJson(sheet, SmallBase.Resolution).Write();

        Assert.Contains("\\u202A\\u202B", json, StringComparison.Ordinal);
        Assert.DoesNotContain(json, character => char.GetUnicodeCategory(character) is System.Globalization.UnicodeCategory.Format or System.Globalization.UnicodeCategory.LineSeparator);
        using var report = Valid("sheet", json);
        Assert.Equal(Turning, report.RootElement.GetProperty("excludedBy")[0].GetProperty("because").GetString());
    }

    [Fact]
    public void SheetJson_OnePart_LeavesTheOthersOut()
    {
        using var report = JsonDocument.Parse(new SheetJson(SmallBase.Sheet("hazel-90", "alder-14"), SmallBase.Resolution).Write("effort"));
        Assert.Equal(["combination", "buildable", "excludedBy", "effort"], report.RootElement.EnumerateObject().Select(member => member.Name));
    }

    [Theory]
    [InlineData("hazel-93", "front-mount", "stands overridden")]
    [InlineData("hazel-90", "front-mount", "stands")]
    [InlineData("hazel-90", "fuel-pump", "stands")]
    [InlineData("hazel-93", "fuel-pump", "")]
    [InlineData("hazel-93", "alternator", "stands")]
    public void WhyJson_Position_IsValidAndNamesTheRules(string chassis, string position, string outcomes)
    {
        using var report = Valid("why", Why(chassis, position).Json());
        Assert.Equal(outcomes, string.Join(' ', report.RootElement.GetProperty("spoke").EnumerateArray().Select(spoke => spoke.GetProperty("outcome").GetString())));
        Assert.Equal(outcomes.Length == 0 ? JsonValueKind.Null : JsonValueKind.Object, report.RootElement.GetProperty("answer").ValueKind);
        Assert.Equal(position == "alternator" ? 1 : 0, report.RootElement.GetProperty("values").GetArrayLength());
    }

    internal static WhyReport Why(string chassis, string position) =>
        new(SmallBase.Sheet(chassis, "alder-14"), SmallBase.Resolution, SmallBase.Proof.Words!, position);

    private static JsonDocument Valid(string schema, string json)
    {
        var path = Path.Combine(Reading.Repository(), "schema", "reports", schema + ".schema.json");
        var errors = JsonSchema.FromFileAsync(path).GetAwaiter().GetResult().Validate(json);
        Assert.Empty(errors.Select(error => error.ToString()));
        return JsonDocument.Parse(json);
    }
}
