using System.Collections.Immutable;

namespace Swapwright.Knowledge;

/// <summary>Something the worksheets know how to compute with. A fact says that it is one by <c>means</c>.</summary>
/// <param name="Id">As written after <c>means</c>.</param>
/// <param name="Subjects">The kinds of entity that can have it.</param>
/// <param name="Dimension">What its unit has to measure; for words, <see cref="Knowledge.Dimension.None"/>.</param>
public sealed record KnownQuantity(string Id, ImmutableArray<string> Subjects, Dimension Dimension, string Title)
{
    /// <summary>For a one-of fact: the values that the worksheets understand; empty for a number.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>The values are the base's own words, and only compared with each other.</summary>
    public bool HasOwnWords { get; init; }
}

/// <summary>
/// The meanings that facts can carry. A base names its facts as its people talk; <c>means</c> ties them to what the formulas
/// want, so no fact id is built into the worksheets.
/// </summary>
public static class KnownQuantities
{
    public static readonly ImmutableArray<KnownQuantity> All =
    [
        new("engine-power", ["chassis", "donor"], Dimension.Power, "greatest power of the engine; of a chassis, the engine it was built with"),
        new("engine-power-speed", ["chassis", "donor"], Dimension.RotationalSpeed, "engine speed at greatest power"),
        new("engine-torque", ["chassis", "donor"], Dimension.Torque, "greatest torque of the engine"),
        new("tyre-width", ["chassis"], Dimension.Length, "nominal section width of the tyre"),
        new("tyre-aspect", ["chassis"], Dimension.Share, "section height of the tyre as a share of its width"),
        new("rim-diameter", ["chassis"], Dimension.Length, "nominal diameter of the rim"),
        new("original-gearbox", ["chassis"], Dimension.None, "the gearbox the chassis was built with, a reference"),
        new("injector-flow", ["donor", "chassis", "part", "ecu"], Dimension.VolumeFlow, "static flow of one injector; of an ECU, of the injectors its maps were made for"),
        new("injector-flow-pressure", ["donor", "chassis", "part"], Dimension.Pressure, "fuel pressure at which the injector's flow was measured"),
        new("injector-resistance", ["donor", "chassis", "part"], Dimension.Resistance, "resistance of one injector"),
        new("injector-count", ["donor"], Dimension.None, "number of injectors"),
        new("cylinders", ["donor"], Dimension.None, "number of cylinders"),
        new("rail-pressure", ["donor", "chassis", "part"], Dimension.Pressure, "fuel pressure above the manifold that the regulator holds"),
        new("regulator-place", ["donor", "chassis", "part"], Dimension.None, "where the pressure is regulated") { Words = ["rail", "tank"] },
        new("ballast-resistance", ["donor", "chassis", "part"], Dimension.Resistance, "series resistance in the feed of one injector"),
        new("ballast-power", ["donor", "chassis", "part"], Dimension.Power, "what one of those resistors may dissipate for good"),
        new("injector-driver", ["ecu"], Dimension.None, "how the ECU drives injectors") { Words = ["saturated", "peak-hold"] },
        new("injector-driver-current", ["ecu"], Dimension.Current, "largest current of one injector driver"),
        new("injector-channels", ["ecu"], Dimension.None, "number of injector drivers"),
        new("pump-flow", ["chassis", "donor", "part"], Dimension.VolumeFlow, "delivery of the fuel pump"),
        new("pump-flow-pressure", ["chassis", "donor", "part"], Dimension.Pressure, "pressure at which the pump's delivery was measured"),
        new("fuel-pressure-rating", ["part"], Dimension.Pressure, "pressure that a part of the fuel line may stand for good"),
        new("trigger-pattern", ["chassis", "donor", "part", "ecu"], Dimension.None, "pattern that tells the ECU where the engine is; `any` for an ECU that can be set to each") { HasOwnWords = true },
        new("ignition-kind", ["donor"], Dimension.None, "how sparks are made and shared out") { Words = ["distributor", "coil-packs", "coil-on-plug"] },
        new("ignition-coils", ["donor", "chassis", "part"], Dimension.None, "number of coils that are fired apart from each other"),
        new("ignition-outputs", ["ecu", "part"], Dimension.None, "number of coils that can be fired apart from each other"),
        new("coil-stage", ["donor", "chassis", "part"], Dimension.None, "where the coil's current is switched") { Words = ["igniter", "coil", "ecu"] },
        new("ignition-drive", ["ecu"], Dimension.None, "what the ECU's ignition outputs are") { Words = ["trigger", "power"] },
        new("coil-resistance", ["donor", "chassis", "part"], Dimension.Resistance, "resistance of the coil's primary"),
        new("coil-inductance", ["donor", "chassis", "part"], Dimension.Inductance, "inductance of the coil's primary"),
        new("coil-current", ["donor", "chassis", "part"], Dimension.Current, "current to which the coil is charged"),
        new("made-for", ["ecu"], Dimension.None, "family of the engine that the ECU's maps were made for; `any` for one that is programmed") { HasOwnWords = true },
        new("engine-oil-amount", ["donor"], Dimension.Volume, "engine oil with filter"),
        new("coolant-amount", ["donor"], Dimension.Volume, "coolant in the engine and its heater circuit"),
    ];

    public static KnownQuantity? Find(string id) => All.FirstOrDefault(quantity => quantity.Id == id);
}
