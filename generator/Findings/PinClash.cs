using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>A cavity that a connector does not have, or that is there twice.</summary>
public static class PinClash
{
    public static readonly EntityCheck Check = new(FindingKinds.PinClash, Run);

    private static IEnumerable<Finding> Run(KnowledgeBase kb)
    {
        // Vehicles that are alike share plugs and pins; one may write either of the two anew.
        var seen = new HashSet<(Place Plug, Place Pin)>();
        foreach (var (connectorId, pins, place) in Plugs(kb))
        {
            if (kb.Connectors.Find(connectorId) is not { } connector)
            {
                continue;
            }

            var cavities = connector.Cavities.ToHashSet(StringComparer.Ordinal);
            foreach (var pin in pins.Where(pin => !cavities.Contains(pin.Cavity) && seen.Add((place, pin.Place))))
            {
                yield return new Finding(FindingKinds.PinClash, $"`{connectorId}` has no cavity `{pin.Cavity}`", pin.Place)
                {
                    Related = [new RelatedPlace($"`{connectorId}` has {connector.Cavities.Count()} cavities: {string.Join(", ", connector.Cavities)}", connector.Place)],
                    Mend = "Name a cavity of this connector, or another connector.",
                };
            }
        }

        foreach (var connector in kb.Connectors.All)
        {
            foreach (var twice in connector.Cavities.GroupBy(cavity => cavity, StringComparer.Ordinal).Where(group => group.Count() > 1))
            {
                yield return new Finding(FindingKinds.PinClash, $"cavity `{twice.Key}` stands twice in the face of `{connector.Id}`", connector.Place) { Mend = "Give every cavity a label of its own in `rows`." };
            }
        }
    }

    private static IEnumerable<(string Connector, ImmutableArray<PinEntry> Pins, Place Place)> Plugs(KnowledgeBase kb)
    {
        foreach (var variant in kb.Chassis.All.Cast<Variant>().Concat(kb.Donors.All))
        {
            foreach (var device in variant.Devices)
            {
                yield return (device.Connector, device.Pins, device.Place);
            }

            var plugs = (variant.Harness?.Plugs.Select(plug => plug.Value) ?? []).Append(variant.Harness?.Body).Append((variant as ChassisVariant)?.Body);
            foreach (var plug in plugs.OfType<PlugEntry>())
            {
                yield return (plug.Connector, plug.Pins, plug.Place);
            }
        }

        foreach (var plug in kb.Ecus.All.SelectMany(ecu => ecu.Plugs))
        {
            yield return (plug.Value.Connector, plug.Value.Pins, plug.Value.Place);
        }

        foreach (var device in kb.Parts.All.SelectMany(part => part.Devices))
        {
            yield return (device.Connector, device.Pins, device.Place);
        }
    }
}
