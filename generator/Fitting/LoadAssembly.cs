using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Load;

namespace Swapwright.Fitting;

/// <summary>Vehicles, gearbox and fitted parts of a combination → the load worksheet.</summary>
internal sealed class LoadAssembly(KnowledgeBase kb)
{
    // What each part of the worksheet cannot do without: a base that declares none of it does not speak of it.
    private static readonly ImmutableArray<(string Part, string Subject, string Quantity)> s_asks =
    [
        (LoadWorksheet.Masses, "chassis", "kerb-mass"),
        (LoadWorksheet.Clutch, "part", "clutch-clamp"),
        (LoadWorksheet.Shafts, "chassis", "shaft-torque"),
        (LoadWorksheet.Shafts, "part", "shaft-torque"),
        (LoadWorksheet.Mounts, "chassis", "timing-mount-place"),
        (LoadWorksheet.Bonnet, "chassis", "bonnet-space"),
        (LoadWorksheet.Bay, "chassis", "bay-length"),
        (LoadWorksheet.Ground, "chassis", "axis-height"),
        (LoadWorksheet.Cooling, "chassis", "radiator-heat"),
        (LoadWorksheet.Cooling, "part", "radiator-heat"),
    ];

    private readonly LoadMasses _masses = new(kb);

    private readonly ImmutableArray<string> _asked = [.. s_asks.Where(ask => kb.Vocabulary.Meaning(ask.Subject, ask.Quantity) is not null).Select(ask => ask.Part).Distinct(StringComparer.Ordinal)];

    /// <summary>Whether the base says anything of loads.</summary>
    public bool Speaks => !_asked.IsEmpty;

    public Ledger Assemble(LedgerCase one)
    {
        var quantities = new Quantities(kb, one);
        var settings = kb.Settings.Load;
        return LoadWorksheet.Work(new LoadInput
        {
            Asked = _asked,
            KerbMass = Own("chassis", "kerb-mass"),
            FrontShare = Own("chassis", "front-share"),
            Wheelbase = Own("chassis", "wheelbase"),
            PermittedFront = Own("chassis", "permitted-front"),
            PermittedRear = Own("chassis", "permitted-rear"),
            FrontReserve = (double)settings.FrontReserveKg,
            Changes = _masses.Of(one, quantities),
            PowerBefore = Own("chassis", "engine-power"),
            Power = Own("donor", "engine-power"),
            Torque = Own("donor", "engine-torque"),
            Clutch = HasClutch(one, quantities) ? new ClutchInput(Fitted("clutch-clamp"), Fitted("clutch-outer"), Fitted("clutch-inner"), Fitted("clutch-friction"), Fitted("clutch-faces")) : null,
            ClutchMargin = (double)settings.ClutchMargin,
            Joints = LoadJoints.Of(quantities, HasClutch(one, quantities)),
            GearboxTorque = Own("gearbox", "gearbox-torque"),
            FirstGear = First(one.Gearbox),
            FinalDrive = one.Gearbox is { } gearbox ? GearingAssembly.Final(gearbox, quantities.Fitted("axle-ratio")) : null,
            ShaftTorque = quantities.AllFitted("shaft-torque").MinBy(rating => rating.Si)?.Given,
            HasPropellerShaft = quantities.Of("chassis", "axle-ratio") is not null,
            Mounts = Mounts(),
            BonnetSpace = Own("chassis", "bonnet-space"),
            BonnetRaise = OfPart("bonnet-raise"),
            BayLength = Own("chassis", "bay-length"),
            BlockLength = Own("donor", "block-length"),
            FanLength = quantities.AnswerFor("fan-length") is { Source: "donor", Treatment: not "blank" } ? Own("donor", "fan-length") : null,
            EngineHeight = Fitted("engine-height"),
            AxisHeight = Own("chassis", "axis-height"),
            GroundClearance = Own("chassis", "ground-clearance"),
            SumpDepth = Fitted("sump-depth"),
            LeastGround = (double)settings.GroundClearanceMm / 1000,
            RadiatorPower = Fitted("radiator-power"),
            RadiatorHeat = Fitted("radiator-heat"),
        });

        Given? Own(string subject, string quantity) => quantities.Of(subject, quantity)?.Given;

        Given? Fitted(string quantity) => quantities.Fitted(quantity)?.Given;

        Given? OfPart(string quantity) => quantities.AnswerFor(quantity) is { } answer ? quantities.Part(answer, quantity)?.Given : null;

        // Mounts that are made stand elsewhere than the car's, on other rubbers than its own: what those carry says nothing of them.
        MountInput Mounts()
        {
            var made = OfPart("timing-mount-place");
            return new MountInput(
                made ?? Own("chassis", "timing-mount-place"), Own("chassis", "gearbox-mount-place"), Own("donor", "engine-centre"), Own("donor", "engine-length"), Own("gearbox", "gearbox-centre"),
                made is null ? Fitted("timing-mount-load") : null, Fitted("gearbox-mount-load"))
            {
                Plate = OfPart("plate-thickness"),
                GearboxReach = Own("gearbox", "gearbox-mount-reach"),
            };
        }
    }

    private static bool HasClutch(LedgerCase one, Quantities quantities) => one.Gearbox is not null && quantities.Word("gearbox", "gearbox-kind") != "automatic";

    private static Given? First(Gearbox? gearbox) =>
        gearbox is not null && GearingAssembly.Gears(gearbox).MaxBy(gear => gear.Ratio) is { } first ? new Given(first.Ratio, new FigureInput($"ratio, {first.Name}", first.Ratio, "", $"gearbox {gearbox.Id}")) : null;
}
