using System.Collections.Concurrent;
using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>Pieces that are the same on many guides, each made once. For any number of workers.</summary>
internal sealed class SharedPieces
{
    // In a base whose guides have nothing in common every piece would be kept and none be found again.
    private const int Most = 20_000;

    private readonly ConcurrentDictionary<MadeFrom, Repeated> _pieces = new();
    private int _count;

    /// <param name="from">All that goes into the piece, first what tells its kind.</param>
    public T Of<T>(MadeFrom from, Func<T> make)
        where T : Repeated
    {
        if (_pieces.TryGetValue(from, out var known))
        {
            return (T)known;
        }

        var made = make();
        if (_count < Most && _pieces.TryAdd(from, made))
        {
            Interlocked.Increment(ref _count);
            made.Keep();
        }

        return made;
    }
}
