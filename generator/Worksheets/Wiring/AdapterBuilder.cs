using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Joins two pin-outs by signal. Cavities with the same signal pair off in order and what is left over on one side joins the last
/// pair; a signal of one side only is capped (harness) or gets a wire from what carries it (side in use). Two signals never meet,
/// so that grounds of different class stay apart.
/// </summary>
internal sealed class AdapterBuilder(WiringData data, WireRouting routing, BulkheadFeeds feeds, ProblemList problems)
{
    private const string NoSide = "No ECU plug";
    private const string NothingGives = "nothing fitted gives it";

    /// <summary>Between the harness's ECU side and the ECU in use; null where there is nothing to adapt.</summary>
    public AdapterHarness? ForEcu()
    {
        if (data.MadeFor?.Id == data.Ecu?.Id)
        {
            return null;
        }

        var sides = new AdapterSides(
            new(data.MadeFor?.Title ?? NoSide, PlugsOf(data.MadeFor)), data.MadeForPins,
            new(data.Ecu?.Title ?? NoSide, PlugsOf(data.Ecu)), data.EcuPins,
            data.Ecu?.Id ?? "ECU side", WirePurpose.EcuAdapter, data.Settings.AdapterLengthMm, MovesDoInPlace: false);
        return Build(sides, routing.ToEcu, OptionalAtEcu);
    }

    /// <summary>Between the harness's bulkhead plug and the cabin's; null where the cabin has none or the two go together as they are.</summary>
    public AdapterHarness? ForBody()
    {
        if (data.CabinBody is not { } cabin)
        {
            return null;
        }

        var own = data.HarnessBody;
        var distance = own?.Location.DistanceTo(cabin.Location) ?? 0;
        var reach = distance > data.Settings.ReachMm ? data.LengthMm(own!.Location, cabin.Location) : 0;
        var sides = new AdapterSides(
            new("Harness, bulkhead plug", own is null ? [] : [KeyValuePair.Create("", own.Connector)]), data.HarnessBodyPins,
            new("Cabin, bulkhead plug", [KeyValuePair.Create("", cabin.Connector)]), data.CabinPins,
            Places.Body, WirePurpose.BodyAdapter, Math.Max(data.Settings.AdapterLengthMm, reach), MovesDoInPlace: reach == 0);
        var adapter = Build(sides, routing.ToCabin, (_, signal) => !data.IsNeeded(signal.Id));
        return adapter.PlugsTogether && adapter.Rows.All(row => row.Action == AdapterAction.Join && row.From == row.To) ? null : adapter;
    }

    private static ImmutableArray<KeyValuePair<string, string>> PlugsOf(Ecu? ecu) =>
        ecu is null || ecu.Plugs.IsDefault ? [] : [.. ecu.Plugs.OrderBy(plug => plug.Id, CavityOrder.Instance).Select(plug => KeyValuePair.Create(plug.Id, plug.Connector))];

    private static bool SamePlace(SidePin left, SidePin right) =>
        left.PlugIndex == right.PlugIndex && left.Pin.Cavity == right.Pin.Cavity;

    private AdapterHarness Build(AdapterSides sides, Func<SidePin, Signal, WireRun?> bring, Func<SidePin, Signal, bool> optional)
    {
        var mates = sides.From.Plugs.Length > 0 && sides.From.Plugs.Length == sides.To.Plugs.Length
            && sides.From.Plugs.Zip(sides.To.Plugs).All(pair => data.Mate(pair.First.Value, pair.Second.Value));
        var apart = sides.FromPins.Select(pin => pin.Pin.Signal).Where(signal => IsApart(sides, signal, mates)).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<PinPair> pairs = [.. Pairs(sides.FromPins, sides.ToPins, mates, apart)];
        var together = mates && (sides.MovesDoInPlace || pairs.All(pair => pair.From is null || pair.To is null || SamePlace(pair.From, pair.To)));
        var rows = pairs.Select(pair => pair switch
        {
            { From: { } from, To: { } to } => Join(sides, from, to, pair.Surplus, together),
            { From: { } from } => Cap(sides, from, together),
            { To: { } to } => OneSided(to, sides.Purpose, bring, optional),
            _ => null,
        });
        return new(sides.From, sides.To, together, [.. rows.OfType<AdapterRow>()]);
    }

    /// <summary>
    /// Both sides have the signal and are not joined: a device of this build stands between them, both listen to a switch that is gone, or the harness leads
    /// it to plugs alone that nothing takes. Where the plugs go together as they are, the latter saves no copper and stays.
    /// </summary>
    private bool IsApart(AdapterSides sides, string signal, bool mates)
    {
        if (sides.Purpose == WirePurpose.BodyAdapter && (data.CabinGiver(signal) is not null || data.TakesOverFromCabin(signal) is not null))
        {
            return true;
        }

        if (!mates && Givers.IsGone(data, signal))
        {
            return true;
        }

        var elsewhere = sides.Purpose == WirePurpose.BodyAdapter
            ? data.IsNeeded(signal) || data.IsAtEcu(signal)
            : data.SignalOf(signal)?.Kind == SignalKind.Power || data.IsAtHarnessBody(signal);
        return !mates && !elsewhere && data.EndsIdle(signal);
    }

    /// <summary>
    /// From cavities in order, each followed by what joins it; then what only the other side has. Where the plugs mate, cavities
    /// that already face each other pair off before the others.
    /// </summary>
    private static IEnumerable<PinPair> Pairs(ImmutableArray<SidePin> fromPins, ImmutableArray<SidePin> toPins, bool samePlaceFirst, HashSet<string> apart)
    {
        var to = toPins.Where(pin => !apart.Contains(pin.Pin.Signal)).ToLookup(pin => pin.Pin.Signal, StringComparer.Ordinal);
        var pairs = new List<PinPair>();
        foreach (var group in fromPins.GroupBy(pin => pin.Pin.Signal, StringComparer.Ordinal))
        {
            bool Apart(SidePin pin, IEnumerable<SidePin> others) => !samePlaceFirst || !others.Any(other => SamePlace(pin, other));
            List<SidePin> froms = [.. group.OrderBy(pin => Apart(pin, to[group.Key]))];
            List<SidePin> tos = [.. to[group.Key].OrderBy(pin => Apart(pin, group))];
            pairs.AddRange(tos.Count == 0
                ? froms.Select(from => new PinPair(from, null, Surplus.None))
                : froms.Select((from, i) => new PinPair(from, tos[Math.Min(i, tos.Count - 1)], i < tos.Count ? Surplus.None : Surplus.From)));
            pairs.AddRange(tos.Skip(froms.Count).Select(other => new PinPair(froms[^1], other, Surplus.To)));
        }

        var known = fromPins.Select(pin => pin.Pin.Signal).Where(signal => !apart.Contains(signal)).ToHashSet(StringComparer.Ordinal);
        var places = fromPins.Select((pin, at) => (pin, at)).ToDictionary(one => one.pin, one => one.at);
        return pairs.OrderBy(pair => places[pair.From!])
            .Concat(toPins.Where(pin => !known.Contains(pin.Pin.Signal)).Select(pin => new PinPair(null, pin, Surplus.None)));
    }

    private AdapterRow Join(AdapterSides sides, SidePin from, SidePin to, Surplus surplus, bool together)
    {
        var id = from.Pin.Signal;
        var signal = data.SignalOf(id);
        var shielded = signal?.Shielded ?? false;
        var asked = Math.Max(from.Pin.SizeMm2, to.Pin.SizeMm2);
        if (together && surplus == Surplus.None)
        {
            var note = SamePlace(from, to) ? "same cavity on both sides" : $"move from {from.Name} to {to.Name}";
            return Row(from, to, AdapterAction.Join, note, asked, optional: false, run: null);
        }

        var harness = sides.Purpose == WirePurpose.BodyAdapter ? Places.HarnessBody : Places.HarnessEcu;

        // Where the plugs go together there is no counterpart: a piece for a surplus cavity starts at the harness's own wire.
        var fromEnd = new WireEnd(together || surplus == Surplus.To ? WireEndKind.Splice : WireEndKind.Counterpart, harness, from.Name, from.Connector);
        var toEnd = new WireEnd(surplus == Surplus.From ? WireEndKind.Splice : WireEndKind.Terminal, sides.Place, to.Name, to.Connector);
        var conductor = routing.Choose(sides.Purpose == WirePurpose.BodyAdapter ? feeds.CurrentOf(id) ?? data.CurrentOf(null, id) : data.CurrentOf(null, id), asked, sides.LengthMm);
        var size = conductor?.SizeMm2 ?? asked;
        var (place, cavity) = surplus == Surplus.From ? (harness, from.Name) : (sides.Place, to.Name);
        var run = routing.Add(new WireRun(
            WireLabel.Of(place, cavity, id), sides.Purpose, place, cavity, id, fromEnd, toEnd, sides.LengthMm, size, asked,
            to.Pin.Colour, conductor?.DropV, shielded, Splices(fromEnd) + Splices(toEnd))
        {
            Conductor = conductor,
        });
        var words = surplus switch
        {
            Surplus.From => $"joins the wire of {to.Name}",
            Surplus.To => $"joins the wire of {from.Name}",
            _ => "",
        };
        return Row(from, to, AdapterAction.Join, words, run.SizeMm2, optional: false, run);
    }

    private static int Splices(WireEnd end) => end.Kind == WireEndKind.Splice ? 1 : 0;

    private AdapterRow Cap(AdapterSides sides, SidePin from, bool together)
    {
        // A device of this build may have been joined to the wire on the harness's side of the plug.
        var place = sides.Purpose == WirePurpose.BodyAdapter ? Places.HarnessBody : data.MadeFor?.Id ?? Places.HarnessEcu;
        var branches = routing.Runs.Where(run => run.Purpose != sides.Purpose && run.To.Place == place && run.To.Cavity == from.Name)
            .Select(run => $"{data.TitleOf(run.Role)}, {run.Cavity}").Distinct(StringComparer.Ordinal).ToList();
        if (branches.Count > 0)
        {
            var drawn = together && sides.ToPins.Any(to => SamePlace(from, to)) ? ", drawn out of this cavity" : "";
            return Row(from, null, AdapterAction.Branch, string.Join("; ", branches) + drawn, from.Pin.SizeMm2, optional: true, run: null);
        }

        // A feed that nothing fitted asks for, or that a device in use gives, may end here.
        var isFeed = sides.Purpose == WirePurpose.BodyAdapter
            && data.SignalOf(from.Pin.Signal)?.Kind is (SignalKind.Power or SignalKind.Ground)
            && (data.IsAtEcu(from.Pin.Signal) || data.DevicesOf(from.Pin.Signal).Count() == 1);
        var note = together && sides.ToPins.Any(to => SamePlace(from, to))
            ? "draw out and cap: the other side uses this cavity"
            : Givers.IsGone(data, from.Pin.Signal) ? NothingGives
            : data.EndsIdle(from.Pin.Signal) ? "nothing that is fitted takes it"
            : isFeed ? "where the harness is fed here, bring the feed another way" : "the other side has no use for it";
        return Row(from, null, AdapterAction.Cap, note, from.Pin.SizeMm2, optional: !isFeed, run: null);
    }

    private AdapterRow OneSided(SidePin to, WirePurpose purpose, Func<SidePin, Signal, WireRun?> bring, Func<SidePin, Signal, bool> optional)
    {
        var signal = data.SignalOf(to.Pin.Signal);
        if (signal is not null && bring(to, signal) is { } run)
        {
            var here = purpose == WirePurpose.EcuAdapter ? data.Ecu!.Id : Places.Body;
            var other = run.From.Place == here && run.From.Cavity == to.Name ? run.To : run.From;
            var splice = other.Kind == WireEndKind.Splice ? ", spliced" : "";
            return Row(null, to, AdapterAction.AddWire, $"new wire to {data.TitleOf(other.Place)}, {other.Cavity}{splice}", run.SizeMm2, optional: false, run);
        }

        var mayLack = signal is not null && optional(to, signal);
        if (signal is not null && !mayLack && purpose == WirePurpose.EcuAdapter)
        {
            // What the cabin lacks is reported with its needs.
            problems.Add(
                WiringProblemKind.SignalNowhere, data.Ecu!.Id, to.Name, signal.Id, $"nothing in this build carries `{signal.Id}` for cavity `{to.Name}`");
        }

        var over = purpose == WirePurpose.BodyAdapter ? data.TakesOverFromCabin(to.Pin.Signal) : null;
        var note = over is not null ? $"cap it: {data.TitleOf(over.Role)} takes its place"
            : Givers.IsGone(data, to.Pin.Signal) ? NothingGives
            : "nothing fitted carries it";
        return Row(null, to, AdapterAction.Missing, note, to.Pin.SizeMm2, mayLack, run: null);
    }

    /// <summary>An ECU runs without a sensor that is not there to be fitted, but not without feed and ground.</summary>
    private static bool OptionalAtEcu(SidePin pin, Signal signal) => signal.Kind is not (SignalKind.Power or SignalKind.Ground);

    private AdapterRow Row(SidePin? from, SidePin? to, AdapterAction action, string note, double sizeMm2, bool optional, WireRun? run)
    {
        var id = (from ?? to)!.Pin.Signal;
        var signal = data.SignalOf(id);
        return new(
            id, signal?.Title ?? id, signal?.Kind, from?.Plug, from?.Name, to?.Plug, to?.Name, action, signal?.Shielded ?? false, note,
            from?.Pin.Colour, to?.Pin.Colour, sizeMm2, optional, run?.Label)
        {
            CutColour = run?.Colour,
        };
    }

    private sealed record AdapterSides(
        AdapterSide From,
        ImmutableArray<SidePin> FromPins,
        AdapterSide To,
        ImmutableArray<SidePin> ToPins,
        string Place,
        WirePurpose Purpose,
        double LengthMm,
        bool MovesDoInPlace);

    private sealed record PinPair(SidePin? From, SidePin? To, Surplus Surplus);

    /// <summary>The side on which a cavity is one too many of its signal.</summary>
    private enum Surplus
    {
        None,
        From,
        To,
    }
}
