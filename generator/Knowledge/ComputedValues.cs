using System.Collections.Immutable;

namespace Swapwright.Knowledge;

/// <summary>A quantity that the generator computes and a rule may state. <c>*</c> stands for a name given by the knowledge, such as a belt's.</summary>
public sealed record ComputedValue(string Pattern, Unit Unit, string Title);

/// <summary>The names that <c>values</c> of a rule may carry.</summary>
public static class ComputedValues
{
    public static readonly ImmutableArray<ComputedValue> All =
    [
        new("belt.*.length", Unit.Millimetre, "effective length of the belt recommended"),
        new("belt.*.ribs", Unit.One, "ribs of the belt recommended"),
        new("belt.*.shortest", Unit.Millimetre, "length of the loop with the adjuster slack"),
        new("belt.*.longest", Unit.Millimetre, "length of the loop with the adjuster at its far end"),
        new("wiring.plugs.straight-in", Unit.One, "plugs that go straight in"),
        new("wiring.plugs.re-pinned", Unit.One, "plugs re-pinned"),
        new("wiring.plugs.changed", Unit.One, "plugs changed"),
        new("wiring.plugs.added", Unit.One, "plugs added"),
        new("wiring.plugs.extended", Unit.One, "plugs with wires extended"),
        new("wiring.plugs.capped", Unit.One, "plugs capped"),
        new("wiring.splices", Unit.One, "splices"),
        new("wiring.wire", Unit.Millimetre, "wire in all"),
        new("gearing.tyre-diameter", Unit.Millimetre, "outer diameter of the tyre"),
    ];

    /// <summary>The catalogue entry that a name falls under; null where none does.</summary>
    public static ComputedValue? Find(string name) => All.FirstOrDefault(value => Matches(value.Pattern, name));

    public static Unit UnitOf(string name) => Find(name)?.Unit ?? Unit.One;

    private static bool Matches(string pattern, string name)
    {
        var wanted = pattern.Split('.');
        var given = name.Split('.');
        return wanted.Length == given.Length && wanted.Zip(given).All(pair => pair.First == "*" || pair.First == pair.Second);
    }
}
