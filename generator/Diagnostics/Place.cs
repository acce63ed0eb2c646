namespace Swapwright.Diagnostics;

/// <summary>
/// A stretch of text in a file of the knowledge base. The path is relative to the knowledge base, with forward
/// slashes; lines and columns count from 1; the end is exclusive (one past the last character).
/// </summary>
public readonly record struct Place(string File, int Line, int Column, int EndLine, int EndColumn) : IComparable<Place>
{
    /// <summary>The whole of a file where nothing inside it can be pointed at.</summary>
    public static Place Of(string file) => new(file, 1, 1, 1, 1);

    public int CompareTo(Place other)
    {
        var byFile = string.CompareOrdinal(File, other.File);
        if (byFile != 0)
        {
            return byFile;
        }

        var byLine = Line.CompareTo(other.Line);
        return byLine != 0 ? byLine : Column.CompareTo(other.Column);
    }

    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");

    public static bool operator <(Place left, Place right) => left.CompareTo(right) < 0;

    public static bool operator >(Place left, Place right) => left.CompareTo(right) > 0;

    public static bool operator <=(Place left, Place right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Place left, Place right) => left.CompareTo(right) >= 0;
}
