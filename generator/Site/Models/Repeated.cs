using System.Collections.Immutable;

namespace Swapwright.Site.Models;

/// <summary>
/// A piece that many pages have, as the same object: what a template writes of it is kept with it from the second time on, so that no other page has to
/// have it made again.
/// </summary>
public abstract record Repeated
{
    protected Repeated()
    {
    }

    /// <summary>A copy is changed in something, and nothing is written of it yet.</summary>
    protected Repeated(Repeated other)
    {
    }

    /// <summary>What was written of it; null of a piece that is on one page alone.</summary>
    internal Writings? Written { get; private set; }

    /// <summary>Lets what is written of it be kept.</summary>
    internal void Keep() => Written ??= new Writings();

    // What was written of a piece is no part of what it says.
    public virtual bool Equals(Repeated? other) => other is not null && EqualityContract == other.EqualityContract;

    public override int GetHashCode() => EqualityContract.GetHashCode();
}

/// <summary>What was written of a piece. Any number of workers may ask and add.</summary>
internal sealed class Writings
{
    // Workers that add at the same time lose what one of them added; it is made again.
    private ImmutableArray<Writing> _all = [];

    /// <summary>What one place of a template wrote of the piece, for pages as deep; null where nothing was kept.</summary>
    /// <param name="isAsked">Whether it was asked for before: what nobody asks for again is not kept.</param>
    public Writing? Find(object place, string prefix, out bool isAsked)
    {
        isAsked = false;
        foreach (var writing in _all)
        {
            if (ReferenceEquals(writing.Place, place) && writing.Prefix == prefix)
            {
                isAsked = true;
                return writing.Text is null ? null : writing;
            }
        }

        return null;
    }

    public void Add(Writing writing) => _all = [.. _all.Where(one => !ReferenceEquals(one.Place, writing.Place) || one.Prefix != writing.Prefix), writing];
}

/// <summary>What a template wrote, and what that counted.</summary>
/// <param name="Place">Of the template that shows the piece.</param>
/// <param name="Text">null where it was written once and not kept.</param>
/// <param name="Depth">Includes within each other.</param>
internal sealed record Writing(object Place, string Prefix, string? Text = null, int Steps = 0, int Turns = 0, int Depth = 0);
