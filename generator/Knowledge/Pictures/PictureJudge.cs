using System.Collections.Immutable;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using Swapwright.Diagnostics;
using Swapwright.Source;

namespace Swapwright.Knowledge.Pictures;

/// <summary>Holds every element, attribute and word of one picture against <see cref="PictureForm"/>.</summary>
internal sealed class PictureJudge(SourceFile file)
{
    private readonly FindingList _findings = new(file.Path, SourceLimits.Default.MaxFindingsPerFile);
    private readonly Dictionary<string, string> _ids = new(StringComparer.Ordinal);
    private readonly List<(string Marker, Place Place)> _markers = [];
    private int _elements;

    public static (Picture? Picture, ImmutableArray<Finding> Findings) Judge(SourceFile file, XDocument document)
    {
        var judge = new PictureJudge(file);
        var picture = judge.Whole(document);
        return judge._findings.Count == 0 ? (picture, []) : (null, judge._findings.ToImmutable());
    }

    private Picture Whole(XDocument document)
    {
        var root = document.Root!;
        var place = PlaceOf(root, root.Name.LocalName.Length);
        foreach (var instruction in document.Nodes().OfType<XProcessingInstruction>())
        {
            Report(PlaceOf(instruction, instruction.Target.Length), $"the instruction `{Quoted(instruction.Target)}` is not allowed in a picture", "Take it out.");
        }

        if (root.Name != XName.Get("svg", PictureForm.Namespace))
        {
            Report(place, $"the picture begins with `{Quoted(root.Name.LocalName)}` and not with `svg` of its namespace", $"Begin it with `<svg xmlns=\"{PictureForm.Namespace}\" viewBox=\"0 0 440 240\">`.");
            return new Picture(file.Id, "", "", place, 0, 0, []);
        }

        var content = Element(root, 1).Children;
        foreach (var (marker, at) in _markers)
        {
            if (_ids.GetValueOrDefault(marker) != "marker")
            {
                Report(at, $"no marker `{Quoted(marker)}` is in the picture", "Name a `marker` of the same file.");
            }
        }

        var (width, height) = Sides(root, place);
        return new Picture(file.Id, Head(content, "title", place), Head(content, "desc", place), place, width, height, [.. content.Where(node => node is not PictureElement { Name: "title" or "desc" })]);
    }

    /// <summary>What is inside something that is refused is not looked at: the cause is told once.</summary>
    private PictureElement Element(XElement element, int depth)
    {
        var name = element.Name.LocalName;
        var place = PlaceOf(element, name.Length);
        if (element.Name.NamespaceName != PictureForm.Namespace || !PictureForm.Elements.Contains(name) || (name == "svg" && depth > 1))
        {
            var near = NearestName.Of(name, PictureForm.Elements);
            return Refused(place, $"the element `{Quoted(name)}` is not allowed in a picture{(near is null || near == name ? "" : $"; did you mean `{near}`?")}", $"Draw with {string.Join(", ", PictureForm.Elements.Where(one => one != "svg").Order(StringComparer.Ordinal).Select(one => $"`{one}`"))}, in the namespace of SVG.");
        }

        if (depth > PictureForm.DeepestElement)
        {
            return Refused(place, string.Create(CultureInfo.InvariantCulture, $"elements are nested deeper than {PictureForm.DeepestElement}"), "Take groups out of one another.");
        }

        if (++_elements > PictureForm.MostElements)
        {
            return _elements > PictureForm.MostElements + 1 ? new PictureElement(name, [], []) : Refused(place, string.Create(CultureInfo.InvariantCulture, $"the picture has more than {PictureForm.MostElements} elements"), "Draw it with fewer.");
        }

        if (name is "title" or "desc" && depth != 2)
        {
            Report(place, $"`{name}` stands only directly inside `svg`", "Say it once for the whole picture.");
        }

        var attributes = ImmutableArray.CreateBuilder<KeyValuePair<string, string>>();
        foreach (var attribute in element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration || attribute.Name.LocalName != "xmlns"))
        {
            if (Attribute(name, attribute))
            {
                attributes.Add(new(attribute.Name.LocalName, attribute.Value));
            }
        }

        return new PictureElement(name, attributes.ToImmutable(), [.. element.Nodes().Select(node => Child(element, node, depth)).OfType<PictureNode>()]);
    }

    private PictureNode? Child(XElement parent, XNode node, int depth)
    {
        var name = parent.Name.LocalName;
        switch (node)
        {
            case XElement inner:
                if (PictureForm.Containers.Contains(name) && (name == "text") == (inner.Name.LocalName == "tspan"))
                {
                    return Element(inner, depth + 1);
                }

                Report(PlaceOf(inner, inner.Name.LocalName.Length), $"`{Quoted(inner.Name.LocalName)}` cannot stand inside `{name}`", "Move it out.");
                return null;
            case XText text:
                if (PictureForm.Wordy.Contains(name))
                {
                    if (text.Value.Length > PictureForm.LongestWords)
                    {
                        Report(PlaceOf(text, 1), string.Create(CultureInfo.InvariantCulture, $"the words in `{name}` are longer than {PictureForm.LongestWords} characters"), "Say it in the article.");
                    }

                    if (SourceDecoder.RefusedIn(text.Value) is { } refused)
                    {
                        Report(PlaceOf(text, 1), $"the character {refused} is not allowed", "Remove it.");
                    }

                    return new PictureWords(text.Value.ReplaceLineEndings(" "));
                }

                if (!string.IsNullOrWhiteSpace(text.Value))
                {
                    Report(PlaceOf(text, 1), $"words cannot stand inside `{name}`", "Put them into `text`.");
                }

                return null;
            default:
                Report(PlaceOf(node, 1), "an instruction is not allowed in a picture", "Take it out.");
                return null;
        }
    }

    private bool Attribute(string element, XAttribute attribute)
    {
        var name = attribute.Name.LocalName;
        var place = PlaceOf(attribute, name.Length);
        if (attribute.IsNamespaceDeclaration || attribute.Name.NamespaceName.Length > 0 || !PictureForm.IsKnown(name))
        {
            var near = attribute.Name.NamespaceName.Length > 0 ? null : NearestName.Of(name, PictureForm.Attributes);
            Report(place, $"the attribute `{Quoted(name)}` is not allowed in a picture{(near is null ? "" : $"; did you mean `{near}`?")}", name == "style" ? "Say colours and strokes by class, as in `class=\"fill-metal\"`." : "Take it out.");
            return false;
        }

        if (!PictureForm.Accepts(name, attribute.Value))
        {
            Report(place, $"the value of `{name}` does not have a form that is allowed", name is "fill" or "stroke" ? $"Colours are said by class: {ClassWords()}." : "Write plain numbers and names of the same picture.");
            return false;
        }

        if (name == "class" && attribute.Value.Split(' ').FirstOrDefault(one => !PictureForm.Classes.Contains(one)) is { } unknown)
        {
            var near = NearestName.Of(unknown, PictureForm.Classes);
            Report(place, $"no class `{Quoted(unknown)}` for pictures{(near is null ? "" : $"; did you mean `{near}`?")}", $"Classes are {ClassWords()}.");
            return false;
        }

        if (name == "id" && !_ids.TryAdd(attribute.Value, element))
        {
            Report(place, $"the id `{Quoted(attribute.Value)}` is used twice", "Rename one of the two.");
        }

        if (PictureForm.MarkerOf(name, attribute.Value) is { } marker)
        {
            _markers.Add((marker, place));
        }

        return true;
    }

    private (decimal Width, decimal Height) Sides(XElement root, Place place)
    {
        var box = root.Attribute("viewBox")?.Value is { } written && PictureForm.Accepts("viewBox", written) ? written.Split(' ').Select(number => decimal.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture)).ToArray() : null;
        if (box is null || box[0] != 0 || box[1] != 0 || box[2..].Any(side => side is < PictureForm.SmallestSide or > PictureForm.LargestSide))
        {
            Report(place, string.Create(CultureInfo.InvariantCulture, $"the picture has no `viewBox` that begins at 0 0 and has sides of {PictureForm.SmallestSide} to {PictureForm.LargestSide}"), "Write it like `viewBox=\"0 0 440 240\"`.");
            return (0, 0);
        }

        return (box[2], box[3]);
    }

    private string Head(ImmutableArray<PictureNode> content, string name, Place place)
    {
        var words = content.OfType<PictureElement>().Where(element => element.Name == name).Select(element => string.Concat(element.Children.OfType<PictureWords>().Select(one => one.Text)).Trim()).ToList();
        if (words.Count != 1 || words[0].Length == 0)
        {
            Report(place, words.Count > 1 ? $"the picture has `{name}` more than once" : $"the picture has no `{name}`", name == "title" ? "Say in `title` what it shows." : "Say in `desc` what there is to see, for those who do not see it.");
        }

        return words.FirstOrDefault("");
    }

    private static string ClassWords() => string.Join(", ", PictureForm.Classes.Select(one => $"`{one}`"));

    private PictureElement Refused(Place place, string message, string mend)
    {
        Report(place, message, mend);
        return new PictureElement("g", [], []);
    }

    private void Report(Place place, string message, string mend) => _findings.Add(new Finding(FindingKinds.Article, message, place) { Mend = mend });

    private Place PlaceOf(IXmlLineInfo node, int length) =>
        node.HasLineInfo() ? new Place(file.Path, node.LineNumber, node.LinePosition, node.LineNumber, node.LinePosition + length) : Place.Of(file.Path);

    /// <summary>A name of a hostile file may hold anything that XML allows; in a message it stands in back-ticks on one line.</summary>
    private static string Quoted(string written) => (written.Length > 60 ? written[..60] + "…" : written).ReplaceLineEndings(" ").Replace('`', '\'');
}
