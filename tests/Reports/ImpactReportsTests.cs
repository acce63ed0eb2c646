using System.Globalization;
using System.Text.Json;
using Markdig;
using NJsonSchema;
using Swapwright.Commands;
using Swapwright.Findings;
using Swapwright.Impact;
using Swapwright.Reports;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Impact;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Reports;

/// <summary>The forms of an impact: the JSON keeps to its schema; nothing of a base gets through as markup or as a command to a terminal.</summary>
public class ImpactReportsTests
{
    private const string Hostile = "</details><script>x</script> **bold** [link](https://swaps.example) https://swaps.example www.swaps.example @someone #12 `code` | $x$ ![p](q) &amp; _a_ ~~b~~";

    private static readonly ImpactNames s_names = new(new BaseName("HEAD~1", "0123456789abcdef0123456789abcdef01234567"), new BaseName("swap-kb"));

    [Fact]
    public void Json_SameBase_IsValidAndUnchanged()
    {
        using var report = Valid(SmallImpactTests.Impact());
        Assert.False(report.RootElement.GetProperty("changed").GetBoolean());
        Assert.Equal("9", report.RootElement.GetProperty("combinations").GetProperty("compared").GetString());
        Assert.Equal("0123456789abcdef0123456789abcdef01234567", report.RootElement.GetProperty("old").GetProperty("commit").GetString());
        Assert.Equal(JsonValueKind.Null, report.RootElement.GetProperty("new").GetProperty("commit").ValueKind);
    }

    [Fact]
    public void Json_EveryKindOfChange_IsValidAndSaysIt()
    {
        using var report = Valid(SmallImpactTests.Impact(
            SmallImpactTests.Edit("rules/cooling/radiator-wide.yaml", "source: new", "source: other"),
            SmallImpactTests.Edit("rules/front/no-donor-box-early.yaml", "hazel-90", "hazel-93"),
            SmallImpactTests.Edit("rules/front/alternator.yaml", "the battery first", "the battery before"),
            SmallImpactTests.Edit("rules/fuel/fuel-pump.yaml", "standing: measured", "standing: built"),
            SmallImpactTests.Edit("rules/electrics/engine-harness.yaml", "It fits the sensors.", "It suits the sensors."),
            SmallImpactTests.Edit("tasks/make-plate.yaml", "likely: 2", "likely: 3"),
            ("rules/front/clash.yaml", "title: Clash\nwhen: {choice.gearbox: donor}\nthen: {answers: {front-mount: {source: new, treatment: as-is}}}\nsources: [bench]\n"),
            ("choices/cooling.yaml", SmallImpactTests.Text("choices/cooling.yaml") + "recommend:\n  - {option: donor, because: It is there.}\n")));
        var root = report.RootElement;
        Assert.True(root.GetProperty("changed").GetBoolean());
        foreach (var path in new[] { "guides.gained", "guides.lost", "guides.changed", "positions", "exclusions.gained", "exclusions.lifted", "work", "numbers", "defaults", "words", "standing.raised", "findings.introduced", "entries.gained", "entries.changed" })
        {
            var at = path.Split('.').Aggregate(root, (element, name) => element.GetProperty(name));
            Assert.True(at.GetArrayLength() > 0, path);
        }

        var radiator = root.GetProperty("positions").EnumerateArray().First(change => change.GetProperty("position").GetString() == "radiator");
        Assert.Equal(("new", "other", "2"), (Source(radiator, "from"), Source(radiator, "to"), radiator.GetProperty("touches").GetString()));
    }

    [Fact]
    public void Json_NothingInCommon_IsValid()
    {
        using var other = KnowledgeBaseCase.CopyOf("crossings");
        using var report = Valid(KnowledgeImpact.Between(SmallImpactTests.Base(), Proof.Of(other.Path)));
        Assert.Equal("0", report.RootElement.GetProperty("combinations").GetProperty("compared").GetString());
    }

    [Fact]
    public void Markdown_HostileTexts_MarkNothingUp()
    {
        var html = Markdown.ToHtml(ImpactMarkdown.Write(HostileImpact(), s_names), new MarkdownPipelineBuilder().UseAdvancedExtensions().UseAutoLinks().Build());
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        Assert.Contains("**bold**", html, StringComparison.Ordinal);
        foreach (var element in new[] { "<script", "<a ", "<img", "<em", "<del", "<table", "class=\"math" })
        {
            Assert.DoesNotContain(element, html, StringComparison.Ordinal);
        }

        Assert.Equal(Count(html, "<details>"), Count(html, "</details>"));
        Assert.DoesNotContain("@someone", html, StringComparison.Ordinal);
        Assert.DoesNotContain("#12", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Text_HostileTexts_HoldNothingATerminalObeys()
    {
        var impact = HostileImpact("\u001B[31mred\u202E [bold]x[/] \u2066");
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        new ImpactText(Terminal.Plain(text), impact, s_names).Write();
        Assert.Contains("[bold]x[/]", text.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain(text.ToString() + ImpactMarkdown.Write(impact, s_names), sign => (char.IsControl(sign) && sign != '\n') || sign is '\u202E' or '\u2066');
    }

    [Fact]
    public void Markdown_LongImpact_FitsIntoAComment()
    {
        var impact = SmallImpactTests.Impact(SmallImpactTests.Edit("rules/front/front-mount.yaml", "ends 40 mm short", "ends short"));
        var many = impact with
        {
            Words = [.. Enumerable.Range(0, 30).Select(_ => impact.Words[0] with { To = new string('x', 5000) })],
        };
        var text = ImpactMarkdown.Write(many, s_names);
        Assert.InRange(text.Length, 200, 61_000);
        Assert.Contains("too long for a comment", text, StringComparison.Ordinal);
    }

    private static string? Source(JsonElement change, string side) => change.GetProperty(side).GetProperty("answers")[0].GetProperty("source").GetString();

    private static int Count(string text, string what) => text.Split(what).Length - 1;

    private static KnowledgeImpact HostileImpact(string text = Hostile)
    {
        var impact = SmallImpactTests.Impact(
            SmallImpactTests.Edit("rules/cooling/radiator-wide.yaml", "source: new", "source: other"),
            SmallImpactTests.Edit("rules/front/front-mount.yaml", "ends 40 mm short", "ends short"),
            SmallImpactTests.Edit("rules/front/alternator.yaml", "the battery first", "the battery before"),
            SmallImpactTests.Edit("tasks/make-plate.yaml", "likely: 2", "likely: 3"));
        return impact with
        {
            Answers = [.. impact.Answers.Select(change => change with { Position = change.Position with { Title = text }, Extent = change.Extent with { Where = text } })],
            Words = [.. impact.Words.Select(change => change with { From = text, To = text })],
            Work = [.. impact.Work.Select(change => change with { Text = text, Was = text, About = text })],
            Numbers = impact.Numbers with { Moved = [.. impact.Numbers.Moved.Select(change => change with { Title = text, Unit = text })] },
            Entries = impact.Entries with { Changed = [.. impact.Entries.Changed.Select(changed => changed with { What = [text], Entry = changed.Entry with { Id = text } })] },
        };
    }

    private static JsonDocument Valid(KnowledgeImpact impact)
    {
        var json = ImpactJson.Write(impact, s_names);
        var schema = JsonSchema.FromFileAsync(Path.Combine(Reading.Repository(), "schema", "reports", "impact.schema.json")).GetAwaiter().GetResult();
        Assert.Empty(schema.Validate(json).Select(error => error.ToString()));
        return JsonDocument.Parse(json);
    }
}
