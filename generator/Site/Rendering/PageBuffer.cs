using Scriban.Runtime;

namespace Swapwright.Site.Rendering;

/// <summary>Where a page's text gathers; kept by a worker from page to page.</summary>
internal sealed class PageBuffer(int room = 512) : IScriptOutput
{
    private char[] _text = new char[room];
    private int _length;

    public ReadOnlySpan<char> Text => _text.AsSpan(0, _length);

    public void Clear() => _length = 0;

    public void Write(string text, int offset, int count)
    {
        if (_text.Length - _length < count)
        {
            Array.Resize(ref _text, Math.Max(_text.Length * 2, _length + count));
        }

        text.AsSpan(offset, count).CopyTo(_text.AsSpan(_length));
        _length += count;
    }

    public ValueTask WriteAsync(string text, int offset, int count, CancellationToken cancellationToken)
    {
        Write(text, offset, count);
        return ValueTask.CompletedTask;
    }

    public override string ToString() => Text.ToString();
}
