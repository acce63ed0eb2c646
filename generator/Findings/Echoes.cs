using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Findings;

/// <summary>
/// What is found only because a file could not be read: a name that stands in it and that nobody else knows. The file itself is told;
/// beside a hundred echoes of it nobody would see it.
/// </summary>
internal static class Echoes
{
    private static readonly ImmutableHashSet<FindingKind> s_ofNames = [FindingKinds.Reference, FindingKinds.Vocabulary, FindingKinds.LostId];

    public static List<Finding> LeftOut(SourceTree tree, List<Finding> found)
    {
        ImmutableArray<SourceFile> unread = [.. tree.Files.Where(file => file.Root is null && file.Kind != KnowledgeLayout.PictureKind)];
        return unread.IsEmpty ? found : found.FindAll(finding => !IsEcho(tree, unread, finding));
    }

    private static bool IsEcho(SourceTree tree, ImmutableArray<SourceFile> unread, Finding finding)
    {
        if (tree.Find(finding.Place.File) is not { Root: not null } file)
        {
            return false;
        }

        if (s_ofNames.Contains(finding.Kind) && Pointed(file, finding.Place) is var name && unread.Any(one => one.Id == name || Names(one.Text, name)))
        {
            return true;
        }

        // Everything that such a file lacks it may have from there.
        return (finding.Kind == FindingKinds.Schema || s_ofNames.Contains(finding.Kind)) && Inherits(tree, unread, file);
    }

    /// <summary>What a place points at; of a name with dots, such as a fact with its subject, the last part.</summary>
    private static string Pointed(SourceFile file, Place place)
    {
        var line = file.Line(place.Line) ?? "";
        var from = Math.Min(place.Column - 1, line.Length);
        var text = line[from..(place.EndLine == place.Line ? Math.Clamp(place.EndColumn - 1, from, line.Length) : line.Length)];
        return text.Trim('"', '\'')[(text.Trim('"', '\'').LastIndexOf('.') + 1)..];
    }

    private static bool Names(string text, string name)
    {
        static bool Goes(char letter) => char.IsAsciiLetterOrDigit(letter) || letter == '-';
        for (var at = name.Length == 0 ? -1 : text.IndexOf(name, StringComparison.Ordinal); at >= 0; at = text.IndexOf(name, at + 1, StringComparison.Ordinal))
        {
            var end = at + name.Length;
            if ((at == 0 || !Goes(text[at - 1])) && (end == text.Length || !Goes(text[end])))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether a file takes what it does not say from one that could not be read, through others or at once.</summary>
    private static bool Inherits(SourceTree tree, ImmutableArray<SourceFile> unread, SourceFile file)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        for (var at = file; at?.Root?["like"] is ScalarNode parent && seen.Add(parent.Text);)
        {
            if (unread.Any(one => one.Kind == file.Kind && one.Id == parent.Text))
            {
                return true;
            }

            at = tree.Files.FirstOrDefault(one => one.Kind == file.Kind && one.Id == parent.Text);
        }

        return false;
    }
}
