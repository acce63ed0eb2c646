namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Who gives a signal that more than one has. An ECU and a control unit listen to a switch. The cabin gives those of its pedals and its dash; what the car's
/// own engine bay gave it, or what it needs, it listens to as well (common practice, no source).
/// </summary>
internal static class Givers
{
    /// <summary>A device that speaks on a data line is a control unit, which listens to switches and sensors and is none.</summary>
    public static bool MayGive(IEnumerable<SignalKind?> pins) => pins.All(kind => kind != SignalKind.Data);

    /// <summary>The device that gives a signal, if any: one that only listens comes last, then what lives behind the dash.</summary>
    public static Device? Of(WiringData data, string signal) =>
        data.DevicesOf(signal).OrderBy(device => !MayGive(data, device)).ThenBy(device => device.InCabin).FirstOrDefault();

    /// <summary>The cabin listens to a switch that is not fitted: a wire from there would join two listeners.</summary>
    public static bool IsGone(WiringData data, string signal) =>
        data.SignalOf(signal)?.Kind == SignalKind.Switch
        && data.IsAtCabin(signal)
        && (data.IsNeeded(signal) || data.CabinHears.Contains(signal))
        && (Of(data, signal) is not { } device || !MayGive(data, device));

    private static bool MayGive(WiringData data, Device device) => MayGive(device.Pins.Select(pin => data.SignalOf(pin.Value)?.Kind));
}
