namespace Swapwright.Worksheets.Wiring;

/// <summary>The colour of a blade fuse's body, by which it is told apart in the holder.</summary>
/// <param name="Name">In a word.</param>
/// <param name="Code">Nearest colour by its IEC 60757 code, for a patch beside the word.</param>
public sealed record FuseColour(string Name, string Code)
{
    /// <summary>Colours of ISO 8820-3, from memory; null for a rating that has none or no fuse at all.</summary>
    public static FuseColour? Of(double? amps) => amps switch
    {
        1 => new("black", "BK"),
        2 => new("grey", "GY"),
        3 => new("violet", "VT"),
        4 => new("pink", "PK"),
        5 => new("tan", "GD"),
        7.5 => new("brown", "BN"),
        10 => new("red", "RD"),
        15 => new("blue", "BU"),
        20 => new("yellow", "YE"),
        25 => new("clear", "WH"),
        30 => new("green", "GN"),
        35 => new("blue-green", "TQ"),
        40 => new("orange", "OG"),
        _ => null,
    };
}
