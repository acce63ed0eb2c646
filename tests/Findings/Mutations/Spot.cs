using System.Text.RegularExpressions;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>A node of a file with the way to it, as in <c>then/answers/radiator/part</c>; items of lists add nothing to the way.</summary>
/// <param name="Parent">The mapping or list that holds it.</param>
/// <param name="At">Its place among its parent's entries or items.</param>
internal sealed record Spot(SourceFile File, string Trail, SourceNode Node, SourceNode Parent, int At)
{
    public MappingEntry? Entry => (Parent as MappingNode)?.Entries[At];

    public string? Word => (Node as ScalarNode)?.Text;

    public string Here => FormattableString.Invariant($"{Trail}:{Node.Place.Line}");

    /// <summary>The whole file with this node written otherwise.</summary>
    public string Replaced(string by) => TextEdit.Replace(File, Node.Place, by);

    public string Removed() => Parent is MappingNode mapping ? TextEdit.Remove(File, mapping, mapping.Entries[At]) : TextEdit.Remove(File, (SequenceNode)Parent, At);

    public string Renamed(string key) => TextEdit.Replace(File, Entry!.Key.Place, key);

    public Mutation Mistake(string what, string text, params ReadOnlySpan<string> names) => Mutation.Of($"{Here} {what}", File.Path, text, names);

    /// <summary>A pattern of ways; <c>*</c> stands for any one key.</summary>
    public static Regex Way(string pattern) =>
        new($"^(?:{pattern.Replace(".*", "\u0001", StringComparison.Ordinal).Replace("*", "[^/]+", StringComparison.Ordinal).Replace("\u0001", ".*", StringComparison.Ordinal)})$", RegexOptions.NonBacktracking);

    public static IEnumerable<Spot> All(SourceFile file) => file.Root is { } root ? Under(file, "", root) : [];

    /// <summary>The nodes at one kind of place, in every file of some kinds.</summary>
    public static IEnumerable<Spot> In(ShippedBase shipped, string kinds, string pattern)
    {
        var way = Way(pattern);
        return shipped.Spots(kinds).Where(spot => way.IsMatch(spot.Trail));
    }

    private static IEnumerable<Spot> Under(SourceFile file, string trail, SourceNode node) => node switch
    {
        MappingNode mapping => mapping.Entries.SelectMany((entry, at) => WithInner(new Spot(file, trail.Length == 0 ? entry.Key.Text : $"{trail}/{entry.Key.Text}", entry.Value, mapping, at))),
        SequenceNode list => list.Items.SelectMany((item, at) => WithInner(new Spot(file, trail, item, list, at))),
        _ => [],
    };

    private static IEnumerable<Spot> WithInner(Spot spot) => Under(spot.File, spot.Trail, spot.Node).Prepend(spot);
}
