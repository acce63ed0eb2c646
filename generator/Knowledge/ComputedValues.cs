using System.Collections.Immutable;

namespace Swapwright.Knowledge;

/// <summary>A quantity that the generator computes and a rule may state. <c>*</c> stands for a name given by the knowledge, such as a belt's.</summary>
public sealed record ComputedValue(string Pattern, Unit Unit, string Title);

/// <summary>The names that <c>values</c> of a rule may carry.</summary>
public static class ComputedValues
{
    private static readonly Unit s_ccPerMinute = Unit.Find("cm³/min")!;
    private static readonly Unit s_litrePerHour = Unit.Find("L/h")!;
    private static readonly Unit s_kilowatt = Unit.Find("kW")!;
    private static readonly Unit s_watt = Unit.Find("W")!;
    private static readonly Unit s_ohm = Unit.Find("Ω")!;
    private static readonly Unit s_millisecond = Unit.Find("ms")!;

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
        new("fuel.injector-need", s_ccPerMinute, "flow that each injector must have"),
        new("fuel.injector-flow", s_ccPerMinute, "flow of each injector as fitted, at the pressure as fitted"),
        new("fuel.injector-duty", Unit.Percent, "share of the time that the injectors are open at full power"),
        new("fuel.injector-power", s_kilowatt, "power that the injectors can feed"),
        new("fuel.injector-change", Unit.Percent, "flow of the injectors against those the ECU was made for"),
        new("fuel.driver-current", Unit.Ampere, "current of one injector driver"),
        new("fuel.ballast-need", s_ohm, "series resistance that each injector needs"),
        new("fuel.ballast-made", s_ohm, "nearest resistor of E24 that is enough"),
        new("fuel.ballast-heat", s_watt, "what each ballast resistor dissipates"),
        new("fuel.pump-need", s_litrePerHour, "delivery that the pump must have"),
        new("fuel.pump-flow", s_litrePerHour, "delivery of the pump as fitted"),
        new("fuel.pump-margin", Unit.Percent, "delivery beyond what is burnt at full power"),
        new("fuel.return-flow", s_litrePerHour, "what flows back at idle"),
        new("fuel.idle-excess", Unit.Percent, "extra fuel at idle without a manifold reference"),
        new("fuel.coil-charge", s_millisecond, "charging time of a coil"),
        new("torques.bolt.*", Unit.NewtonMetre, "torque of a fastener, stated or computed"),
        new("torques.fluid.refrigerant", Unit.Kilogram, "refrigerant in all"),
        new("torques.fluid.*", Unit.Litre, "filling of a kind in all"),
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
