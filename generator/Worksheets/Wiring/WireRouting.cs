using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Finds where a new wire ends and keeps every piece. A cavity of the ECU or of the cabin's plug takes one terminal; whatever comes
/// later to the same signal is spliced to the wire that is there.
/// </summary>
internal sealed class WireRouting
{
    private readonly WiringData data;
    private readonly List<WireRun> runs = [];
    private readonly HashSet<(string Place, string Cavity)> taken = [];

    public WireRouting(WiringData data)
    {
        this.data = data;
        TakeShared(data.Ecu?.Id, data.EcuPins, data.IsAtHarnessEcu);
        TakeShared(Places.Body, data.CabinPins, data.IsAtHarnessBody);
    }

    public IReadOnlyList<WireRun> Runs => runs;

    public WireRun Add(WireRun run)
    {
        runs.Add(Screens.AsSold(data, run));
        return runs[^1];
    }

    /// <summary>How a new wire's size is chosen; null where its current is not known.</summary>
    /// <param name="device">The device at its end, whose own current counts where it says one.</param>
    public ConductorChoice? Choose(string signal, double askedMm2, double lengthMm, Device? device = null, double? fuseA = null) =>
        Choose(data.CurrentOf(device, signal), askedMm2, lengthMm, fuseA);

    public ConductorChoice? Choose(double? currentA, double askedMm2, double lengthMm, double? fuseA = null) => currentA is { } current
        ? ConductorSize.Choose(new(askedMm2, current, lengthMm, data.Settings.AllowedDropV, data.Settings.ConductorCelsius, data.Settings.LeastMm2, fuseA))
        : null;

    /// <summary>
    /// The wire that brings a missing signal to a device. Shared: to the nearest harness wire that carries it. Else to where it comes
    /// from: feeds and power grounds at the bulkhead plug and only then at the ECU, everything else at the ECU and only then at the
    /// bulkhead plug; where the harness's own wire to the ECU lies nearer than the ECU, it is joined there. A wire that ends in a plug which
    /// nothing takes is taken over before either: left there beside a new one it would be an open branch on the same cavity. A signal that neither knows runs from device to device, as between a module and its coil. Null where nothing has it.
    /// </summary>
    public WireRun? ToDevice(Device device, string cavity, Signal signal)
    {
        if (EndingAt(device.Role, cavity) is { } there)
        {
            return there;
        }

        if (data.IsRerouted(signal.Id))
        {
            return ToDevice(device, cavity, signal, Nearest(OtherDevices(device, signal.Id).Where(other => device.Role == signal.Through || other.End.Place == signal.Through), device.Location, toEcu: false));
        }

        var target = ForTheCabin(device, cavity, signal);
        target ??= data.IsReference(device, signal) ? Stud(device) : null;
        target ??= signal.Shared ? StartOf(device, signal) : null;
        target ??= BeforeOnTheLine(device, signal);
        target ??= device.InCabin ? null : Nearest(IdleWires(signal), device.Location, toEcu: false);
        target ??= IsSupply(signal)
            ? CabinTarget(signal.Id) ?? EcuTarget(signal.Id)
            : EcuTarget(signal.Id) is { } ecu ? Nearest([ecu, .. WireToTheEcu(signal.Id)], device.Location, toEcu: false) : CabinTarget(signal.Id);
        target ??= Nearest(OtherDevices(device, signal.Id), device.Location, toEcu: false);
        return ToDevice(device, cavity, signal, target);
    }

    private WireRun? ToDevice(Device device, string cavity, Signal signal, WireTarget? target)
    {
        if (target is null)
        {
            return null;
        }

        taken.Add((device.Role, cavity));
        var from = new WireEnd(WireEndKind.Terminal, device.Role, cavity, device.Connector);
        var way = target.End.Place == Places.BodyMetal ? data.Settings.GroundWayMm : target.WayMm(data, device.Location, toEcu: false);
        return Run(WirePurpose.Device, device.Role, cavity, signal, from, target, way, device);
    }

    /// <summary>
    /// What a device gives the cabin goes to the cabin's plug. One that lives there takes its feed where the bulkhead plug has it and its ground from
    /// the body, since coil current would drop into what it shows on a wire from the engine (common practice, no source). Null for everything else.
    /// </summary>
    private WireTarget? ForTheCabin(Device device, string cavity, Signal signal)
    {
        if (device.ToCabin.Contains(cavity))
        {
            return CabinEnd(signal.Id);
        }

        return !device.InCabin || !signal.Shared ? null
            : signal.Kind == SignalKind.Ground ? new(new(WireEndKind.Ring, Places.BodyMetal, "", Places.Ring), device.Location, AtEcu: false)
            : signal.Kind == SignalKind.Power ? CabinTarget(signal.Id)
            : null;
    }

    /// <summary>
    /// The engine's ground stud, where the harness gathers its grounds: a device of nothing but grounds. The electronics of a device that has its power ground
    /// there refer to the same metal, and not to the ECU's pin a metre further on (common practice, no source).
    /// </summary>
    private WireTarget? Stud(Device device) => device.InCabin ? null : Nearest(
        from stud in data.Devices
        where stud.Role != device.Role && stud.Pins.Length > 0 && stud.Pins.All(pin => data.SignalOf(pin.Value)?.Kind == SignalKind.Ground)
        select new WireTarget(new(WireEndKind.Ring, stud.Role, "", Places.Ring), stud.Location, AtEcu: false), device.Location, toEcu: false);

    /// <summary>The wire to an ECU cavity that the harness's ECU side lacks, from what carries the signal; null where nothing does.</summary>
    public WireRun? ToEcu(SidePin pin, Signal signal)
    {
        var ecu = data.Ecu!.Id;
        if (EndingAt(ecu, pin.Name) is { } there)
        {
            return there;
        }

        if (Givers.IsGone(data, signal.Id))
        {
            return null;
        }

        var devices = DeviceWires(signal.Id);
        IEnumerable<WireTarget> cabin = CabinTarget(signal.Id) is { } free ? [free] : [];
        var target = IsSupply(signal)
            ? Nearest([.. devices, .. HarnessWires(signal.Id), .. cabin], data.EcuPlace, toEcu: true)
            : Nearest(devices, data.EcuPlace, toEcu: true)
                ?? (signal.Shared ? Nearest(HarnessWires(signal.Id), data.EcuPlace, toEcu: true) : null)
                ?? cabin.FirstOrDefault();
        if (target is null)
        {
            return null;
        }

        taken.Add((ecu, pin.Name));
        var from = new WireEnd(WireEndKind.Terminal, ecu, pin.Name, pin.Connector);
        return Run(WirePurpose.EcuAdapter, ecu, pin.Name, signal, from, target, target.WayMm(data, data.EcuPlace, toEcu: true));
    }

    /// <summary>The wire to a cabin cavity that the harness's bulkhead plug lacks; null where nothing carries the signal.</summary>
    public WireRun? ToCabin(SidePin pin, Signal signal)
    {
        if (EndingAt(Places.Body, pin.Name) is { } there)
        {
            return there;
        }

        if (data.TakesOverFromCabin(signal.Id) is not null || Givers.IsGone(data, signal.Id))
        {
            return null;
        }

        var place = data.CabinBody!.Location;
        var target = data.CabinGiver(signal.Id) is { } giver
            ? new WireTarget(new(WireEndKind.Splice, giver.Device.Role, giver.Cavity, giver.Device.Connector), giver.Device.Location, AtEcu: false)
            : Nearest(DeviceWires(signal.Id), place, toEcu: false);
        target ??= EcuTarget(signal.Id)
            ?? (signal.Shared ? Nearest(HarnessWires(signal.Id), place, toEcu: false) : null);
        if (target is null)
        {
            return null;
        }

        taken.Add((Places.Body, pin.Name));
        var from = new WireEnd(WireEndKind.Terminal, Places.Body, pin.Name, pin.Connector);
        var way = target.AtEcu ? place.DistanceTo(data.EcuPlace) : target.WayMm(data, place, toEcu: false);
        return Run(WirePurpose.BodyAdapter, Places.Body, pin.Name, signal, from, target, way);
    }

    /// <summary>An ECU takes feeds and power grounds and has none to give (common practice, no source).</summary>
    private static bool IsSupply(Signal signal) => signal.Kind is SignalKind.Power or SignalKind.Ground;

    private WireRun Run(WirePurpose purpose, string role, string cavity, Signal signal, WireEnd from, WireTarget target, double way, Device? device = null)
    {
        if (target.End.Kind == WireEndKind.Terminal)
        {
            taken.Add((target.End.Place, target.End.Cavity));
        }

        var length = data.LengthMm(way);
        // What feeds a wire of the harness carries what that wire carries.
        var asked = device?.Supplies.Contains(signal.Id) == true ? Math.Max(signal.SizeMm2, target.SizeMm2) : signal.SizeMm2;
        var conductor = Choose(signal.Id, asked, length, device, LoadProtection.FuseFor(data, device, signal));
        return Add(new WireRun(
            WireLabel.Of(role, cavity, signal.Id), purpose, role, cavity, signal.Id, from, target.End, length, conductor?.SizeMm2 ?? asked, asked,
            signal.Colour, conductor?.DropV, signal.Shielded, target.End.Kind == WireEndKind.Splice ? 1 : 0)
        {
            Conductor = conductor,
            WayMm = way,
            JoinedMm2 = target.SizeMm2,
            Lead = device?.LeadOf(cavity),
            TakesOver = target.End.Kind == WireEndKind.Splice && data.IsIdle(target.End.Place, target.End.Cavity, signal.Id),
        });
    }

    private WireRun? EndingAt(string place, string cavity) =>
        runs.Find(run => run.To.Place == place && run.To.Cavity == cavity && run.To.Kind == WireEndKind.Terminal);

    private void TakeShared(string? place, ImmutableArray<SidePin> pins, Func<string, bool> isOpposite)
    {
        foreach (var pin in pins)
        {
            if (place is not null && (place != Places.Body || data.CabinGiver(pin.Pin.Signal) is null) && isOpposite(pin.Pin.Signal))
            {
                taken.Add((place, pin.Name));
            }
        }
    }

    private WireTarget? EcuTarget(string signal) =>
        data.Ecu is { } ecu && End(ecu.Id, data.EcuPinsOf(signal)) is { } end
            ? new WireTarget(end, data.EcuPlace, AtEcu: true)
            : null;

    private WireTarget? CabinTarget(string signal)
    {
        if (data.HarnessBody is { } own && data.HarnessPinsOf(signal).FirstOrDefault() is { } side)
        {
            return new(new(WireEndKind.Splice, Places.HarnessBody, side.Name, own.Connector), own.Location, AtEcu: false) { SizeMm2 = side.Pin.SizeMm2 };
        }

        // A device of this build gives the cabin the signal; nothing is fed from there.
        return data.CabinGiver(signal) is null && data.TakesOverFromCabin(signal) is null ? CabinEnd(signal) : null;
    }

    private WireTarget? CabinEnd(string signal)
    {
        return data.CabinBody is { } cabin && End(Places.Body, data.CabinPinsOf(signal)) is { } end
            ? new WireTarget(end, cabin.Location, AtEcu: false)
            : null;
    }

    /// <summary>The harness's bulkhead pin of a signal whose wire runs on to the ECU in use.</summary>
    private IEnumerable<WireTarget> WireToTheEcu(string signal) =>
        data.HarnessBody is { } own && data.IsAtHarnessEcu(signal)
            ? data.HarnessPinsOf(signal).Select(pin => new WireTarget(new(WireEndKind.Splice, Places.HarnessBody, pin.Name, own.Connector), own.Location, AtEcu: false))
            : [];

    private WireEnd? End(string place, IEnumerable<SidePin> pins)
    {
        SidePin? first = null;
        foreach (var pin in pins)
        {
            if (!taken.Contains((place, pin.Name)))
            {
                return new(WireEndKind.Terminal, place, pin.Name, pin.Connector);
            }

            first ??= pin;
        }

        return first is null ? null : new(WireEndKind.Splice, place, first.Name, first.Connector);
    }

    private IEnumerable<WireTarget> DeviceWires(string signal) =>
        from device in data.DevicesOf(signal)
        from pin in device.Pins
        where pin.Value == signal && !device.ToCabin.Contains(pin.Key)
        select new WireTarget(new(WireEndKind.Splice, device.Role, pin.Key, device.Connector), device.Location, AtEcu: false);

    private IEnumerable<WireTarget> OtherDevices(Device device, string signal) =>
        from other in data.DevicesOf(signal)
        where other.Role != device.Role
        from pin in other.Pins
        where pin.Value == signal && !other.ToCabin.Contains(pin.Key)
        let wired = taken.Contains((other.Role, pin.Key)) || (!data.IsRerouted(signal) && HasWire(other, signal))
        select new WireTarget(new(wired ? WireEndKind.Splice : WireEndKind.Terminal, other.Role, pin.Key, other.Connector), other.Location, AtEcu: false);

    /// <summary>
    /// The harness wire of a shared signal that a new one starts at: the nearest; for like devices on one feed the same for all, so that one fuse or relay has
    /// them all. A wire that nothing takes any more comes first there if it carries them, since the old ones were fed by it. Common practice, no source.
    /// </summary>
    private WireTarget? StartOf(Device device, Signal signal)
    {
        var wires = HarnessWires(signal.Id).ToList();
        var like = signal.Kind == SignalKind.Power && !device.Supplies.Contains(signal.Id) ? data.Like(device).Where(other => IsUnfed(other, signal.Id)).ToList() : [];
        if (like.Count < 2)
        {
            return Nearest(wires, device.Location, toEcu: false);
        }

        var sum = like.Sum(other => data.CurrentOf(other, signal.Id) ?? 0);
        return wires.OrderByDescending(wire => data.IsIdle(wire.End.Place, wire.End.Cavity, signal.Id) && SharedFeeds.Carries(wire.SizeMm2) >= sum)
            .ThenBy(wire => like.Sum(other => data.LengthMm(wire.WayMm(data, other.Location, toEcu: false)))).FirstOrDefault();
    }

    private bool IsUnfed(Device device, string signal) => !HasWire(device, signal);

    private bool HasWire(Device device, string signal) => data.PlugAt(device.Role) is { } plug && plug.Pins.Any(pin => pin.Signal == signal);

    /// <summary>
    /// A data line goes from partner to partner in order of their way from the ECU, since a star of long stubs garbles what is said on it; a terminator
    /// ends it, wherever it lies (common practice, no source). Null for the first partner, for every other kind, and where no line comes from the ECU or the cabin.
    /// </summary>
    private WireTarget? BeforeOnTheLine(Device device, Signal signal)
    {
        if (signal.Kind != SignalKind.Data || (EcuTarget(signal.Id) ?? CabinTarget(signal.Id)) is null)
        {
            return null;
        }

        var partners = data.DevicesOf(signal.Id).OrderBy(IsTerminator).ThenBy(other => data.WayToEcuMm(other.Location)).ThenBy(other => other.Role, StringComparer.Ordinal).ToList();
        return partners.FindIndex(other => other.Role == device.Role) is > 0 and var at
            ? new(new(WireEndKind.Splice, partners[at - 1].Role, partners[at - 1].Pins.First(pin => pin.Value == signal.Id).Key, partners[at - 1].Connector), partners[at - 1].Location, AtEcu: false)
            : null;
    }

    /// <summary>Nothing but the two wires of a line meet in it, so it is the resistor between them: whatever speaks on the line wants a feed as well.</summary>
    private bool IsTerminator(Device device) => device.Pins.Length == 2 && device.Pins.All(pin => data.SignalOf(pin.Value)?.Kind == SignalKind.Data);

    /// <summary>Wires to plugs that nothing takes, where the harness leads them on to the ECU in use or to the bulkhead.</summary>
    private IEnumerable<WireTarget> IdleWires(Signal signal)
    {
        var leadsOn = data.IsAtHarnessBody(signal.Id) || (data.IsAtHarnessEcu(signal.Id) && data.IsAtEcu(signal.Id));
        return leadsOn && signal.Kind != SignalKind.Data ? HarnessWires(signal.Id).Where(wire => data.IsIdle(wire.End.Place)) : [];
    }

    private IEnumerable<WireTarget> HarnessWires(string signal)
    {
        foreach (var (role, plug, pin) in data.WiresOf(signal))
        {
            yield return new(new(WireEndKind.Splice, role, pin.Cavity, plug.Connector), plug.Location, AtEcu: false) { SizeMm2 = pin.SizeMm2 };
        }

        foreach (var pin in data.HarnessPinsOf(signal))
        {
            yield return new(
                new(WireEndKind.Splice, Places.HarnessBody, pin.Name, pin.Connector), data.HarnessBody!.Location, AtEcu: false) { SizeMm2 = pin.Pin.SizeMm2 };
        }

        foreach (var pin in data.MadeForPinsOf(signal))
        {
            yield return new(new(WireEndKind.Splice, data.MadeFor!.Id, pin.Name, pin.Connector), data.EcuPlace, AtEcu: true) { SizeMm2 = pin.Pin.SizeMm2 };
        }
    }

    private WireTarget? Nearest(IEnumerable<WireTarget> targets, BayPoint place, bool toEcu) =>
        targets.MinBy(target => data.LengthMm(target.WayMm(data, place, toEcu)));
}

/// <summary>A place where a new wire may end.</summary>
internal sealed record WireTarget(WireEnd End, BayPoint Location, bool AtEcu)
{
    /// <summary>Conductor of the wire that is there, mm²; 0 for an empty cavity.</summary>
    public double SizeMm2 { get; init; }

    /// <summary>
    /// Straight way of the new wire from a place in the bay, or from the ECU. Wires between bay and ECU pass the trunk; the bulkhead plugs
    /// lie at the bulkhead like the ECU's branch, so that a wire from there to the ECU goes straight.
    /// </summary>
    public double WayMm(WiringData data, BayPoint place, bool toEcu)
    {
        var atBulkhead = End.Place is Places.Body or Places.HarnessBody;
        return toEcu && !AtEcu && !atBulkhead ? data.WayToEcuMm(Location)
            : AtEcu && !toEcu ? data.WayToEcuMm(place)
            : place.DistanceTo(Location);
    }
}

internal static class WireLabel
{
    public static string Of(string role, string cavity, string signal) => $"{role}/{cavity} {signal}";
}

internal static class Sides
{
    public static ImmutableArray<SidePin> Of(Plug? plug) =>
        plug is null ? [] : [.. plug.Pins.Select(pin => new SidePin("", 0, plug.Connector, pin))];
}
