using Swapwright.Sheets;
using Swapwright.Site.Models;

namespace Swapwright.Site.Pages;

/// <summary>Pieces that are the same on many guides, each made once. For any number of workers.</summary>
internal sealed class SharedPieces
{
    private readonly KnownResults<Repeated> _pieces = new(5_000, piece => piece.Keep());

    /// <param name="from">All that goes into the piece, first what tells its kind.</param>
    public T Of<T>(MadeFrom from, Func<T> make)
        where T : Repeated => (T)_pieces.Of(from, make);
}
