using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A plug and a cavity that a signal passes.</summary>
/// <param name="Place">Device role, ECU id, "body" or "harness body".</param>
/// <param name="Connector">Connector family; empty where it does not matter.</param>
public sealed record TracePoint(string Place, string Title, string Connector, string Cavity);

/// <summary>One stretch of the way of a signal.</summary>
/// <param name="Work">What is done here, in a few words.</param>
/// <param name="Wire">Colour and size of the wire as found or as new; null where none is known.</param>
/// <param name="LengthMm">Length of the new piece; null where none is cut.</param>
public sealed record TraceStep(TracePoint From, TracePoint? To, string Work, (string Colour, double SizeMm2)? Wire, double? LengthMm);

/// <summary>The way of one signal from the devices that have it to the ECU and to the cabin.</summary>
/// <param name="Devices">From each device to its plug and into the harness.</param>
/// <param name="Ecu">From the harness's ECU side into the ECU in use.</param>
/// <param name="Cabin">From the harness's bulkhead plug into the cabin.</param>
/// <param name="Gaps">Where the way is broken, as sentences; empty for a signal that arrives.</param>
public sealed record SignalTrace(
    Signal Signal, ImmutableArray<TraceStep> Devices, ImmutableArray<TraceStep> Ecu, ImmutableArray<TraceStep> Cabin, ImmutableArray<string> Gaps)
{
    public bool IsUsed => !Devices.IsEmpty || !Ecu.IsEmpty || !Cabin.IsEmpty;

    /// <summary>Null for a signal that the vocabulary does not know, or a sheet that was not computed here.</summary>
    public static SignalTrace? Of(WiringSheet sheet, string signal) =>
        sheet.Data is { } data && data.SignalOf(signal) is { } known ? new Tracer(sheet, data, known).Trace() : null;

    private sealed class Tracer(WiringSheet sheet, WiringData data, Signal signal)
    {
        private readonly List<string> gaps = [];

        public SignalTrace Trace()
        {
            var devices = Devices().ToImmutableArray();
            var ecu = Ecu().ToImmutableArray();
            var cabin = Cabin().ToImmutableArray();
            if (sheet.Needs.FirstOrDefault(need => need.Signal == signal.Id) is { Supply: NeedSupply.Unsupplied })
            {
                gaps.Add("The cabin asks for it, and nothing in this build gives it.");
            }

            return new(signal, devices, ecu, cabin, [.. gaps]);
        }

        private IEnumerable<TraceStep> Devices() =>
            from plug in sheet.Plugs
            from wire in plug.Wires
            where wire.Signal == signal.Id
            select Step(plug, wire);

        private TraceStep Step(PlugWork plug, WireRow wire)
        {
            var from = new TracePoint(plug.Role, plug.Title, plug.DeviceConnector ?? "", wire.Cavity);
            var run = RunOf(wire.Run);
            if (wire.Action == WireAction.Empty)
            {
                return new(from, null, "left empty: the cabin has one of its own", null, null);
            }

            if (wire.Action == WireAction.Screen)
            {
                return new(from, null, "the screen of the wires that are there, drawn out and sleeved", null, null);
            }

            if (wire.Action == WireAction.Unreached)
            {
                gaps.Add($"{plug.Title} asks for it at cavity {wire.Cavity}, and nothing carries it there.");
                return new(from, null, "nothing carries it", null, null);
            }

            (string, double)? found = (wire.Colour, wire.SizeMm2);
            if (wire.Action is WireAction.Runs or WireAction.Joins or WireAction.TakesOver)
            {
                var how = wire.Action switch
                {
                    WireAction.Joins => "new wire, joined to one that carries it",
                    WireAction.TakesOver => "new wire, joined to one cut out of a plug that nothing takes",
                    _ => "new wire",
                };
                return new(from, run is null ? null : Point(run.To), how, found, run?.LengthMm);
            }

            var to = new TracePoint(plug.Role, $"{plug.Title}, harness plug", plug.HarnessConnector ?? "", wire.FromCavity ?? "");
            var work = plug.Outcome switch
            {
                PlugOutcome.Lead => "by the adapter lead",
                PlugOutcome.Changed => "new housing",
                _ => wire.Action == WireAction.Moves ? "moves to this cavity" : "plugs in",
            };
            return new(from, to, run is null ? work : $"{work}, lengthened", found, run?.LengthMm);
        }

        private IEnumerable<TraceStep> Ecu()
        {
            if (sheet.EcuAdapter is not { } adapter)
            {
                return data.EcuPins.Where(pin => pin.Pin.Signal == signal.Id).Select(pin => new TraceStep(
                    EcuPoint(data.Ecu!, pin.Connector, pin.Name), null, "the harness's own plug goes in", (pin.Pin.Colour, pin.Pin.SizeMm2), null));
            }

            return Rows(adapter, (cavity, plug) => EcuPoint(data.MadeFor!, Family(adapter.From, plug), cavity), (cavity, plug) => EcuPoint(data.Ecu!, Family(adapter.To, plug), cavity));
        }

        private IEnumerable<TraceStep> Cabin()
        {
            if (sheet.BodyAdapter is not { } adapter)
            {
                return (data.CabinBody?.Pins ?? []).Where(pin => pin.Signal == signal.Id).Select(pin => new TraceStep(
                    Bulkhead(Places.HarnessBody, data.HarnessBody!.Connector, pin.Cavity), Bulkhead(Places.Body, data.CabinBody!.Connector, pin.Cavity), "plugs in", (pin.Colour, pin.SizeMm2), null));
            }

            return Rows(adapter, (cavity, _) => Bulkhead(Places.HarnessBody, data.HarnessBody!.Connector, cavity), (cavity, _) => Bulkhead(Places.Body, data.CabinBody!.Connector, cavity));
        }

        // Only a side that is there has cavities, so that a row names none of one that is not.
        private IEnumerable<TraceStep> Rows(AdapterHarness adapter, Func<string, string?, TracePoint> from, Func<string, string?, TracePoint> to)
        {
            foreach (var row in adapter.Rows.Where(row => row.Signal == signal.Id))
            {
                var run = RunOf(row.Run);
                var (start, end) = (row.From is { } left ? from(left, row.FromPlug) : (TracePoint?)null, row.To is { } right ? to(right, row.ToPlug) : null);
                if (row is { Action: AdapterAction.Missing, Optional: false })
                {
                    gaps.Add($"{end!.Title} asks for it at cavity {end.Cavity}, and nothing fitted carries it.");
                }

                var far = row.Action == AdapterAction.AddWire && run is not null ? Point(run.From.Place == end?.Place && run.From.Cavity == end.Cavity ? run.To : run.From) : null;
                var work = row.Action switch
                {
                    AdapterAction.Join => "joined",
                    AdapterAction.AddWire => "new wire",
                    AdapterAction.Cap => "capped",
                    AdapterAction.Branch => "goes to",
                    _ => "left empty",
                };
                yield return new(start ?? far ?? end!, start is null && far is null ? null : end, row.Note.Length > 0 ? $"{work}: {row.Note}" : work, (row.Colour ?? "", row.SizeMm2), run?.LengthMm);
            }
        }

        private WireRun? RunOf(string? label) => label is null ? null : sheet.Runs.FirstOrDefault(run => run.Label == label);

        private TracePoint Point(WireEnd end) => new(end.Place, data.TitleOf(end.Place), end.Connector ?? "", end.Cavity);

        private TracePoint Bulkhead(string place, string connector, string cavity) => new(place, data.TitleOf(place), connector, cavity);

        private TracePoint EcuPoint(Ecu ecu, string connector, string cavity) => new(ecu.Id, data.TitleOf(ecu.Id), connector, cavity);

        private static string Family(AdapterSide side, string? plug) => side.Plugs.FirstOrDefault(pair => pair.Key == plug).Value ?? "";
    }
}
