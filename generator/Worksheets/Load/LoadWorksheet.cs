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
    public const string Ground = "ground";
    public const string Cooling = "cooling";

    public static Ledger Work(LoadInput input)
    {
        var ledger = new LedgerBuilder("load", Title);
        AxleFigures.Add(ledger, input);
        DrivelineFigures.Add(ledger, input);
        MountFigures.Add(ledger, input);
        RoomFigures.Add(ledger, input);
        CoolingFigures.Add(ledger, input);
        return ledger.Build();
    }

    internal static string Number(double value, string form = "#,0") => value.ToString(form, CultureInfo.InvariantCulture);
}
