using System.Globalization;
using System.Xml;

namespace Swapwright.Site.Machines;

/// <summary>A preview as SVG, in the reader's own typeface.</summary>
internal sealed class PreviewSvg : IPreviewCanvas
{
    private const string Svg = "http://www.w3.org/2000/svg";

    // Mean width of a letter of a plain typeface as a part of its size; a long title gets smaller letters. Measured on DejaVu Sans Bold.
    private const double LetterWidth = 0.66;

    private readonly XmlWriter _xml;

    private PreviewSvg(XmlWriter xml) => _xml = xml;

    public static byte[] Write(string title, Action<IPreviewCanvas> draw) => XmlText.Write(xml =>
    {
        var canvas = new PreviewSvg(xml);
        xml.WriteStartElement("svg", Svg);
        canvas.Attributes(("viewBox", $"0 0 {Number(PreviewPicture.Width)} {Number(PreviewPicture.Height)}"), ("width", Number(PreviewPicture.Width)), ("height", Number(PreviewPicture.Height)), ("font-family", "Trebuchet MS, Fira Sans, Noto Sans, DejaVu Sans, sans-serif"));
        xml.WriteElementString("title", Svg, XmlText.Clean(title));
        draw(canvas);
        xml.WriteEndElement();
    });

    public void Box(int x, int y, int width, int height, PreviewTone fill, PreviewTone edge)
    {
        _xml.WriteStartElement("rect", Svg);
        Attributes(("x", Number(x)), ("y", Number(y)), ("width", Number(width)), ("height", Number(height)), ("fill", Colour(fill)), ("stroke", Colour(edge)), ("stroke-width", "4"));
        _xml.WriteEndElement();
    }

    public void Hook(int x, int y)
    {
        _xml.WriteStartElement("path", Svg);
        Attributes(("d", $"M{Number(x)} {Number(y - 32)}v32m-16-14 16 16 16-16"), ("fill", "none"), ("stroke", Colour(PreviewTone.Deep)), ("stroke-width", "6"));
        _xml.WriteEndElement();
    }

    public void Words(string text, int x, int y, int size, int room, PreviewTone tone, bool bold)
    {
        _xml.WriteStartElement("text", Svg);
        var letters = Math.Max(1, new StringInfo(text).LengthInTextElements);
        Attributes(("x", Number(x)), ("y", Number(y)), ("font-size", Number(Math.Min(size, (int)(room / (LetterWidth * letters))))), ("fill", Colour(tone)));
        if (bold)
        {
            _xml.WriteAttributeString("font-weight", "700");
        }

        _xml.WriteString(XmlText.Clean(text));
        _xml.WriteEndElement();
    }

    private void Attributes(params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        foreach (var (name, value) in attributes)
        {
            _xml.WriteAttributeString(name, value);
        }
    }

    private static string Colour(PreviewTone tone)
    {
        var (red, green, blue) = PreviewPicture.Colours[(int)tone];
        return string.Create(CultureInfo.InvariantCulture, $"#{red:x2}{green:x2}{blue:x2}");
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
