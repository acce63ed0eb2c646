using System.Text;

namespace Swapwright.Drafting;

/// <summary>A mapping in the making: keys in order with values and remarks, written as YAML with two spaces a level.</summary>
internal sealed class DraftMapping
{
    private readonly List<Line> _lines = [];

    /// <param name="value">YAML on one line.</param>
    /// <param name="note">A remark behind the value.</param>
    public DraftMapping Add(string key, string value, string? note = null)
    {
        _lines.Add(new Line(key, value, null, note));
        return this;
    }

    public DraftMapping Add(string key, DraftMapping inner, string? note = null)
    {
        _lines.Add(new Line(key, null, inner, note));
        return this;
    }

    /// <summary>A remark on a line of its own.</summary>
    public DraftMapping Remark(string text)
    {
        _lines.Add(new Line(null, null, null, text));
        return this;
    }

    /// <summary>Adds what <paramref name="add"/> adds, where it holds.</summary>
    public DraftMapping If(bool holds, Action<DraftMapping> add)
    {
        if (holds)
        {
            add(this);
        }

        return this;
    }

    /// <summary>Puts a value at a path of keys in the place of what is there, or at the end.</summary>
    public void Set(ReadOnlySpan<string> path, string value)
    {
        var key = path[0];
        var at = _lines.FindIndex(line => line.Key == key);
        if (path.Length == 1)
        {
            Put(at, new Line(key, value, null, null));
            return;
        }

        var inner = at >= 0 && _lines[at].Inner is { } there ? there : new DraftMapping();
        inner.Set(path[1..], value);
        Put(at, new Line(key, null, inner, at >= 0 ? _lines[at].Note : null));
    }

    public string Write(int level = 0)
    {
        var text = new StringBuilder();
        Write(text, new string(' ', level * 2));
        return text.ToString();
    }

    private void Put(int at, Line line)
    {
        if (at >= 0)
        {
            _lines[at] = line;
        }
        else
        {
            _lines.Add(line);
        }
    }

    private void Write(StringBuilder text, string indent)
    {
        foreach (var line in _lines)
        {
            text.Append(indent);
            if (line.Key is null)
            {
                text.Append("# ").Append(line.Note).Append('\n');
                continue;
            }

            text.Append(line.Key).Append(':').Append(line.Value is null ? "" : " ").Append(line.Value);
            text.Append(line.Note is null ? "" : $"  # {line.Note}").Append('\n');
            line.Inner?.Write(text, indent + "  ");
        }
    }

    private sealed record Line(string? Key, string? Value, DraftMapping? Inner, string? Note);
}
