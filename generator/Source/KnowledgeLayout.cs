using System.Collections.Immutable;

namespace Swapwright.Source;

/// <summary>Which files a knowledge base consists of, and what each folder holds.</summary>
public static class KnowledgeLayout
{
    internal const string ArticleKind = "article";

    /// <summary>A page of the site that belongs to no entity: who we are, how to help.</summary>
    internal const string PageKind = "page";

    /// <summary>Templates that stand in for the built-in ones: no knowledge, and read where pages are rendered.</summary>
    public const string TemplateFolder = "site-template";

    /// <summary>A drawing that an article shows: SVG, kept as text until the knowledge is bound.</summary>
    internal const string PictureKind = "picture";

    /// <summary>Kind by top-level file.</summary>
    public static readonly ImmutableSortedDictionary<string, string> TopFiles = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["kb.yaml"] = "kb",
        ["vocabulary.yaml"] = "vocabulary",
        ["positions.yaml"] = "positions",
        ["sources.yaml"] = "sources",
        ["register.yaml"] = "register",
        ["glossary.yaml"] = "glossary",
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
        ["pages"] = PageKind,
        ["pictures"] = PictureKind,
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>A knowledge base without one of these cannot be checked. A knowledge base may do without sources.</summary>
    public static readonly ImmutableArray<string> Required = ["kb.yaml", "positions.yaml", "vocabulary.yaml"];

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

    internal static string ExtensionOf(string kind) => kind switch
    {
        ArticleKind or PageKind => ".md",
        PictureKind => ".svg",
        _ => ".yaml",
    };

    /// <summary>Files that people and their tools keep beside the knowledge.</summary>
    internal static bool IsAside(string name) => name[0] == '.' || name is "README.md" or "LICENSE";
}
