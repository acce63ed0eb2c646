using Swapwright.Diagnostics;
using Swapwright.Worksheets.Belts;

namespace Swapwright.Findings;

/// <summary>A pulley whose face is not the one that the belt turns to it: grooves on the smooth back, or none for the ribs.</summary>
public static class BeltFace
{
    public static readonly SpaceCheck Check = new(FindingKinds.BeltFace, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var unsuited = from loop in examination.Loops.All
                       where loop.Belt is not null
                       from face in loop.Belt!.Result.Problems.OfType<FaceMismatch>()
                       select (loop, face);
        foreach (var group in unsuited.GroupBy(one => (one.loop.Drive.Place, one.face.StationId, one.face.Side)))
        {
            var (loop, face) = group.First();
            var station = loop.Drive.Stations.First(station => station.Id == face.StationId);
            var message = face.Side == BeltSide.Back
                ? $"the smooth back of the belt `{loop.Drive.Id}` runs on `{station.Id}`, which has grooves"
                : $"the ribs of the belt `{loop.Drive.Id}` run on `{station.Id}`, which has no grooves";
            yield return examination.About(FindingKinds.BeltFace, message, station.Place, examination.Resolution.Store.OrAll(group.Select(one => one.loop.Region))) with
            {
                Mend = "Look at the belt: correct the `side` of the station or the `ribs` of the pulley, or fit a pulley with the right face by a rule.",
            };
        }
    }
}
