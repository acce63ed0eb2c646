using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>Finds who gives the cabin what it needs: the harness's bulkhead plug, else a device, else the ECU in use.</summary>
internal static class NeedTracing
{
    public static ImmutableArray<NeedTrace> Trace(WiringData data, ProblemList problems) =>
        [.. data.Needs.Select(need => Trace(data, need, problems))];

    private static NeedTrace Trace(WiringData data, string need, ProblemList problems)
    {
        var isGone = Givers.IsGone(data, need);
        var device = isGone ? null : Givers.Of(data, need);
        var ecu = isGone ? null : data.EcuPinsOf(need).FirstOrDefault();
        if (data.CabinBody is not null && !data.IsAtCabin(need))
        {
            problems.Add(WiringProblemKind.UnknownCavity, Places.Body, null, need, $"the cabin needs `{need}`, but its plug has no cavity for it");
        }

        if (data.CabinGiver(need) is { } giver)
        {
            return new(need, NeedSupply.Device, giver.Device.Role, giver.Cavity, null);
        }

        if (data.HarnessPinsOf(need).FirstOrDefault() is { } pin)
        {
            // Where both have what an ECU drives, the device listens, as an idle-speed relay does; what a sensor, a switch or a feed gives, the ECU listens to.
            var isDriven = data.SignalOf(need) is { } known && SignalKinds.IsDriven(known.Kind);
            var behind = ecu is not null && (isDriven || device is null) ? data.Ecu!.Id : device?.Role;
            if (behind is null && data.SignalOf(need) is { Shared: false })
            {
                problems.Add(
                    WiringProblemKind.NeedUnfed, "cabin", null, need, $"the harness brings `{need}` to the bulkhead, but no device in use and no ECU gives it");
            }

            return new(need, NeedSupply.HarnessBody, Places.HarnessBody, pin.Name, behind);
        }

        if (device is not null)
        {
            return new(need, NeedSupply.Device, device.Role, device.Pins.First(pin => pin.Value == need).Key, null);
        }

        if (ecu is not null)
        {
            return new(need, NeedSupply.Ecu, data.Ecu!.Id, ecu.Name, null);
        }

        problems.Add(WiringProblemKind.NeedUnsupplied, "cabin", null, need, $"the cabin needs `{need}`, which nothing in this build gives");
        return new(need, NeedSupply.Unsupplied, null, null, null);
    }
}
