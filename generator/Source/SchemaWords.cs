using System.Globalization;
using NJsonSchema;
using Origin = Swapwright.Source.JsonMirror.Origin;

namespace Swapwright.Source;

/// <summary>How findings name values, types and lists of names.</summary>
internal static class SchemaWords
{
    private const int NamesListed = 12;
    private const int LongestQuoted = 60;

    /// <summary>`key`, or "item 2 of `key`", or "the file".</summary>
    public static string NameOf(Origin origin)
    {
        if (origin.Key is { } key)
        {
            return Quote(key.Text);
        }

        return origin.Parent is { } parent ? string.Create(CultureInfo.InvariantCulture, $"item {origin.Index + 1} of {NameOf(parent)}") : "the file";
    }

    public static string ValueOf(SourceNode node) => node switch
    {
        MappingNode => "a mapping",
        SequenceNode => "a list",
        ScalarNode { Kind: ScalarKind.Null } => "empty",
        ScalarNode { IsQuoted: true, Text: var text } when PlainScalar.KindOf(text) != ScalarKind.Text => $"the text {Quote(text)} in quotes",
        ScalarNode { Text: var text } => Quote(text),
        _ => throw new ArgumentOutOfRangeException(nameof(node)),
    };

    public static string Quote(string text)
    {
        var line = text.AsSpan().IndexOfAny('\r', '\n') is var end and >= 0 ? text[..end] + "…" : text;
        if (line.Length > LongestQuoted)
        {
            line = string.Concat(line.AsSpan(0, char.IsHighSurrogate(line[LongestQuoted - 1]) ? LongestQuoted - 1 : LongestQuoted), "…");
        }

        return $"`{line}`";
    }

    /// <summary>`a`, `b` and `c`, cut off where there are many.</summary>
    public static string Names(IReadOnlyList<string> names, string joiner = "and")
    {
        var listed = names.Take(NamesListed).Select(Quote).ToList();
        if (names.Count > NamesListed)
        {
            return string.Join(", ", listed) + string.Create(CultureInfo.InvariantCulture, $" {joiner} {names.Count - NamesListed} more");
        }

        return Listed(listed, joiner);
    }

    public static string Listed(IReadOnlyList<string> words, string joiner) => words switch
    {
        [] => "nothing",
        [var only] => only,
        _ => $"{string.Join(", ", words.Take(words.Count - 1))} {joiner} {words[^1]}",
    };

    public static IReadOnlyList<string> TypesOf(JsonObjectType type)
    {
        var words = new List<string>();
        Add(JsonObjectType.String, "text");
        Add(JsonObjectType.Number, "a number");
        Add(JsonObjectType.Integer, "a whole number");
        Add(JsonObjectType.Boolean, "`true` or `false`");
        Add(JsonObjectType.Array, "a list");
        Add(JsonObjectType.Object, "a mapping");
        Add(JsonObjectType.Null, "empty");
        return words;

        void Add(JsonObjectType one, string word)
        {
            if (type.HasFlag(one))
            {
                words.Add(word);
            }
        }
    }
}
