using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A place that a ground wire reaches.</summary>
public sealed record GroundMember(string Place, string Title, string Cavity);

/// <summary>The ends of one ground, which may share a wire.</summary>
/// <param name="Point">Where the group meets the body or the engine, as one sentence.</param>
/// <param name="Meets">Other grounds that may go to the same bolt, by signal.</param>
/// <param name="Apart">Other grounds that must not be joined with it anywhere, by signal.</param>
public sealed record GroundGroup(
    string Signal, string Title, SignalKind Kind, ImmutableArray<GroundMember> Members, string Point, ImmutableArray<string> Meets, ImmutableArray<string> Apart);

/// <summary>
/// Which grounds share and which must not. A ground by which the ECU measures carries no load current, or every load shifts what is read; a screen is
/// grounded at one end, or it becomes a conductor itself. Common practice, no source.
/// </summary>
public static class GroundGroups
{
    public static ImmutableArray<GroundGroup> Of(WiringSheet sheet)
    {
        if (sheet.Data is not { } data)
        {
            return [];
        }

        var ends = Ends(data).Where(end => data.SignalOf(end.Signal)?.Kind is SignalKind.Ground or SignalKind.SensorGround or SignalKind.Shield).ToList();
        var signals = ends.Select(end => end.Signal).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).Select(id => data.SignalOf(id)!).ToList();
        return
        [
            .. signals.Select(signal => new GroundGroup(
                signal.Id,
                signal.Title,
                signal.Kind,
                [.. ends.Where(end => end.Signal == signal.Id).Select(end => end.Member)],
                Point(signal.Kind) + (signal.Kind == SignalKind.Ground && sheet.Runs.Any(run => run.Signal == signal.Id && run.To.Place == Places.BodyMetal && data.Devices.Any(device => device.Role == run.Role)) ? " New wires of what lives behind the dash go to the body beside it." : ""),
                [.. signals.Where(other => other != signal && MayMeet(signal.Kind, other.Kind)).Select(other => other.Id)],
                [.. signals.Where(other => other != signal && !MayMeet(signal.Kind, other.Kind)).Select(other => other.Id)])),
        ];
    }

    /// <summary>Whether two grounds may go to one bolt: two power grounds may, nothing else.</summary>
    public static bool MayMeet(SignalKind one, SignalKind other) => one == SignalKind.Ground && other == SignalKind.Ground;

    private static string Point(SignalKind kind) => kind switch
    {
        SignalKind.SensorGround => "ends at the ECU's reference pin and nowhere else: never at the engine or the body.",
        SignalKind.Shield => "is grounded at the ECU's end only; the other end is cut back and sleeved.",
        _ => "goes to clean metal of the engine; several may go to one bolt, each with a wire of its own.",
    };

    private static IEnumerable<(string Signal, GroundMember Member)> Ends(WiringData data) =>
    [
        .. from device in data.Devices
           from pin in device.Pins
           select (pin.Value, new GroundMember(device.Role, device.Title, pin.Key)),
        .. from pin in data.EcuPins
           select (pin.Pin.Signal, new GroundMember(data.Ecu!.Id, data.Ecu.Title, pin.Name)),
        .. from pin in data.CabinBody?.Pins ?? []
           select (pin.Signal, new GroundMember(Places.Body, "The cabin's bulkhead plug", pin.Cavity)),
    ];
}
