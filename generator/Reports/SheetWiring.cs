using System.Globalization;
using System.Text.Json;
using Swapwright.Sheets;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Reports;

/// <summary>The wiring of a sheet as JSON, and its cutting list as a table.</summary>
internal static class SheetWiring
{
    public static void Write(Utf8JsonWriter json, WiringSheet? sheet)
    {
        if (sheet is not { } wiring)
        {
            json.WriteNull("wiring");
            return;
        }

        json.Object("wiring", () =>
        {
            json.Object("plugs", () =>
            {
                json.WriteNumber("straightIn", wiring.Counts.StraightIn);
                json.WriteNumber("rePinned", wiring.Counts.RePinned);
                json.WriteNumber("changed", wiring.Counts.Changed);
                json.WriteNumber("lead", wiring.Counts.Lead);
                json.WriteNumber("added", wiring.Counts.Added);
                json.WriteNumber("extended", wiring.Counts.Extended);
                json.WriteNumber("extendedOnly", wiring.Counts.ExtendedOnly);
                json.WriteNumber("joined", wiring.Counts.Joined);
                json.WriteNumber("capped", wiring.Counts.Capped);
            });
            json.Objects("terminals", wiring.Bill.Terminals, line =>
            {
                json.WriteString("connector", line.Connector);
                json.WriteString("terminal", line.Terminal);
                json.WriteNumber("count", line.Count);
                json.WriteNumber("seals", line.Seals);
            });
            json.WriteNumber("splices", wiring.Bill.Splices);
            json.Objects("wire", wiring.Bill.Wire, line =>
            {
                json.Quantity("size", line.SizeMm2, "mm²", 2);
                json.WriteString("colour", line.Colour);
                json.Quantity("length", line.LengthMm, "mm", 0);
                json.WriteNumber("pieces", line.Pieces);
            });
            json.Objects("devices", wiring.Plugs, plug => Plug(json, plug));
            json.Objects("adapter", (wiring.EcuAdapter?.Rows ?? []).Concat(wiring.BodyAdapter?.Rows ?? []), row =>
            {
                json.WriteString("signal", row.Signal);
                json.Text("from", row.From);
                json.Text("to", row.To);
                json.WriteString("action", WiringWords.Action(row.Action));
            });
            SheetWireRuns.Write(json, wiring);
        });
    }

    private static void Plug(Utf8JsonWriter json, PlugWork plug)
    {
        json.WriteString("device", plug.Role);
        json.WriteString("title", plug.Title);
        json.WriteString("outcome", WiringWords.Outcome(plug.Outcome));
        json.Text("harnessConnector", plug.HarnessConnector);
        json.Text("deviceConnector", plug.DeviceConnector);
        json.Quantity("distance", plug.DistanceMm, "mm", 0);
        json.WriteBoolean("extended", plug.Extended);
        json.WriteBoolean("joined", plug.Joined);
        json.Text("lead", plug.LeadPart);
        json.Objects("wires", plug.Wires, wire =>
        {
            json.WriteString("cavity", wire.Cavity);
            json.WriteString("signal", wire.Signal);
            json.WriteString("action", WiringWords.Action(wire.Action));
            json.Text("fromCavity", wire.FromCavity);
            json.WriteString("colour", wire.Colour);
            json.Quantity("size", wire.SizeMm2, "mm²", 2);
            json.Quantity("extension", wire.ExtensionMm, "mm", 0);
            json.Text("run", wire.Run);
        });
    }

    /// <summary>The cutting list: by size, colour and length, as the wires come off the reels.</summary>
    public static string Csv(WiringSheet? sheet) => CsvForm.Write(
        ["number", "size-mm2", "colour", "length-mm", "signal", "from", "from-end", "to", "to-end", "purpose", "current-a", "drop-v", "why", "screened", "twisted-with", "brought-by", "screen-of", "label"],
        (sheet?.Bill.Listed ?? []).Select((cut, at) =>
        {
            var run = sheet!.Runs.First(one => one.Label == cut.Label);
            return (IReadOnlyList<string>)
            [
                Number(at + 1, "0"), Number(cut.SizeMm2, "0.##"), cut.Colour, run.IsCut ? Number(cut.LengthMm, "0") : "", cut.Signal,
                $"{run.From.Place} {run.From.Cavity}", WiringWords.End(run.From.Kind), $"{run.To.Place} {run.To.Cavity}", WiringWords.End(run.To.Kind),
                WiringWords.Purpose(sheet, run), run.Conductor is { } chosen ? Number(chosen.For.CurrentA, "0.##") : "", run.DropV is { } drop ? Number(drop, "0.000") : "",
                run.Conductor is { } why ? WiringWords.Reason(why.Reason) : "", run.Shielded ? "yes" : "", TwistedPairs.Beside(sheet, run)?.Signal ?? "", run.Lead?.PartId ?? "", run.ScreenOf ?? "", cut.Label,
            ];
        }));

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
