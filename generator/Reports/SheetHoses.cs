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
