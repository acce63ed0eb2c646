using System.Globalization;

namespace Swapwright.Benchmarks.Bases;

/// <summary>Chance from a seed: the same seed draws the same base.</summary>
internal sealed class Draw(int seed)
{
    private readonly Random _random = new(seed);

    public int Next(int below) => _random.Next(below);

    public bool Chance(int percent) => _random.Next(100) < percent;

    public T Of<T>(params IReadOnlyList<T> from) => from[_random.Next(from.Count)];

    public string Flag() => Chance(50) ? "true" : "false";

    public string Number(int from, int to, int step) => (from + (step * _random.Next(((to - from) / step) + 1))).ToString(CultureInfo.InvariantCulture);

    public List<T> Shuffled<T>(IEnumerable<T> items)
    {
        T[] all = [.. items];
        _random.Shuffle(all);
        return [.. all];
    }

    public static string Text(FormattableString text) => FormattableString.Invariant(text);
}
