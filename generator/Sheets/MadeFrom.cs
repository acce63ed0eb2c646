using System.Runtime.CompilerServices;

namespace Swapwright.Sheets;

/// <summary>
/// What something is made from, as a key: the same where it is the same objects, or equal texts, in the same order. Entities are of one base, so that the same entity
/// is the same object; and what a key names it keeps alive, so that nothing else takes its place.
/// </summary>
/// <param name="things">Not changed afterwards.</param>
internal sealed class MadeFrom(object?[] things) : IEquatable<MadeFrom>
{
    public static readonly MadeFrom Nothing = new([]);

    private readonly object?[] _things = things;
    private readonly int _hash = HashOf(things);

    public bool Equals(MadeFrom? other)
    {
        if (other is null || other._hash != _hash || other._things.Length != _things.Length)
        {
            return false;
        }

        for (var at = 0; at < _things.Length; at++)
        {
            if (!ReferenceEquals(_things[at], other._things[at]) && !(_things[at] is string text && text.Equals(other._things[at])))
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => Equals(obj as MadeFrom);

    public override int GetHashCode() => _hash;

    private static int HashOf(object?[] things)
    {
        var hash = default(HashCode);
        foreach (var thing in things)
        {
            hash.Add(thing is string text ? text.GetHashCode(StringComparison.Ordinal) : RuntimeHelpers.GetHashCode(thing));
        }

        return hash.ToHashCode();
    }
}
