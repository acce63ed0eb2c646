using System.Collections.Immutable;

namespace Swapwright.Source;

/// <summary>The entries of a mapping while it is read; no key comes twice.</summary>
internal sealed class MappingEntries
{
    /// <summary>From this many keys on a mapping keeps an index; below, searching one by one is faster.</summary>
    private const int IndexedFrom = 12;

    private readonly ImmutableArray<MappingEntry>.Builder _entries = ImmutableArray.CreateBuilder<MappingEntry>();
    private Dictionary<string, int>? _index;

    /// <summary>The key of that name; null where there is none yet.</summary>
    public ScalarNode? Find(string name)
    {
        if (_index is not null)
        {
            return _index.TryGetValue(name, out var at) ? _entries[at].Key : null;
        }

        foreach (var entry in _entries)
        {
            if (entry.Key.Text == name)
            {
                return entry.Key;
            }
        }

        return null;
    }

    /// <summary>False where the key is there already.</summary>
    public bool Add(ScalarNode key, SourceNode value)
    {
        if (Find(key.Text) is not null)
        {
            return false;
        }

        _index?.Add(key.Text, _entries.Count);
        _entries.Add(new MappingEntry(key, value));
        if (_index is null && _entries.Count == IndexedFrom)
        {
            _index = _entries.Select((entry, at) => (entry.Key.Text, at)).ToDictionary(pair => pair.Text, pair => pair.at, StringComparer.Ordinal);
        }

        return true;
    }

    public MappingNode ToNode(Diagnostics.Place place) => new(place, _entries.DrainToImmutable(), _index);
}
