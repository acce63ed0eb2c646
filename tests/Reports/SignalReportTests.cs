using System.Text.Json;
using NJsonSchema;
using Swapwright.Commands;
using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Reports;
using Swapwright.Sheets;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Reports;

/// <summary>The way of a signal through a combination of the workshop base.</summary>
public sealed class SignalReportTests
{
    private static readonly Proof Proof = Swapwright.Findings.Proof.Of(Path.Combine(Reading.Repository(), "tests", "knowledge-bases", "good", "workshop"));

    [Theory]
    [InlineData("charge-lamp", true)]
    [InlineData("alternator", false)] // a position
    [InlineData("nonsense", false)]
    [InlineData("unused", false)]
    public void Covers_Name_IsASignalAndNoPosition(string name, bool covered) => Assert.Equal(covered, SignalReport.Covers(Proof.Base, name));

    [Fact]
    public void Json_EverySignal_IsValid()
    {
        var schema = Schema();
        var traced = 0;
        foreach (var signal in Proof.Base.Vocabulary.Signals.Ids.Where(id => id != SignalDeclaration.Unused))
        {
            var json = Report(signal).Json();
            Assert.Empty(schema.Validate(json).Select(error => $"{signal}: {error}"));
            using var report = JsonDocument.Parse(json);
            traced += report.RootElement.GetProperty("trace").GetProperty("devices").GetArrayLength() > 0 ? 1 : 0;
        }

        // A report of a signal that nothing has is valid by having nothing in it.
        Assert.True(traced > 1, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{traced} signals reach a device"));
    }

    [Fact]
    public void Json_SignalOfADevice_NamesTheCavity()
    {
        using var report = JsonDocument.Parse(Report("charge-lamp").Json());
        var devices = report.RootElement.GetProperty("trace").GetProperty("devices");

        Assert.Equal("charge-lamp", report.RootElement.GetProperty("signal").GetString());
        Assert.Equal(("alternator", "2"), (devices[0].GetProperty("from").GetProperty("place").GetString(), devices[0].GetProperty("from").GetProperty("cavity").GetString()));
    }

    [Fact]
    public void Text_SignalOfADevice_SaysWhereItGoes()
    {
        var text = Report("charge-lamp").Text();

        Assert.StartsWith($"{Proof.Base.Vocabulary.Signals["charge-lamp"].Title} (", text, StringComparison.Ordinal);
        Assert.Contains("From the devices\n", text, StringComparison.Ordinal);
        Assert.Contains(" cavity 2 ", text, StringComparison.Ordinal);
    }

    private static JsonSchema Schema() =>
        JsonSchema.FromFileAsync(Path.Combine(Reading.Repository(), "schema", "reports", "why.schema.json")).GetAwaiter().GetResult();

    private static SignalReport Report(string signal)
    {
        var resolution = Proof.Resolution!;
        var combination = CombinationArguments.Read(resolution, Proof.Base.Chassis.All[0].Id, Proof.Base.Donors.All[0].Id, []);
        return new SignalReport(new SheetBuilder(resolution).Build(combination), resolution, signal);
    }
}
