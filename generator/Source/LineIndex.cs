using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>Where the lines of a text begin. A line ends with LF, CR LF or CR, as in the editors that show it.</summary>
internal sealed class LineIndex
{
    private readonly string _text;
    private readonly List<int> _starts = [0];

    public LineIndex(string text)
    {
        _text = text;
        var at = 0;
        while (true)
        {
            var next = text.AsSpan(at).IndexOfAny('\n', '\r');
            if (next < 0)
            {
                break;
            }

            at += next + (text[at + next] == '\r' && at + next + 1 < text.Length && text[at + next + 1] == '\n' ? 2 : 1);
            _starts.Add(at);
        }
    }

    /// <summary>A text that ends with a line end has an empty last line, as an editor counts.</summary>
    public int Count => _starts.Count;

    public int Start(int line) => _starts[line - 1];

    /// <summary>The characters of a line without its line end.</summary>
    public ReadOnlySpan<char> Line(int line)
    {
        var start = _starts[line - 1];
        var end = line < _starts.Count ? _starts[line] : _text.Length;
        return _text.AsSpan(start, end - start).TrimEnd("\r\n");
    }

    public (int Line, int Column) At(int offset)
    {
        var found = _starts.BinarySearch(offset);
        var line = found >= 0 ? found : ~found - 1;
        return (line + 1, offset - _starts[line] + 1);
    }

    public Place Place(string path, int start, int end)
    {
        var (line, column) = At(start);
        var (endLine, endColumn) = At(end);
        return new Place(path, line, column, endLine, endColumn);
    }
}
