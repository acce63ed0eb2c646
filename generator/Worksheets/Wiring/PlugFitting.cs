using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Decides the outcome of every plug and cuts the wires that the devices need.</summary>
internal sealed class PlugFitting(WiringData data, WireRouting routing, ProblemList problems)
{
    /// <summary>
    /// The same plugs as the wires are laid in the end: idle wires with what was cut out of the plug and led elsewhere, and new wires that start at an added
    /// relay in place of the harness.
    /// </summary>
    public static ImmutableArray<PlugWork> Settled(ImmutableArray<PlugWork> plugs, IReadOnlyList<WireRun> runs)
    {
        var taken = runs.Where(run => run.TakesOver).ToLookup(run => (run.To.Place, run.To.Cavity, run.Signal), run => run.From);
        var relayed = runs.Where(run => Places.IsAddedRelay(run.To.Place)).ToLookup(run => run.Label, run => run.To.Kind == WireEndKind.Splice ? WireAction.Joins : WireAction.Runs, StringComparer.Ordinal);
        return
        [
            .. plugs.Select(plug => plug with
            {
                Capped = [.. plug.Capped.Select(wire => wire with { Takers = [.. taken[(wire.Role, wire.Cavity, wire.Signal)]] })],
                Wires = [.. plug.Wires.Select(wire => wire.Run is { } label && relayed.Contains(label) ? wire with { Action = relayed[label].First() } : wire)],
            }),
        ];
    }

    /// <summary>One entry a device and one a harness plug without a device, by role.</summary>
    public ImmutableArray<PlugWork> All()
    {
        var plugs = data.Plugs.ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
        var fitted = data.Devices.Select(device => Fit(device, plugs.GetValueOrDefault(device.Role))).ToList();
        var roles = data.Devices.Select(device => device.Role).ToHashSet(StringComparer.Ordinal);
        var idle = data.Plugs.Where(pair => !roles.Contains(pair.Key)).Select(pair => Cap(pair.Key, pair.Value));
        return [.. fitted.Concat(idle).OrderBy(work => work.Role, StringComparer.Ordinal)];
    }

    private static PlugWork Cap(string role, Plug plug) => new(
        role, plug.Title ?? role, PlugOutcome.Capped, plug.Connector, null, 0, false, null, [],
        [.. plug.Pins.Select(pin => Capped(role, pin, staysInHousing: true))], []);

    private static CappedWire Capped(string role, Pin pin, bool staysInHousing) =>
        new(role, pin.Cavity, pin.Signal, pin.Colour, pin.SizeMm2, staysInHousing);

    private PlugWork Fit(Device device, Plug? plug)
    {
        var (bypassing, usable) = Parted(device, plug);
        var match = SignalMatch.Pair(device.Pins, usable);
        var mates = plug is not null && data.Mate(plug.Connector, device.Connector);
        var lead = plug is null || mates ? null : LeadFor(plug.Connector, device.Connector);
        var distance = plug?.Location.DistanceTo(device.Location) ?? 0;
        var isShort = distance > data.Settings.ReachMm;
        var rows = ImmutableArray.CreateBuilder<WireRow>(device.Pins.Length);
        for (var i = 0; i < device.Pins.Length; i++)
        {
            var (cavity, signal) = device.Pins[i];
            rows.Add(match.Found[i] is { } wire
                ? Use(device, plug!, cavity, wire, stays: lead is not null || (mates && wire.Cavity == cavity), isShort)
                : Screens.IsThere(data, device, cavity, signal, match.Found) && data.SignalOf(signal) is { } screen
                    ? new(cavity, signal, WireAction.Screen, null, screen.Colour, screen.SizeMm2, 0, null)
                    : Bring(device, cavity, signal));
        }

        var outcome = plug is null ? PlugOutcome.Added
            : lead is not null ? PlugOutcome.Lead
            : !mates ? PlugOutcome.Changed
            : rows.Any(row => row.Action != WireAction.Stays) ? PlugOutcome.RePinned
            : rows.Any(row => row.ExtensionMm > 0) ? PlugOutcome.Extended
            : PlugOutcome.StraightIn;
        var deviceCavities = device.Pins.Select(pin => pin.Key).ToHashSet(StringComparer.Ordinal);
        return new(
            device.Role, device.Title, outcome, plug?.Connector, device.Connector, distance,
            rows.Any(row => row.ExtensionMm > 0), lead?.PartId, rows.ToImmutable(),
            [
                .. bypassing.Select(pin => Capped(device.Role, pin, staysInHousing: false)),
                .. match.Left.Select(pin => Capped(device.Role, pin, lead is not null || (mates && !deviceCavities.Contains(pin.Cavity)))),
            ],
            mates ? Clashes(device, plug!) : [])
        {
            IsPlugBrought = device.Leads.Any(brought => brought.HasPlug),
        };
    }

    /// <summary>Wires of a plug that would bypass a device which is fitted now or that its own device has no need of where it is now, and the ones that can be used.</summary>
    private (ImmutableArray<Pin> Bypassing, ImmutableArray<Pin> Usable) Parted(Device device, Plug? plug)
    {
        ImmutableArray<Pin> pins = plug?.Pins ?? [];
        bool Bypasses(Pin pin) => data.IsLeftAtThePlug(device, plug!, pin.Signal) || (data.IsRerouted(pin.Signal) && device.Role != data.SignalOf(pin.Signal)!.Through);
        return ([.. pins.Where(Bypasses)], [.. pins.Where(pin => !Bypasses(pin))]);
    }

    /// <summary>A wire of the plug, kept in its cavity or moved, lengthened where the plug is beyond reach.</summary>
    private WireRow Use(Device device, Plug plug, string cavity, Pin wire, bool stays, bool isShort)
    {
        var action = stays ? WireAction.Stays : WireAction.Moves;
        if (!isShort)
        {
            return new(cavity, wire.Signal, action, wire.Cavity, wire.Colour, wire.SizeMm2, 0, null);
        }

        if (data.CurrentOf(device, wire.Signal) is { } current && wire.SizeMm2 < ConductorSize.For(current))
        {
            problems.Add(
                WiringProblemKind.ThinWire, device.Role, cavity, wire.Signal, $"the harness wire for `{wire.Signal}` at `{device.Role}` is thinner than its current asks for; the inserted piece is thicker");
        }

        if (wire.SizeMm2 >= Conductor.HeaviestSplicedMm2)
        {
            return Renew(device, plug, cavity, wire, action);
        }

        var length = data.LengthMm(plug.Location, device.Location);
        var conductor = routing.Choose(wire.Signal, wire.SizeMm2, length, device);
        var run = routing.Add(new WireRun(
            WireLabel.Of(device.Role, cavity, wire.Signal), WirePurpose.Extension, device.Role, cavity, wire.Signal,
            new(WireEndKind.Splice, device.Role, wire.Cavity, plug.Connector), new(WireEndKind.Splice, device.Role, cavity, device.Connector),
            length, conductor?.SizeMm2 ?? wire.SizeMm2, wire.SizeMm2, wire.Colour, conductor?.DropV, data.SignalOf(wire.Signal)?.Shielded ?? false, data.Settings.SplicesPerExtension)
        {
            Conductor = conductor,
            WayMm = plug.Location.DistanceTo(device.Location),
            Lead = device.LeadOf(cavity),
        });
        return new(cavity, wire.Signal, action, wire.Cavity, wire.Colour, wire.SizeMm2, length, run.Label);
    }

    /// <summary>
    /// A cable that is too heavy to be spliced, made anew in one piece with a ring terminal at either end. Where its far end is no base says, so it is
    /// reckoned by way of the trunk to the bulkhead and cut by the old one.
    /// </summary>
    private WireRow Renew(Device device, Plug plug, string cavity, Pin wire, WireAction action)
    {
        var way = device.Location.DistanceTo(data.Trunk) + data.Trunk.DistanceTo(data.HarnessBody?.Location ?? data.EcuPlace);
        var length = data.LengthMm(way);
        var conductor = routing.Choose(wire.Signal, wire.SizeMm2, length, device);
        var run = routing.Add(new WireRun(
            WireLabel.Of(device.Role, cavity, wire.Signal), WirePurpose.Renewal, device.Role, cavity, wire.Signal,
            new(WireEndKind.Ring, device.Role, cavity, Places.Ring), new(WireEndKind.Ring, Places.CableEnd, "", Places.Ring),
            length, conductor?.SizeMm2 ?? wire.SizeMm2, wire.SizeMm2, wire.Colour, conductor?.DropV, data.SignalOf(wire.Signal)?.Shielded ?? false, 0)
        {
            Conductor = conductor,
            WayMm = way,
        });
        return new(cavity, wire.Signal, action, wire.Cavity, wire.Colour, wire.SizeMm2, data.LengthMm(plug.Location, device.Location), run.Label) { IsRenewed = true };
    }

    /// <summary>A signal that the plug lacks.</summary>
    private WireRow Bring(Device device, string cavity, string id)
    {
        if (data.SignalOf(id) is not { } signal)
        {
            return new(cavity, id, WireAction.Unreached, null, "", 0, 0, null);
        }

        if (data.CabinHasItsOwn(device, signal))
        {
            return new(cavity, id, WireAction.Empty, null, signal.Colour, signal.SizeMm2, 0, null);
        }

        if (routing.ToDevice(device, cavity, signal) is { } run)
        {
            var existing = run.To.Kind == WireEndKind.Splice && signal.Shared && !IsAtSource(run.To);
            return new(cavity, id, run.TakesOver ? WireAction.TakesOver : existing ? WireAction.Joins : WireAction.Runs, null, run.Colour, run.SizeMm2, 0, run.Label);
        }

        problems.Add(
            WiringProblemKind.SignalNowhere, device.Role, cavity, id, $"`{device.Role}` asks for `{id}`, which neither the harness nor the ECU nor the cabin has");
        return new(cavity, id, WireAction.Unreached, null, signal.Colour, signal.SizeMm2, 0, null);
    }

    /// <summary>Spliced at the ECU in use or the cabin's plug because the cavity is taken: still a run to the source, not a join on the way.</summary>
    private bool IsAtSource(WireEnd end) =>
        end.Place == Places.Body || (end.Place == data.Ecu?.Id && end.Place != data.MadeFor?.Id);

    private ImmutableArray<CavityClash> Clashes(Device device, Plug plug)
    {
        var wires = plug.Pins.ToDictionary(pin => pin.Cavity, pin => pin.Signal, StringComparer.Ordinal);
        return
        [
            .. from pin in device.Pins
               where wires.TryGetValue(pin.Key, out var wire) && wire != pin.Value
               let carried = wires[pin.Key]
               select new CavityClash(pin.Key, pin.Value, carried, data.SignalOf(carried)?.Kind != data.SignalOf(pin.Value)?.Kind),
        ];
    }

    /// <summary>The first lead by part id whose ends go into the harness plug and onto the device.</summary>
    private AdapterLead? LeadFor(string plug, string device) =>
        data.Leads.FirstOrDefault(lead => data.Mate(lead.FromConnector, plug) && data.Mate(lead.ToConnector, device));
}
