using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Draws the wires of one device: from its cavities by way of the harness's plug to where each ends, with colour and size above
/// the wire and what is done to it below. Colours are written and never told by paint alone.
/// </summary>
/// <remarks>Class names as in <see cref="AdapterDrawing"/>, besides <c>device-drawing</c>.</remarks>
public static class DeviceDrawing
{
    private const double Width = 600;
    private const double Row = 40;
    private const double Top = 44;
    private const double Pin = 70;
    private const double PlugX = 300;
    private const double End = 430;

    // Bold letters and wide faces want more room than letters on average.
    private const double Lean = 0.8;

    /// <param name="id">Unique on the page; names the title and the description.</param>
    /// <returns>Empty for a plug without a device.</returns>
    public static string Svg(WiringSheet sheet, PlugWork plug, string id)
    {
        if (sheet.Data is not { } data || plug.Wires.IsEmpty)
        {
            return "";
        }

        var drawing = new Drawing();
        var ways = plug.Wires.Select(wire => Way(sheet, data, plug, wire)).ToImmutableArray();
        var height = Top + (ways.Length * Row) + 8;
        drawing.Text("plug-title", 8, 18, "start", Drawing.Fit(13, plug.Title, (PlugX - 60) * Lean), plug.Title, bold: true);
        drawing.Box("plug-box", 8, Top - 10, Pin - 8, (ways.Length * Row) + 10, 6);
        if (ways.Any(way => way.Plug.Length > 0))
        {
            drawing.Text("note", PlugX, 34, "middle", 10, "plug as found");
        }

        for (var at = 0; at < ways.Length; at++)
        {
            Draw(drawing, ways[at], Top + (at * Row) + (Row / 2));
        }

        return drawing.Finish("device-drawing", id, $"Wires of: {plug.Title}", string.Join(' ', ways.Select(Tell)), Width, height);
    }

    private static WireWay Way(WiringSheet sheet, WiringData data, PlugWork plug, WireRow wire)
    {
        var run = sheet.Runs.FirstOrDefault(one => one.Label == wire.Run);
        var isNew = wire.Action is WireAction.Runs or WireAction.Joins or WireAction.TakesOver;
        var end = isNew && run is not null ? Place(data, run.To) : Far(data, wire.Signal);
        var work = wire.Action switch
        {
            _ when run is { IsCut: false } => run.Lead is null ? "the screen" : "comes with a lead",
            WireAction.Unreached => "nothing carries it: see the rules",
            WireAction.Empty => "leave empty",
            WireAction.Screen => "old screen, sleeved",
            WireAction.Runs => string.Create(CultureInfo.InvariantCulture, $"new wire{(run is null ? "" : $", {run.LengthMm:#,0} mm")}"),
            WireAction.Joins or WireAction.TakesOver => string.Create(CultureInfo.InvariantCulture, $"new wire, spliced{(run is null ? "" : $", {run.LengthMm:#,0} mm")}"),
            _ when wire.IsRenewed => "renew in one piece",
            _ => wire.ExtensionMm > 0 ? string.Create(CultureInfo.InvariantCulture, $"let in {wire.ExtensionMm:#,0} mm") : "",
        };
        return new(wire, data.SignalOf(wire.Signal)?.Title ?? wire.Signal, isNew || wire.Action is WireAction.Unreached or WireAction.Empty ? "" : wire.FromCavity ?? "", end, work, plug.Outcome == PlugOutcome.Lead);
    }

    // Where the harness leads a signal to: the ECU in use, else the cabin, else to its other users inside the loom.
    private static string Far(WiringData data, string signal) =>
        data.EcuPinsOf(signal).FirstOrDefault() is { } ecu ? $"ECU {ecu.Name}"
        : data.CabinPinsOf(signal).FirstOrDefault() is { } cabin ? $"bulkhead plug {cabin.Name}"
        : "inside the loom";

    private static string Place(WiringData data, WireEnd end) => end.Place switch
    {
        _ when end.Place == data.Ecu?.Id => $"ECU {end.Cavity}",
        Places.Body => $"bulkhead plug {end.Cavity}",
        Places.HarnessBody => $"bulkhead plug {end.Cavity}, splice",
        Places.BodyMetal => "body, ring",
        _ => $"{data.TitleOf(end.Place)} {end.Cavity}{(end.Kind == WireEndKind.Splice ? ", splice" : "")}",
    };

    private static void Draw(Drawing drawing, WireWay way, double y)
    {
        drawing.Text("cavity", Pin - 12, y + 5, "end", 14, way.Wire.Cavity, bold: true);
        drawing.Dot("pin", Pin, y, 3);
        if (way.Wire.Action is WireAction.Unreached or WireAction.Empty)
        {
            drawing.Path("missing", string.Create(CultureInfo.InvariantCulture, $"M{Pin + 12} {y - 5:0.#} l10 10 m0 -10 l-10 10"));
            drawing.Text("note", Pin + 32, y + 4, "start", 11, $"{way.Signal}: {way.Work}");
            return;
        }

        var path = string.Create(CultureInfo.InvariantCulture, $"M{Pin} {y:0.#} H{End}");
        if (WireColour.TryParse(way.Wire.Colour, out var colour))
        {
            drawing.Path($"wire {colour.BaseClass}", path);
            if (colour.TracerClass is { } tracer)
            {
                drawing.Path($"tracer {tracer}", path, " stroke=\"none\" stroke-dasharray=\"6 10\"");
            }
        }
        else
        {
            drawing.Path("wire", path);
        }

        var size = string.Create(CultureInfo.InvariantCulture, $"{way.Wire.Colour} {way.Wire.SizeMm2:0.##} mm²");
        drawing.Text("code", Pin + 10, y - 5, "start", 11, size, bold: true);
        drawing.Text("signal", Pin + 10, y + 14, "start", Drawing.Fit(10, way.Signal, (End - Pin - 20) * Lean), way.Signal);
        if (way.Plug.Length > 0)
        {
            drawing.Box("cavity-box", PlugX - 11, y - 9, 22, 18, 3);
            drawing.Text("cavity", PlugX, y + 4, "middle", 12, way.Plug, bold: true);
        }

        drawing.Text("note", PlugX + 16, y - 5, "start", Drawing.Fit(10, way.Told, (End - PlugX - 16) * Lean), way.Told);
        drawing.Dot("pin", End, y, 3);
        drawing.Text("note", End + 8, y + 4, "start", Drawing.Fit(12, way.End, (Width - End - 12) * Lean), way.End, bold: true);
    }

    private static string Tell(WireWay way) => way.Wire.Action is WireAction.Unreached or WireAction.Empty
        ? $"Cavity {way.Wire.Cavity}, {way.Signal}: {way.Work}."
        : string.Create(CultureInfo.InvariantCulture, $"Cavity {way.Wire.Cavity}, {way.Signal}, {way.Wire.Colour} {way.Wire.SizeMm2:0.##} mm²{(way.Plug.Length > 0 ? $", from cavity {way.Plug} of the plug as found" : "")}{(way.Told.Length > 0 ? $", {way.Told}" : "")}, to {way.End}.");

    /// <param name="Plug">Cavity of the harness's plug as found; empty for a new wire.</param>
    private sealed record WireWay(WireRow Wire, string Signal, string Plug, string End, string Work, bool ByLead)
    {
        public string Told => ByLead ? $"by the adapter lead{(Work.Length > 0 ? $", {Work}" : "")}" : Work;
    }
}
