using System.Collections.Frozen;

namespace Swapwright.Worksheets.Wiring;

/// <summary>What follows from the kind of a signal.</summary>
public static class SignalKinds
{
    private static readonly FrozenDictionary<string, SignalKind> s_written = new Dictionary<string, SignalKind>(StringComparer.Ordinal)
    {
        ["power"] = SignalKind.Power,
        ["ground"] = SignalKind.Ground,
        ["sensor-supply"] = SignalKind.SensorSupply,
        ["sensor-ground"] = SignalKind.SensorGround,
        ["analogue"] = SignalKind.Analogue,
        ["switch"] = SignalKind.Switch,
        ["low-side"] = SignalKind.LowSide,
        ["frequency"] = SignalKind.Frequency,
        ["logic"] = SignalKind.Logic,
        ["ignition"] = SignalKind.Ignition,
        ["data"] = SignalKind.Data,
        ["shield"] = SignalKind.Shield,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The kind behind its written name, as in <c>low-side</c>; what the schema has refused counts as measured.</summary>
    public static SignalKind Parse(string kind) => s_written.GetValueOrDefault(kind, SignalKind.Analogue);

    /// <summary>Tapping a measured, timed or driven signal changes it; feeds, grounds, shields, switches and bus lines may be joined (common practice, no source).</summary>
    public static bool MayShare(SignalKind kind) => kind is
        SignalKind.Power or SignalKind.Ground or SignalKind.SensorSupply or SignalKind.SensorGround or SignalKind.Switch
        or SignalKind.Data or SignalKind.Shield;

    /// <summary>Whether the load of a device flows through its wires of a kind: feeds, power grounds and what a driver switches, and no signal.</summary>
    public static bool CarriesLoad(SignalKind kind) => kind is SignalKind.Power or SignalKind.Ground or SignalKind.LowSide or SignalKind.Ignition;

    /// <summary>Whether an ECU that has such a signal gives it where a device has it too; to everything else it listens (common practice, no source).</summary>
    public static bool IsDriven(SignalKind kind) => kind is SignalKind.LowSide or SignalKind.Logic or SignalKind.Ignition or SignalKind.Data;

    /// <summary>
    /// Whether a wire of one kind on a pin of the other does harm, and not merely nothing: a feed or a coil's pulse meets a
    /// ground (a short circuit) or an input that is made for a signal (common practice, no source).
    /// </summary>
    public static bool DoesHarm(SignalKind one, SignalKind other) => HarmsAt(one, other) || HarmsAt(other, one);

    private static bool HarmsAt(SignalKind driving, SignalKind met) => driving switch
    {
        SignalKind.Power or SignalKind.Ignition => met is not (SignalKind.Power or SignalKind.Ignition or SignalKind.LowSide),
        SignalKind.SensorSupply => met is SignalKind.Ground or SignalKind.SensorGround or SignalKind.Shield,
        _ => false,
    };
}
