using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace Swapwright.Source;

/// <summary>
/// Holds a schema against what the validator does. It passes over what it does not know, so a keyword that looks as if it
/// guarded something would guard nothing. Measured with NJsonSchema 11.6.2 (see the tests).
/// </summary>
public static class SchemaKeywords
{
    private static readonly FrozenSet<string> Annotations = FrozenSet.Create(
        StringComparer.Ordinal, "$schema", "$id", "$comment", "title", "description", "default", "examples", "deprecated");

    private static readonly FrozenSet<string> Plain = FrozenSet.Create(
        StringComparer.Ordinal, "$ref", "type", "enum", "required", "pattern", "minLength", "maxLength", "minimum", "maximum", "exclusiveMinimum",
        "exclusiveMaximum", "multipleOf", "minItems", "maxItems", "uniqueItems", "minProperties", "maxProperties", "format");

    private static readonly FrozenSet<string> OneSchema = FrozenSet.Create(StringComparer.Ordinal, "additionalProperties", "additionalItems", "not", "items");

    private static readonly FrozenSet<string> SchemaList = FrozenSet.Create(StringComparer.Ordinal, "oneOf", "anyOf", "allOf");

    private static readonly FrozenSet<string> SchemaMap = FrozenSet.Create(StringComparer.Ordinal, "properties", "patternProperties", "definitions", "$defs");

    private static readonly FrozenSet<string> Formats = FrozenSet.Create(StringComparer.Ordinal, "date", "date-time", "time", "email", "uri");

    // Classes that .NET reads as all of Unicode and an editor as ASCII only, or the other way round.
    private static readonly ImmutableArray<string> Ambiguous = ["\\d", "\\D", "\\w", "\\W", "\\s", "\\S", "\\b", "\\B"];

    /// <summary>What the validator would pass over or read in another way than an editor does, as <c>pointer: what</c>, in the order of the text.</summary>
    public static ImmutableArray<string> Unsupported(string json)
    {
        using var document = JsonDocument.Parse(json);
        var found = ImmutableArray.CreateBuilder<string>();
        Schema(document.RootElement, "#", found);
        return found.ToImmutable();
    }

    private static void Schema(JsonElement schema, string at, ImmutableArray<string>.Builder found)
    {
        if (schema.ValueKind != JsonValueKind.Object)
        {
            found.Add($"{at}: a schema must be a mapping, not `{schema.GetRawText()}`");
            return;
        }

        var refers = schema.TryGetProperty("$ref", out _);
        foreach (var keyword in schema.EnumerateObject())
        {
            var inner = $"{at}/{keyword.Name}";
            if (Annotations.Contains(keyword.Name))
            {
                continue;
            }

            if (refers && keyword.Name is not ("$ref" or "definitions" or "$defs"))
            {
                found.Add($"{inner}: passed over beside `$ref`");
            }

            if (OneSchema.Contains(keyword.Name))
            {
                Single(keyword, inner, found);
            }
            else if (SchemaList.Contains(keyword.Name))
            {
                Each(keyword.Value, inner, found);
            }
            else if (SchemaMap.Contains(keyword.Name))
            {
                foreach (var one in keyword.Value.EnumerateObject())
                {
                    Schema(one.Value, $"{inner}/{one.Name}", found);
                    if (keyword.Name == "patternProperties")
                    {
                        Pattern(one.Name, inner, found);
                    }
                }
            }
            else if (Plain.Contains(keyword.Name))
            {
                Value(keyword, inner, found);
            }
            else
            {
                found.Add($"{inner}: passed over by the validator");
            }
        }
    }

    private static void Single(JsonProperty keyword, string at, ImmutableArray<string>.Builder found)
    {
        var mayBeFlag = keyword.Name is "additionalProperties" or "additionalItems";
        if (mayBeFlag && keyword.Value.ValueKind is JsonValueKind.True or JsonValueKind.False)
        {
            return;
        }

        if (keyword.Name == "items" && keyword.Value.ValueKind == JsonValueKind.Array)
        {
            Each(keyword.Value, at, found);
        }
        else
        {
            Schema(keyword.Value, at, found);
        }
    }

    private static void Each(JsonElement list, string at, ImmutableArray<string>.Builder found)
    {
        var index = 0;
        foreach (var one in list.EnumerateArray())
        {
            Schema(one, string.Create(CultureInfo.InvariantCulture, $"{at}/{index++}"), found);
        }
    }

    private static void Value(JsonProperty keyword, string at, ImmutableArray<string>.Builder found)
    {
        switch (keyword.Name)
        {
            case "maxItems" or "maxProperties" when keyword.Value.GetDouble() == 0:
                found.Add($"{at}: 0 is read as no limit");
                break;
            case "format" when !Formats.Contains(keyword.Value.GetString()!):
                found.Add($"{at}: the format `{keyword.Value.GetString()}` is passed over by the validator");
                break;
            case "pattern":
                Pattern(keyword.Value.GetString()!, at, found);
                break;
        }
    }

    private static void Pattern(string pattern, string at, ImmutableArray<string>.Builder found)
    {
        foreach (var one in Ambiguous)
        {
            if (pattern.Contains(one, StringComparison.Ordinal))
            {
                found.Add($"{at}: `{one}` means one thing here and another in an editor; write the characters out");
            }
        }
    }
}
