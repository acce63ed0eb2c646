using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Load;

/// <summary>What the new engine and gearbox load: axles, clutch, shafts, mounts, radiator, and the room they need.</summary>
public static class LoadWorksheet
{
    public const string Title = "Mass, clutch, clearance and cooling";

    /// <summary>Parts of the worksheet that a base may not speak of.</summary>
    public const string Masses = "masses";
    public const string Power = "power";
    public const string Clutch = "clutch";
    public const string Shafts = "shafts";
    public const string Mounts = "mounts";
    public const string Bonnet = "bonnet";
    public const string Bay = "bay";
    public const string Ground = "ground";
    public const string Cooling = "cooling";

    /// <summary>A figure for whatever the base speaks of. What is not known, and a number that no measurement gives, is a gap; nothing is thrown.</summary>
    public static Ledger Work(LoadInput input)
    {
        var ledger = new LedgerBuilder("load", Title);
        input = Read(input);
        AxleFigures.Add(ledger, input);
        DrivelineFigures.Add(ledger, input);
        MountFigures.Add(ledger, input);
        RoomFigures.Add(ledger, input);
        CoolingFigures.Add(ledger, input);
        return ledger.Build();
    }

    private static LoadInput Read(LoadInput input) => input with
    {
        KerbMass = input.KerbMass.IfNumber(),
        FrontShare = input.FrontShare.IfNumber(),
        Wheelbase = input.Wheelbase.IfNumber(),
        PermittedFront = input.PermittedFront.IfNumber(),
        PermittedRear = input.PermittedRear.IfNumber(),
        PowerBefore = input.PowerBefore.IfNumber(),
        Power = input.Power.IfNumber(),
        Torque = input.Torque.IfNumber(),
        GearboxTorque = input.GearboxTorque.IfNumber(),
        FirstGear = input.FirstGear.IfNumber(),
        FinalDrive = input.FinalDrive.IfNumber(),
        ShaftTorque = input.ShaftTorque.IfNumber(),
        BonnetSpace = input.BonnetSpace.IfNumber(),
        BonnetRaise = input.BonnetRaise.IfNumber(),
        EngineHeight = input.EngineHeight.IfNumber(),
        BayLength = input.BayLength.IfNumber(),
        BlockLength = input.BlockLength.IfNumber(),
        FanLength = input.FanLength.IfNumber(),
        AxisHeight = input.AxisHeight.IfNumber(),
        GroundClearance = input.GroundClearance.IfNumber(),
        SumpDepth = input.SumpDepth.IfNumber(),
        RadiatorPower = input.RadiatorPower.IfNumber(),
        RadiatorHeat = input.RadiatorHeat.IfNumber(),
        Clutch = input.Clutch is { } clutch ? new ClutchInput(clutch.Clamp.IfNumber(), clutch.Outer.IfNumber(), clutch.Inner.IfNumber(), clutch.Friction.IfNumber(), clutch.Faces.IfNumber()) : null,
        Mounts = input.Mounts is { } mounts
            ? new MountInput(mounts.TimingPlace.IfNumber(), mounts.GearboxPlace.IfNumber(), mounts.EngineCentre.IfNumber(), mounts.EngineLength.IfNumber(), mounts.GearboxCentre.IfNumber(), mounts.TimingLimit.IfNumber(), mounts.GearboxLimit.IfNumber()) { Plate = mounts.Plate.IfNumber(), GearboxReach = mounts.GearboxReach.IfNumber() }
            : null,
    };

    internal static string Number(double value, string form = "#,0") => value.ToString(form, CultureInfo.InvariantCulture);
}
