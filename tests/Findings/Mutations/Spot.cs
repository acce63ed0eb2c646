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

    public bool Is(string pattern) => Regex.IsMatch(Trail, $"^(?:{pattern.Replace("*", "[^/]+", StringComparison.Ordinal)})$", RegexOptions.CultureInvariant);

    public static IEnumerable<Spot> All(SourceFile file) => file.Root is { } root ? Under(file, "", root) : [];

    /// <summary>The nodes at one kind of place, in every file of some kinds; <c>*</c> stands for any key.</summary>
    public static IEnumerable<Spot> In(ShippedBase shipped, string kinds, string pattern) =>
        shipped.Of(kinds.Split(' ')).SelectMany(All).Where(spot => spot.Is(pattern));

    private static IEnumerable<Spot> Under(SourceFile file, string trail, SourceNode node) => node switch
    {
        MappingNode mapping => mapping.Entries.SelectMany((entry, at) => WithInner(new Spot(file, trail.Length == 0 ? entry.Key.Text : $"{trail}/{entry.Key.Text}", entry.Value, mapping, at))),
        SequenceNode list => list.Items.SelectMany((item, at) => WithInner(new Spot(file, trail, item, list, at))),
        _ => [],
    };

    private static IEnumerable<Spot> WithInner(Spot spot) => Under(spot.File, spot.Trail, spot.Node).Prepend(spot);
}
