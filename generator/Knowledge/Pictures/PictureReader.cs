using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Pictures;

/// <summary>
/// The text of an SVG file → a picture, or what is wrong with it. One mistake and the picture is not shown: taking a
/// bad piece out would show something that nobody drew.
/// </summary>
internal static class PictureReader
{
    public static (Picture? Picture, ImmutableArray<Finding> Findings) Read(SourceFile file)
    {
        if (file.Text.Length > PictureForm.MostCharacters)
        {
            return Refused(Place.Of(file.Path), string.Create(CultureInfo.InvariantCulture, $"the picture is longer than {PictureForm.MostCharacters} characters"), "Draw it with fewer points.");
        }

        // A document type is refused before the parser meets it, so that it is told as what it is.
        var dtd = file.Text.IndexOf("<!DOCTYPE", StringComparison.OrdinalIgnoreCase);
        if (dtd >= 0)
        {
            return Refused(new LineIndex(file.Text).Place(file.Path, dtd, dtd + 9), "a document type, and with it entities of its own, is not allowed in a picture", "Take the declaration out.");
        }

        try
        {
            return PictureJudge.Judge(file, Parse(file.Text));
        }
        catch (XmlException fault)
        {
            var (line, column) = (Math.Max(fault.LineNumber, 1), Math.Max(fault.LinePosition, 1));
            return Refused(new Place(file.Path, line, column, line, column), "the picture is not well-formed XML from here on", "Close every element, and put every value in quotes.");
        }
    }

    private static XDocument Parse(string text)
    {
        using var characters = new StringReader(text);
        using var reader = XmlReader.Create(characters, new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = PictureForm.MostCharacters,
            MaxCharactersFromEntities = 1,
            IgnoreComments = true,
        });
        return XDocument.Load(reader, LoadOptions.SetLineInfo | LoadOptions.PreserveWhitespace);
    }

    private static (Picture? Picture, ImmutableArray<Finding> Findings) Refused(Place place, string message, string mend) =>
        (null, [new Finding(FindingKinds.Article, message, place) { Mend = mend }]);
}
