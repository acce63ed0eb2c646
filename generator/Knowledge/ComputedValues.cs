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
    private static readonly Unit s_kilometresPerHour = Unit.Find("km/h")!;
    private static readonly Unit s_revolutions = Unit.Find("rpm")!;
    private static readonly Unit s_newtonMetres = Unit.Find("N m")!;
    private static readonly Unit s_newtons = Unit.Find("N")!;

    public static readonly ImmutableArray<ComputedValue> All =
    [
        new("belt.*.length", Unit.Millimetre, "effective length of the belt recommended"),
        new("belt.*.ribs", Unit.One, "ribs of the belt recommended"),
        new("belt.*.shortest", Unit.Millimetre, "length of the loop with the adjuster slack"),
        new("belt.*.longest", Unit.Millimetre, "length of the loop with the adjuster at its far end"),
        new("belt.*.position", Unit.Percent, "where the recommended belt is tight, as a share of the adjuster's travel from its slack end"),
        new("belt.*.longest-span", Unit.Millimetre, "longest free span with the recommended belt tight"),
        new("belt.*.frequency", Unit.Hertz, "note of the longest span of a new belt, where the belt is tightened by hand"),
        new("belt.*.crank-wrap", Unit.Degree, "wrap round the crank pulley with the recommended belt tight"),
        new("belt.*.alternator-wrap", Unit.Degree, "wrap round the alternator pulley with the recommended belt tight"),
        new("belt.*.spacer", Unit.Millimetre, "greatest movement along the crank axis that brings a pulley into plane"),
        new("wiring.plugs.straight-in", Unit.One, "plugs that go straight in"),
        new("wiring.plugs.re-pinned", Unit.One, "plugs re-pinned"),
        new("wiring.plugs.changed", Unit.One, "plugs changed"),
        new("wiring.plugs.added", Unit.One, "plugs added"),
        new("wiring.plugs.extended", Unit.One, "plugs with wires extended"),
        new("wiring.plugs.capped", Unit.One, "plugs capped"),
        new("wiring.plugs.lead", Unit.One, "plugs met by an adapter lead"),
        new("wiring.plugs.joined", Unit.One, "plugs with a wire joined to an existing one"),
        new("wiring.pieces", Unit.One, "pieces of wire to cut"),
        new("wiring.terminals", Unit.One, "terminals"),
        new("wiring.longest-wire", Unit.Millimetre, "longest piece of new wire"),
        new("wiring.longest-drop", Unit.Volt, "greatest voltage lost along a new piece"),
        new("wiring.thickest-wire", Unit.SquareMillimetre, "thickest new wire"),
        new("wiring.fuses", Unit.One, "fuses for added loads"),
        new("wiring.relays", Unit.One, "relays for added loads"),
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
        new("gearing.rolling-circumference", Unit.Millimetre, "way the tyre rolls in one turn"),
        new("gearing.top-gear", s_kilometresPerHour, "road speed at 1,000 revolutions a minute in the highest gear"),
        new("gearing.cruise-*", s_revolutions, "engine speed in the highest gear at that many km/h"),
        new("gearing.largest-drop", s_revolutions, "largest fall of the engine speed at a shift from the speed of greatest power"),
        new("gearing.top-speed", s_kilometresPerHour, "road speed in the highest gear at the engine speed of greatest power"),
        new("gearing.speedometer-error", Unit.Percent, "what the speedometer shows above the true speed"),
        new("gearing.speedometer-pinion", Unit.One, "teeth of the pinion that puts the speedometer right"),
        new("gearing.speedometer-pulses", Unit.One, "pulses of the speed sensor for a kilometre"),
        new("gearing.speedometer-turns", Unit.One, "turns of the speedometer's drive for a kilometre"),
        new("load.mass", Unit.Kilogram, "kerb mass afterwards"),
        new("load.front", Unit.Kilogram, "mass on the front axle afterwards"),
        new("load.rear", Unit.Kilogram, "mass on the rear axle afterwards"),
        new("load.front-change", Unit.Kilogram, "change of the mass on the front axle"),
        new("load.power-to-mass", Unit.One, "greatest power to kerb mass, in watts for a kilogram"),
        new("load.clutch-torque", s_newtonMetres, "torque the worn clutch carries"),
        new("load.clutch-margin", Unit.One, "torque the worn clutch carries, to the engine's"),
        new("load.shaft-torque", s_newtonMetres, "torque on a drive shaft in first gear"),
        new("load.timing-mount", s_newtons, "static load on the timing-side mount"),
        new("load.gearbox-mount", s_newtons, "static load on the gearbox-side mount"),
        new("load.bonnet", Unit.Millimetre, "room between engine and bonnet"),
        new("load.bay", Unit.Millimetre, "room along the bay beyond the engine"),
        new("load.ground", Unit.Millimetre, "ground clearance below the sump"),
        new("load.heat-least", s_kilowatt, "heat to the coolant at full power, at least"),
        new("load.heat-most", s_kilowatt, "heat to the coolant at full power, at most"),
    ];

    /// <summary>The catalogue entry that a name falls under; null where none does.</summary>
    public static ComputedValue? Find(string name) => All.FirstOrDefault(value => Matches(value.Pattern, name));

    /// <summary>A name in words; the name itself where nothing is known by it.</summary>
    public static string TitleOf(string name) => Find(name)?.Title ?? name;

    public static Unit UnitOf(string name) => Find(name)?.Unit ?? Unit.One;

    private static bool Matches(string pattern, string name)
    {
        var wanted = pattern.Split('.');
        var given = name.Split('.');
        return wanted.Length == given.Length && wanted.Zip(given).All(pair => Matches(pair));

        // A star at the end of a word stands for the rest of it.
        static bool Matches((string First, string Second) pair) => pair.First.EndsWith('*') ? pair.Second.StartsWith(pair.First[..^1], StringComparison.Ordinal) : pair.First == pair.Second;
    }
}
