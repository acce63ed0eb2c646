using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Tests.Source;

public sealed class SchemaSetTests : IDisposable
{
    private const string Common = """
        { "definitions": { "id": { "type": "string", "pattern": "^[a-z0-9]+(-[a-z0-9]+)*$", "description": "Small letters and digits in words joined by hyphens.", "examples": ["left-mount", "x"] } } }
        """;

    private const string Rule = """
        {
          "$schema": "http://json-schema.org/draft-07/schema#",
          "type": "object",
          "required": ["title"],
          "additionalProperties": false,
          "properties": {
            "title": { "type": "string", "minLength": 1, "maxLength": 10 },
            "id": { "$ref": "common.schema.json#/definitions/id" },
            "treatment": { "type": "string", "enum": ["as-is", "refresh", "modify"] },
            "length": { "type": "number", "exclusiveMinimum": 0, "maximum": 100 },
            "count": { "type": "integer", "minimum": 1 },
            "half": { "type": "number", "multipleOf": 0.5 },
            "flag": { "type": "boolean" },
            "checked": { "type": "string", "format": "date" },
            "maybe": { "type": ["string", "number"] },
            "sources": { "type": "array", "items": { "type": "string" }, "minItems": 1, "maxItems": 3, "uniqueItems": true },
            "when": { "$ref": "#/definitions/condition" },
            "then": { "type": "array", "items": { "$ref": "#/definitions/then" } },
            "spot": {
              "type": "object", "properties": { "x": { "type": "number" }, "y": { "type": "number" }, "at": { "type": "string" } },
              "oneOf": [ { "required": ["x"] }, { "required": ["at"] } ], "not": { "required": ["y", "at"] }
            },
            "shape": { "oneOf": [
              { "$ref": "#/definitions/circle" },
              { "type": "object", "required": ["form", "width", "height"], "additionalProperties": false, "properties": { "form": { "enum": ["box"] }, "width": { "type": "number" }, "height": { "type": "number" } } }
            ] },
            "only-size": { "type": "object", "minProperties": 1, "maxProperties": 2 },
            "by-name": { "type": "object", "additionalProperties": false, "patternProperties": { "^[a-z]+$": { "type": "number" } } },
            "plain": { "not": { "enum": ["never"] } }
          },
          "definitions": {
            "circle": { "type": "object", "required": ["form", "radius"], "additionalProperties": false, "properties": { "form": { "enum": ["circle"] }, "radius": { "type": "number" } } },
            "then": { "type": "object", "required": ["position"], "additionalProperties": false, "properties": { "position": { "type": "string" }, "steps": { "type": "array", "items": { "type": "string" } } } },
            "condition": { "type": "object",
              "properties": { "not": { "$ref": "#/definitions/condition" }, "any": { "type": "array", "items": { "$ref": "#/definitions/condition" } } },
              "additionalProperties": { "anyOf": [
              { "type": "string" }, { "type": "number" },
              { "type": "array", "items": { "type": "string" } },
              { "type": "object", "additionalProperties": false, "minProperties": 1, "properties": { "from": { "type": "number" }, "to": { "type": "number" } } }
            ] } }
          }
        }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("schemas-").FullName;
    private readonly SchemaSet _schemas;

    public SchemaSetTests()
    {
        File.WriteAllText(Path.Combine(_folder, "rule.schema.json"), Rule);
        File.WriteAllText(Path.Combine(_folder, "common.schema.json"), Common);
        File.WriteAllText(Path.Combine(_folder, "broken.schema.json"), "{");
        _schemas = SchemaSet.FromFolder(_folder);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("title: a\nwhen:\n  chassis.emission-level: [a, b]\n  donor.year: {from: 1996}\n  a[0].b: 3\n")]
    [InlineData("title: '12'\nlength: 0.1\ncount: 3\nhalf: 2.5\nflag: true\nmaybe: 3\nchecked: 2024-05-31\nid: left-mount\n")]
    [InlineData("title: a\nthen: []\nspot: {x: 1, y: 2}\nshape: {form: box, width: 1, height: 2}\nplain: other\n")]
    public void Validate_ValidFile_GivesNothing(string yaml) => Assert.Empty(Validate(yaml));

    [Theory]
    [InlineData("title: a\ntretment: as-is\n", "2:1-2:9", "unknown key `tretment`; did you mean `treatment`?", "Change `tretment` to `treatment`.")]
    [InlineData("tittle: a\n", "1:1-1:7", "unknown key `tittle`; did you mean `title`?", "Change `tittle` to `title`.")]
    [InlineData("id: a\n", "1:1-1:3", "key `title` is missing", "Add `title`.")]
    [InlineData("title: a\nthen:\n  - steps: [x]\n", "3:5-3:10", "key `position` is missing", "Add `position`.")]
    [InlineData("title: a\nthen:\n  - {}\n", "3:5-3:7", "key `position` is missing", "Add `position`.")]
    [InlineData("title: a\ntreatment: asis\n", "2:12-2:16", "`treatment` must be one of `as-is`, `refresh` and `modify`, not `asis`; did you mean `as-is`?", "Change it to `as-is`.")]
    [InlineData("title: a\ntreatment: 3\n", "2:12-2:13", "`treatment` must be text, not the number `3`", "Put `3` in quotes.")]
    [InlineData("title:\n", "1:7-1:7", "`title` is empty; it must be text", "Write a value after the colon, or remove the key.")]
    [InlineData("title: 12\n", "1:8-1:10", "`title` must be text, not the number `12`", "Put `12` in quotes.")]
    [InlineData("title: true\n", "1:8-1:12", "`title` must be text, not the flag `true`", "Put `true` in quotes.")]
    [InlineData("title: [a]\n", "1:8-1:11", "`title` must be text, not a list", "Write text.")]
    [InlineData("title: ''\n", "1:8-1:10", "`title` must not be empty", "Write a text.")]
    [InlineData("title: abcdefghijk\n", "1:8-1:19", "`title` must have at most 10 characters, not 11", "Shorten it.")]
    [InlineData("title: a\nlength: abc\n", "2:9-2:12", "`length` must be a number, not `abc`", "Write a number.")]
    [InlineData("title: a\nlength: '12'\n", "2:9-2:13", "`length` must be a number, not the text `12` in quotes", "Remove the quotes.")]
    [InlineData("title: a\nlength: 0\n", "2:9-2:10", "`length` must be more than 0, not `0`", "Correct the number.")]
    [InlineData("title: a\nlength: 100.5\n", "2:9-2:14", "`length` must be at most 100, not `100.5`", "Correct the number.")]
    [InlineData("title: a\ncount: 1.5\n", "2:8-2:11", "`count` must be a whole number, not `1.5`", "Write a whole number.")]
    [InlineData("title: a\ncount: 0\n", "2:8-2:9", "`count` must be at least 1, not `0`", "Correct the number.")]
    [InlineData("title: a\nhalf: 0.7\n", "2:7-2:10", "`half` must be a multiple of 0.5, not `0.7`", "Correct the number.")]
    [InlineData("title: a\nflag: yes\n", "2:7-2:10", "`flag` must be `true` or `false`, not `yes`", "Write `true` or `false`.")]
    [InlineData("title: a\nchecked: 2024-13-01\n", "2:10-2:20", "`checked` must be a date such as `2024-05-31`, not `2024-13-01`", null)]
    [InlineData("title: a\nmaybe: [1]\n", "2:8-2:11", "`maybe` must be text or a number, not a list", "Write text or a number.")]
    [InlineData("title: a\nid: Left Mount\n", "2:5-2:15", "`id` must have the form `^[a-z0-9]+(-[a-z0-9]+)*$`, not `Left Mount`", "Small letters and digits in words joined by hyphens. Write it like `left-mount`.")]
    [InlineData("title: a\nid: \"left\\n\"\n", "2:5-2:13", "`id` must have the form `^[a-z0-9]+(-[a-z0-9]+)*$`, not `left…`", "Small letters and digits in words joined by hyphens. Write it like `left-mount`.")]
    [InlineData("title: a\nsources: []\n", "2:10-2:12", "`sources` must have at least 1 item", "Add what is missing, or remove the key.")]
    [InlineData("title: a\nsources: [a, b, c, d]\n", "2:10-2:22", "`sources` must have at most 3 items, not 4", "Remove items.")]
    [InlineData("title: a\nsources: [a, b, a]\n", "2:17-2:18", "`sources` has an item twice", "Remove one of the two.")]
    [InlineData("title: a\nsources: [a, 2]\n", "2:14-2:15", "item 2 of `sources` must be text, not the number `2`", "Put `2` in quotes.")]
    [InlineData("title: a\nsources: a\n", "2:10-2:11", "`sources` must be a list, not `a`", "Write a list.")]
    [InlineData("title: a\nthen:\n  - position: p\n    steps:\n      - ok\n      - a: b\n", "6:9-6:13", "item 2 of `steps` must be text, not a mapping", "Write text.")]
    [InlineData("title: a\nwhen:\n  chassis.emission-level: {form: 1}\n", "3:28-3:32", "unknown key `form`; did you mean `from`?", "Change `form` to `from`.")]
    [InlineData("title: a\nwhen:\n  chassis:\n    from: 1\n  chassis.from: {from: x}\n", "5:24-5:25", "`from` must be a number, not `x`", "Write a number.")]
    [InlineData("title: a\nwhen:\n  a[0].b:\n    - x\n    - [y]\n", "5:7-5:10", "item 2 of `a[0].b` must be text, not a list", "Write text.")]
    [InlineData("title: a\nwhen:\n  chassis.year: true\n", "3:17-3:21", "`chassis.year` must be text, a number, a list or a mapping, not the flag `true`", "Put `true` in quotes.")]
    [InlineData("title: a\nwhen:\n  any:\n    - {b: 1}\n    - not:\n        x.y: {form: 1}\n", "6:15-6:19", "unknown key `form`; did you mean `from`?", "Change `form` to `from`.")]
    [InlineData("title: a\nspot: {x: 1, at: p}\n", "2:8-2:9", "the keys `x` and `at` exclude each other", "Keep one of them.")]
    [InlineData("title: a\nspot: {y: 1}\n", "2:8-2:9", "one of the keys `x` and `at` is missing", "Add `x` or `at`.")]
    [InlineData("title: a\nspot: {y: 1, at: p}\n", "2:8-2:9", "the keys `y` and `at` exclude each other", "Keep one of them.")]
    [InlineData("title: a\nshape: {form: box, width: 1, hight: 2}\n", "2:30-2:35", "unknown key `hight`; did you mean `height`?", "Change `hight` to `height`.")]
    [InlineData("title: a\nshape: {form: circle, width: 1, radius: 2}\n", "2:23-2:28", "unknown key `width`", "Remove it; known keys here are `form` and `radius`.")]
    [InlineData("title: a\nshape: 3\n", "2:8-2:9", "`shape` must be a mapping, not `3`", "Write a mapping.")]
    [InlineData("title: a\nonly-size: {}\n", "2:12-2:14", "`only-size` must have at least 1 key", "Add what is missing.")]
    [InlineData("title: a\nonly-size: {a: 1, b: 2, c: 3}\n", "2:12-2:30", "`only-size` must have at most 2 keys", "Remove keys.")]
    [InlineData("title: a\nby-name: {a: 1, B: 2}\n", "2:17-2:18", "key `B` must have the form `^[a-z]+$`", "Rename the key.")]
    [InlineData("title: a\nby-name: {a: x}\n", "2:14-2:15", "`a` must be a number, not `x`", "Write a number.")]
    [InlineData("title: a\nplain: never\n", "2:8-2:13", "`plain` must not be `never`", "Write something else.")]
    public void Validate_OneFault_IsOneFindingAtItsPlace(string yaml, string span, string message, string? mend)
    {
        var finding = Assert.Single(Validate(yaml));

        Assert.Equal((FindingKinds.Schema, message, span, mend), (finding.Kind, finding.Message, Reading.Span(finding.Place), finding.Mend));
        Assert.Equal(Reading.Path, finding.Place.File);
    }

    /// <summary>A caution is a key of <c>then</c>; newcomers put it into the answer, or beside <c>because</c>.</summary>
    [Theory]
    [InlineData("title: a\nthen:\n  answers:\n    alternator: {source: new, treatment: as-is, cautions: [Hot.]}\n", "cautions", "It is a key of `then`: move it there; known keys here are `source`,")]
    [InlineData("title: a\nthen:\n  advise: [{text: b}]\ncautions: [Hot.]\n", "cautions", "It is a key of `then`: move it there; known keys here are `title`,")]
    [InlineData("title: a\nthen:\n  advise: [{text: b}]\nbolts: 4\n", "bolts", "Remove it; known keys here are `title`,")]
    public void Validate_KeyOfAnotherLevel_IsSentThere(string yaml, string key, string mend)
    {
        var schemas = SchemaSet.FromFolder(Path.Combine(Reading.Repository(), "schema"));

        var finding = Assert.Single(schemas.Validate(Reading.File("rule", yaml)));

        Assert.Equal($"unknown key `{key}`", finding.Message);
        Assert.StartsWith(mend, finding.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Validate_SeveralFaults_AreAllFoundInOrderOfPlace()
    {
        var findings = Validate("length: x\ncount: y\nnonsense: 1\nthen: [{position: 1}, {position: 2}]\n");

        Assert.Equal(
            ["1:1 key `title` is missing", "1:9 `length` must be a number, not `x`", "2:8 `count` must be a whole number, not `y`", "3:1 unknown key `nonsense`", "4:19 `position` must be text, not the number `1`", "4:34 `position` must be text, not the number `2`"],
            findings.Select(finding => FormattableString.Invariant($"{finding.Place.Line}:{finding.Place.Column} {finding.Message}")));
    }

    [Fact]
    public void Validate_RepeatedItem_PointsAtTheFirst() =>
        Assert.Equal("2:11-2:12", Reading.Span(Assert.Single(Assert.Single(Validate("title: a\nsources: [a, b, a]\n")).Related).Place));

    [Fact]
    public void Validate_RefusedValue_IsNotReportedTwice() => Assert.Empty(Validate("title: *x\n"));

    [Fact]
    public void Validate_UnreadableFile_GivesNothing() => Assert.Empty(Validate("title: [\n"));

    [Fact]
    public void Validate_ManyFaults_AreBounded() =>
        Assert.Equal(SourceLimits.Default.MaxFindingsPerFile, Validate("title: a\nthen: [" + string.Join(", ", Enumerable.Repeat("1", 500)) + "]\n").Length);

    [Fact]
    public void Validate_UnknownKind_Throws() => Assert.Throws<InvalidOperationException>(() => _schemas.Validate(Reading.File("nothing", "a: 1\n")));

    [Fact]
    public void Kinds_OfFolder_AreItsSchemas() => Assert.Equal(["broken", "common", "rule"], _schemas.Kinds);

    [Fact]
    public void Kinds_OfProgram_AreTheSchemasOfTheRepository()
    {
        var folder = new DirectoryInfo(Path.Combine(Reading.Repository(), "schema"));
        var files = folder.Exists ? folder.GetFiles("*.schema.json") : [];

        Assert.Equal(files.Select(file => file.Name[..^".schema.json".Length]).Order(StringComparer.Ordinal), SchemaSet.Embedded.Kinds);
    }

    [Fact]
    public void Validate_EverySchemaOfTheProgram_RefusesAnUnknownKey() =>
        Assert.All(SchemaSet.Embedded.Kinds.Intersect(KnowledgeLayout.Folders.Values, StringComparer.Ordinal), kind => Assert.NotEmpty(SchemaSet.Embedded.Validate(Reading.File(kind, kind is "article" or "page" ? "---\nno-such-key: 1\n---\n" : "no-such-key: 1\n"))));

    [Fact]
    public void FromFolder_BrokenSchemaOfAnotherKind_IsNotLoaded() => Assert.Empty(Validate("title: a\n"));

    [Fact]
    public void Validate_AnyTree_NeverThrowsAndPlacesEveryFinding()
    {
        var random = new Random(19960401);
        for (var round = 0; round < 500; round++)
        {
            var yaml = "title: " + Value(random, 4) + "\n" + string.Concat(Keys.Skip(1).Where(_ => random.Next(3) == 0).Select(key => $"{key}: {Value(random, 4)}\n"));

            Assert.All(Validate(yaml), finding => Assert.InRange(finding.Place.Line, 1, finding.Place.EndLine));
        }
    }

    [Theory]
    [InlineData("^a$", "^a\\z")]
    [InlineData("^(a$|b)\\$[$]$", "^(a\\z|b)\\$[$]\\z")]
    [InlineData("a", "a")]
    public void AnchorPattern_Dollar_BecomesEndOfText(string pattern, string expected) => Assert.Equal(expected, SchemaLoader.AnchorPattern(pattern));

    private static readonly string[] Keys = ["title", "id", "treatment", "length", "when", "then", "spot", "shape", "sources", "maybe", "by-name", "x", "at", "form", "from", "any", "not", "position"];

    private static readonly string[] Scalars = ["a", "''", "1", "-1.5", "true", "null", "79228162514264337593543950335", "1e-28", "box", "'12'", "2024-05-31"];

    private static string Value(Random random, int depth) => random.Next(depth <= 0 ? 1 : 3) switch
    {
        0 => Scalars[random.Next(Scalars.Length)],
        1 => "[" + string.Join(", ", Enumerable.Range(0, random.Next(4)).Select(_ => Value(random, depth - 1))) + "]",
        _ => "{" + string.Join(", ", Keys.Where(_ => random.Next(6) == 0).Select(key => $"{key}: {Value(random, depth - 1)}")) + "}",
    };

    private ImmutableArray<Finding> Validate(string yaml) => _schemas.Validate(Reading.File("rule", yaml));
}
