using Swapwright.Knowledge;

namespace Swapwright.Findings;

/// <summary>A plug and what it was plugged into when the vehicle left the factory.</summary>
/// <param name="What">The two in words, as in "the harness plug of `alternator` and the device".</param>
internal sealed record Plugged(string What, PlugEntry Plug, PlugEntry Other)
{
    /// <summary>Every pair that a vehicle says of itself. Vehicles that are alike share what they do not write anew.</summary>
    public static IEnumerable<Plugged> All(KnowledgeBase kb) =>
        kb.Chassis.All.Cast<Variant>().Concat(kb.Donors.All).SelectMany(Of);

    private static IEnumerable<Plugged> Of(Variant variant)
    {
        foreach (var (role, plug) in variant.Harness?.Plugs ?? [])
        {
            if (variant.Device(role) is { } device)
            {
                yield return new($"the harness plug of `{role}` and the device", plug, new PlugEntry(device.Connector, device.Location, device.Pins, device.Place));
            }
        }

        if (variant is ChassisVariant { Harness.Body: { } own, Body: { } cabin })
        {
            yield return new("the body plug of the harness and the cabin's side of it", own, cabin);
        }
    }
}
