using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A fuse that a new feed asks for.</summary>
/// <param name="FuseA">Standard blade fuse, A; null where the current is beyond the largest.</param>
/// <param name="Run">Label of the new wire that it goes into.</param>
public sealed record FuseAdvice(string Role, string Title, string Signal, double CurrentA, double? FuseA, double SizeMm2, double SizeStandsA, string Run)
{
    /// <summary>Current of the cold load, A; null where it is no greater.</summary>
    public double? ColdA { get; init; }
}

/// <summary>A relay that a new load asks for.</summary>
/// <param name="LimitA">Current that the ECU's output switches, A.</param>
/// <param name="ByRule">The limit is the setting's, because the ECU says none.</param>
public sealed record RelayAdvice(string Role, string Title, string Signal, double CurrentA, double LimitA, string Ecu, bool ByRule);

/// <summary>Fuses and relays for loads that the harness did not have: fan, pump, heated sensor.</summary>
/// <remarks>
/// A fuse is the smallest standard blade of at least 1.25 times the steady current, so that it is not loaded beyond four fifths for long; a heater, which
/// warms up slowly, counts with what it draws while it is cold. Common practice, no source. The wire has to stand behind the fuse, which protects the wire
/// and not the load. A relay goes between where the load draws more than the
/// output that switches it can carry.
/// </remarks>
public static class LoadProtection
{
    public const double FuseMargin = 1.25;

    /// <summary>Blade fuses, A. Source: ratings of ISO 8820-3, from memory; 10, 15 and 20 A as tabled at engineerfix.com.</summary>
    public static readonly ImmutableArray<double> Blades = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40];

    /// <summary>Smallest blade fuse for a steady current; null beyond the largest or for what is no current.</summary>
    public static double? FuseFor(double currentA) =>
        currentA >= 0 ? Blades.Select(blade => (double?)blade).FirstOrDefault(blade => blade >= (currentA * FuseMargin) - 1e-9) : null;

    /// <summary>The fuse of a device's new feed; null for wires that get none.</summary>
    internal static double? FuseFor(WiringData data, Device? device, Signal signal) =>
        device is { OwnFuse: true } && signal.Kind == SignalKind.Power && data.CurrentOf(device, signal.Id) is { } current ? FuseFor(Math.Max(current, device.ColdA ?? 0)) : null;

    public static ImmutableArray<FuseAdvice> Fuses(WiringSheet sheet) => sheet.Data is not { } data ? [] :
    [
        .. from pair in NewWires(sheet, data)
           let signal = data.SignalOf(pair.Run.Signal)
           where signal?.Kind == SignalKind.Power
           let current = data.CurrentOf(pair.Device, signal.Id)
           where current is not null
           select new FuseAdvice(
               pair.Device.Role, pair.Device.Title, signal.Id, current.Value, FuseFor(data, pair.Device, signal), pair.Run.SizeMm2, ConductorSize.FuseFor(pair.Run.SizeMm2), pair.Run.Label)
           {
               ColdA = pair.Device.ColdA > current ? pair.Device.ColdA : null,
           },
    ];

    public static ImmutableArray<RelayAdvice> Relays(WiringSheet sheet)
    {
        if (sheet.Data is not { Ecu: { } ecu } data)
        {
            return [];
        }

        var limit = ecu.DriverA ?? data.Settings.DriverA;
        return
        [
            .. from pair in NewWires(sheet, data)
               where pair.Run.To.Place == ecu.Id
               let signal = data.SignalOf(pair.Run.Signal)
               where signal?.Kind is SignalKind.LowSide or SignalKind.Power or SignalKind.Switch
               let current = pair.Device.CurrentA ?? signal.CurrentA
               where current > limit
               select new RelayAdvice(pair.Device.Role, pair.Device.Title, signal.Id, current.Value, limit, ecu.Title, ecu.DriverA is null),
        ];
    }

    private static IEnumerable<(Device Device, WireRun Run)> NewWires(WiringSheet sheet, WiringData data) =>
        from device in data.Devices
        where device.OwnFuse
        from run in sheet.Runs
        where run.Purpose == WirePurpose.Device && run.Role == device.Role
        select (device, run);
}
