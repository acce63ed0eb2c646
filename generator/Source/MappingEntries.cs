using System.Buffers;

namespace Swapwright.Source;

/// <summary>The entries of a mapping while it is read; no key comes twice.</summary>
internal sealed class MappingEntries
{
    /// <summary>From this many keys on a mapping keeps an index; below, searching one by one is faster.</summary>
    private const int IndexedFrom = 12;

    // Lent by the pool: a base has tens of thousands of mappings, and each would leave behind what it outgrew.
    private MappingEntry[] _entries = ArrayPool<MappingEntry>.Shared.Rent(16);
    private int _count;
    private Dictionary<string, int>? _index;

    /// <summary>The key of that name; null where there is none yet.</summary>
    public ScalarNode? Find(string name)
    {
        if (_index is not null)
        {
            return _index.TryGetValue(name, out var at) ? _entries[at].Key : null;
        }

        foreach (var entry in _entries.AsSpan(0, _count))
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

        if (_count == _entries.Length)
        {
            var larger = ArrayPool<MappingEntry>.Shared.Rent(2 * _count);
            _entries.CopyTo(larger, 0);
            GiveBack();
            _entries = larger;
        }

        _index?.Add(key.Text, _count);
        _entries[_count++] = new MappingEntry(key, value);
        if (_index is null && _count == IndexedFrom)
        {
            _index = _entries.Take(_count).Select((entry, at) => (entry.Key.Text, at)).ToDictionary(pair => pair.Text, pair => pair.at, StringComparer.Ordinal);
        }

        return true;
    }

    /// <summary>Ends the reading of the mapping: nothing can be added after it.</summary>
    public MappingNode ToNode(Diagnostics.Place place)
    {
        var node = new MappingNode(place, [.. _entries.AsSpan(0, _count)], _index);
        GiveBack();
        _entries = [];
        return node;
    }

    private void GiveBack() => ArrayPool<MappingEntry>.Shared.Return(_entries, clearArray: true);
}
