using System.Globalization;
using Swapwright.Diagnostics;

namespace Swapwright.Findings;

/// <summary>A pulley that its belt embraces by less than the limit, in some buildable combination.</summary>
public static class BeltWrap
{
    public static readonly SpaceCheck Check = new(FindingKinds.BeltWrap, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var slipping = from loop in examination.Loops.All
                     where loop.Belt is not null
                     from pulley in loop.Belt!.Result.Pulleys
                     where !pulley.WrapWithinLimit
                     select (loop, pulley);
        foreach (var group in slipping.GroupBy(one => (one.loop.Drive.Place, one.pulley.StationId)))
        {
            var (worst, pulley) = group.MinBy(one => one.pulley.WrapRad);
            var station = worst.Drive.Stations.First(station => station.Id == pulley.StationId);
            var message = string.Create(CultureInfo.InvariantCulture, $"the belt `{worst.Drive.Id}` embraces `{station.Id}` by {double.RadiansToDegrees(pulley.WrapRad):0}°, and {double.RadiansToDegrees(pulley.WrapLimitRad):0}° are asked for");
            yield return examination.About(FindingKinds.BeltWrap, message, station.Place, examination.Resolution.Store.OrAll(group.Select(one => one.loop.Region))) with
            {
                Mend = "Fit an idler that guides the belt further round, or a pulley of another size.",
            };
        }
    }
}
