namespace Swapwright.Space;

/// <summary>What the recursive operations of <see cref="RegionAlgebra"/> are, for the key of their results.</summary>
internal enum Operation
{
    And = 1,
    Or,
    Minus,
    Not,
    Exists,
    Restrict,
    Meets,
    Escapes,
}

/// <summary>
/// Results of operations on pairs of nodes. Direct-mapped: a later result may push out an earlier one, which then costs
/// time and never correctness. It grows with the diagrams up to a fixed bound.
/// </summary>
internal sealed class OperationCache
{
    private const int Largest = 1 << 22;
    private ulong[] _keys;
    private int[] _results;

    public OperationCache()
    {
        _keys = new ulong[1 << 12];
        _results = new int[1 << 12];
    }

    /// <summary>A cache of its own that begins with what another knows.</summary>
    public OperationCache(OperationCache other)
    {
        _keys = [.. other._keys];
        _results = [.. other._results];
    }

    public bool TryGet(Operation operation, int a, int b, out int result)
    {
        var key = Key(operation, a, b);
        var slot = Slot(key);
        result = _results[slot];
        return _keys[slot] == key;
    }

    public void Set(Operation operation, int a, int b, int result, int nodes)
    {
        if (nodes > _keys.Length / 2 && _keys.Length < Largest)
        {
            Grow();
        }

        Put(Key(operation, a, b), result);
    }

    private static ulong Key(Operation operation, int a, int b) => ((ulong)operation << 60) | ((ulong)a << 30) | (uint)b;

    private int Slot(ulong key)
    {
        var mixed = key * 0x9E3779B97F4A7C15;
        return (int)((mixed ^ (mixed >> 32)) >> 8 & (ulong)(_keys.Length - 1));
    }

    private void Put(ulong key, int result)
    {
        var slot = Slot(key);
        _keys[slot] = key;
        _results[slot] = result;
    }

    private void Grow()
    {
        var (keys, results) = (_keys, _results);
        _keys = new ulong[keys.Length * 4];
        _results = new int[keys.Length * 4];
        for (var i = 0; i < keys.Length; i++)
        {
            if (keys[i] != 0)
            {
                Put(keys[i], results[i]);
            }
        }
    }
}
