using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A wire's place in a plug of an ECU or a bulkhead: plug id (empty for a bulkhead plug), family, position of the plug.</summary>
internal sealed class SidePin(string plug, int plugIndex, string connector, Pin pin)
{
    public string Plug { get; } = plug;

    public int PlugIndex { get; } = plugIndex;

    public string Connector { get; } = connector;

    public Pin Pin { get; } = pin;

    /// <summary>"a5"; a dot between where the two would run together.</summary>
    public string Name { get; } =
        plug.Length == 0 ? pin.Cavity
        : char.IsAsciiDigit(plug[^1]) || pin.Cavity.Length == 0 || !char.IsAsciiDigit(pin.Cavity[0]) ? $"{plug}.{pin.Cavity}"
        : plug + pin.Cavity;
}

/// <summary>
/// The input as the computation may rely on it: sorted by role and cavity, without unused, doubled or impossible cavities, with
/// finite numbers. What was dropped or mended is a problem.
/// </summary>
/// <remarks>
/// Who has a signal is asked time and again, so it is looked up. The tables are of what the properties hold from the start; a copy with others would have wrong ones,
/// which is why this is no record.
/// </remarks>
internal sealed class WiringData
{
    private Tables? _tables;

    public WiringData(WiringParts parts)
    {
        (Devices, Plugs, HarnessBody, CabinBody) = (parts.Devices, parts.Plugs, parts.HarnessBody, parts.CabinBody);
        (MadeFor, MadeForPins, Ecu, EcuPins) = (parts.MadeFor, parts.MadeForPins, parts.Ecu, parts.EcuPins);
        (Trunk, EcuPlace, Needs, Leads, Connectors, Signals, Settings) = (parts.Trunk, parts.EcuPlace, parts.Needs, parts.Leads, parts.Connectors, parts.Signals, parts.Settings);
        (CabinHears, ScreenedMm2, Battery) = (parts.CabinHears, parts.ScreenedMm2, parts.Battery);
        HarnessBodyPins = Sides.Of(HarnessBody);
        CabinPins = Sides.Of(CabinBody);
    }

    public ImmutableArray<Device> Devices { get; }

    public ImmutableArray<KeyValuePair<string, Plug>> Plugs { get; }

    public Plug? HarnessBody { get; }

    public Plug? CabinBody { get; }

    public Ecu? MadeFor { get; }

    public ImmutableArray<SidePin> MadeForPins { get; }

    public Ecu? Ecu { get; }

    public ImmutableArray<SidePin> EcuPins { get; }

    /// <summary>The pins of the harness's bulkhead plug, as those of an ECU.</summary>
    public ImmutableArray<SidePin> HarnessBodyPins { get; }

    /// <summary>The pins of the cabin's bulkhead plug, as those of an ECU.</summary>
    public ImmutableArray<SidePin> CabinPins { get; }

    public BayPoint Trunk { get; }

    public BayPoint EcuPlace { get; }

    public ImmutableArray<string> Needs { get; }

    public ImmutableArray<AdapterLead> Leads { get; }

    public ImmutableDictionary<string, ConnectorFamily> Connectors { get; }

    public SignalTable Signals { get; }

    public WiringSettings Settings { get; }

    /// <summary>Signals that the car's own devices gave its cabin, fitted or not.</summary>
    public ImmutableArray<string> CabinHears { get; }

    /// <summary>Sizes that screened wire is sold in, mm², smallest first.</summary>
    public ImmutableArray<double> ScreenedMm2 { get; }

    /// <summary>Where a new feed is taken from the battery; null where nobody says.</summary>
    public BatteryPoint? Battery { get; }

    public string BatteryTitle => Battery?.Title ?? BatteryPoint.Post;

    public Signal? SignalOf(string id) => Signals.Find(id);

    private Tables Look => _tables ??= new Tables(this);

    /// <summary>Lets the tables go, which would outweigh the sheet that keeps this. They are made again where somebody asks.</summary>
    public void Rest() => _tables = null;

    public Device? DeviceAt(string role) => Look.DeviceAt.GetValueOrDefault(role);

    /// <summary>The harness's plug for a device; null where it was made without.</summary>
    public Plug? PlugAt(string role) => Look.PlugAt.GetValueOrDefault(role);

    public bool IsNeeded(string signal) => Look.Needs.Contains(signal);

    /// <summary>The devices that have a signal on some pin, by role.</summary>
    public IEnumerable<Device> DevicesOf(string signal) => Look.Devices[signal];

    /// <summary>The wires of a signal in the plugs of the harness, by role and cavity.</summary>
    public IEnumerable<(string Role, Plug Plug, Pin Pin)> WiresOf(string signal) => Look.Wires[signal];

    public IEnumerable<SidePin> MadeForPinsOf(string signal) => Look.MadeForPins[signal];

    public IEnumerable<SidePin> EcuPinsOf(string signal) => Look.EcuPins[signal];

    public IEnumerable<SidePin> HarnessPinsOf(string signal) => Look.HarnessPins[signal];

    public IEnumerable<SidePin> CabinPinsOf(string signal) => Look.CabinPins[signal];

    public bool IsAtEcu(string signal) => Look.EcuPins.Contains(signal);

    public bool IsAtHarnessEcu(string signal) => Look.MadeForPins.Contains(signal);

    public bool IsAtHarnessBody(string signal) => Look.HarnessPins.Contains(signal);

    public bool IsAtCabin(string signal) => Look.CabinPins.Contains(signal);

    /// <summary>What a reader calls a place: a device, an ECU, one half of the bulkhead plug.</summary>
    public string TitleOf(string place) => place switch
    {
        Places.Body => "the cabin's bulkhead plug",
        Places.HarnessBody => "the harness's bulkhead plug",
        Places.HarnessEcu => HarnessEcuPlug,
        Places.BodyMetal => "bare metal of the body beside it",
        Places.CableEnd => "the old cable's far end",
        Places.Battery => $"{BatteryTitle}, over its fuse",
        _ when Places.IsAddedRelay(place) => $"added {place}",
        _ when place == Ecu?.Id => Ecu.Title,
        // The ECU that the harness was made for is not in this build; its plug is, at the end of the harness.
        _ when place == MadeFor?.Id => HarnessEcuPlug,
        _ => DeviceAt(place)?.Title ?? PlugAt(place)?.Title ?? place,
    };

    /// <summary>
    /// One output drives one load: a device in the bay that this build adds takes a driven signal over from what the cabin has for it, which would work beside
    /// it, as a second fan relay does (common practice, no source). Null where the harness was made for the device, or where the cabin needs the signal.
    /// </summary>
    public Device? TakesOverFromCabin(string signal) =>
        SignalOf(signal) is { Kind: SignalKind.LowSide, Shared: false } && !IsNeeded(signal)
            ? DevicesOf(signal).FirstOrDefault(device => !device.InCabin && PlugAt(device.Role) is null)
            : null;

    /// <summary>
    /// The other way about: where the cabin needs a driven signal and has a cavity for it, something of its own hangs on that, and a second lamp from a kit
    /// behind the dash would load the output twice (common practice, no source). The device's cavity stays empty.
    /// </summary>
    public bool CabinHasItsOwn(Device device, Signal signal) =>
        device.InCabin && signal is { Kind: SignalKind.LowSide, Shared: false } && IsNeeded(signal.Id)
        && IsAtCabin(signal.Id) && (IsAtEcu(signal.Id) || IsAtHarnessBody(signal.Id));

    private const string HarnessEcuPlug = "the harness's ECU plug";

    /// <summary>The cavity of a device that gives the cabin a signal; null where the harness's wire does.</summary>
    public (Device Device, string Cavity)? CabinGiver(string signal)
    {
        foreach (var device in DevicesOf(signal))
        {
            if (device.ToCabin.FirstOrDefault(cavity => device.Pins.Any(pin => pin.Key == cavity && pin.Value == signal)) is { } cavity)
            {
                return (device, cavity);
            }
        }

        return null;
    }

    /// <summary>The harness brings the signal to plugs that nothing takes and to nothing else: a wire from there would end dead, or live.</summary>
    public bool EndsIdle(string signal) =>
        SignalOf(signal) is { Shared: false } && Look.Wires.Contains(signal) && !Look.Devices.Contains(signal);

    /// <summary>A data line of two wires that are twisted with one another.</summary>
    public bool IsTwisted(string signal) => SignalOf(signal) is { Kind: SignalKind.Data } && Signals.TwistedWith(signal).Any();

    /// <summary>
    /// A device that lives behind the dash, beyond reach of its plug: feeds and ground it has where it is, as others there have, and what the harness brought to
    /// the plug ends there (common practice, no source).
    /// </summary>
    public bool IsLeftAtThePlug(Device device, Plug plug, string signal) =>
        device.InCabin && plug.Location.DistanceTo(device.Location) > Settings.ReachMm
        && SignalOf(signal) is { Shared: true } shared && (shared.Kind == SignalKind.Ground || (shared.Kind == SignalKind.Power && (IsAtCabin(signal) || IsAtHarnessBody(signal))));

    /// <summary>A plug of the harness whose device is not fitted: its wires may be cut out and led to where they are wanted.</summary>
    public bool IsIdle(string role) => PlugAt(role) is not null && DeviceAt(role) is null;

    /// <summary>A wire of the harness that nothing takes: of an idle plug, or one that the device at its plug leaves over.</summary>
    public bool IsIdle(string role, string cavity, string signal) =>
        IsIdle(role)
        || (DeviceAt(role) is { } device
            && PlugAt(role) is { } plug
            && SignalMatch.Pair(device.Pins, plug.Pins).Left.Any(wire => wire.Cavity == cavity && wire.Signal == signal));

    /// <summary>Devices of one position with the same plug and the same shared signals, as the coils of an engine, the device among them; none where it has no position.</summary>
    public IEnumerable<Device> Like(Device device) => device.Position is null
        ? []
        : Devices.Where(other => other.Position == device.Position && other.Connector == device.Connector && SharedOf(other).SetEquals(SharedOf(device)));

    private HashSet<string> SharedOf(Device device) =>
        device.Pins.Select(pin => pin.Value).Where(signal => SignalOf(signal) is { Shared: true }).ToHashSet(StringComparer.Ordinal);

    /// <summary>
    /// The signal has to come from a device that is fitted and that the harness was made without: what carries it in the harness bypasses the device.
    /// </summary>
    public bool IsRerouted(string signal) =>
        SignalOf(signal)?.Through is { } role && DeviceAt(role) is not null && PlugAt(role) is null;

    /// <summary>
    /// What a wire of a signal carries, A: what the device at its end draws, where it says so and the wire takes part in it; for the
    /// feed of a device that others are fed through, what these draw together.
    /// </summary>
    public double? CurrentOf(Device? device, string signal)
    {
        if (SignalOf(signal) is not { } known || !SignalKinds.CarriesLoad(known.Kind))
        {
            return SignalOf(signal)?.CurrentA;
        }

        if (device is null || known.Through == device.Role)
        {
            return known.CurrentA;
        }

        if (IsReference(device, known))
        {
            return known.CurrentA;
        }

        return Passed(device, known) is > 0 and var passed ? passed
            : device.Supplies.Contains(signal) ? Math.Max(known.CurrentA ?? 0, Together([.. On(known).Where(other => other.Role != device.Role)], known))
            : device.CurrentA ?? Switched(device, known) ?? known.CurrentA;
    }

    /// <summary>
    /// Beside a stronger ground the weaker one is what the electronics in the device refer to: the load goes back by the stronger (common practice, no source).
    /// </summary>
    public bool IsReference(Device device, Signal signal) =>
        signal.Kind == SignalKind.Ground && device.Pins.Any(pin => SignalOf(pin.Value) is { Kind: SignalKind.Ground } other && other.CurrentA > signal.CurrentA);

    /// <summary>The devices that a feed leads to: by a pin of it, or by a wire that branches from it and passes no other device on its way.</summary>
    public IEnumerable<Device> On(Signal feed) => Devices.Where(device => IsOn(device, feed.Id));

    private bool IsOn(Device device, string feed)
    {
        foreach (var pin in device.Pins)
        {
            if (pin.Value == feed || Branches(pin.Value, feed))
            {
                return true;
            }
        }

        return false;
    }

    private bool Branches(string signal, string feed) => SignalOf(signal) is { BranchOf: { } from } known && from == feed && (known.Through is null || DeviceAt(known.Through) is null);

    /// <summary>
    /// What devices take from one feed together, A. What one of them switches for another, as an igniter does for its coil, comes in by the other's feed
    /// and counts once (common practice, no source).
    /// </summary>
    public double Together(IReadOnlyCollection<Device> devices, Signal feed)
    {
        var loads = devices.Where(IsMereLoad).ToList();

        // Rounded, since tenths of an ampere do not add exactly, and the sum is held against the last row of a table.
        return Math.Round(devices.Sum(device => Math.Max(0, Drawn(device, feed) - (loads.Contains(device) ? [] : loads.Where(load => IsDriven(load, device))).Sum(load => Drawn(load, feed)))), 6);
    }

    private bool IsDriven(Device load, Device driver) => load.Pins.Any(pin => SignalOf(pin.Value)?.Kind is SignalKind.LowSide or SignalKind.Ignition && driver.Pins.Any(other => other.Value == pin.Value));

    private bool IsMereLoad(Device device) => device.Pins.All(pin => SignalOf(pin.Value)?.Kind is SignalKind.Power or SignalKind.LowSide or SignalKind.Ignition);

    /// <summary>What flows on from a feed into the devices behind this one, A.</summary>
    private double Passed(Device device, Signal feed) => feed.Kind == SignalKind.Power
        ? device.Pins.Select(pin => SignalOf(pin.Value)).Where(other => other?.Through == device.Role).Sum(other => other!.CurrentA ?? 0)
        : 0;

    /// <summary>
    /// What a device takes from a feed, A: its own current, else what flows on from it into the devices behind it, into outputs and by feeds that it alone switches; 0 where neither is known.
    /// It never asks what another supplies: two devices that name each other would ask for ever.
    /// </summary>
    private double Drawn(Device device, Signal feed) => device.CurrentA is { } own ? own
        : Passed(device, feed) is > 0 and var passed ? passed
        : device.Pins.Any(pin => SignalOf(pin.Value)?.Through == device.Role) ? feed.CurrentA ?? 0
        : device.Pins.Select(pin => SignalOf(pin.Value)).Where(other => other is { Kind: SignalKind.LowSide or SignalKind.Ignition } or { Kind: SignalKind.Power, Shared: false }).Sum(other => other!.CurrentA ?? 0);

    /// <summary>What a switch leads to its ground, A: all that it switches; null for what is not a mere switch.</summary>
    private double? Switched(Device device, Signal ground) =>
        ground.Kind == SignalKind.Ground && device.Pins.All(pin => pin.Value == ground.Id || SignalOf(pin.Value) is { Kind: SignalKind.Switch, CurrentA: not null })
            ? device.Pins.Select(pin => SignalOf(pin.Value)!).Where(other => other.Kind == SignalKind.Switch).Sum(other => other.CurrentA) is > 0 and var sum ? sum : null
            : null;

    /// <summary>Same family, or one names the other; an unknown family mates with nothing but itself.</summary>
    public bool Mate(string left, string right) =>
        left == right || Names(left, right) || Names(right, left);

    /// <summary>Straight to the trunk and from there to the ECU, mm.</summary>
    public double WayToEcuMm(BayPoint from) => from.DistanceTo(Trunk) + Trunk.DistanceTo(EcuPlace);

    public double LengthMm(BayPoint from, BayPoint to) => LengthMm(from.DistanceTo(to));

    /// <summary>Along the loom for a straight way, mm, rounded up so that lengths add exactly.</summary>
    public double LengthMm(double way)
    {
        // The nudge keeps 1.2 × 250 + 60 at 360, whatever the last bit of the product.
        return Math.Ceiling((Settings.RoutingFactor * way) + Settings.SlackMm - 1e-6);
    }

    private bool Names(string left, string right) =>
        Connectors.TryGetValue(left, out var family) && !family.Mates.IsDefault && family.Mates.Contains(right);

    /// <summary>Who has what.</summary>
    private sealed class Tables(WiringData data)
    {
        public Dictionary<string, Device> DeviceAt { get; } = data.Devices.ToDictionary(device => device.Role, StringComparer.Ordinal);

        public Dictionary<string, Plug> PlugAt { get; } = data.Plugs.ToDictionary(plug => plug.Key, plug => plug.Value, StringComparer.Ordinal);

        public HashSet<string> Needs { get; } = data.Needs.ToHashSet(StringComparer.Ordinal);

        public ILookup<string, Device> Devices { get; } = data.Devices
            .SelectMany(device => device.Pins.Select(pin => pin.Value).Distinct(StringComparer.Ordinal), (device, signal) => (device, signal)).ToLookup(pair => pair.signal, pair => pair.device, StringComparer.Ordinal);

        public ILookup<string, (string Role, Plug Plug, Pin Pin)> Wires { get; } = data.Plugs
            .SelectMany(plug => plug.Value.Pins, (plug, pin) => (Role: plug.Key, Plug: plug.Value, Pin: pin)).ToLookup(wire => wire.Pin.Signal, StringComparer.Ordinal);

        public ILookup<string, SidePin> MadeForPins { get; } = BySignal(data.MadeForPins);

        public ILookup<string, SidePin> EcuPins { get; } = BySignal(data.EcuPins);

        public ILookup<string, SidePin> HarnessPins { get; } = BySignal(data.HarnessBodyPins);

        public ILookup<string, SidePin> CabinPins { get; } = BySignal(data.CabinPins);

        private static ILookup<string, SidePin> BySignal(ImmutableArray<SidePin> pins) => pins.ToLookup(pin => pin.Pin.Signal, StringComparer.Ordinal);
    }
}

/// <summary>What <see cref="WiringData"/> is made of.</summary>
internal sealed record WiringParts(
    ImmutableArray<Device> Devices,
    ImmutableArray<KeyValuePair<string, Plug>> Plugs,
    Plug? HarnessBody,
    Plug? CabinBody,
    Ecu? MadeFor,
    ImmutableArray<SidePin> MadeForPins,
    Ecu? Ecu,
    ImmutableArray<SidePin> EcuPins,
    BayPoint Trunk,
    BayPoint EcuPlace,
    ImmutableArray<string> Needs,
    ImmutableArray<AdapterLead> Leads,
    ImmutableDictionary<string, ConnectorFamily> Connectors,
    SignalTable Signals,
    WiringSettings Settings,
    ImmutableArray<string> CabinHears,
    ImmutableArray<double> ScreenedMm2,
    BatteryPoint? Battery);
