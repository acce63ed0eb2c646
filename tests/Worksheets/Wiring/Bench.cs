using System.Collections.Immutable;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Tests.Worksheets.Wiring;

/// <summary>A small invented vocabulary and a bare harness that each test dresses as it needs.</summary>
internal static class Bench
{
    public static readonly BayPoint Origin = new(0, 0, 0);

    public static readonly ImmutableDictionary<string, ConnectorFamily> Connectors = new[]
    {
        new ConnectorFamily("oval-2", "Oval, 2 cavities", ["1", "2"], "blade-2.8", Sealed: true, []),
        new ConnectorFamily("square-2", "Square, 2 cavities", ["1", "2"], "round-1.5", Sealed: false, ["square-2-keyed"]),
        new ConnectorFamily("square-2-keyed", "Square, keyed", ["1", "2"], "round-1.5", Sealed: false, []),
        new ConnectorFamily("flat-3", "Flat, 3 cavities", ["1", "2", "3"], "blade-2.8", Sealed: true, []),
        new ConnectorFamily("ecu-8", "ECU, 8 cavities", Numbers(8), "pin-0.6", Sealed: false, []),
        new ConnectorFamily("ecu-10", "ECU, 10 cavities", Numbers(10), "pin-1.0", Sealed: true, []),
        new ConnectorFamily("bulkhead-6", "Bulkhead, 6 cavities", Numbers(6), "blade-6.3", Sealed: false, []),
        new ConnectorFamily("bulkhead-4", "Bulkhead, 4 cavities", Numbers(4), "blade-4.8", Sealed: false, []),
    }.ToImmutableDictionary(family => family.Id, StringComparer.Ordinal);

    public static readonly ImmutableDictionary<string, Signal> Signals = new[]
    {
        new Signal("feed", "Switched feed", SignalKind.Power, 10, 1.5, "RD", Shared: true, Shielded: false),
        new Signal("battery", "Battery feed", SignalKind.Power, 4, 1, "RD/YE", Shared: false, Shielded: false),
        new Signal("power-ground", "Power ground", SignalKind.Ground, null, 1.5, "BK", Shared: true, Shielded: false),
        new Signal("sensor-ground", "Sensor ground", SignalKind.SensorGround, null, 0.5, "BK/WH", Shared: true, Shielded: false),
        new Signal("five-volt", "5 V", SignalKind.SensorSupply, null, 0.5, "RD/WH", Shared: true, Shielded: false),
        new Signal("coolant", "Coolant sensor", SignalKind.Analogue, null, 0.5, "GN", Shared: false, Shielded: false),
        new Signal("throttle", "Throttle sensor", SignalKind.Analogue, null, 0.5, "BU", Shared: false, Shielded: false),
        new Signal("knock", "Knock sensor", SignalKind.Analogue, null, 0.5, "WH", Shared: false, Shielded: true),
        new Signal("injector-1", "Injector 1", SignalKind.LowSide, 1, 0.75, "YE/BK", Shared: false, Shielded: false),
        new Signal("injector-2", "Injector 2", SignalKind.LowSide, 1, 0.75, "YE/BU", Shared: false, Shielded: false),
        new Signal("purge", "Purge valve", SignalKind.LowSide, 1, 0.75, "VT", Shared: false, Shielded: false),
        new Signal("tach", "Tachometer", SignalKind.Frequency, null, 0.5, "BU/WH", Shared: false, Shielded: false),
        new Signal("gauge", "Temperature gauge", SignalKind.Analogue, null, 0.5, "YE", Shared: false, Shielded: false),
        new Signal("oil-lamp", "Oil lamp", SignalKind.Switch, null, 0.5, "BN", Shared: false, Shielded: false),
    }.ToImmutableDictionary(signal => signal.Id, StringComparer.Ordinal);

    /// <summary>No devices, no plugs, trunk at the origin, ECU 1000 mm along z.</summary>
    public static readonly WiringInput Empty = new(
        [], new Harness("Donor harness", null, Origin, new(0, 0, 1000), [], null), null, null, [], Connectors, Signals, [], WiringSettings.Default);

    /// <summary>Device pins as "cavity:signal".</summary>
    public static Device Device(string role, string connector, BayPoint location, params string[] pins) =>
        new(role, role, connector, location, [.. pins.Select(pin => KeyValuePair.Create(Split(pin).Cavity, Split(pin).Signal))]);

    /// <summary>Pins as "cavity:signal", brown, 0.75 mm².</summary>
    public static ImmutableArray<Pin> Pins(params string[] pins) =>
        [.. pins.Select(pin => new Pin(Split(pin).Cavity, Split(pin).Signal, "BN", 0.75))];

    public static Plug Plug(string connector, BayPoint location, params string[] pins) => new(connector, location, Pins(pins));

    public static Ecu Ecu(string id, string connector, params string[] pins) => new(id, id, [new EcuPlug("a", connector, Pins(pins))]);

    public static WiringInput With(this WiringInput input, params Device[] devices) => input with { Devices = [.. input.Devices, .. devices] };

    public static WiringInput WithPlug(this WiringInput input, string role, Plug plug) =>
        input with { Harness = input.Harness with { Plugs = input.Harness.Plugs.Add(KeyValuePair.Create(role, plug)) } };

    public static WiringInput WithEcus(this WiringInput input, Ecu? madeFor, Ecu? inUse) =>
        input with { Harness = input.Harness with { MadeFor = madeFor }, Ecu = inUse };

    public static WiringInput WithBodies(this WiringInput input, Plug? harness, Plug? cabin) =>
        input with { Harness = input.Harness with { Body = harness }, Body = cabin };

    private static ImmutableArray<string> Numbers(int count) =>
        [.. Enumerable.Range(1, count).Select(number => number.ToString(System.Globalization.CultureInfo.InvariantCulture))];

    private static (string Cavity, string Signal) Split(string pin)
    {
        var at = pin.IndexOf(':', StringComparison.Ordinal);
        return (pin[..at], pin[(at + 1)..]);
    }
}
