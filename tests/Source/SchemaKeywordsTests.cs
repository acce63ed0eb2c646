using NJsonSchema;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

public class SchemaKeywordsTests
{
    [Theory]
    [InlineData("""{ "const": 1 }""", "#/const")]
    [InlineData("""{ "if": {} }""", "#/if")]
    [InlineData("""{ "then": {} }""", "#/then")]
    [InlineData("""{ "else": {} }""", "#/else")]
    [InlineData("""{ "contains": {} }""", "#/contains")]
    [InlineData("""{ "propertyNames": {} }""", "#/propertyNames")]
    [InlineData("""{ "dependencies": {} }""", "#/dependencies")]
    [InlineData("""{ "dependentRequired": {} }""", "#/dependentRequired")]
    [InlineData("""{ "dependentSchemas": {} }""", "#/dependentSchemas")]
    [InlineData("""{ "unevaluatedProperties": false }""", "#/unevaluatedProperties")]
    [InlineData("""{ "unevaluatedItems": false }""", "#/unevaluatedItems")]
    [InlineData("""{ "prefixItems": [] }""", "#/prefixItems")]
    [InlineData("""{ "minContains": 1 }""", "#/minContains")]
    [InlineData("""{ "maxContains": 1 }""", "#/maxContains")]
    [InlineData("""{ "$dynamicRef": "#a" }""", "#/$dynamicRef")]
    [InlineData("""{ "titel": "x" }""", "#/titel")]
    [InlineData("""{ "properties": { "a": true } }""", "#/properties/a")]
    [InlineData("""{ "items": false }""", "#/items")]
    [InlineData("""{ "not": true }""", "#/not")]
    [InlineData("""{ "anyOf": [ {}, false ] }""", "#/anyOf/1")]
    [InlineData("""{ "definitions": { "x": { "allOf": [ { "items": { "const": 1 } } ] } } }""", "#/definitions/x/allOf/0/items/const")]
    [InlineData("""{ "$defs": { "x": { "additionalProperties": { "if": {} } } } }""", "#/$defs/x/additionalProperties/if")]
    [InlineData("""{ "patternProperties": { "^a": { "else": {} } } }""", "#/patternProperties/^a/else")]
    [InlineData("""{ "$ref": "#/definitions/a", "minLength": 1 }""", "#/minLength")]
    [InlineData("""{ "maxItems": 0 }""", "#/maxItems")]
    [InlineData("""{ "maxProperties": 0 }""", "#/maxProperties")]
    [InlineData("""{ "format": "duration" }""", "#/format")]
    [InlineData("""{ "pattern": "^\\d+$" }""", "#/pattern")]
    [InlineData("""{ "patternProperties": { "^\\w+$": {} } }""", "#/patternProperties")]
    public void Unsupported_KeywordPassedOver_IsFound(string json, string pointer) =>
        Assert.StartsWith(pointer + ": ", Assert.Single(SchemaKeywords.Unsupported(json)), StringComparison.Ordinal);

    [Fact]
    public void Unsupported_UsualSchema_IsEmpty() => Assert.Empty(SchemaKeywords.Unsupported("""
        {
          "$schema": "http://json-schema.org/draft-07/schema#", "$id": "x", "$comment": "x", "title": "x", "description": "x", "type": "object",
          "required": ["const"], "additionalProperties": false, "minProperties": 1,
          "properties": { "const": { "enum": ["if"], "default": { "if": 1 }, "examples": [{ "then": 2 }] }, "if": { "$ref": "#/definitions/a", "description": "x" } },
          "patternProperties": { "^a": { "oneOf": [ { "type": "string", "format": "date", "pattern": "^a$" }, { "type": "array", "items": [ {} ], "additionalItems": false } ] } },
          "definitions": { "a": { "not": { "type": "number", "exclusiveMinimum": 0, "multipleOf": 2 } } }
        }
        """));

    [Fact]
    public void Unsupported_EverySchemaOfTheProgram_IsEmpty()
    {
        var folder = Path.Combine(Reading.Repository(), "schema");
        var files = Directory.Exists(folder) ? Directory.GetFiles(folder, "*.json", SearchOption.AllDirectories) : [];
        var found = files.Order(StringComparer.Ordinal).SelectMany(file => SchemaKeywords.Unsupported(File.ReadAllText(file)).Select(what => $"{Path.GetRelativePath(folder, file)} {what}"));

        Assert.Empty(found);
    }

    // What the list of refused keywords rests on: were one of them heeded by a later version, it could be taken off.
    [Theory]
    [InlineData("""{ "const": 1 }""", "2")]
    [InlineData("""{ "if": { "type": "number" }, "then": { "minimum": 9 } }""", "2")]
    [InlineData("""{ "contains": { "type": "string" } }""", "[2]")]
    [InlineData("""{ "propertyNames": { "maxLength": 1 } }""", """{ "long": 1 }""")]
    [InlineData("""{ "dependencies": { "a": ["b"] } }""", """{ "a": 1 }""")]
    [InlineData("""{ "dependentRequired": { "a": ["b"] } }""", """{ "a": 1 }""")]
    [InlineData("""{ "unevaluatedProperties": false }""", """{ "a": 1 }""")]
    [InlineData("""{ "prefixItems": [{ "type": "string" }] }""", "[2]")]
    [InlineData("""{ "maxItems": 0 }""", "[2]")]
    [InlineData("""{ "type": "string", "format": "duration" }""", "\"x\"")]
    public async Task Validator_KeywordPassedOver_AcceptsWhatItForbids(string schema, string data) =>
        Assert.Empty((await JsonSchema.FromJsonAsync(schema)).Validate(data));
}
