using System.Text.Json;
using Swapwright.Findings;
using Swapwright.Tests.Source;

namespace Swapwright.Tests.Findings;

public sealed class TextFieldsTests
{
    /// <summary>What a schema calls Markdown is looked at, and nothing is looked at that no schema calls so.</summary>
    [Fact]
    public void Keys_OfTheSchemas_AreThoseSaidToBeMarkdown()
    {
        var said = Directory.EnumerateFiles(Path.Combine(Reading.Repository(), "schema"), "*.schema.json")
            .SelectMany(file => Markdown(JsonDocument.Parse(File.ReadAllText(file)).RootElement))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);

        Assert.Equal(said, TextFields.Keys.Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Markdown(JsonElement schema) => schema.ValueKind switch
    {
        JsonValueKind.Object => schema.EnumerateObject().SelectMany(member =>
            (member.Name == "properties" ? member.Value.EnumerateObject().Where(property => IsMarkdown(property.Value)).Select(property => property.Name) : [])
            .Concat(Markdown(member.Value))),
        JsonValueKind.Array => schema.EnumerateArray().SelectMany(Markdown),
        _ => [],
    };

    private static bool IsMarkdown(JsonElement property) =>
        property.ValueKind == JsonValueKind.Object && property.TryGetProperty("description", out var text) && text.ValueKind == JsonValueKind.String && text.GetString()!.Contains("in Markdown", StringComparison.Ordinal);
}
