namespace Swapwright.Site.Models;

/// <summary>What a reader does at a position; decides the mark and the colour, the words are given beside it.</summary>
public enum Verb
{
    Keep,
    Take,
    Buy,
    Make,
    Modify,
    Move,
    LeaveOff,
}

public enum Standing
{
    Reported,
    Measured,
    Built,
}

/// <summary>How heavily a value or a line has to be marked.</summary>
public enum Weight
{
    Plain,
    Good,
    Caution,
    Bad,
}

/// <summary>A labelled value, both display-ready.</summary>
/// <param name="Detail">Where it comes from or how it is meant, one line; null leaves it out.</param>
/// <param name="Weight">Marks a value within or beyond its limit; words must say so as well.</param>
public sealed record NamedValue(string Name, string Value, string? Detail = null, Weight Weight = Weight.Plain);

public sealed record NamedCount(string Name, int Count, string? Detail = null);

/// <summary>Three display-ready numbers with their unit: "12", "18", "30", "hours".</summary>
public sealed record RangeText(string Least, string Likely, string Most, string Unit);

/// <summary>A word of warning.</summary>
/// <param name="About">Its subject in words, as in "Fuel".</param>
public sealed record Caution(string About, HtmlString Text);

/// <summary>The cautions about one hazard.</summary>
/// <param name="Whole">Those of the whole job.</param>
/// <param name="Placed">Those of a line or a task.</param>
public sealed record CautionGroup(string About, IReadOnlyList<HtmlString> Whole, IReadOnlyList<PlacedText> Placed) : Repeated;

/// <param name="Where">Titles of the lines and tasks that it belongs to.</param>
public sealed record PlacedText(HtmlString Text, string Where);

/// <summary>On whose word something stands.</summary>
public sealed record SourceLine(string Id, string Title, string Kind, string? Date = null, string? By = null, string? About = null, PageLink? Link = null);

/// <summary>When a line of a guide holds.</summary>
/// <param name="Words">As in "where the alternator is kept"; shown beside the line.</param>
public sealed record GuideCondition(string Words);

/// <summary>A wire's colour by its IEC 60757 codes, base and tracer: "GN/YE".</summary>
public sealed record WireColour(string Code)
{
    private static readonly HashSet<string> Known =
        ["bk", "bn", "rd", "og", "ye", "gn", "bu", "vt", "gy", "wh", "pk", "tq", "gd", "sr"];

    /// <summary>Class of the swatch's ground.</summary>
    public string BaseClass => "base-" + Part(0);

    /// <summary>Class of the swatch's stripe; empty where the wire has one colour.</summary>
    public string TracerClass => Code.Contains('/', StringComparison.Ordinal) ? "tracer-" + Part(1) : "";

    private string Part(int index)
    {
        var parts = Code.Split('/');
        var code = index < parts.Length ? parts[index].Trim().ToLowerInvariant() : "";
        return Known.Contains(code) ? code : "none";
    }
}
