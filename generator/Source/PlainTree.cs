using System.Collections.Immutable;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>
/// Reads the plain form that nearly all knowledge files have straight from the text: mappings and lists in blocks, lists and
/// mappings in brackets on one line, values on one line, and texts after <c>|</c> and <c>&gt;</c> without blank lines. It gives up at
/// anything else, sound or not, and the file goes to the YAML parser, which is ten times slower and words what is wrong.
/// Where it does not give up its tree is the parser's, place by place; a test holds the two against each other.
/// </summary>
internal sealed class PlainTree : PlainLines
{
    private readonly SourceLimits _limits;
    private int _nodes;

    private PlainTree(string path, string text, LineIndex lines, SourceLimits limits, int firstLine)
        : base(path, text, lines, firstLine) => _limits = limits;

    /// <returns>null where the text is not certainly in the plain form; nothing is said about it then.</returns>
    public static MappingNode? Read(string path, string text, LineIndex lines, SourceLimits limits, int firstLine = 1)
    {
        if (text.AsSpan().ContainsAny('\t', '\r'))
        {
            return null;
        }

        var tree = new PlainTree(path, text, lines, limits, firstLine);
        tree.NextLine();
        if (tree._indent != 0)
        {
            return null;
        }

        var root = tree.Mapping(0, 1);
        return tree._indent >= 0 ? null : root;
    }

    /// <param name="indent">The column of its keys; the first one stands where reading goes on.</param>
    private MappingNode? Mapping(int indent, int depth)
    {
        if (!Counts(depth))
        {
            return null;
        }

        var entries = new MappingEntries();
        var start = Here(_at, _at);
        var end = start;
        do
        {
            var key = Key();
            var value = key is null ? null : Value(indent, depth);
            if (value is null || !entries.Add(key!, value))
            {
                return null; // twice the same key, too
            }

            end = value.Place;
        }
        while (_indent == indent);

        return _indent > indent ? null : entries.ToNode(Until(start, end));
    }

    /// <summary>A key with its colon; null where there is none.</summary>
    private ScalarNode? Key()
    {
        var end = KeyEnd();
        if (end < 0)
        {
            return null;
        }

        var key = Unquoted(_at, end);
        _at = end + 1;
        return key;
    }

    private int KeyEnd()
    {
        var end = _at;
        while (end < _end && (char.IsAsciiLetterOrDigit(_text[end]) || (end > _at && _text[end] is '.' or '-' or '_')))
        {
            end++;
        }

        // A key as long as this is no key of ours, and the parser has a bound of its own.
        return end > _at && end - _at <= 200 && end < _end && _text[end] == ':' && (end + 1 == _end || _text[end + 1] == ' ') ? end : -1;
    }

    /// <summary>What stands after a key, on its line or on the next ones.</summary>
    private SourceNode? Value(int indent, int depth)
    {
        if (!IsAtEnd())
        {
            return OnLine(indent, depth);
        }

        NextLine();
        return _indent <= indent ? null : IsItem() ? Sequence(_indent, depth + 1) : Mapping(_indent, depth + 1);
    }

    /// <summary>A value that begins on this line.</summary>
    private SourceNode? OnLine(int indent, int depth)
    {
        if (_text[_at] is '|' or '>')
        {
            return Block(indent);
        }

        var value = Inline(depth, inBrackets: false);
        if (value is null || !IsAtEnd())
        {
            return null;
        }

        NextLine();
        return value;
    }

    private SequenceNode? Sequence(int indent, int depth)
    {
        if (!Counts(depth))
        {
            return null;
        }

        var items = ImmutableArray.CreateBuilder<SourceNode>();
        var start = Here(_at, _at);
        do
        {
            if (!IsItem() || items.Count == _limits.MaxItemsPerList)
            {
                return null;
            }

            _at++;
            if (IsAtEnd() || IsItem())
            {
                return null;
            }

            if (Item(indent, depth) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }
        while (_indent == indent);

        return _indent > indent ? null : new SequenceNode(Until(start, items[^1].Place), items.DrainToImmutable());
    }

    private SourceNode? Item(int indent, int depth)
    {
        if (KeyEnd() < 0)
        {
            return OnLine(indent, depth);
        }

        _indent = _at - _lines.Start(_line);
        return Mapping(_indent, depth + 1);
    }

    private SourceNode? Inline(int depth, bool inBrackets) => _text[_at] switch
    {
        '"' or '\'' => Quoted(_text[_at]),
        '{' => MappingInBrackets(depth + 1),
        '[' => SequenceInBrackets(depth + 1),
        _ => Plain(inBrackets),
    };

    private MappingNode? MappingInBrackets(int depth)
    {
        var start = _at++;
        if (!Counts(depth))
        {
            return null;
        }

        var entries = new MappingEntries();
        do
        {
            SkipSpaces();
            var key = Key();
            SkipSpaces();
            var value = key is null || _at == _end ? null : Inline(depth, inBrackets: true);
            if (value is null || !entries.Add(key!, value))
            {
                return null;
            }
        }
        while (GoesOn());

        return Closes('}') ? entries.ToNode(Here(start, _at)) : null;
    }

    private SequenceNode? SequenceInBrackets(int depth)
    {
        var start = _at++;
        if (!Counts(depth))
        {
            return null;
        }

        var items = ImmutableArray.CreateBuilder<SourceNode>();
        do
        {
            SkipSpaces();
            if (_at == _end || items.Count == _limits.MaxItemsPerList || Inline(depth, inBrackets: true) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }
        while (GoesOn());

        return Closes(']') ? new SequenceNode(Here(start, _at), items.DrainToImmutable()) : null;
    }

    private bool GoesOn()
    {
        SkipSpaces();
        var comma = _at < _end && _text[_at] == ',';
        _at += comma ? 1 : 0;
        return comma;
    }

    private bool Closes(char bracket)
    {
        var closes = _at < _end && _text[_at] == bracket;
        _at += closes ? 1 : 0;
        return closes;
    }

    private ScalarNode? Quoted(char quote)
    {
        var start = _at;
        var length = _text.AsSpan(start + 1, _end - start - 1).IndexOfAny(quote, quote == '"' ? '\\' : quote);
        var end = start + 1 + length;
        if (length < 0 || _text[end] == '\\' || (end + 1 < _end && _text[end + 1] == quote))
        {
            return null; // open, or with an escape
        }

        _at = end + 1;
        return Scalar(Here(start, _at), SharedText.Of(_text.AsSpan(start + 1, length)), ScalarKind.Text, isQuoted: true);
    }

    private ScalarNode? Plain(bool inBrackets)
    {
        var start = _at;
        var first = _text[start];
        if (!char.IsLetterOrDigit(first) && (first != '-' || start + 1 == _end || !char.IsAsciiDigit(_text[start + 1])))
        {
            return null;
        }

        while (_at < _end)
        {
            var c = _text[_at];
            if (inBrackets ? c is ',' or ']' or '}' : c == '#' && _text[_at - 1] == ' ')
            {
                break;
            }

            if (inBrackets ? c is ':' or '#' or '?' or '[' or '{' : c == ':' && (_at + 1 == _end || _text[_at + 1] == ' '))
            {
                return null;
            }

            _at++;
        }

        var end = _at;
        while (_text[end - 1] == ' ')
        {
            end--;
        }

        return inBrackets && _at == _end ? null : Unquoted(start, end);
    }

    private ScalarNode? Unquoted(int start, int end)
    {
        var text = SharedText.Of(_text.AsSpan(start, end - start));
        var kind = PlainScalar.KindOf(text);
        return kind is ScalarKind.Integer or ScalarKind.Number && !PlainScalar.TryDecimal(text, out _) ? null : Scalar(Here(start, end), text, kind);
    }

    /// <summary>A text after <c>|</c> or <c>&gt;</c> whose lines begin in one column.</summary>
    private ScalarNode? Block(int indent)
    {
        var start = Here(_at, _at);
        var isFolded = _text[_at++] == '>';
        var isStripped = _at < _end && _text[_at] == '-';
        if (_at + (isStripped ? 1 : 0) != _end)
        {
            return null;
        }

        var lines = new List<string>();
        var last = start;
        var column = -1;
        var wasBlank = false;
        for (_line++; _line <= _lines.Count; _line++)
        {
            var text = _lines.Line(_line);
            var before = text.IndexOfAnyExcept(' ');
            if (text.IsEmpty)
            {
                wasBlank = true;
                continue;
            }

            if (before >= 0 && before <= indent)
            {
                break;
            }

            column = column < 0 ? before : column;
            if (wasBlank || before < 0 || before < column || (isFolded && before > column) || text[^1] == ' ')
            {
                return null;
            }

            lines.Add(text[column..].ToString());
            last = start with { EndLine = _line, EndColumn = text.Length + 1 };
        }

        if (lines.Count == 0 || (_line > _lines.Count && _text[^1] != '\n') || (_line <= _lines.Count && _lines.Line(_line).TrimStart(' ')[0] == '#'))
        {
            return null;
        }

        _line--;
        NextLine();
        return Scalar(last, string.Join(isFolded ? ' ' : '\n', lines) + (isStripped ? "" : "\n"), ScalarKind.Text, isBlock: true);
    }

    private ScalarNode? Scalar(Place place, string text, ScalarKind kind, bool isQuoted = false, bool isBlock = false) =>
        ++_nodes > _limits.MaxNodesPerFile || text.Length > _limits.MaxScalarLength ? null : new ScalarNode(place, text, kind, isQuoted, isBlock);

    /// <summary>Whether a list or mapping may stand here.</summary>
    private bool Counts(int depth) => depth <= _limits.MaxDepth && ++_nodes <= _limits.MaxNodesPerFile;

    private static Place Until(Place start, Place last) => start with { EndLine = last.EndLine, EndColumn = last.EndColumn };
}
