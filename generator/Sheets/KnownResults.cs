using System.Collections.Concurrent;

namespace Swapwright.Sheets;

/// <summary>
/// What was made from the same things before. For any number of workers; two that ask for the same at once get the same. Where little is asked for again it is
/// let go, so that it never grows without end.
/// </summary>
/// <param name="most">Results that are kept at a time.</param>
/// <param name="keep">Told of a result before it is given to others.</param>
internal sealed class KnownResults<T>(int most, Action<T>? keep = null)
{
    private readonly ConcurrentDictionary<MadeFrom, T> _known = new();
    private int _count;

    /// <param name="from">All that the result goes by.</param>
    public T Of(MadeFrom from, Func<T> make)
    {
        if (_known.TryGetValue(from, out var known))
        {
            return known;
        }

        if (Interlocked.Increment(ref _count) > most)
        {
            _known.Clear();
            _count = 0;
        }

        var made = make();
        keep?.Invoke(made);
        return _known.GetOrAdd(from, made);
    }
}
