using System.Text;
using Scriban.Runtime;

namespace Swapwright.Site.Rendering;

/// <summary>Where a page's text gathers; kept by a worker from page to page.</summary>
internal sealed class PageBuffer : IScriptOutput
{
    private readonly StringBuilder _text = new(64 * 1024);

    public void Clear() => _text.Clear();

    public void Write(string text, int offset, int count) => _text.Append(text, offset, count);

    public ValueTask WriteAsync(string text, int offset, int count, CancellationToken cancellationToken)
    {
        Write(text, offset, count);
        return ValueTask.CompletedTask;
    }

    public override string ToString() => _text.ToString();
}
