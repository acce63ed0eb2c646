using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A wire's place in a plug of an ECU or a bulkhead: plug id (empty for a bulkhead plug), family, position of the plug.</summary>
internal sealed record SidePin(string Plug, int PlugIndex, string Connector, Pin Pin)
{
    /// <summary>"a5"; a dot between where the two would run together.</summary>
    public string Name =>
        Plug.Length == 0 ? Pin.Cavity
        : char.IsAsciiDigit(Plug[^1]) || Pin.Cavity.Length == 0 || !char.IsAsciiDigit(Pin.Cavity[0]) ? $"{Plug}.{Pin.Cavity}"
        : Plug + Pin.Cavity;
}

/// <summary>
/// The input as the computation may rely on it: sorted by role and cavity, without unused, doubled or impossible cavities, with
/// finite numbers. What was dropped or mended is a problem.
/// </summary>
internal sealed record WiringData(
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
    ImmutableDictionary<string, Signal> Signals,
    WiringSettings Settings)
{
    /// <summary>Signals that the car's own devices gave its cabin, fitted or not.</summary>
    public ImmutableArray<string> CabinHears { get; init; } = [];

    /// <summary>Sizes that screened wire is sold in, mm², smallest first.</summary>
    public ImmutableArray<double> ScreenedMm2 { get; init; } = [];

    /// <summary>Where a new feed is taken from the battery; null where nobody says.</summary>
    public BatteryPoint? Battery { get; init; }

    public string BatteryTitle => Battery?.Title ?? BatteryPoint.Post;

    public Signal? SignalOf(string id) => Signals.GetValueOrDefault(id);

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
        _ => Devices.FirstOrDefault(device => device.Role == place)?.Title ?? Plugs.FirstOrDefault(plug => plug.Key == place).Value?.Title ?? place,
    };

    /// <summary>
    /// One output drives one load: a device in the bay that this build adds takes a driven signal over from what the cabin has for it, which would work beside
    /// it, as a second fan relay does (common practice, no source). Null where the harness was made for the device, or where the cabin needs the signal.
    /// </summary>
    public Device? TakesOverFromCabin(string signal) =>
        SignalOf(signal) is { Kind: SignalKind.LowSide, Shared: false } && !Needs.Contains(signal)
            ? Devices.FirstOrDefault(device => !device.InCabin && device.Pins.Any(pin => pin.Value == signal) && Plugs.All(plug => plug.Key != device.Role))
            : null;

    /// <summary>
    /// The other way about: where the cabin needs a driven signal and has a cavity for it, something of its own hangs on that, and a second lamp from a kit
    /// behind the dash would load the output twice (common practice, no source). The device's cavity stays empty.
    /// </summary>
    public bool CabinHasItsOwn(Device device, Signal signal) =>
        device.InCabin && signal is { Kind: SignalKind.LowSide, Shared: false } && Needs.Contains(signal.Id)
        && CabinBody?.Pins.Any(pin => pin.Signal == signal.Id) == true
        && (EcuPins.Any(pin => pin.Pin.Signal == signal.Id) || HarnessBody?.Pins.Any(pin => pin.Signal == signal.Id) == true);

    private const string HarnessEcuPlug = "the harness's ECU plug";

    /// <summary>The cavity of a device that gives the cabin a signal; null where the harness's wire does.</summary>
    public (Device Device, string Cavity)? CabinGiver(string signal)
    {
        foreach (var device in Devices)
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
        SignalOf(signal) is { Shared: false }
        && Plugs.Any(plug => plug.Value.Pins.Any(pin => pin.Signal == signal))
        && Devices.All(device => device.Pins.All(pin => pin.Value != signal));

    /// <summary>A data line of two wires that are twisted with one another.</summary>
    public bool IsTwisted(string signal) => SignalOf(signal) is { Kind: SignalKind.Data } known && (known.TwistedWith is not null || Signals.Values.Any(other => other.TwistedWith == signal));

    /// <summary>
    /// A device that lives behind the dash, beyond reach of its plug: feeds and ground it has where it is, as others there have, and what the harness brought to
    /// the plug ends there (common practice, no source).
    /// </summary>
    public bool IsLeftAtThePlug(Device device, Plug plug, string signal) =>
        device.InCabin && plug.Location.DistanceTo(device.Location) > Settings.ReachMm
        && SignalOf(signal) is { Shared: true } shared && (shared.Kind == SignalKind.Ground || (shared.Kind == SignalKind.Power && (CabinBody?.Pins ?? []).Concat(HarnessBody?.Pins ?? []).Any(pin => pin.Signal == signal)));

    /// <summary>A plug of the harness whose device is not fitted: its wires may be cut out and led to where they are wanted.</summary>
    public bool IsIdle(string role) => Plugs.Any(plug => plug.Key == role) && Devices.All(device => device.Role != role);

    /// <summary>A wire of the harness that nothing takes: of an idle plug, or one that the device at its plug leaves over.</summary>
    public bool IsIdle(string role, string cavity, string signal) =>
        IsIdle(role)
        || (Devices.FirstOrDefault(device => device.Role == role) is { } device
            && Plugs.FirstOrDefault(plug => plug.Key == role).Value is { } plug
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
        SignalOf(signal)?.Through is { } role && Devices.Any(device => device.Role == role) && Plugs.All(plug => plug.Key != role);

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
    public IEnumerable<Device> On(Signal feed) => Devices.Where(device => device.Pins.Any(pin => pin.Value == feed.Id || Branches(pin.Value, feed.Id)));

    private bool Branches(string signal, string feed) => SignalOf(signal) is { BranchOf: { } from } known && from == feed && Devices.All(device => device.Role != known.Through);

    /// <summary>
    /// What devices take from one feed together, A. What one of them switches for another, as an igniter does for its coil, comes in by the other's feed
    /// and counts once (common practice, no source).
    /// </summary>
    public double Together(IReadOnlyCollection<Device> devices, Signal feed) => Math.Round(
        // Rounded, since tenths of an ampere do not add exactly, and the sum is held against the last row of a table.
        devices.Sum(device => Math.Max(0, Drawn(device, feed) - devices.Where(other => IsDriven(other, device)).Sum(other => Drawn(other, feed)))), 6);

    private bool IsDriven(Device load, Device driver) =>
        IsMereLoad(load) && !IsMereLoad(driver) && load.Pins.Any(pin => SignalOf(pin.Value)?.Kind is SignalKind.LowSide or SignalKind.Ignition && driver.Pins.Any(other => other.Value == pin.Value));

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
}
