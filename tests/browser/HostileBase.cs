using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Swapwright.Drafting;
using Swapwright.Source;

namespace Swapwright.BrowserTests;

/// <summary>
/// A small base in whose every free text stands markup. Which texts are free is read off the schemas: a string without a pattern, an
/// enumeration or a format. Where a file leaves such a text out it is written in.
/// </summary>
internal sealed class HostileBase
{
    // Each tries another way out of where it is put: an element, an attribute in either quotes, a link, a comment, a template, a script's own text.
    private static readonly string[] s_payloads =
    [
        "\"><script>hit(1)</script><img src=x onerror=hit(2)>",
        "' onmouseover='hit(3)' onfocus=hit(3) autofocus zq='1",
        "\" onmouseover=\"hit(4)\" onload=hit(4) zq=\"1",
        "<svg/onload=hit(5)><iframe srcdoc='<script>parent.hit(5)</script>'>",
        "</script></title></style></textarea><script>hit(6)</script>",
        "[a](javascript:hit(7)) ![b](//evil.example/b.png) <https://evil.example>",
        "<a href=\"javascript:hit(8)\">a</a><base href=//evil.example>{{ 7 * 7 }}",
        "--><script>hit(9)</script><!-- ]]><meta http-equiv=refresh content=0>",
        "&lt;script&gt;hit(10)&lt;/script&gt;&#60;img src=x onerror=hit(10)&#62;",
        "`</code><script>hit(11)</script>` | a | <b onclick=hit(11)>",
    ];

    // Keys below which a text is no free one: it is a value of a fact, a unit, a thread.
    private static readonly HashSet<string> s_meaning = new(["facts", "when", "applies", "require", "unit", "thread"], StringComparer.Ordinal);

    // A rule that comes to say this leaves nothing to build, and so no guide to look at.
    private const string NotAdded = "exclude";

    private const string Short = "<b zq=1>";

    private readonly string _schemas = Path.Combine(Browsers.Repository(), "schema");
    private readonly int _first;
    private JsonObject _schema = [];

    private HostileBase(int first) => _first = first;

    /// <summary>Every free text of the schemas that was filled: kind and path of keys.</summary>
    public SortedSet<string> Filled { get; } = new(StringComparer.Ordinal);

    /// <summary>Marks by place, one in each text that has room for it.</summary>
    public Dictionary<string, string> Marks { get; } = new(StringComparer.Ordinal);

    /// <summary>Every free text that the schemas know, whether or not a file of the base could have it.</summary>
    public static SortedSet<string> Known()
    {
        var known = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Browsers.Repository(), "schema"), "*.schema.json"))
        {
            var schema = JsonNode.Parse(File.ReadAllText(file))!.AsObject();
            Walk(schema, schema, Path.GetFileName(file).Split('.')[0], known);
        }

        return known;

        static void Walk(JsonObject root, JsonObject at, string path, SortedSet<string> known)
        {
            var schema = Resolved(root, at);
            if (IsFree(schema))
            {
                known.Add(path);
            }

            foreach (var (key, inner, _) in Members(schema).Where(one => !s_meaning.Contains(one.Key)))
            {
                Walk(root, inner, $"{path}.{key}", known);
            }
        }
    }

    /// <param name="first">The payload to begin with, so that another base has other payloads at the same places.</param>
    public static HostileBase Write(string folder, int first)
    {
        var hostile = new HostileBase(first);
        foreach (var file in KnowledgeFolder.Read(Good(folder)).Files)
        {
            var target = Path.Combine(folder, file.Path);
            if (file.Root is null)
            {
                continue;
            }

            hostile._schema = JsonNode.Parse(File.ReadAllText(Path.Combine(hostile._schemas, $"{file.Kind}.schema.json")))!.AsObject();
            var spoilt = hostile.Spoilt(Json(file.Root), hostile._schema, file.Kind, $"{file.Kind}/{file.Id}")!.ToJsonString(s_written);
            File.WriteAllText(target, file.Body is null ? spoilt + "\n" : $"---\n{spoilt}\n---\n{string.Join("\n\n", s_payloads)}\n\n## {s_payloads[1]}\n\n| {s_payloads[0]} | b |\n| --- | --- |\n| {s_payloads[2]} | {s_payloads[3]} |\n");
        }

        return hostile;
    }

    private static readonly JsonSerializerOptions s_written = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>A good base of every kind of file: the small one of the tests, with what a new base has besides.</summary>
    private static string Good(string folder)
    {
        var small = Path.Combine(Browsers.Repository(), "tests", "Reports", "small-base");
        foreach (var file in Directory.EnumerateFiles(small, "*", SearchOption.AllDirectories))
        {
            Put(folder, Path.GetRelativePath(small, file), File.ReadAllText(file));
        }

        File.AppendAllText(Path.Combine(folder, "chassis", "hazel-90.yaml"), "\nbattery: {title: The battery, location: [300, 200, 100]}\n");
        File.AppendAllText(Path.Combine(folder, "tasks", "make-plate.yaml"), "\ntools: [Drill, {title: Crane, when: {chassis.family: hazel}}]\n");
        Put(folder, "articles/look.md", "---\ntitle: A look\n---\nText.\n");
        Put(folder, "pages/help.md", "---\ntitle: Help\n---\nText.\n");
        Put(folder, "glossary.yaml", "terms: {shim: {term: Shim, about: A plate.}}\n");
        Put(folder, "pictures/arrow.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\"><title>&lt;script&gt;hit(12)&lt;/script&gt;</title><script>hit(12)</script></svg>\n");
        return folder;
    }

    private static void Put(string folder, string path, string text)
    {
        var file = Path.Combine(folder, path);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, text);
    }

    private JsonNode? Spoilt(JsonNode? value, JsonObject at, string path, string place)
    {
        var schema = Resolved(_schema, at);
        if (IsFree(schema) && value is null or JsonValue)
        {
            return value is JsonValue known && known.GetValueKind() != JsonValueKind.String ? value.DeepClone() : Text(schema, path, place);
        }

        switch (value)
        {
            case JsonObject mapping:
                var spoilt = new JsonObject();
                foreach (var (key, inner) in mapping)
                {
                    var (name, member) = Members(schema).FirstOrDefault(one => one.Key == key || one.Pattern?.IsMatch(key) == true) is { Key: not null } found ? (found.Key, found.Schema) : (key, null);
                    spoilt[key] = member is null || s_meaning.Contains(key) ? inner?.DeepClone() : Spoilt(inner, member, $"{path}.{name}", $"{place}.{key}");
                }

                foreach (var (key, inner) in Properties(schema).Where(one => one.Key != NotAdded && !spoilt.ContainsKey(one.Key) && !s_meaning.Contains(one.Key)))
                {
                    if (Built(inner, $"{path}.{key}", $"{place}.{key}") is { } built)
                    {
                        spoilt[key] = built;
                    }
                }

                return spoilt;
            case JsonArray list when schema["items"] is JsonObject items:
                return new JsonArray([.. list.Select((item, index) => Spoilt(item, items, $"{path}.items", string.Create(CultureInfo.InvariantCulture, $"{place}.{index}")))]);
            default:
                return value?.DeepClone();
        }
    }

    /// <summary>A value for what a file leaves out: free text, and what consists of free text, days and enumerations; null for what names anything.</summary>
    private JsonNode? Built(JsonObject at, string path, string place)
    {
        var schema = Resolved(_schema, at);
        if (IsFree(schema))
        {
            return Text(schema, path, place);
        }

        var type = schema["type"] as JsonValue is { } one && one.TryGetValue<string>(out var name) ? name : "";
        if (type == "array" && schema["items"] is JsonObject items && Free(items) && Built(items, $"{path}.items", $"{place}.0") is { } item)
        {
            return new JsonArray(item);
        }

        if (type != "object" || !Free(at))
        {
            return null;
        }

        var built = new JsonObject();
        foreach (var (key, inner) in Properties(schema))
        {
            var member = Resolved(_schema, inner);
            var value = member["enum"] is JsonArray values ? values[0]!.DeepClone() : member["format"]?.GetValue<string>() == "date" ? "2026-01-01" : Built(inner, $"{path}.{key}", $"{place}.{key}");
            if (value is not null)
            {
                built[key] = value;
            }
        }

        return built.Count == 0 ? null : built;
    }

    /// <summary>Whether a schema can be met by free text, days and enumerations alone, and has free text in it.</summary>
    private bool Free(JsonObject at)
    {
        var schema = Resolved(_schema, at);
        if (IsFree(schema))
        {
            return true;
        }

        var required = schema["required"] as JsonArray;
        return Properties(schema).Any() && required is not null && required.All(key => Properties(schema).Any(one => one.Key == key!.GetValue<string>()
                && Resolved(_schema, one.Value) is var member && (IsFree(member) || member["enum"] is not null || member["format"] is not null)))
            && required.Any(key => IsFree(Resolved(_schema, schema["properties"]![key!.GetValue<string>()]!.AsObject())));
    }

    private string Text(JsonObject schema, string path, string place)
    {
        Filled.Add(path);
        var room = schema["maxLength"]?.GetValue<int>() ?? int.MaxValue;
        var mark = string.Create(CultureInfo.InvariantCulture, $"m{Marks.Count}z ");
        var payload = s_payloads[(_first + Marks.Count) % s_payloads.Length];
        var text = mark + payload;
        Marks[place] = mark.Trim();
        return text.Length <= room ? text : (mark + Short).Length <= room ? mark + Short : Short[..Math.Min(room, Short.Length)];
    }

    private static bool IsFree(JsonObject schema) =>
        (schema["type"] is JsonValue type ? type.GetValue<string>() == "string" : schema["type"] is JsonArray types && types.Any(one => one!.GetValue<string>() == "string"))
        && schema["enum"] is null && schema["pattern"] is null && schema["format"] is null;

    private static JsonObject Resolved(JsonObject root, JsonObject schema) =>
        schema["$ref"] is JsonValue reference ? root["definitions"]![reference.GetValue<string>().Split('/')[^1]]!.AsObject() : schema;

    private static IEnumerable<KeyValuePair<string, JsonObject>> Properties(JsonObject schema) =>
        schema["properties"] is JsonObject properties ? properties.Select(one => KeyValuePair.Create(one.Key, one.Value!.AsObject())) : [];

    private static IEnumerable<(string Key, JsonObject Schema, System.Text.RegularExpressions.Regex? Pattern)> Members(JsonObject schema) =>
        Properties(schema).Select(one => (one.Key, one.Value, (System.Text.RegularExpressions.Regex?)null))
            .Concat(schema["patternProperties"] is JsonObject patterns ? patterns.Select(one => ("*", one.Value!.AsObject(), (System.Text.RegularExpressions.Regex?)new System.Text.RegularExpressions.Regex(one.Key, System.Text.RegularExpressions.RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1)))) : [])
            .Concat(schema["items"] is JsonObject items ? [("items", items, null)] : []);

    private static JsonNode? Json(SourceNode? node) => node switch
    {
        MappingNode mapping => new JsonObject(mapping.Entries.Select(entry => KeyValuePair.Create(entry.Key.Text, Json(entry.Value)))),
        SequenceNode sequence => new JsonArray([.. sequence.Items.Select(Json)]),
        ScalarNode { Kind: ScalarKind.Null } => null,
        ScalarNode { Kind: ScalarKind.Text } scalar => JsonValue.Create(scalar.Text),
        ScalarNode scalar => JsonNode.Parse(scalar.Text.ToLowerInvariant().TrimStart('+')),
        _ => null,
    };
}
