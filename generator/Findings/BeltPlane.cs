using System.Globalization;
using Swapwright.Diagnostics;

namespace Swapwright.Findings;

/// <summary>Two neighbouring pulleys of a belt whose planes are too far apart, in some buildable combination.</summary>
public static class BeltPlane
{
    public static readonly SpaceCheck Check = new(FindingKinds.BeltPlane, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var askew = from loop in examination.Loops.All
                    where loop.Belt is not null
                    from pulley in loop.Belt!.Result.Pulleys
                    where !pulley.PlaneWithinLimit
                    select (loop, pulley);
        foreach (var group in askew.GroupBy(one => (one.loop.Drive.Place, one.pulley.StationId, one.pulley.NextId)))
        {
            var (worst, pulley) = group.MaxBy(one => Math.Abs(one.pulley.PlaneOffsetToNextMm) - one.pulley.AllowedPlaneOffsetMm);
            var next = worst.Drive.Stations.First(station => station.Id == pulley.NextId);
            var message = string.Create(CultureInfo.InvariantCulture, $"on the belt `{worst.Drive.Id}` the planes of `{pulley.StationId}` and `{pulley.NextId}` differ by {Math.Abs(pulley.PlaneOffsetToNextMm):0.#} mm, and their span of {pulley.SpanToNextMm:0} mm allows {pulley.AllowedPlaneOffsetMm:0.#} mm");
            yield return examination.About(FindingKinds.BeltPlane, message, worst.Drive.Stations.First(station => station.Id == pulley.StationId).Place, examination.Resolution.Store.OrAll(group.Select(one => one.loop.Region))) with
            {
                Related = [new RelatedPlace($"`{next.Id}` stands here", next.Place)],
                Mend = "Give one of the two a spacer or another pulley by a rule, or correct a `plane` that was measured wrongly.",
            };
        }
    }
}
