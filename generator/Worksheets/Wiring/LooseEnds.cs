using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>What is done with a signal that only one side has.</summary>
public enum LooseAction
{
    /// <summary>Insulate the end and tie it back.</summary>
    Cap,

    /// <summary>Cut the wire out of its plug and lead it to where it is wanted.</summary>
    CutOut,

    /// <summary>Run a new wire.</summary>
    RunNew,

    /// <summary>Bring the feed or ground from where it is.</summary>
    FeedFrom,

    /// <summary>Leave the cavity or the wire as it is.</summary>
    LeaveOff,

    /// <summary>Nothing in this build has it, and something asks for it.</summary>
    Missing,
}

/// <summary>A signal without a counterpart.</summary>
/// <param name="Place">Device role, ECU id, "body", "harness body" or "harness side".</param>
/// <param name="Reason">Why, as a sentence.</param>
public sealed record LooseEnd(string Signal, string Title, string Place, string Cavity, LooseAction Action, string Reason);

/// <summary>Lists every signal that one side has and the other lacks, each with what to do about it and why.</summary>
public static class LooseEnds
{
    public static ImmutableArray<LooseEnd> Of(WiringSheet sheet) =>
    [
        .. sheet.Plugs.SelectMany(plug => OfPlug(sheet, plug))
            .Concat(Rows(sheet, sheet.EcuAdapter, sheet.Data?.Ecu?.Id ?? "ECU side", sheet.Data?.MadeFor?.Id ?? Places.HarnessEcu))
            .Concat(Rows(sheet, sheet.BodyAdapter, Places.Body, Places.HarnessBody))
            .OrderBy(end => Rank(end.Action))
            .ThenBy(end => end.Title, StringComparer.Ordinal)
            .ThenBy(end => end.Place, StringComparer.Ordinal)
            .ThenBy(end => end.Cavity, CavityOrder.Instance),
    ];

    private static IEnumerable<LooseEnd> OfPlug(WiringSheet sheet, PlugWork plug)
    {
        foreach (var wire in plug.Capped)
        {
            var (action, reason) = !wire.Takers.IsEmpty ? (LooseAction.CutOut, $"{(plug.Outcome == PlugOutcome.Capped ? "nothing is fitted that takes this plug" : "the device has no use for it")}: the wire goes to {string.Join(" and ", wire.Takers.Select(end => At(sheet, end)))}")
                : plug.Outcome == PlugOutcome.Capped ? (LooseAction.Cap, $"nothing is fitted that takes this plug: cap the plug {(plug.Capped.All(other => other.Takers.IsEmpty) ? "whole" : "with what is left in it")} and tie it back{Stub(sheet, wire.Signal)}")
                : sheet.Data?.IsRerouted(wire.Signal) == true ? (LooseAction.Cap, $"it would bypass the {sheet.Data.TitleOf(sheet.Data.SignalOf(wire.Signal)!.Through!)}: cut it off at this plug and seal the end; the new wire from there takes its place")
                : sheet.Data is { } data && data.DeviceAt(plug.Role) is { } device && data.PlugAt(plug.Role) is { } own && data.IsLeftAtThePlug(device, own, wire.Signal)
                    ? (LooseAction.Cap, "its device lives behind the dash and has this from there: cut it off at this plug and seal the end")
                : wire.StaysInHousing ? (LooseAction.LeaveOff, "the device has no use for it; the wire may stay in its cavity")
                : (LooseAction.Cap, $"the device has no use for it, and its cavity is gone or taken by another wire{Stub(sheet, wire.Signal)}");
            yield return new(wire.Signal, Title(sheet, wire.Signal), plug.Role, wire.Cavity, action, reason);
        }

        foreach (var wire in plug.Wires.Where(wire => wire.Action is WireAction.Runs or WireAction.Joins or WireAction.TakesOver or WireAction.Empty or WireAction.Unreached))
        {
            var run = sheet.Runs.FirstOrDefault(run => run.Label == wire.Run);
            if (run is { To.Kind: WireEndKind.Terminal } && run.To.Place == plug.Role && run.From.Place != plug.Role)
            {
                // One wire between two plugs is told of where it begins.
                continue;
            }

            var (action, reason) = wire.Action == WireAction.Empty ? (LooseAction.LeaveOff, "the cabin has one of its own on this output: leave the cavity empty")
                : wire.Action == WireAction.Unreached || run is null ? (LooseAction.Missing, "nothing in this build carries it: a rule has to say where it comes from")
                : Places.IsAddedRelay(run.To.Place) ? (LooseAction.FeedFrom, $"the harness's wire is too thin for it: lead it to {At(sheet, run.To)}")
                : run.ScreenOf is not null ? (LooseAction.FeedFrom, $"it is the screen of the new wire beside it: join it on at {At(sheet, run.To)}")
                : run.To.Kind == WireEndKind.Ring ? (LooseAction.RunNew, $"ground it to {sheet.Data?.TitleOf(run.To.Place)}, with a ring terminal")
                : run.To.Place == Places.Body && sheet.Data?.Devices.First(device => device.Role == plug.Role).ToCabin.Contains(wire.Cavity) == true ? (LooseAction.RunNew, $"it gives the cabin the signal: lead it to {At(sheet, run.To)}, where nothing else is joined")
                : wire.Action == WireAction.TakesOver ? (LooseAction.RunNew, $"cut the wire out of the plug at {At(sheet, run.To)}, which has no use for it, and {(Joints.Lengthens(sheet, run) ? "lengthen it to here" : "lay this one against the joint")}")
                : wire.Action == WireAction.Joins ? (LooseAction.FeedFrom, $"the harness has it at {At(sheet, run.To)}, which is nearest: join it there")
                : (LooseAction.RunNew, $"the harness has no wire for it here; {At(sheet, run.To)} has the signal");
            yield return new(wire.Signal, Title(sheet, wire.Signal), plug.Role, wire.Cavity, action, run?.Lead is { } lead ? $"{reason}; the wire comes with: {lead.Title}" : reason);
        }
    }

    private static IEnumerable<LooseEnd> Rows(WiringSheet sheet, AdapterHarness? adapter, string to, string from)
    {
        foreach (var row in adapter?.Rows ?? [])
        {
            var feed = row.Kind is SignalKind.Power or SignalKind.Ground;
            (LooseAction Action, string Reason)? what = row.Action switch
            {
                AdapterAction.Cap => (row.Optional ? LooseAction.Cap : LooseAction.FeedFrom, row.Note + Stub(sheet, row.Signal)),
                // A wire between a device and the ECU or the cabin is told of at the device.
                AdapterAction.AddWire when sheet.Runs.Any(run => run.Label == row.Run && run.Purpose == WirePurpose.Device) => null,
                AdapterAction.AddWire => (feed ? LooseAction.FeedFrom : LooseAction.RunNew, row.Note),
                AdapterAction.Missing => (row.Optional ? LooseAction.LeaveOff : LooseAction.Missing, row.Note),
                _ => null,
            };
            if (what is { } known)
            {
                yield return new(row.Signal, row.Title, row.To is null ? from : to, row.To ?? row.From ?? "", known.Action, known.Reason);
            }
        }
    }

    /// <summary>An end that is only capped is a branch of the line still, and echoes like one where the line is in use: common practice, no source.</summary>
    private static string Stub(WiringSheet sheet, string signal) => sheet.Data is { } data && data.IsTwisted(signal) && data.IsAtEcu(signal)
        ? "; the line is in use: cut the wire back to where it branches off, since an end that is only capped is a stub too"
        : "";

    private static string At(WiringSheet sheet, WireEnd end) => $"{sheet.Data?.TitleOf(end.Place) ?? end.Place}{(end.Cavity.Length > 0 ? $", {end.Cavity}" : "")}";

    private static string Title(WiringSheet sheet, string signal) => sheet.Data?.SignalOf(signal)?.Title ?? signal;

    private static int Rank(LooseAction action) => action switch
    {
        LooseAction.Missing => 0,
        LooseAction.FeedFrom => 1,
        LooseAction.RunNew => 2,
        LooseAction.CutOut => 3,
        LooseAction.Cap => 4,
        _ => 5,
    };
}
