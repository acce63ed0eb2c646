using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Swapwright.Knowledge;
using Swapwright.Source;

namespace Swapwright.Drafting;

/// <summary>
/// The schemas of the kinds of file with a base's own ids in them, so that an editor offers the facts, positions, parts and
/// signals there are and marks the ones there are not. The check itself goes by the schemas without ids: it words what is
/// unknown better, with the nearest known name.
/// </summary>
public static class EditorSchemas
{
    private const string Mark = ".swapwright-schema";
    private const string MarkText = "Made by `swapwright schema`, which writes this folder again with the ids that are there then.\n";

    private static readonly JsonSerializerOptions s_readable = new() { WriteIndented = true, NewLine = "\n", Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes all schemas into a folder that is new, empty, or of an earlier run.</summary>
    /// <returns>How many were written.</returns>
    /// <exception cref="DraftProblemException">The folder holds something else, or cannot be written.</exception>
    public static int Write(KnowledgeBase kb, string folder)
    {
        try
        {
            if (File.Exists(folder) || (Directory.Exists(folder) && !File.Exists(Path.Combine(folder, Mark)) && Directory.EnumerateFileSystemEntries(folder).Any()))
            {
                throw new DraftProblemException($"`{folder}` holds files that `swapwright schema` did not make; name another folder by `--to`");
            }

            Directory.CreateDirectory(folder);
            File.WriteAllText(Path.Combine(folder, Mark), MarkText);
            var count = 0;
            foreach (var (kind, text) in All(kb))
            {
                File.WriteAllText(Path.Combine(folder, $"{kind}.schema.json"), text, new UTF8Encoding(false));
                count++;
            }

            return count;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new DraftProblemException($"`{folder}` cannot be written: {problem.Message}");
        }
    }

    /// <summary>Kind → schema text, in order of kind.</summary>
    public static IEnumerable<(string Kind, string Text)> All(KnowledgeBase kb) => SchemaSet.EmbeddedTexts().Select(schema =>
    {
        var root = JsonNode.Parse(schema.Text)!.AsObject();
        var ids = new EditorIds(kb, schema.Kind);
        Visit(root, "", ids);
        return (schema.Kind, root.ToJsonString(s_readable) + "\n");
    });

    private static void Visit(JsonNode? node, string path, EditorIds ids)
    {
        switch (node)
        {
            case JsonObject mapping:
                // Inside out: what is copied to a name has its own ids by then.
                foreach (var (key, child) in mapping.ToList())
                {
                    if (key is not ("examples" or "enum" or "required"))
                    {
                        Visit(child, $"{path}/{key}", ids);
                    }
                }

                ids.Narrow(mapping, path);
                break;
            case JsonArray list:
                foreach (var child in list.ToList())
                {
                    Visit(child, path, ids);
                }

                break;
        }
    }
}
