using System.Text;
using System.Xml;

namespace Swapwright.Site.Machines;

/// <summary>XML for machines: written by one writer with one set of habits, whatever a knowledge base holds.</summary>
internal static class XmlText
{
    private static readonly XmlWriterSettings s_settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        Indent = true,
        NewLineChars = "\n",
    };

    public static byte[] Write(Action<XmlWriter> write)
    {
        using var stream = new MemoryStream();
        using (var xml = XmlWriter.Create(stream, s_settings))
        {
            write(xml);
        }

        return stream.ToArray();
    }

    /// <summary>The text without what XML has no way to write: control characters and halves of a pair become U+FFFD.</summary>
    public static string Clean(string text)
    {
        if (IsClean(text))
        {
            return text;
        }

        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            clean.Append(rune.Value > char.MaxValue || XmlConvert.IsXmlChar((char)rune.Value) ? rune : Rune.ReplacementChar);
        }

        return clean.ToString();
    }

    private static bool IsClean(string text)
    {
        foreach (var c in text)
        {
            if (!XmlConvert.IsXmlChar(c))
            {
                return false;
            }
        }

        return true;
    }
}
