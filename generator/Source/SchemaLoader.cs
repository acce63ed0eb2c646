using Newtonsoft.Json.Linq;
using NJsonSchema;
using NJsonSchema.References;

namespace Swapwright.Source;

/// <summary>Schema texts to schemas; a reference such as <c>common.schema.json#/definitions/id</c> is read from beside the file.</summary>
internal sealed class SchemaLoader(Func<string, string> textOf)
{
    // A place that exists nowhere: references are resolved against it and handed to the resolver below, never opened.
    private const string NoFolder = "/schema/";

    public JsonSchema Load(string file)
    {
        var json = JToken.Parse(textOf(file));
        AnchorPatterns(json);
        return JsonSchema.FromJsonAsync(
            json.ToString(),
            NoFolder + file,
            schema => new Beside(new JsonSchemaAppender(schema, new DefaultTypeNameGenerator()), this)).GetAwaiter().GetResult();
    }

    /// <summary>
    /// In a schema <c>$</c> means the end of the text; in .NET also the place before a last line end, so that <c>"id\n"</c>
    /// would pass. Every <c>$</c> that is an anchor becomes <c>\z</c>.
    /// </summary>
    internal static string AnchorPattern(string pattern)
    {
        var result = new System.Text.StringBuilder(pattern.Length + 1);
        var inClass = false;
        for (var i = 0; i < pattern.Length; i++)
        {
            var c = pattern[i];
            if (c == '\\' && i + 1 < pattern.Length)
            {
                result.Append(c).Append(pattern[++i]);
                continue;
            }

            inClass = c == '[' || (inClass && c != ']');
            result.Append(c == '$' && !inClass ? "\\z" : c.ToString());
        }

        return result.ToString();
    }

    private static void AnchorPatterns(JToken json)
    {
        if (json is JObject mapping)
        {
            if (mapping["pattern"] is JValue { Value: string pattern })
            {
                mapping["pattern"] = AnchorPattern(pattern);
            }

            if (mapping["patternProperties"] is JObject byPattern)
            {
                mapping["patternProperties"] = new JObject(byPattern.Properties().Select(one => new JProperty(AnchorPattern(one.Name), one.Value)));
            }
        }

        foreach (var child in json.Children().ToList())
        {
            AnchorPatterns(child);
        }
    }

    private sealed class Beside(JsonSchemaAppender appender, SchemaLoader loader) : JsonReferenceResolver(appender)
    {
        public override Task<IJsonReference> ResolveFileReferenceAsync(string filePath, CancellationToken cancellationToken = default) =>
            Task.FromResult<IJsonReference>(loader.Load(Path.GetFileName(filePath)));

        public override Task<IJsonReference> ResolveUrlReferenceAsync(string url, CancellationToken cancellationToken = default) =>
            throw new InvalidOperationException($"the schema refers to `{url}`; nothing is fetched from the network");
    }
}
