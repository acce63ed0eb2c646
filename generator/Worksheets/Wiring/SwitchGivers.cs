namespace Swapwright.Worksheets.Wiring;

/// <summary>
/// Who gives the signal of a switch. An ECU and a control unit listen to it. The cabin gives those of its pedals and its dash; what the car's own engine bay
/// gave it, or what it needs, it listens to as well (common practice, no source).
/// </summary>
internal static class SwitchGivers
{
    /// <summary>A device that speaks on a data line is a control unit, which listens to switches and is none.</summary>
    public static bool MayGive(IEnumerable<SignalKind?> pins) => pins.All(kind => kind != SignalKind.Data);

    /// <summary>The cabin listens to a switch that is not fitted: a wire from there would join two listeners.</summary>
    public static bool IsGone(WiringData data, string signal) =>
        data.SignalOf(signal)?.Kind == SignalKind.Switch
        && data.CabinBody?.Pins.Any(pin => pin.Signal == signal) == true
        && (data.Needs.Contains(signal) || data.CabinHears.Contains(signal))
        && !data.Devices.Any(device => device.Pins.Any(pin => pin.Value == signal) && MayGive(device.Pins.Select(pin => data.SignalOf(pin.Value)?.Kind)));
}
