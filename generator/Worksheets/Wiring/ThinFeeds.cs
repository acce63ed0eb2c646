using System.Collections.Immutable;

namespace Swapwright.Worksheets.Wiring;

/// <summary>A wire of the harness that a thicker new one feeds, and that carries from there on what the new one brings.</summary>
/// <param name="Device">Title of the device that feeds it.</param>
/// <param name="NewMm2">Conductor of the new wire, mm².</param>
/// <param name="SizeMm2">Conductor of the harness's wire, mm².</param>
/// <param name="CurrentA">What hangs on it, A.</param>
/// <param name="CarriesA">What it carries by <see cref="ConductorSize.Table"/>, A.</param>
/// <param name="FuseA">Largest blade fuse that it stands behind, A.</param>
/// <param name="Run">Label of the new wire.</param>
public sealed record ThinFeed(string Signal, string Title, string Device, string Place, string Cavity, double NewMm2, double SizeMm2, double CurrentA, double CarriesA, double FuseA, string Run);

/// <summary>
/// A new feed is as thick as its current asks for; the wire that it is spliced to stays as it was made. It is that one which the fuse has to guard.
/// Currents and fuses by the same table as the sizes.
/// </summary>
public static class ThinFeeds
{
    public static ImmutableArray<ThinFeed> Of(WiringSheet sheet) => sheet.Data is not { } data ? [] :
    [
        .. from run in sheet.Runs
           where run is { Purpose: WirePurpose.Device, JoinedMm2: > 0, Conductor: not null } && run.JoinedMm2 < run.SizeMm2 - 1e-9
           let device = data.DeviceAt(run.Role)
           where device?.Supplies.Contains(run.Signal) == true
           select new ThinFeed(
               run.Signal, data.SignalOf(run.Signal)?.Title ?? run.Signal, device.Title, run.To.Place, run.To.Cavity, run.SizeMm2, run.JoinedMm2, run.Conductor!.For.CurrentA,
               SharedFeeds.Carries(run.JoinedMm2), ConductorSize.FuseFor(run.JoinedMm2), run.Label),
    ];
}
