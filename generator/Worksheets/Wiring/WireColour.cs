using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// A wire's colour in IEC 60757 codes (summaries seen; gold, silver and the table's order from memory). The standard writes two
/// colours one after the other in the table's order, which cannot tell base from tracer; the house rule is therefore base, a
/// slash, tracer (<c>GN/YE</c>). A bare <c>GNYE</c> is refused: it is reserved for protective earth.
/// </summary>
public sealed record WireColour
{
    private static readonly FrozenDictionary<string, string> Names = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["BK"] = "black",
        ["BN"] = "brown",
        ["RD"] = "red",
        ["OG"] = "orange",
        ["YE"] = "yellow",
        ["GN"] = "green",
        ["BU"] = "blue",
        ["VT"] = "violet",
        ["GY"] = "grey",
        ["WH"] = "white",
        ["PK"] = "pink",
        ["GD"] = "gold",
        ["TQ"] = "turquoise",
        ["SR"] = "silver",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private WireColour(string baseCode, string? tracerCode)
    {
        Base = baseCode;
        Tracer = tracerCode;
    }

    /// <summary>All codes, sorted.</summary>
    public static IEnumerable<string> Codes => Names.Keys.Order(StringComparer.Ordinal);

    public string Base { get; }

    public string? Tracer { get; }

    /// <summary>As written in the knowledge: <c>GN</c> or <c>GN/YE</c>.</summary>
    public string Code => Tracer is null ? Base : $"{Base}/{Tracer}";

    /// <summary>For the page: "green" or "green with yellow tracer".</summary>
    public string Name => Tracer is null ? Names[Base] : $"{Names[Base]} with {Names[Tracer]} tracer";

    /// <summary>Class names for a swatch: <c>swatch base-gn tracer-ye</c>.</summary>
    public string Swatch => Tracer is null ? $"swatch {BaseClass}" : $"swatch {BaseClass} {TracerClass}";

    internal string BaseClass => "base-" + Lower(Base);

    internal string? TracerClass => Tracer is null ? null : "tracer-" + Lower(Tracer);

    public static bool TryParse(string? text, [NotNullWhen(true)] out WireColour? colour)
    {
        colour = null;
        var parts = (text ?? "").Split('/');
        if (parts.Length > 2 || !parts.All(Names.ContainsKey) || (parts.Length == 2 && parts[0] == parts[1]))
        {
            return false;
        }

        colour = new WireColour(parts[0], parts.Length == 2 ? parts[1] : null);
        return true;
    }

    /// <summary>Whether a text is a colour.</summary>
    public static bool IsColour(string? text) => (text is not null && Names.ContainsKey(text)) || TryParse(text, out _);

    public override string ToString() => Code;

    [SuppressMessage("Globalization", "CA1308", Justification = "Class names are lower case.")]
    private static string Lower(string code) => code.ToLowerInvariant();
}
