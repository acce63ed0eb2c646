using System.Globalization;
using Scriban.Runtime;
using Swapwright.Site.Rendering.Compiled;

namespace Swapwright.Site.Rendering;

/// <summary>Where a page's text gathers; kept by a worker from page to page.</summary>
/// <param name="most">More characters than these are refused.</param>
internal sealed class PageBuffer(int room = 512, int most = int.MaxValue) : IScriptOutput
{
    private char[] _text = new char[room];
    private int _length;

    public ReadOnlySpan<char> Text => _text.AsSpan(0, _length);

    public void Clear() => _length = 0;

    public void Write(string text, int offset, int count) => Write(text.AsSpan(offset, count));

    public void Write(ReadOnlySpan<char> text)
    {
        if (_text.Length - _length < text.Length)
        {
            Grow(text.Length);
        }

        text.CopyTo(_text.AsSpan(_length));
        _length += text.Length;
    }

    public void Write(int number)
    {
        int written;
        while (!number.TryFormat(_text.AsSpan(_length), out written, provider: CultureInfo.InvariantCulture))
        {
            Grow(16);
        }

        _length += written;
    }

    public void WriteEscaped(ReadOnlySpan<char> text) => HtmlText.Append(text, this);

    /// <summary>Takes off what was written from there on.</summary>
    public string Take(int start)
    {
        var taken = _text.AsSpan(start, _length - start).ToString();
        _length = start;
        return taken;
    }

    /// <summary>Forgets what was written from there on.</summary>
    public void Cut(int start) => _length = start;

    private void Grow(int more)
    {
        if (_length + (long)more > most)
        {
            throw new BeyondCompiledException("too much text");
        }

        Array.Resize(ref _text, Math.Max((int)Math.Min(_text.Length * 2L, most), _length + more));
    }

    public ValueTask WriteAsync(string text, int offset, int count, CancellationToken cancellationToken)
    {
        Write(text, offset, count);
        return ValueTask.CompletedTask;
    }

    public override string ToString() => Text.ToString();
}
