using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>A key with its value.</summary>
public sealed record MappingEntry(ScalarNode Key, SourceNode Value);

/// <summary>A mapping; keys are unique and keep the order in which they are written.</summary>
public sealed class MappingNode : SourceNode
{
    private readonly Dictionary<string, int>? _index;

    /// <param name="index">Positions by key for a mapping too large to be searched one by one.</param>
    internal MappingNode(Place place, ImmutableArray<MappingEntry> entries, Dictionary<string, int>? index)
        : base(place)
    {
        Entries = entries;
        _index = index;
    }

    public ImmutableArray<MappingEntry> Entries { get; }

    /// <summary>The value under a key, or null where the key is absent.</summary>
    public SourceNode? this[string key] => TryGet(key, out var entry) ? entry.Value : null;

    public bool TryGet(string key, [NotNullWhen(true)] out MappingEntry? entry)
    {
        if (_index is not null)
        {
            entry = _index.TryGetValue(key, out var at) ? Entries[at] : null;
            return entry is not null;
        }

        foreach (var candidate in Entries)
        {
            if (candidate.Key.Text == key)
            {
                entry = candidate;
                return true;
            }
        }

        entry = null;
        return false;
    }
}
