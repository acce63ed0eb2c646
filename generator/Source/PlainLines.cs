using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>Where a reader of plain text stands: the line that it reads, and what it may meet next on it.</summary>
internal abstract class PlainLines
{
    private readonly string _path;

    protected readonly string _text;
    protected readonly LineIndex _lines;

    // The line that is read, where its content goes on, where it ends, and the columns before its content; -1 after the last line.
    protected int _line;
    protected int _at;
    protected int _end;
    protected int _indent;

    protected PlainLines(string path, string text, LineIndex lines, int firstLine)
    {
        (_path, _text, _lines) = (path, text, lines);
        _line = firstLine - 1;
    }

    protected bool IsItem() => _at < _end && _text[_at] == '-' && (_at + 1 == _end || _text[_at + 1] == ' ');

    /// <summary>Whether nothing but a remark is left of the line.</summary>
    protected bool IsAtEnd()
    {
        SkipSpaces();
        return _at == _end || (_text[_at] == '#' && _text[_at - 1] == ' ');
    }

    protected void SkipSpaces()
    {
        while (_at < _end && _text[_at] == ' ')
        {
            _at++;
        }
    }

    /// <summary>Goes to the next line that holds more than a remark.</summary>
    protected void NextLine()
    {
        while (++_line <= _lines.Count)
        {
            _at = _lines.Start(_line);
            _end = _line < _lines.Count ? _lines.Start(_line + 1) - 1 : _text.Length;
            SkipSpaces();
            if (_at < _end && _text[_at] != '#')
            {
                _indent = _at - _lines.Start(_line);
                return;
            }
        }

        _indent = -1;
    }

    protected Place Here(int start, int end)
    {
        var before = _lines.Start(_line) - 1;
        return new Place(_path, _line, start - before, _line, end - before);
    }
}
