using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Adds up what the plugs, the adapters and the pieces of wire ask for.</summary>
internal static class BillOfWiring
{
    public static WiringBill Of(
        WiringData data, ImmutableArray<PlugWork> plugs, IReadOnlyList<WireRun> runs, ImmutableArray<AdapterHarness> adapters)
    {
        var housings = NewHousings(plugs, runs, adapters).ToList();
        var moved = plugs
            .SelectMany(plug => plug.Recrimped.Select(_ => plug.DeviceConnector!));
        var ended = runs.SelectMany(run => run.Crimped()).Select(end => end.Connector!);
        ImmutableArray<TerminalLine> terminals =
        [
            .. Count(moved.Concat(ended)).Select(line =>
            {
                var family = data.Connectors.GetValueOrDefault(line.Name);
                return new TerminalLine(line.Name, TerminalOf(data, line.Name), line.Count, family is { Sealed: true } ? line.Count : 0);
            }),
        ];
        var splices = runs.Sum(run => run.Splices);
        var cuts = Listed(runs.Where(run => run.IsCut));
        var screened = runs.Where(run => run.Shielded).Select(run => run.Label).ToHashSet(StringComparer.Ordinal);
        return new(
            terminals,
            terminals.Sum(line => line.Seals),
            housings.Sum(housing => EmptyCavities(data, housing)),
            splices,
            splices,
            Count(housings.Select(housing => housing.Connector)),
            Count(adapters.Where(adapter => !adapter.PlugsTogether).SelectMany(Counterparts)),
            Count(plugs.Select(plug => plug.LeadPart).OfType<string>()),
            plugs.Sum(plug => plug.Capped.Count(wire => !wire.StaysInHousing && wire.Takers.IsEmpty)),
            [
                .. cuts.GroupBy(cut => (cut.SizeMm2, cut.Colour))
                    .Select(group => new WireLine(group.Key.SizeMm2, group.Key.Colour, group.Sum(cut => cut.LengthMm), group.Count()) { Screened = group.Count(cut => screened.Contains(cut.Label)) }),
            ],
            cuts,
            Listed(runs.Where(run => !run.IsCut)));
    }

    /// <summary>The terminal of a family; a ring and a relay's base belong to none of the base's.</summary>
    public static string TerminalOf(WiringData? data, string connector) => data?.Connectors.GetValueOrDefault(connector)?.Terminal ?? connector switch
    {
        Places.Ring => Places.Ring,
        Places.RelayBase => "blade-6-3",
        _ => "",
    };

    private static ImmutableArray<CutPiece> Listed(IEnumerable<WireRun> runs) =>
    [
        .. runs.Select(run => new CutPiece(run.SizeMm2, run.Colour, run.LengthMm, run.Label, run.Role, run.Cavity, run.Signal))
            .OrderBy(cut => cut.SizeMm2)
            .ThenBy(cut => cut.Colour, StringComparer.Ordinal)
            .ThenByDescending(cut => cut.LengthMm)
            .ThenBy(cut => cut.Label, StringComparer.Ordinal),
    ];

    /// <summary>New plugs of devices (changed, added) and of adapters (side in use), each with the cavities that get a wire.</summary>
    private static IEnumerable<NewHousing> NewHousings(
        ImmutableArray<PlugWork> plugs, IReadOnlyList<WireRun> runs, ImmutableArray<AdapterHarness> adapters)
    {
        foreach (var plug in plugs.Where(plug => plug.WantsHousing))
        {
            yield return new(plug.DeviceConnector!, plug.Wires.Count(wire => wire.Action is not (WireAction.Unreached or WireAction.Empty)));
        }

        foreach (var adapter in adapters.Where(adapter => !adapter.PlugsTogether))
        {
            foreach (var (id, connector) in adapter.To.Plugs)
            {
                var wired = adapter.Rows
                    .Where(row => row.ToPlug == id && row.Action is (AdapterAction.Join or AdapterAction.AddWire))
                    .Select(row => row.To)
                    .Distinct(StringComparer.Ordinal)
                    .Count();
                if (wired > 0)
                {
                    yield return new(connector, wired);
                }
            }
        }
    }

    /// <summary>Halves for the harness's own plugs from which at least one wire goes on.</summary>
    private static IEnumerable<string> Counterparts(AdapterHarness adapter) =>
        from plug in adapter.From.Plugs
        where adapter.Rows.Any(row => row.FromPlug == plug.Key && row.Action == AdapterAction.Join)
        select plug.Value;

    private static int EmptyCavities(WiringData data, NewHousing housing) =>
        data.Connectors.TryGetValue(housing.Connector, out var family) && family.Sealed && !family.Cavities.IsDefault
            ? Math.Max(0, family.Cavities.Length - housing.Wired)
            : 0;

    private static ImmutableArray<CountLine> Count(IEnumerable<string> names) =>
        [.. names.CountBy(name => name, StringComparer.Ordinal).Select(pair => new CountLine(pair.Key, pair.Value)).OrderBy(line => line.Name, StringComparer.Ordinal)];

    private sealed record NewHousing(string Connector, int Wired);
}
