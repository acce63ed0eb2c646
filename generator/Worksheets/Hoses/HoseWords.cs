using System.Globalization;

namespace Swapwright.Worksheets.Hoses;

/// <summary>The words of the hose worksheet, in sentences and drawings.</summary>
public static class HoseWords
{
    public static string Circuit(HoseCircuit circuit) => circuit switch
    {
        HoseCircuit.Vacuum => "vacuum",
        HoseCircuit.BrakeBooster => "brake booster",
        HoseCircuit.Breather => "breather",
        HoseCircuit.Purge => "purge",
        HoseCircuit.Fuel => "fuel",
        HoseCircuit.Coolant => "coolant",
        _ => "heater",
    };

    /// <summary>As in "16 mm", or "19 to 16 mm" where the ends differ.</summary>
    public static string Size(HoseRun run) =>
        run.Joiner is null && run.From.SizeMm != run.To.SizeMm && run.Pieces is [var piece] ? $"{Number(piece.BoreMm)} mm"
        : run.From.SizeMm == run.To.SizeMm ? $"{Number(run.From.SizeMm)} mm"
        : $"{Number(run.From.SizeMm)} to {Number(run.To.SizeMm)} mm";

    public static string Length(double? lengthMm) => lengthMm is { } known ? string.Create(CultureInfo.InvariantCulture, $"{known:#,0} mm") : "measure";

    /// <summary>As in "cap, 6 mm" or "plug, M12 × 1.5".</summary>
    public static string Blank(Port port) => port.Kind switch
    {
        PortKind.Thread => $"plug, {(port.Thread.Length > 0 ? port.Thread : $"{Number(port.SizeMm)} mm")}",
        PortKind.Quick => $"blanking connector, {Number(port.SizeMm)} mm",
        _ => $"cap, {Number(port.SizeMm)} mm",
    };

    /// <summary>As in "R9", or "R6 or better" where low pressure leaves a choice.</summary>
    public static string Class(FuelHoseClass? least) => least switch
    {
        null => "",
        FuelHoseClass.R6 => "R6, R7 or R9",
        var known => known.Value.ToString(),
    };

    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
