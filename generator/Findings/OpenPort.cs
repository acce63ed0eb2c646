using Swapwright.Diagnostics;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>A fitted port that no hose joins and nothing closes, in some buildable combination.</summary>
public static class OpenPort
{
    public static readonly SpaceCheck Check = new(FindingKinds.OpenPort, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var store = examination.Resolution.Store;
        var fitted = examination.Hoses;
        foreach (var port in fitted.Ports)
        {
            var hoses = fitted.HosesAt(port.Id).ToList();
            var settled = store.Or(store.OrAll(hoses.Select(fitted.Joined)), fitted.Closed(port.Id));
            var open = fitted.Pieces(port.Id).Where(piece => piece.Entry.Open.Length == 0)
                .Select(piece => (piece.Entry, Region: examination.Resolution.BuildableParts.Narrow(store.Minus(piece.Region, settled))))
                .Where(piece => !piece.Region.IsNone)
                .OrderBy(piece => piece.Entry.Place)
                .ToList();
            if (open.Count == 0)
            {
                continue;
            }

            var ends = string.Join(" or ", hoses.Select(hose => $"`{hose.Other(port.Id)}`"));
            yield return examination.About(
                FindingKinds.OpenPort,
                hoses.Count == 0 ? $"no hose of the vocabulary joins `{port.Id}`" : $"`{port.Id}` is left open: there is no {ends} to join it to, and nothing closes it",
                open[0].Entry.Place,
                store.OrAll(open.Select(piece => piece.Region))) with
            {
                Related = [.. open.Skip(1).Select(piece => piece.Entry.Place).Distinct().Take(3).Select(place => new RelatedPlace($"`{port.Id}` is left open here too", place))],
                Mend = "Give the vehicle or part at the other end its port, let the answer that takes it away say `closes`, make the hose `optional`, or say why the port stays `open`.",
            };
        }
    }
}
