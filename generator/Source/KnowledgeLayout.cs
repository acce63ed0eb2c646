using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Swapwright.Source;

/// <summary>Which files a knowledge base consists of, and what each folder holds.</summary>
public static class KnowledgeLayout
{
    internal const string ArticleKind = "article";

    internal const string PictureFolder = "pictures";

    /// <summary>Kind by top-level file.</summary>
    public static readonly ImmutableSortedDictionary<string, string> TopFiles = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["kb.yaml"] = "kb",
        ["vocabulary.yaml"] = "vocabulary",
        ["positions.yaml"] = "positions",
        ["sources.yaml"] = "sources",
        ["register.yaml"] = "register",
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>Kind by top-level folder.</summary>
    public static readonly ImmutableSortedDictionary<string, string> Folders = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["chassis"] = "chassis",
        ["engines"] = "engine",
        ["gearboxes"] = "gearbox",
        ["ecus"] = "ecu",
        ["connectors"] = "connector",
        ["parts"] = "part",
        ["choices"] = "choice",
        ["rules"] = "rule",
        ["tasks"] = "task",
        ["articles"] = ArticleKind,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>A knowledge base without one of these cannot be checked. A knowledge base may do without sources.</summary>
    public static readonly ImmutableArray<string> Required = ["kb.yaml", "positions.yaml", "vocabulary.yaml"];

    internal static readonly FrozenSet<string> PictureExtensions = new[] { ".svg", ".png" }.ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Words of small letters and digits, joined by single hyphens.</summary>
    public static bool IsId(string text)
    {
        var afterLetter = false;
        foreach (var c in text)
        {
            var isLetter = c is (>= 'a' and <= 'z') or (>= '0' and <= '9');
            if (!isLetter && (c != '-' || !afterLetter))
            {
                return false;
            }

            afterLetter = isLetter;
        }

        return afterLetter;
    }

    internal static string ExtensionOf(string kind) => kind == ArticleKind ? ".md" : ".yaml";

    /// <summary>Files that people and their tools keep beside the knowledge.</summary>
    internal static bool IsAside(string name) => name[0] == '.' || name is "README.md" or "LICENSE";
}
