using System.Collections.Frozen;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>The values of a knowledge file that are Markdown.</summary>
internal static class TextFields
{
    /// <summary>The keys whose values are Markdown wherever they stand. A test holds them against the schemas.</summary>
    public static readonly FrozenSet<string> Keys =
        new[] { "about", "because", "exclude", "how-to-tell", "label", "mistakes", "notes", "steps", "text", "why-now" }.ToFrozenSet(StringComparer.Ordinal);

    public static IEnumerable<ScalarNode> Of(SourceNode? node) => node switch
    {
        MappingNode mapping => mapping.Entries.SelectMany(entry => Keys.Contains(entry.Key.Text) ? Texts(entry.Value) : Of(entry.Value)),
        SequenceNode sequence => sequence.Items.SelectMany(Of),
        _ => [],
    };

    private static IEnumerable<ScalarNode> Texts(SourceNode value) => value switch
    {
        ScalarNode { Kind: ScalarKind.Text } text => [text],
        SequenceNode sequence => sequence.Items.SelectMany(Texts),
        _ => Of(value),
    };
}
