using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace Swapwright.Knowledge.Pictures;

/// <summary>
/// What may stand in a picture. Pictures come from strangers and become part of a page, so everything is refused that is
/// not listed here: no scripts, no handlers, no addresses, no style, no foreign elements. Colours are said by class, since
/// a literal colour that reads well on paper is lost in the dark.
/// </summary>
internal static partial class PictureForm
{
    public const string Namespace = "http://www.w3.org/2000/svg";

    /// <summary>In UTF-16 code units; the largest of the shipped pictures takes a tenth.</summary>
    public const int MostCharacters = 64 * 1024;

    public const int MostElements = 1500;

    public const int DeepestElement = 12;

    public const int LongestValue = 4000;

    /// <summary>Of a title, a description or the words of one text element.</summary>
    public const int LongestWords = 600;

    /// <summary>Sides of the picture, in its own units.</summary>
    public const decimal SmallestSide = 40;

    public const decimal LargestSide = 1200;

    public static readonly FrozenSet<string> Elements = Set("svg", "title", "desc", "g", "defs", "marker", "path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan");

    /// <summary>Elements that hold words; everywhere else only white space may stand between elements.</summary>
    public static readonly FrozenSet<string> Wordy = Set("title", "desc", "text", "tspan");

    /// <summary>Elements in which other elements may stand.</summary>
    public static readonly FrozenSet<string> Containers = Set("svg", "g", "defs", "marker", "text");

    /// <summary>What a picture's classes are called; the site's style sheet draws each with a colour for light, dark and paper.</summary>
    public static readonly ImmutableSortedSet<string> Classes = ImmutableSortedSet.Create(
        StringComparer.Ordinal,
        "thin", "thick", "dash", "hidden-edge",
        "fill-paper", "fill-soft", "fill-metal", "fill-copper", "fill-rubber", "fill-fluid", "fill-fuel", "fill-good", "fill-bad", "fill-ink",
        "stroke-copper", "stroke-fluid", "stroke-fuel", "stroke-good", "stroke-bad", "stroke-quiet",
        "small", "strong", "quiet", "good", "bad");

    private static readonly FrozenDictionary<string, Regex> s_values = new Dictionary<string, Regex>(StringComparer.Ordinal)
    {
        ["x"] = Number(), ["y"] = Number(), ["x1"] = Number(), ["y1"] = Number(), ["x2"] = Number(), ["y2"] = Number(),
        ["cx"] = Number(), ["cy"] = Number(), ["dx"] = Number(), ["dy"] = Number(),
        ["r"] = Size(), ["rx"] = Size(), ["ry"] = Size(), ["width"] = Size(), ["height"] = Size(),
        ["refX"] = Number(), ["refY"] = Number(), ["markerWidth"] = Size(), ["markerHeight"] = Size(), ["viewBox"] = FourNumbers(),
        ["orient"] = Orient(), ["markerUnits"] = MarkerUnits(),
        ["points"] = Points(), ["d"] = PathData(), ["transform"] = Transform(),
        ["fill"] = Paint(), ["stroke"] = Paint(), ["stroke-width"] = Size(), ["stroke-dasharray"] = Points(), ["stroke-linecap"] = LineCap(), ["stroke-linejoin"] = LineJoin(),
        ["opacity"] = Share(), ["text-anchor"] = Anchor(), ["font-size"] = FontSize(), ["font-weight"] = Weight(), ["dominant-baseline"] = Baseline(),
        ["marker-start"] = OwnMarker(), ["marker-mid"] = OwnMarker(), ["marker-end"] = OwnMarker(),
        ["id"] = Id(), ["class"] = ClassList(),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    public static IEnumerable<string> Attributes => s_values.Keys;

    public static bool IsKnown(string attribute) => s_values.ContainsKey(attribute);

    /// <summary>Whether a value has the form that its attribute asks for. Classes and markers are held against names besides.</summary>
    public static bool Accepts(string attribute, string value) => value.Length <= LongestValue && s_values[attribute].IsMatch(value);

    /// <summary>The id of a marker in <c>url(#id)</c>; null for every other value.</summary>
    public static string? MarkerOf(string attribute, string value) =>
        attribute.StartsWith("marker-", StringComparison.Ordinal) && value.StartsWith("url(#", StringComparison.Ordinal) ? value[5..^1] : null;

    private static FrozenSet<string> Set(params string[] names) => names.ToFrozenSet(StringComparer.Ordinal);

    private const RegexOptions Plain = RegexOptions.CultureInvariant | RegexOptions.NonBacktracking;

    [GeneratedRegex(@"^-?[0-9]{1,5}(?:\.[0-9]{1,4})?\z", Plain)]
    private static partial Regex Number();

    [GeneratedRegex(@"^[0-9]{1,4}(?:\.[0-9]{1,4})?\z", Plain)]
    private static partial Regex Size();

    [GeneratedRegex(@"^-?[0-9]{1,5}(?:\.[0-9]{1,4})?(?: -?[0-9]{1,5}(?:\.[0-9]{1,4})?){3}\z", Plain)]
    private static partial Regex FourNumbers();

    [GeneratedRegex(@"^-?[0-9]{1,5}(?:\.[0-9]{1,4})?(?:[ ,]+-?[0-9]{1,5}(?:\.[0-9]{1,4})?)*\z", Plain)]
    private static partial Regex Points();

    [GeneratedRegex(@"^[MmLlHhVvCcSsQqTtAaZz0-9 ,.\n\r\t-]*\z", Plain)]
    private static partial Regex PathData();

    [GeneratedRegex(@"^(?:(?:translate|rotate|scale)\([0-9 ,.-]{1,60}\) ?){1,4}\z", Plain)]
    private static partial Regex Transform();

    [GeneratedRegex(@"^(?:none|currentColor)\z", Plain)]
    private static partial Regex Paint();

    [GeneratedRegex(@"^(?:butt|round|square)\z", Plain)]
    private static partial Regex LineCap();

    [GeneratedRegex(@"^(?:miter|round|bevel)\z", Plain)]
    private static partial Regex LineJoin();

    [GeneratedRegex(@"^(?:1|0(?:\.[0-9]{1,4})?)\z", Plain)]
    private static partial Regex Share();

    [GeneratedRegex(@"^(?:start|middle|end)\z", Plain)]
    private static partial Regex Anchor();

    [GeneratedRegex(@"^(?:middle|central|hanging)\z", Plain)]
    private static partial Regex Baseline();

    [GeneratedRegex(@"^[0-9]{2}\z", Plain)]
    private static partial Regex FontSize();

    [GeneratedRegex(@"^(?:400|700)\z", Plain)]
    private static partial Regex Weight();

    [GeneratedRegex(@"^(?:auto|auto-start-reverse|-?[0-9]{1,3})\z", Plain)]
    private static partial Regex Orient();

    [GeneratedRegex(@"^(?:strokeWidth|userSpaceOnUse)\z", Plain)]
    private static partial Regex MarkerUnits();

    [GeneratedRegex(@"^(?:none|url\(#[a-z][a-z0-9-]{0,40}\))\z", Plain)]
    private static partial Regex OwnMarker();

    [GeneratedRegex(@"^[a-z][a-z0-9-]{0,40}\z", Plain)]
    private static partial Regex Id();

    [GeneratedRegex(@"^[a-z-]{1,20}(?: [a-z-]{1,20}){0,5}\z", Plain)]
    private static partial Regex ClassList();
}
