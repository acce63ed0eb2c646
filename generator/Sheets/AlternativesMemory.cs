using System.Collections.Immutable;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Sheets;

/// <summary>What many sheets of one space ask alike of what else could hold. For who holds the store's lock.</summary>
public sealed class AlternativesMemory
{
    // Workers are at a pair or two each, and leave it for good.
    private const int MostPairs = 8;

    // Where no two combinations ask the same, what is kept is of no use.
    private const int MostKept = 10_000;

    private readonly Queue<PairAnswers> _pairs = [];
    private readonly Dictionary<MadeFrom, ImmutableArray<AnswerSomewhere>> _lists = [];
    private readonly Dictionary<(Region Region, string Choices), ImmutableArray<KeyValuePair<string, string>>> _changes = [];

    /// <summary>The answers at a position that stand somewhere with a chassis and donor: the same list wherever the same is in it.</summary>
    internal ImmutableArray<AnswerSomewhere> Standing(Resolution resolution, int chassis, int donor, string position) =>
        Pair(resolution, chassis, donor).At(position, Same);

    /// <summary>The fewest changes that lead into a region.</summary>
    /// <param name="region">One that depends on choices alone.</param>
    /// <param name="choices">The values of the choices, see <see cref="Alternatives"/>.</param>
    internal ImmutableArray<KeyValuePair<string, string>> Changes(Region region, string choices, Func<ImmutableArray<KeyValuePair<string, string>>> make) =>
        Kept(_changes, (region, choices), make);

    private PairAnswers Pair(Resolution resolution, int chassis, int donor)
    {
        foreach (var pair in _pairs)
        {
            if (pair.IsOf(chassis, donor))
            {
                return pair;
            }
        }

        if (_pairs.Count == MostPairs)
        {
            _pairs.Dequeue();
        }

        var made = new PairAnswers(resolution, chassis, donor);
        _pairs.Enqueue(made);
        return made;
    }

    private ImmutableArray<AnswerSomewhere> Same(ImmutableArray<AnswerSomewhere> list)
    {
        var regions = string.Join(',', list.Select(one => one.Where.Id));
        return Kept(_lists, new MadeFrom([regions, .. list.Select(one => one.Answer)]), () => list);
    }

    private static T Kept<TKey, T>(Dictionary<TKey, T> known, TKey key, Func<T> make)
        where TKey : notnull
    {
        if (!known.TryGetValue(key, out var found))
        {
            if (known.Count == MostKept)
            {
                known.Clear();
            }

            known.Add(key, found = make());
        }

        return found;
    }
}
