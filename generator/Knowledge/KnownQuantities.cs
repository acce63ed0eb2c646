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

    /// <summary>The words are names of the base's own that worksheets only compare.</summary>
    public bool HasOwnWords { get; init; }

    /// <summary>Ids of the worksheets that leave something out where an entity does not say it.</summary>
    public ImmutableArray<string> WantedBy { get; init; } = [];

    /// <summary>The subjects of which they want it; empty for all.</summary>
    public ImmutableArray<string> WantedOf { get; init; } = [];

    /// <summary>A quantity and its word on the same entity, with which this one is not wanted.</summary>
    public (string Quantity, string Word)? Unless { get; init; }

    /// <summary>Whether a worksheet leaves something out where a subject does not say it.</summary>
    public bool IsWanted(string subject, string worksheet) => WantedBy.Contains(worksheet) && (WantedOf.IsEmpty || WantedOf.Contains(subject));
}

/// <summary>
/// The meanings that facts can carry. A base names its facts as its people talk; <c>means</c> ties them to what the formulas
/// want, so no fact id is built into the worksheets.
/// </summary>
public static class KnownQuantities
{
    private static readonly ImmutableArray<string> s_gearing = ["gearing"];
    private static readonly ImmutableArray<string> s_load = ["load"];
    private static readonly ImmutableArray<string> s_donor = ["donor"];
    private static readonly (string Quantity, string Word) s_automatic = ("gearbox-kind", "automatic");

    public static readonly ImmutableArray<KnownQuantity> All =
    [
        new("engine-power", ["chassis", "donor"], Dimension.Power, "greatest power of the engine; of a chassis, the engine it was built with"),
        new("engine-power-speed", ["chassis", "donor"], Dimension.RotationalSpeed, "engine speed at greatest power") { WantedBy = s_gearing, WantedOf = s_donor },
        new("engine-torque", ["chassis", "donor"], Dimension.Torque, "greatest torque of the engine") { WantedBy = s_load, WantedOf = s_donor },
        new("tyre-width", ["chassis", "part"], Dimension.Length, "nominal section width of the tyre") { WantedBy = s_gearing },
        new("tyre-aspect", ["chassis", "part"], Dimension.Share, "section height of the tyre as a share of its width; where it is left out, a tyre of before the series"),
        new("rim-diameter", ["chassis", "part"], Dimension.Length, "nominal diameter of the rim") { WantedBy = s_gearing },
        new("tyre-construction", ["chassis", "part"], Dimension.None, "whether the tyre is of radial or bias construction; radial where it is left out") { Words = ["radial", "bias"] },
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
        new("gearbox-kind", ["gearbox"], Dimension.None, "whether the gearbox has a clutch or a converter") { Words = ["manual", "automatic"] },
        new("axle-ratio", ["chassis", "part"], Dimension.None, "ratio of a final drive that stands apart from the gearbox, at the end of a propeller shaft; it takes the place of the gearbox's own"),
        new("speed-pickup", ["gearbox"], Dimension.None, "what turns the speedometer's drive: the shaft before the final drive or the one after it") { Words = ["before-final", "after-final"], WantedBy = s_gearing },
        new("speed-drive-teeth", ["gearbox"], Dimension.None, "teeth of the wheel in the gearbox that turns the pinion of the speedometer's drive") { WantedBy = s_gearing },
        new("speed-pinion-teeth", ["chassis", "gearbox", "part"], Dimension.None, "teeth of the pinion of the speedometer's drive") { WantedBy = s_gearing, WantedOf = ["chassis"] },
        new("speed-pulses", ["gearbox"], Dimension.None, "pulses that the speed sensor gives for one turn of its pinion"),
        new("kerb-mass", ["chassis"], Dimension.Mass, "mass of the vehicle as built, ready to drive, without people and luggage") { WantedBy = s_load },
        new("front-share", ["chassis"], Dimension.Share, "share of the kerb mass on the front axle") { WantedBy = s_load },
        new("wheelbase", ["chassis"], Dimension.Length, "distance of the axles") { WantedBy = s_load },
        new("engine-mass", ["chassis", "donor"], Dimension.Mass, "mass of the dressed engine without gearbox; of a chassis, the engine it was built with") { WantedBy = s_load },
        new("engine-place", ["chassis"], Dimension.Length, "how far the original engine's centre of mass lies behind the front axle, negative ahead of it") { WantedBy = s_load },
        new("engine-offset", ["donor"], Dimension.Length, "how far further back than the original engine's its centre of mass comes to lie; none where it is left out"),
        new("gearbox-place", ["chassis"], Dimension.Length, "how far the original gearbox's centre of mass lies behind the front axle, negative ahead of it") { WantedBy = s_load },
        new("gearbox-offset", ["gearbox"], Dimension.Length, "how far further back than others of the base its centre of mass comes to lie; none where it is left out"),
        new("equipment-mass", ["chassis", "donor"], Dimension.Mass, "mass of equipment that goes where the answer at its position leaves it off"),
        new("equipment-place", ["chassis", "donor"], Dimension.Length, "how far the centre of mass of that equipment lies behind the front axle, negative ahead of it"),
        new("permitted-front", ["chassis"], Dimension.Mass, "greatest mass the front axle may carry") { WantedBy = s_load },
        new("permitted-rear", ["chassis"], Dimension.Mass, "greatest mass the rear axle may carry") { WantedBy = s_load },
        new("clutch-clamp", ["chassis", "donor", "part"], Dimension.Force, "force with which the clutch cover clamps the plate") { WantedBy = s_load },
        new("clutch-outer", ["chassis", "donor", "part"], Dimension.Length, "outer diameter of the clutch's friction face") { WantedBy = s_load },
        new("clutch-inner", ["chassis", "donor", "part"], Dimension.Length, "inner diameter of the clutch's friction face") { WantedBy = s_load },
        new("clutch-friction", ["chassis", "donor", "part"], Dimension.None, "coefficient of friction of the clutch's facings") { WantedBy = s_load },
        new("clutch-faces", ["chassis", "donor", "part"], Dimension.None, "friction faces of the clutch; two where it is left out"),
        new("spline-teeth", ["gearbox", "part"], Dimension.None, "teeth of the gearbox's input shaft; of a clutch plate, of its hub") { WantedBy = s_load, Unless = s_automatic },
        new("spline-diameter", ["gearbox", "part"], Dimension.Length, "outer diameter of the gearbox's input shaft; of a clutch plate, of its hub") { WantedBy = s_load, Unless = s_automatic },
        new("flywheel-pattern", ["chassis", "donor", "part"], Dimension.None, "bolt circle on the flywheel's face, by a name of the base's own") { HasOwnWords = true, WantedBy = s_load },
        new("cover-pattern", ["chassis", "donor", "part"], Dimension.None, "bolt circle of the clutch cover, by the same names") { HasOwnWords = true, WantedBy = s_load },
        new("gearbox-torque", ["gearbox"], Dimension.Torque, "engine torque the gearbox is rated for") { WantedBy = s_load },
        new("shaft-torque", ["chassis", "donor", "part"], Dimension.Torque, "torque one drive shaft with its joints is rated for") { WantedBy = s_load },
        new("engine-centre", ["donor"], Dimension.Length, "how far the engine's centre of mass lies from the crank nose, along the crank axis") { WantedBy = s_load },
        new("engine-length", ["donor"], Dimension.Length, "from the crank nose to the face the gearbox is bolted to, along the crank axis") { WantedBy = s_load },
        new("gearbox-centre", ["gearbox"], Dimension.Length, "how far the gearbox's centre of mass lies from the face the engine is bolted to, along the crank axis") { WantedBy = s_load },
        new("timing-mount-place", ["chassis", "part"], Dimension.Length, "where the timing-side mount carries, from the crank nose along the crank axis; negative ahead of it") { WantedBy = s_load, WantedOf = ["chassis"] },
        new("gearbox-mount-place", ["chassis"], Dimension.Length, "where the gearbox-side mount carries, from the crank nose along the crank axis") { WantedBy = s_load },
        new("gearbox-mount-reach", ["gearbox"], Dimension.Length, "where the mount that a gearbox itself rests on lies, from the face the engine is bolted to, along the crank axis; none where the vehicle says where its mount is"),
        new("plate-thickness", ["part"], Dimension.Length, "how far a plate between the two sets engine and gearbox apart"),
        new("timing-mount-load", ["chassis", "donor", "part"], Dimension.Force, "static load the timing-side mount is made for") { WantedBy = s_load },
        new("gearbox-mount-load", ["chassis", "donor", "part"], Dimension.Force, "static load the gearbox-side mount is made for") { WantedBy = s_load },
        new("bonnet-space", ["chassis"], Dimension.Length, "usable height above the crank axis to bonnet or engine lid, room for the rolling engine taken off") { WantedBy = s_load },
        new("bonnet-raise", ["part"], Dimension.Length, "how much a part raises the bonnet or the lid"),
        new("bay-length", ["chassis"], Dimension.Length, "room along the bay, from the radiator to the bulkhead"),
        new("block-length", ["donor"], Dimension.Length, "from the crank nose to the rear face of the block"),
        new("fan-length", ["donor"], Dimension.Length, "from a fan on the engine's hub to the rear face of the block"),
        new("ring-gear-teeth", ["chassis", "donor", "part"], Dimension.None, "teeth of the ring gear on a flywheel or flexplate"),
        new("starter-ring-teeth", ["chassis", "donor", "part"], Dimension.None, "teeth of the ring gear that a starter is made for; those of its own engine's where it is left out"),
        new("throttle-kind", ["donor", "part"], Dimension.None, "what works the throttle plate") { Words = ["cable", "electronic"] },
        new("throttle-drive", ["ecu", "part"], Dimension.None, "whether it works the motor of an electronic throttle"),
        new("engine-height", ["donor", "part"], Dimension.Length, "highest point of the engine above the crank axis") { WantedBy = s_load },
        new("axis-height", ["chassis"], Dimension.Length, "height of the crank axis above the ground, at kerb mass") { WantedBy = s_load },
        new("ground-clearance", ["chassis"], Dimension.Length, "ground clearance of the vehicle as built, at kerb mass") { WantedBy = s_load },
        new("sump-depth", ["donor", "part"], Dimension.Length, "lowest point of the sump below the crank axis") { WantedBy = s_load },
        new("radiator-power", ["chassis", "donor", "part"], Dimension.Power, "engine power the radiator has cooled"),
        new("radiator-heat", ["chassis", "donor", "part"], Dimension.Power, "heat the radiator can give off") { WantedBy = s_load },
    ];

    public static KnownQuantity? Find(string id) => All.FirstOrDefault(quantity => quantity.Id == id);
}
