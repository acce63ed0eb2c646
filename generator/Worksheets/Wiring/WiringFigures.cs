using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Worksheets.Ledgers;

namespace Swapwright.Worksheets.Wiring;

/// <summary>The numbers of the wiring with the way they were got, for who asks why: counts, and each new piece with its length and its conductor.</summary>
public static class WiringFigures
{
    private const string Practice = "common practice, no source";
    private const string Counted = "counted over the plugs of the combination";

    public static void Add(LedgerBuilder ledger, WiringSheet sheet)
    {
        Plugs(ledger, sheet);
        Sums(ledger, sheet);
        foreach (var run in sheet.Runs)
        {
            Length(ledger, sheet, run);
            Conductor(ledger, run);
        }
    }

    /// <summary>The label of a piece as an id: words of small letters and digits.</summary>
    public static string Id(WireRun run)
    {
        var letters = run.Label.ToLowerInvariant().Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-').ToArray();
        return string.Join('-', new string(letters).Split('-', StringSplitOptions.RemoveEmptyEntries));
    }

    private static void Plugs(LedgerBuilder ledger, WiringSheet sheet)
    {
        var counts = sheet.Counts;
        FigureInput fitted = new("devices that are fitted", sheet.Plugs.Count(plug => plug.DeviceConnector is not null), "", "answers of the combination");
        FigureInput plugged = new("plugs of the harness", sheet.Plugs.Count(plug => plug.HarnessConnector is not null), "", "harness in use");
        void Count(string id, string title, int count, string rule) => ledger.Add(new Figure($"plugs-{id}", title, count, "") { Decimals = 0, Formula = rule, Source = Counted, From = [fitted, plugged] });
        Count("straight-in", "Plugs that go straight in", counts.StraightIn, "the families mate, every cavity has its signal, and the plug reaches");
        Count("re-pinned", "Plugs re-pinned", counts.RePinned, "the families mate, and a cavity holds another wire or none");
        Count("changed", "Plugs changed", counts.Changed, "the families do not mate");
        Count("lead", "Plugs met by an adapter lead", counts.Lead, "the families do not mate, and a lead joins them");
        Count("added", "Plugs added", counts.Added, "the harness has no plug for the device");
        Count("extended", "Plugs with wires extended", counts.Extended, "the plug is further from its device than it reaches");
        Count("joined", "Plugs with a wire joined to another", counts.Joined, "a shared signal comes from the nearest wire that carries it");
        Count("capped", "Plugs capped", counts.Capped, "the device is not fitted");
    }

    private static void Sums(LedgerBuilder ledger, WiringSheet sheet)
    {
        var bill = sheet.Bill;
        void Sum(string id, string title, double value, string unit, string formula, int decimals, ImmutableArray<FigureInput> from) =>
            ledger.Add(new Figure(id, title, value, unit) { Decimals = decimals, Formula = formula, Source = "summed over the pieces of the combination", From = [.. from, new("pieces", sheet.Pieces.Count(), "", "figure pieces")] });
        Sum("pieces", "Pieces of wire to cut", sheet.Pieces.Count(), "", "one for each new, lengthened or adapted wire", 0, Purposes(sheet));
        Sum("wire", "Wire in all", bill.TotalLengthMm, "mm", "Σ L", 0, [.. bill.Wire.Select(line => new FigureInput(string.Create(CultureInfo.InvariantCulture, $"{line.SizeMm2:0.##} mm² {line.Colour}"), line.LengthMm, "mm", Pieces(line.Pieces)))]);
        Sum("terminals", "Terminals", bill.Terminals.Sum(line => line.Count), "", "one for each end in a new plug and each wire that changes its housing", 0, [.. bill.Terminals.Select(line => new FigureInput($"terminals {line.Terminal}", line.Count, "", $"connector {line.Connector}"))]);
        Sum("splices", "Splices", bill.Splices, "", "two for a wire that is lengthened, one for an end on another wire", 0, []);
        Sum("longest-wire", "Longest piece of new wire", sheet.Pieces.Select(run => run.LengthMm).DefaultIfEmpty(0).Max(), "mm", "the greatest L", 0, Of(sheet.Pieces.MaxBy(run => run.LengthMm), run => run.LengthMm, "mm", "length"));
        Sum("longest-drop", "Greatest voltage lost along a new piece", sheet.Pieces.Select(run => run.DropV ?? 0).DefaultIfEmpty(0).Max(), "V", "the greatest ΔV", 3, Of(sheet.Pieces.MaxBy(run => run.DropV ?? 0), run => run.DropV ?? 0, "V", "size"));
        Sum("thickest-wire", "Thickest new wire", sheet.Pieces.Select(run => run.SizeMm2).DefaultIfEmpty(0).Max(), "mm²", "the greatest A", 2, Of(sheet.Pieces.MaxBy(run => run.SizeMm2), run => run.SizeMm2, "mm²", "size"));
        var (fuses, relays) = (LoadProtection.Fuses(sheet), LoadProtection.Relays(sheet));
        Sum("fuses", "Fuses for added loads", fuses.Length, "", string.Create(CultureInfo.InvariantCulture, $"the smallest blade of at least {LoadProtection.FuseMargin} I, for each new feed of a load"), 0, [.. fuses.Select(fuse => new FigureInput($"current of {fuse.Title}", fuse.CurrentA, "A", $"piece {fuse.Run}"))]);
        Sum("relays", "Relays for added loads", relays.Length, "", "where the load draws more than the output switches", 0, [.. relays.Select(relay => new FigureInput($"current of {relay.Title}, against {relay.LimitA.ToString("0.##", CultureInfo.InvariantCulture)} A", relay.CurrentA, "A", relay.Ecu))]);
    }

    private static ImmutableArray<FigureInput> Purposes(WiringSheet sheet) =>
        [.. sheet.Pieces.GroupBy(run => run.Purpose).OrderBy(group => group.Key).Select(group => new FigureInput(Purpose(group.Key), group.Count(), "", "pieces of the combination")), new("plugs", sheet.Plugs.Length, "", "plugs of the combination")];

    private static void Length(LedgerBuilder ledger, WiringSheet sheet, WireRun run)
    {
        var settings = sheet.Data?.Settings ?? WiringSettings.Default;
        ledger.Add(new Figure($"length-{Id(run)}", $"Length of {run.Label}", run.LengthMm, "mm")
        {
            Decimals = 0,
            Formula = run.WayMm is null ? "the length of an adapter between two plugs, or of the way from one to the other" : "L = ⌈k d + s⌉",
            Source = Practice,
            From =
            [
                .. run.WayMm is { } way ? (FigureInput[])[new("straight way d", way, "mm", $"{run.From.Place} to {run.To.Place}")] : [new("adapter between plugs side by side", settings.AdapterLengthMm, "mm", "setting")],
                new("routing factor k", settings.RoutingFactor, "", "setting of the base"),
                new("slack s", settings.SlackMm, "mm", "setting of the base"),
            ],
            IsStep = true,
        });
    }

    private static void Conductor(LedgerBuilder ledger, WireRun run)
    {
        if (run.Conductor is not { } chosen)
        {
            ledger.Gap($"Conductor of {run.Label}", "no current is stated for its signal", "Give the signal or the device its current; until then the size that the signal states is kept.");
            return;
        }

        var need = chosen.For;
        ledger.Add(new Figure($"size-{Id(run)}", $"Conductor of {run.Label}", run.SizeMm2, "mm²")
        {
            Decimals = 2,
            Formula = "A ≥ what the current, the fuse, ΔV = I R′ L and the hand ask for",
            Source = "R′ of IEC 60228, class 5, with the temperature coefficient of IEC 60028; currents and fuses of one body-builder manual (2015)",
            From =
            [
                new("current I", need.CurrentA, "A", $"signal {run.Signal} or its device"),
                new("length L", need.LengthMm, "mm", $"figure length-{Id(run)}"),
                new("resistance R′ of a metre, hot", chosen.MilliohmPerM, "mΩ/m", "IEC 60228"),
                new("temperature of the conductor", need.Celsius, "°C", "setting of the base"),
                new("drop that is allowed", need.AllowedDropV, "V", "setting of the base"),
                .. chosen.ByCurrentMm2 is { } current ? (FigureInput[])[new("asked by the current", current, "mm²", "table of the manual")] : [],
                .. chosen.ByDropMm2 is { } drop ? (FigureInput[])[new("asked by the drop", drop, "mm²", "ΔV = I R′ L")] : [],
                .. need.FuseA is { } fuse ? (FigureInput[])[new("fuse", fuse, "A", "figure fuses")] : [],
                new("asked by the signal or the wire as found", need.AskedMm2, "mm²", $"signal {run.Signal}"),
                new("mechanical minimum", need.LeastMm2, "mm²", "setting of the base"),
            ],
            Remark = string.Create(CultureInfo.InvariantCulture, $"loses {chosen.DropV:0.000} V"),
            IsStep = true,
        });
    }

    private static ImmutableArray<FigureInput> Of(WireRun? run, Func<WireRun, double> value, string unit, string what) =>
        run is null ? [] : [new(run.Label, value(run), unit, $"figure {what}-{Id(run)}")];

    private static string Pieces(int count) => count == 1 ? "one piece" : string.Create(CultureInfo.InvariantCulture, $"{count} pieces");

    private static string Purpose(WirePurpose purpose) => purpose switch
    {
        WirePurpose.Extension => "pieces let in",
        WirePurpose.Renewal => "cables renewed",
        WirePurpose.EcuAdapter => "wires of the ECU's adapter",
        WirePurpose.BodyAdapter => "wires of the bulkhead's adapter",
        _ => "new wires of devices",
    };
}
