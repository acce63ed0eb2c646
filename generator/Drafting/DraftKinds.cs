using System.Collections.Immutable;
using Swapwright.Source;

namespace Swapwright.Drafting;

/// <summary>What can be drafted, and where it goes.</summary>
public static class DraftKinds
{
    /// <summary>Kinds that are entries of one common file: kind → file and key.</summary>
    internal static readonly ImmutableSortedDictionary<string, (string File, string Key)> Entries = new Dictionary<string, (string, string)>(StringComparer.Ordinal)
    {
        ["position"] = ("positions.yaml", "positions"),
        ["source"] = ("sources.yaml", "sources"),
        ["term"] = ("glossary.yaml", "terms"),
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>Kinds whose files can say <c>like</c>.</summary>
    internal static readonly ImmutableArray<string> WithLike = ["chassis", "engine", "gearbox", "ecu", "part"];

    public static ImmutableArray<string> All { get; } = [.. KnowledgeLayout.Folders.Values.Concat(Entries.Keys).Order(StringComparer.Ordinal)];

    /// <summary>Path of a new file from the base's folder.</summary>
    internal static string PathOf(string kind, string id, string? system)
    {
        var folder = KnowledgeLayout.Folders.First(pair => pair.Value == kind).Key;
        return $"{folder}/{(system is null ? "" : system + "/")}{id}{KnowledgeLayout.ExtensionOf(kind)}";
    }
}
