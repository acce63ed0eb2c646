using System.Globalization;
using System.Xml;

namespace Swapwright.Site.Machines;

/// <summary>What a preview shows of a guide.</summary>
internal sealed record PreviewLines(string Site, string Donor, string Chassis, string Options, string Hours, string Money, string Label);

/// <summary>
/// Draws the picture that is shown where a guide is linked to: 1200 by 630 units, the shape that such previews are cut to
/// (common practice, no source). Colours are written out, since no style sheet goes with it.
/// </summary>
internal static class PreviewPicture
{
    private const string Svg = "http://www.w3.org/2000/svg";
    private const string Ink = "#182022";
    private const string Paper = "#f4f5ee";
    private const string Card = "#fdfdf9";
    private const string Deep = "#17494d";
    private const string Quiet = "#4d5a5b";

    // Mean width of a letter of a plain typeface as a part of its size; a long title gets smaller letters. Measured on DejaVu Sans Bold.
    private const double LetterWidth = 0.66;

    public static byte[] Draw(PreviewLines preview) => XmlText.Write(xml =>
    {
        xml.WriteStartElement("svg", Svg);
        Attributes(xml, ("viewBox", "0 0 1200 630"), ("width", "1200"), ("height", "630"), ("font-family", "Seravek, Ubuntu, Calibri, DejaVu Sans, sans-serif"));
        xml.WriteElementString("title", Svg, XmlText.Clean($"{preview.Donor} into {preview.Chassis}"));
        Box(xml, 0, 0, 1200, 630, Paper, Paper);
        Box(xml, 0, 0, 1200, 84, Deep, Deep);
        Words(xml, preview.Site, 60, 55, 32, 1080, Paper, bold: true);

        // The donor goes down into the chassis: two plates and the hook between them.
        Box(xml, 60, 124, 1080, 110, Card, Ink);
        Words(xml, preview.Donor, 90, 199, 56, 1020, Ink, bold: true);
        Box(xml, 60, 286, 1080, 110, Card, Ink);
        Words(xml, preview.Chassis, 90, 361, 56, 1020, Ink, bold: true);
        Shape(xml, "M120 234v32m-16-14 16 16 16-16", Deep);
        Words(xml, preview.Options.Length > 0 ? $"into, {preview.Options}" : "into", 160, 270, 28, 980, Quiet, bold: false);

        Gauge(xml, 60, "Work", preview.Hours);
        Gauge(xml, 620, "Money", preview.Money);
        Words(xml, preview.Label, 60, 600, 24, 1080, Quiet, bold: false);
        xml.WriteEndElement();
    });

    private static void Gauge(XmlWriter xml, int x, string name, string value)
    {
        Box(xml, x, 430, 8, 116, Deep, Deep);
        Words(xml, name, x + 30, 462, 28, 460, Quiet, bold: false);
        Words(xml, value, x + 30, 526, 54, 460, Ink, bold: true);
    }

    private static void Box(XmlWriter xml, int x, int y, int width, int height, string fill, string stroke)
    {
        xml.WriteStartElement("rect", Svg);
        Attributes(xml, ("x", Number(x)), ("y", Number(y)), ("width", Number(width)), ("height", Number(height)), ("fill", fill), ("stroke", stroke), ("stroke-width", "4"));
        xml.WriteEndElement();
    }

    private static void Shape(XmlWriter xml, string path, string stroke)
    {
        xml.WriteStartElement("path", Svg);
        Attributes(xml, ("d", path), ("fill", "none"), ("stroke", stroke), ("stroke-width", "6"));
        xml.WriteEndElement();
    }

    /// <summary>One line, in letters as large as asked or as small as the room wants.</summary>
    private static void Words(XmlWriter xml, string text, int x, int y, int size, int room, string fill, bool bold)
    {
        xml.WriteStartElement("text", Svg);
        var letters = Math.Max(1, new StringInfo(text).LengthInTextElements);
        Attributes(xml, ("x", Number(x)), ("y", Number(y)), ("font-size", Number(Math.Min(size, (int)(room / (LetterWidth * letters))))), ("fill", fill));
        if (bold)
        {
            xml.WriteAttributeString("font-weight", "700");
        }

        xml.WriteString(XmlText.Clean(text));
        xml.WriteEndElement();
    }

    private static void Attributes(XmlWriter xml, params ReadOnlySpan<(string Name, string Value)> attributes)
    {
        foreach (var (name, value) in attributes)
        {
            xml.WriteAttributeString(name, value);
        }
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
