using System.Collections;
using System.Numerics;

namespace Swapwright.Space;

/// <summary>An immutable set of value indices of one variable, held as a bit mask over the variable's domain.</summary>
public sealed class ValueSet : IReadOnlyCollection<int>, IEquatable<ValueSet>
{
    private const int Bits = 64;
    private readonly ulong[] _words;

    private ValueSet(int size, ulong[] words)
    {
        Size = size;
        _words = words;
        foreach (var word in words)
        {
            Count += BitOperations.PopCount(word);
        }
    }

    /// <summary>Size of the domain that the set is taken from.</summary>
    public int Size { get; }

    /// <summary>Number of values in the set.</summary>
    public int Count { get; }

    public bool IsEmpty => Count == 0;

    public bool IsFull => Count == Size;

    /// <summary>The lowest value of the set; -1 where it is empty.</summary>
    public int Lowest => LowestOf(_words);

    internal ReadOnlySpan<ulong> Words => _words;

    public static ValueSet Empty(int size) => new(size, new ulong[WordsFor(size)]);

    public static ValueSet Full(int size) => Range(size, 0, size - 1);

    public static ValueSet Of(int size, params ReadOnlySpan<int> values)
    {
        var words = new ulong[WordsFor(size)];
        foreach (var value in values)
        {
            ArgumentOutOfRangeException.ThrowIfNegative(value, nameof(values));
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(value, size, nameof(values));
            words[value / Bits] |= 1UL << (value % Bits);
        }

        return new ValueSet(size, words);
    }

    /// <summary>The values from <paramref name="from"/> to <paramref name="to"/>, both included.</summary>
    public static ValueSet Range(int size, int from, int to) => Where(size, value => value >= from && value <= to);

    /// <summary>The values that satisfy a predicate, asked once for each value of the domain.</summary>
    public static ValueSet Where(int size, Func<int, bool> predicate)
    {
        var words = new ulong[WordsFor(size)];
        for (var value = 0; value < size; value++)
        {
            if (predicate(value))
            {
                words[value / Bits] |= 1UL << (value % Bits);
            }
        }

        return new ValueSet(size, words);
    }

    /// <summary>The values of any of several sets.</summary>
    public static ValueSet Union(int size, IEnumerable<ValueSet> sets)
    {
        var words = new ulong[WordsFor(size)];
        foreach (var set in sets)
        {
            for (var word = 0; word < words.Length; word++)
            {
                words[word] |= set._words[word];
            }
        }

        return new ValueSet(size, words);
    }

    public bool Contains(int value) => value >= 0 && value < Size && HasBit(_words, value);

    public ValueSet And(ValueSet other) => Combine(other, (a, b) => a & b);

    public ValueSet Or(ValueSet other) => Combine(other, (a, b) => a | b);

    public ValueSet Minus(ValueSet other) => Combine(other, (a, b) => a & ~b);

    public ValueSet Not() => Full(Size).Minus(this);

    public bool Intersects(ValueSet other)
    {
        RequireSameDomain(other);
        return Meet(_words, other._words);
    }

    /// <summary>Whether every value of this set is in the other one.</summary>
    public bool IsSubsetOf(ValueSet other)
    {
        RequireSameDomain(other);
        for (var i = 0; i < _words.Length; i++)
        {
            if ((_words[i] & ~other._words[i]) != 0)
            {
                return false;
            }
        }

        return true;
    }

    public bool Equals(ValueSet? other) => other is not null && Size == other.Size && Words.SequenceEqual(other.Words);

    public override bool Equals(object? obj) => Equals(obj as ValueSet);

    public override int GetHashCode()
    {
        var hash = default(HashCode);
        hash.Add(Size);
        foreach (var word in _words)
        {
            hash.Add(word);
        }

        return hash.ToHashCode();
    }

    /// <summary>The values, rising.</summary>
    public IEnumerator<int> GetEnumerator()
    {
        for (var i = 0; i < _words.Length; i++)
        {
            for (var rest = _words[i]; rest != 0; rest &= rest - 1)
            {
                yield return (i * Bits) + BitOperations.TrailingZeroCount(rest);
            }
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    public override string ToString() => "{" + string.Join(',', this) + "}";

    internal static int WordsFor(int size) => (size + Bits - 1) / Bits;

    internal static bool HasBit(ReadOnlySpan<ulong> words, int value) => (words[value / Bits] >> (value % Bits) & 1) != 0;

    internal static bool Meet(ReadOnlySpan<ulong> a, ReadOnlySpan<ulong> b)
    {
        for (var i = 0; i < a.Length; i++)
        {
            if ((a[i] & b[i]) != 0)
            {
                return true;
            }
        }

        return false;
    }

    internal static int CountBoth(ValueSet a, ValueSet b)
    {
        var count = 0;
        for (var i = 0; i < a._words.Length; i++)
        {
            count += BitOperations.PopCount(a._words[i] & b._words[i]);
        }

        return count;
    }

    internal static int LowestOf(ReadOnlySpan<ulong> words)
    {
        for (var i = 0; i < words.Length; i++)
        {
            if (words[i] != 0)
            {
                return (i * Bits) + BitOperations.TrailingZeroCount(words[i]);
            }
        }

        return -1;
    }

    internal static ValueSet FromWords(int size, ReadOnlySpan<ulong> words) => new(size, words.ToArray());

    private ValueSet Combine(ValueSet other, Func<ulong, ulong, ulong> combine)
    {
        RequireSameDomain(other);
        var words = new ulong[_words.Length];
        for (var i = 0; i < words.Length; i++)
        {
            words[i] = combine(_words[i], other._words[i]);
        }

        return new ValueSet(Size, words);
    }

    private void RequireSameDomain(ValueSet other)
    {
        if (other.Size != Size)
        {
            throw new ArgumentException("The two sets are taken from domains of different size.", nameof(other));
        }
    }
}
