using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Drawings;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Draws the bay from above with every device where it is stated to be, as somebody sees it who stands at the belts: the gearbox
/// lies up the page. A wire that has to grow runs from the place of the plug as found to the device, with its length beside it.
/// </summary>
/// <remarks>
/// Class names for a stylesheet: <c>bay-plan</c>, <c>chart-grid</c>, <c>axis</c>, <c>grown</c>, <c>run</c>, <c>trunk</c>, <c>spot</c> with
/// <c>as-is</c>, <c>worked</c>, <c>added</c> or <c>capped</c>, <c>number</c>, <c>note</c>.
/// </remarks>
public static class BayPlan
{
    private const double Width = 720;
    private const double Edge = 46;

    // What lies farther from the loom's trunk than this (a pump in the tank) is shown at the edge of the plan (no source: what fits a page).
    private const double ReachMm = 900;
    private const double Grid = 200;

    /// <param name="id">Unique on the page; names the title and the description.</param>
    /// <param name="plugs">In the order in which the sheet numbers them from 1.</param>
    /// <returns>Empty where nothing has a place.</returns>
    public static string Svg(WiringSheet sheet, IReadOnlyList<PlugWork> plugs, string id)
    {
        if (sheet.Data is not { } data)
        {
            return "";
        }

        var spots = plugs.Select((plug, at) => Spot(data, plug, at + 1)).OfType<PlanSpot>().ToImmutableArray();
        if (spots.IsEmpty)
        {
            return "";
        }

        var frame = PlanFrame.Around(spots.Select(spot => spot.At).Where(at => at.DistanceTo(data.Trunk) <= ReachMm).Append(data.Trunk), Width, Edge);
        var drawing = new Drawing();
        Ground(drawing, frame);
        Loom(drawing, frame, data);
        var labels = new PlanLabels(spots.Select(spot => frame.Of(spot.At)).Append(frame.Of(data.Trunk)), Width);
        foreach (var spot in spots)
        {
            Way(drawing, frame, data, sheet, spot);
        }

        foreach (var spot in spots)
        {
            Mark(drawing, frame, labels, spot);
        }

        Legend(drawing, frame.Height + 6);
        return drawing.Finish("bay-plan", id, "Plan of the bay, seen from above", Describe(frame, spots), Width, frame.Height + 54);
    }

    private static PlanSpot? Spot(WiringData data, PlugWork plug, int number)
    {
        var device = data.Devices.FirstOrDefault(one => one.Role == plug.Role);
        var found = data.Plugs.Where(one => one.Key == plug.Role).Select(one => (BayPoint?)one.Value.Location).FirstOrDefault();
        var at = device?.Location ?? found;
        return at is { } place
            ? new PlanSpot(number, plug, place, found, plug.Wires.Select(wire => wire.ExtensionMm).DefaultIfEmpty(0).Max())
            : null;
    }

    private static void Ground(Drawing drawing, PlanFrame frame)
    {
        foreach (var x in frame.LinesX(Grid))
        {
            drawing.Line("chart-grid", x, 24, x, frame.Height - 24, " stroke-opacity=\"0.35\"");
        }

        foreach (var y in frame.LinesZ(Grid))
        {
            drawing.Line("chart-grid", Edge / 2, y, Width - (Edge / 2), y, " stroke-opacity=\"0.35\"");
        }

        var (middle, _) = frame.Of(default);
        drawing.Line("axis", middle, 24, middle, frame.Height - 24, " stroke-dasharray=\"14 4 3 4\"");
        drawing.Text("note", middle, 16, "middle", 12, "gearbox end", bold: true);
        drawing.Text("note", middle, frame.Height - 8, "middle", 12, "belt end: you stand here", bold: true);
        drawing.Line("axis", Edge, frame.Height - 12, Edge + (Grid * frame.Scale), frame.Height - 12, " stroke-width=\"3\"");
        drawing.Text("note", Edge, frame.Height - 18, "start", 11, string.Create(CultureInfo.InvariantCulture, $"{Grid:0} mm"));
    }

    private static void Loom(Drawing drawing, PlanFrame frame, WiringData data)
    {
        var (x, y) = frame.Of(data.Trunk);
        var (ecuX, ecuY) = frame.Of(data.EcuPlace);
        drawing.Line("trunk", x, y, ecuX, ecuY, " stroke-width=\"5\" stroke-opacity=\"0.3\"");
        drawing.Box("trunk", ecuX - 9, ecuY - 9, 18, 18, 2);
        drawing.Text("note", ecuX, ecuY + 4, "middle", 9, "ECU", bold: true);
        drawing.Box("trunk", x - 4, y - 4, 8, 8, 0);
        drawing.Text("note", x + 8, y + 13, "start", 10, "loom");
    }

    private static void Way(Drawing drawing, PlanFrame frame, WiringData data, WiringSheet sheet, PlanSpot spot)
    {
        var (x, y) = frame.Of(spot.At);
        if (spot.GrownMm > 0 && spot.Found is { } found)
        {
            var (fromX, fromY) = frame.Of(found);
            drawing.Line("grown", fromX, fromY, x, y, " stroke-width=\"2.5\"");
            drawing.Path("grown", $"M{Drawing.N(fromX - 4)} {Drawing.N(fromY - 4)} l8 8 m0 -8 l-8 8");
        }

        // New wires: one line to each place that they end at.
        foreach (var end in sheet.Runs.Where(run => run.Role == spot.Plug.Role && run.Purpose == WirePurpose.Device).Select(run => run.To.Place).Distinct(StringComparer.Ordinal))
        {
            var to = end == data.Ecu?.Id ? data.Trunk
                : end is Places.Body ? data.CabinBody?.Location
                : end is Places.HarnessBody ? data.HarnessBody?.Location
                : data.Devices.Where(device => device.Role == end).Select(device => (BayPoint?)device.Location).FirstOrDefault();
            if (to is { } place)
            {
                var (toX, toY) = frame.Of(place);
                drawing.Line("run", x, y, toX, toY, " stroke-dasharray=\"5 4\" stroke-opacity=\"0.6\"");
            }
        }
    }

    private static void Mark(Drawing drawing, PlanFrame frame, PlanLabels labels, PlanSpot spot)
    {
        var (x, y) = frame.Of(spot.At);
        var kind = Kind(spot.Plug.Outcome);
        switch (kind)
        {
            case "added":
                drawing.Box("spot added", x - 5, y - 5, 10, 10, 0);
                break;
            case "capped":
                drawing.Path("spot capped", $"M{Drawing.N(x - 5)} {Drawing.N(y - 5)} l10 10 m0 -10 l-10 10", " stroke-width=\"2\"");
                break;
            case "worked":
                drawing.Dot("spot worked", x, y, 5);
                break;
            default:
                drawing.Path("spot as-is", $"M{Drawing.N(x - 4)} {Drawing.N(y)} a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0");
                break;
        }

        var text = string.Create(CultureInfo.InvariantCulture, $"{spot.Number}{(spot.GrownMm > 0 ? $" +{spot.GrownMm:0}" : "")}{(frame.Holds(spot.At) ? "" : " beyond")}");
        var (labelX, labelY, anchor) = labels.Place(x, y, text);
        drawing.Text("number", labelX, labelY, anchor, PlanLabels.Size, text, bold: true);
    }

    private static string Kind(PlugOutcome outcome) => outcome switch
    {
        PlugOutcome.Added => "added",
        PlugOutcome.Capped => "capped",
        PlugOutcome.StraightIn or PlugOutcome.Extended => "as-is",
        _ => "worked",
    };

    private static void Legend(Drawing drawing, double y)
    {
        drawing.Path("spot as-is", $"M{Drawing.N(Edge)} {Drawing.N(y + 10)} a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0");
        drawing.Text("note", Edge + 16, y + 14, "start", 11, "plug stays");
        drawing.Dot("spot worked", 150, y + 10, 5);
        drawing.Text("note", 162, y + 14, "start", 11, "plug re-pinned or changed");
        drawing.Box("spot added", 330, y + 5, 10, 10, 0);
        drawing.Text("note", 347, y + 14, "start", 11, "plug added");
        drawing.Path("spot capped", $"M440 {Drawing.N(y + 5)} l10 10 m0 -10 l-10 10", " stroke-width=\"2\"");
        drawing.Text("note", 457, y + 14, "start", 11, "capped");
        drawing.Line("grown", Edge, y + 32, Edge + 26, y + 32, " stroke-width=\"2.5\"");
        drawing.Text("note", Edge + 34, y + 36, "start", 11, "wires grow: from the plug's old place (×) to the device, + mm");
        drawing.Line("run", 440, y + 32, 466, y + 32, " stroke-dasharray=\"5 4\"");
        drawing.Text("note", 474, y + 36, "start", 11, "new wire, as the crow flies");
    }

    private static string Describe(PlanFrame frame, ImmutableArray<PlanSpot> spots)
    {
        var told = spots.Select(spot => string.Create(
            CultureInfo.InvariantCulture,
            $"{spot.Number}: {spot.Plug.Title}, {Side(spot.At.X)}, {Math.Abs(spot.At.Z):0} mm {(spot.At.Z < 0 ? "in front of the crank's nose" : "towards the gearbox")}{(spot.GrownMm > 0 ? $", wires longer by {spot.GrownMm:0} mm" : "")}{(frame.Holds(spot.At) ? "" : ", beyond the edge of the plan")}."));
        return $"You stand at the belts and look down; the gearbox lies up the page. {string.Join(' ', told)}";
    }

    private static string Side(double x) => x == 0 ? "on the crank's axis" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(x):0} mm to the {(x > 0 ? "right" : "left")}");

    /// <param name="Found">Where the harness's plug was found; null where it has none.</param>
    /// <param name="GrownMm">The longest piece let into its wires.</param>
    private sealed record PlanSpot(int Number, PlugWork Plug, BayPoint At, BayPoint? Found, double GrownMm);
}
