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
    private const int MostChanges = 20_000;

    private readonly Queue<PairAnswers> _pairs = [];
    private readonly Dictionary<(Region Region, string Choices), ImmutableArray<KeyValuePair<string, string>>> _changes = [];

    internal PairAnswers Pair(Resolution resolution, int chassis, int donor)
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

    /// <param name="region">One that depends on choices alone.</param>
    /// <param name="choices">The values of the choices, see <see cref="Alternatives"/>.</param>
    internal ImmutableArray<KeyValuePair<string, string>> Changes(Region region, string choices, Func<ImmutableArray<KeyValuePair<string, string>>> make)
    {
        if (!_changes.TryGetValue((region, choices), out var changes))
        {
            if (_changes.Count == MostChanges)
            {
                _changes.Clear();
            }

            _changes.Add((region, choices), changes = make());
        }

        return changes;
    }
}
