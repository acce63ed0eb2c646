using System.Buffers;
using System.Globalization;
using System.Text;

namespace Swapwright.Worksheets.Drawings;

/// <summary>
/// Writes an inline SVG with a title and a description. Everything looks as meant without a stylesheet (presentation attributes
/// only, which any stylesheet outweighs); text is escaped.
/// </summary>
internal sealed class Drawing
{
    private const double UsualSize = 11;

    /// <summary>Letters, digits and marks that stand in a text as they are; most texts hold nothing else.</summary>
    private static readonly SearchValues<char> s_plain = SearchValues.Create(
        " !#$%()*+,-./0123456789:;=?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~°²³µ·×Ωäöüßéè–—−’“”…≤≥→");

    // Shapes first, texts above them: what many elements share is said once, on their group.
    private readonly StringBuilder shapes = new();
    private readonly StringBuilder texts = new();

    public void Line(string classes, double x1, double y1, double x2, double y2, string more = "") =>
        shapes.Append(CultureInfo.InvariantCulture, $"<line class=\"{classes}\" x1=\"{N(x1)}\" y1=\"{N(y1)}\" x2=\"{N(x2)}\" y2=\"{N(y2)}\"{more}/>\n");

    public void Path(string classes, string d, string more = "") =>
        shapes.Append(CultureInfo.InvariantCulture, $"<path class=\"{classes}\" d=\"{d}\"{more}/>\n");

    public void Box(string classes, double x, double y, double width, double height, double radius) =>
        shapes.Append(CultureInfo.InvariantCulture, $"<rect class=\"{classes}\" x=\"{N(x)}\" y=\"{N(y)}\" width=\"{N(width)}\" height=\"{N(height)}\" rx=\"{N(radius)}\"/>\n");

    public void Dot(string classes, double x, double y, double radius) =>
        shapes.Append(CultureInfo.InvariantCulture, $"<circle class=\"{classes}\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"{N(radius)}\" fill=\"currentColor\"/>\n");

    /// <summary>A text on its baseline; <paramref name="anchor"/> is start, middle or end.</summary>
    public void Text(string classes, double x, double y, string anchor, double size, string text, bool bold = false) =>
        texts.Append(CultureInfo.InvariantCulture, $"<text class=\"{classes}\" x=\"{N(x)}\" y=\"{N(y)}\"{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")}{(size == UsualSize ? "" : $" font-size=\"{N(size)}\"")}{(bold ? " font-weight=\"bold\"" : "")}>{Escape(text)}</text>\n");

    /// <summary>The finished drawing.</summary>
    /// <param name="id">Prefix of the ids that tie title and description to the drawing; unique on the page.</param>
    public string Finish(string classes, string id, string title, string description, double width, double height)
    {
        var safe = Escape(id);
        return string.Create(CultureInfo.InvariantCulture, $"""
            <svg xmlns="http://www.w3.org/2000/svg" class="{classes}" role="img" aria-labelledby="{safe}-title {safe}-desc" viewBox="0 0 {N(width)} {N(height)}" width="{N(width)}" height="{N(height)}" font-family="system-ui, sans-serif" font-size="{N(UsualSize)}">
            <title id="{safe}-title">{Escape(title)}</title>
            <desc id="{safe}-desc">{Escape(description)}</desc>
            <g fill="none" stroke="currentColor">
            {shapes}</g><g fill="currentColor" paint-order="stroke">
            {texts}</g></svg>

            """);
    }

    /// <summary>The text size, made smaller where the text would not fit; letters are taken as 0.52 of the size wide on average.</summary>
    public static double Fit(double size, string text, double width) =>
        Math.Max(7, Math.Min(size, Math.Floor(width / (0.52 * Math.Max(1, text.Length)) * 2) / 2));

    /// <summary>A coordinate to a tenth.</summary>
    public static string N(double value)
    {
        var tenths = Math.Round(value * 10);
        if (!(Math.Abs(tenths) < 1e9))
        {
            return Math.Round(value, 1).ToString("0.#", CultureInfo.InvariantCulture);
        }

        // Thousands of these go into a drawing, and a format is looked up letter by letter.
        var (whole, tenth) = Math.DivRem((int)Math.Abs(tenths), 10);
        return (tenths < 0, tenth) switch
        {
            (false, 0) => whole.ToString(CultureInfo.InvariantCulture),
            (true, 0) => string.Create(CultureInfo.InvariantCulture, $"-{whole}"),
            (false, _) => string.Create(CultureInfo.InvariantCulture, $"{whole}.{tenth}"),
            _ => string.Create(CultureInfo.InvariantCulture, $"-{whole}.{tenth}"),
        };
    }

    /// <summary>For text and attribute values alike; characters that XML forbids become a question mark.</summary>
    public static string Escape(string text)
    {
        if (!text.AsSpan().ContainsAnyExcept(s_plain))
        {
            return text;
        }

        var safe = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            _ = rune.Value switch
            {
                '&' => safe.Append("&amp;"),
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                < ' ' or 0xFFFE or 0xFFFF => safe.Append(rune.Value is '\t' or '\n' or '\r' ? ' ' : '?'),
                _ => safe.Append(rune.ToString()),
            };
        }

        return safe.ToString();
    }
}
