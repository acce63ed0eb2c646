namespace Swapwright.Site.Rendering;

/// <summary>A template that cannot be parsed or rendered, with the place in its file; lines and columns count from 1.</summary>
public sealed class TemplateException(string file, int line, int column, string message, Exception? inner = null)
    : Exception(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{file}:{line}:{column}: {message}"), inner)
{
    public string File { get; } = file;

    public int Line { get; } = line;

    public int Column { get; } = column;

    /// <summary>The message without the place.</summary>
    public string Fault { get; } = message;
}
