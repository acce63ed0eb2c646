using System.Globalization;
using System.Text.Json;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Reports;

/// <summary>The hoses of a sheet as JSON.</summary>
internal static class SheetHoses
{
    public static void Write(Utf8JsonWriter json, HoseSheet? sheet)
    {
        if (sheet is not { } hoses)
        {
            json.WriteNull("hoses");
            return;
        }

        json.Object("hoses", () =>
        {
            json.Objects("hoses", hoses.Runs, run => Run(json, run));
            json.Objects("blanked", hoses.Blanked, blank =>
            {
                Port(json, blank.Port);
                json.WriteString("with", HoseWords.Blank(blank.Port));
            });
            json.Objects("open", hoses.Open, port =>
            {
                Port(json, port);
                json.WriteString("because", port.Open);
            });
            json.Objects("tees", hoses.Tees, teed =>
            {
                Port(json, teed.Port);
                json.WriteString("part", teed.Tee.Part);
                json.Texts("hoses", teed.Hoses);
            });
            json.Objects("totals", hoses.Totals, total =>
            {
                json.WriteString("circuit", Circuit(total.Circuit));
                json.Quantity("bore", total.BoreMm, "mm");
                json.Text("class", total.LeastClass?.ToString());
                json.Quantity("length", total.LengthMm, "mm", 0);
                json.WriteNumber("pieces", total.Pieces);
            });
        });
    }

    /// <summary>A row a piece, a hose that stays or comes from a set, and a port that is closed or left open.</summary>
    public static string Csv(HoseSheet? sheet) => CsvForm.Write(
        ["circuit", "hose", "from", "from-owner", "to", "to-owner", "action", "bore-mm", "length-mm", "part", "class", "pressure-bar", "joiner", "with"],
        sheet is not { } hoses ? [] :
        [
            .. from run in hoses.Runs
               from piece in run.Pieces.IsEmpty ? [null] : run.Pieces.Cast<HosePiece?>()
               select (IReadOnlyList<string>)
               [
                   Circuit(run.Circuit), run.Id, run.From.Title, run.From.Owner, run.To.Title, run.To.Owner, Action(run.Action),
                   HoseWords.Number(piece?.BoreMm ?? run.From.SizeMm), Number(piece is null ? run.LengthMm : piece.LengthMm, "0"), piece?.Part ?? run.Set ?? "",
                   run.LeastClass is { } least ? HoseWords.Class(least) : "", Number(run.PressureBar, "0.##"), run.Joiner?.Part ?? "", string.Join(' ', run.CutIn.Select(one => one.Part)),
               ],
            .. hoses.Blanked.Select(blank => Row(blank.Port, "close", HoseWords.Blank(blank.Port))),
            .. hoses.Open.Select(port => Row(port, "leave-open", port.Open)),
            .. hoses.Tees.Select(teed => Row(teed.Port, "tee", teed.Tee.Part)),
        ]);

    private static string[] Row(Port port, string action, string with) =>
        [Circuit(port.Circuit), "", port.Title, port.Owner, "", "", action, HoseWords.Number(port.SizeMm), "", "", "", Number(port.PressureBar, "0.##"), "", with];

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "";

    public static string Action(HoseAction action) => action switch
    {
        HoseAction.Keep => "keep",
        HoseAction.Set => "moulded",
        _ => "cut",
    };

    private static void Run(Utf8JsonWriter json, HoseRun run)
    {
        json.WriteString("hose", run.Id);
        json.WriteString("title", run.Title);
        json.WriteString("circuit", Circuit(run.Circuit));
        json.Object("from", () => Port(json, run.From));
        json.Object("to", () => Port(json, run.To));
        json.WriteString("action", Action(run.Action));
        Length(json, "length", run.LengthMm);
        json.Text("class", run.LeastClass?.ToString());
        json.Text("set", run.Set);
        json.Text("reducer", run.Joiner?.Part);
        json.Texts("cutIn", run.CutIn.Select(one => one.Part));
        json.Objects("pieces", run.Pieces, piece =>
        {
            json.Quantity("bore", piece.BoreMm, "mm");
            Length(json, "length", piece.LengthMm);
            json.Text("part", piece.Part);
        });
    }

    private static void Port(Utf8JsonWriter json, Port port)
    {
        json.WriteString("port", port.Id);
        json.WriteString("title", port.Title);
        json.WriteString("owner", port.Owner);
        json.Quantity("size", port.SizeMm, "mm");
    }

    private static void Length(Utf8JsonWriter json, string name, double? lengthMm)
    {
        if (lengthMm is { } known)
        {
            json.Quantity(name, known, "mm", 0);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    private static string Circuit(HoseCircuit circuit) => HoseWords.Circuit(circuit).Replace(' ', '-');
}
