using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Findings;

/// <summary>A conductor too thin for its current or outside its connector's range, and a cavity that cannot carry the current.</summary>
public static class WireSize
{
    public static readonly EntityCheck Check = new(FindingKinds.WireSize, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        var thin = kb.Vocabulary.Signals.All.Where(signal => IsThin(signal.SizeMm2, signal)).ToImmutableArray();
        foreach (var signal in thin)
        {
            yield return Thin(signal.SizeMm2, signal, signal.Place, "Raise its `size`, or correct its `current`.");
        }

        // Vehicles that are alike share pins; each is judged once.
        var seen = new HashSet<Place>();
        foreach (var (plug, hasWires) in Plugs(kb))
        {
            foreach (var pin in plug.Pins.Where(pin => pin.Signal != SignalDeclaration.Unused && seen.Add(pin.Place)))
            {
                if (kb.Vocabulary.Signals.Find(pin.Signal) is { } signal)
                {
                    // A size that comes of the signal is reported at the signal.
                    if (hasWires && IsThin(pin.SizeMm2, signal) && (pin.SizeMm2 != signal.SizeMm2 || !thin.Contains(signal)))
                    {
                        yield return Thin(pin.SizeMm2, signal, pin.Place, "Correct the `size` of this wire, or the `current` of the signal.");
                    }

                    foreach (var finding in kb.Connectors.Find(plug.Connector) is { } connector ? InConnector(pin, signal, connector, hasWires) : [])
                    {
                        yield return finding;
                    }
                }
            }
        }

        foreach (var finding in Loads(kb))
        {
            yield return finding;
        }
    }

    /// <summary>A device that draws more than its plug's cavities or the harness's own wires to it are good for.</summary>
    private static IEnumerable<Finding> Loads(KnowledgeBase kb)
    {
        var seen = new HashSet<Place>();
        foreach (var (device, harness) in Devices(kb).Where(pair => pair.Device.CurrentA is not null))
        {
            var current = device.CurrentA!.Value;
            var loaded = device.Pins.Where(pin => kb.Vocabulary.Signals.Find(pin.Signal) is { } signal && SignalKinds.CarriesLoad(SignalKinds.Parse(signal.Kind))).ToList();
            if (loaded.Count > 0 && kb.Connectors.Find(device.Connector) is { } connector && current > connector.MaxCurrentA && seen.Add(device.Place))
            {
                yield return new Finding(FindingKinds.WireSize, $"`{device.Role}` draws {Ampere(current)}, and a cavity of `{connector.Id}` carries no more than {Ampere(connector.MaxCurrentA.Value)}", device.Place)
                {
                    Related = [new RelatedPlace("the connector", connector.Place)],
                    Mend = "Correct the device's `current` or the connector's `max-current`, or name the connector that is really there.",
                };
            }

            foreach (var pin in harness?.Pins ?? [])
            {
                if (loaded.Any(own => own.Signal == pin.Signal) && ConductorSize.For((double)current) is { } least && (double)pin.SizeMm2 < least && seen.Add(pin.Place))
                {
                    yield return new Finding(FindingKinds.WireSize, $"the {Ampere(current)} of `{device.Role}` ask for at least {Mm2((decimal)least)}, and the wire has {Mm2(pin.SizeMm2)}", pin.Place)
                    {
                        Related = [new RelatedPlace("the device", device.Place)],
                        Mend = "Correct the `size` of this wire, or the `current` of the device.",
                    };
                }
            }
        }
    }

    private static IEnumerable<(DeviceEntry Device, PlugEntry? Harness)> Devices(KnowledgeBase kb) =>
    [
        .. from variant in kb.Chassis.All.Cast<Variant>().Concat(kb.Donors.All)
           from device in variant.Devices
           select (device, variant.Harness?.Plugs.FirstOrDefault(plug => plug.Key == device.Role).Value),
        .. from part in kb.Parts.All
           from device in part.Devices
           select (device, (PlugEntry?)null),
    ];

    private static IEnumerable<Finding> InConnector(PinEntry pin, SignalDeclaration signal, Connector connector, bool hasWires)
    {
        if (hasWires && (pin.SizeMm2 < connector.WireFromMm2 || pin.SizeMm2 > connector.WireToMm2))
        {
            yield return new Finding(FindingKinds.WireSize, $"a wire of {Mm2(pin.SizeMm2)} does not go into `{connector.Id}`, which takes {Range(connector)}", pin.Place)
            {
                Related = [new RelatedPlace("the connector", connector.Place)],
                Mend = "Correct the `size` of the wire (without one, the signal's counts), or the `wire` range of the connector.",
            };
        }

        if (signal.CurrentA > connector.MaxCurrentA)
        {
            yield return new Finding(FindingKinds.WireSize, $"`{signal.Id}` carries {Ampere(signal.CurrentA.Value)}, and a cavity of `{connector.Id}` no more than {Ampere(connector.MaxCurrentA.Value)}", pin.Place)
            {
                Related = [new RelatedPlace("the connector", connector.Place), new RelatedPlace("the signal", signal.Place)],
                Mend = "Correct the signal's `current` or the connector's `max-current`, or name the connector that is really there.",
            };
        }
    }

    /// <summary>Beyond the table of sizes all that is known is that its largest does not do.</summary>
    private static bool IsThin(decimal sizeMm2, SignalDeclaration signal) =>
        signal.CurrentA is { } current && (ConductorSize.For((double)current) is { } least ? (double)sizeMm2 < least : (double)sizeMm2 <= ConductorSize.Table[^1].SizeMm2);

    private static Finding Thin(decimal sizeMm2, SignalDeclaration signal, Place place, string mend)
    {
        var asked = ConductorSize.For((double)signal.CurrentA!.Value) is { } least ? $"at least {Mm2((decimal)least)}" : $"more than {Mm2((decimal)ConductorSize.Table[^1].SizeMm2)}";
        return new Finding(FindingKinds.WireSize, $"the {Ampere(signal.CurrentA.Value)} of `{signal.Id}` ask for {asked}, and the wire has {Mm2(sizeMm2)}", place)
        {
            Related = place == signal.Place ? [] : [new RelatedPlace("the signal", signal.Place)],
            Mend = mend,
        };
    }

    /// <summary>Everything with cavities. A device has pins and no wires of its own; it follows its plug, which is judged in its place.</summary>
    private static IEnumerable<(PlugEntry Plug, bool HasWires)> Plugs(KnowledgeBase kb)
    {
        foreach (var variant in kb.Chassis.All.Cast<Variant>().Concat(kb.Donors.All))
        {
            var plugs = (variant.Harness?.Plugs ?? []).ToDictionary(plug => plug.Key, plug => plug.Value, StringComparer.Ordinal);
            foreach (var plug in (variant.Harness?.Plugs.Select(plug => plug.Value) ?? []).Append(variant.Harness?.Body).Append((variant as ChassisVariant)?.Body).OfType<PlugEntry>())
            {
                yield return (plug, true);
            }

            foreach (var device in variant.Devices.Where(device => plugs.GetValueOrDefault(device.Role)?.Connector != device.Connector))
            {
                yield return (Plug(device), false);
            }
        }

        foreach (var plug in kb.Ecus.All.SelectMany(ecu => ecu.Plugs))
        {
            yield return (plug.Value, true);
        }

        foreach (var device in kb.Parts.All.SelectMany(part => part.Devices))
        {
            yield return (Plug(device), false);
        }
    }

    private static PlugEntry Plug(DeviceEntry device) => new(device.Connector, device.Location, device.Pins, device.Place);

    private static string Range(Connector connector) => (connector.WireFromMm2, connector.WireToMm2) switch
    {
        ({ } from, { } to) => $"{Number(from)} to {Mm2(to)}",
        ({ } from, null) => $"{Mm2(from)} and more",
        (_, { } to) => $"up to {Mm2(to)}",
        _ => "any",
    };

    private static string Mm2(decimal size) => $"{Number(size)} mm²";

    private static string Ampere(decimal current) => $"{Number(current)} A";

    private static string Number(decimal number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
