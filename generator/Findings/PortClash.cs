using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Space;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Findings;

/// <summary>A port that two hoses want at once, in some buildable combination, without a tee.</summary>
public static class PortClash
{
    public static readonly SpaceCheck Check = new(FindingKinds.PortClash, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var store = examination.Resolution.Store;
        var fitted = examination.Hoses;
        foreach (var port in fitted.Ports)
        {
            foreach (var (hoses, region) in Together(examination, port.Id).Where(one => one.Hoses.Length > 1))
            {
                var clash = examination.Resolution.BuildableParts.Narrow(store.Minus(region, Teed(examination, port, hoses)));
                if (!clash.IsNone)
                {
                    yield return examination.About(
                        FindingKinds.PortClash,
                        $"`{port.Id}` is wanted by {string.Join(" and ", hoses.Select(hose => $"`{hose.Id}`"))} at once",
                        hoses[^1].Place,
                        clash) with
                    {
                        Related = [.. hoses[..^1].Select(hose => new RelatedPlace($"`{hose.Id}` goes there too", hose.Place))],
                        Mend = "Name another port for one of them, or put a tee among the parts of the answer at the position of one.",
                    };
                }
            }
        }
    }

    /// <summary>The sets of hoses that are on the port together, each with its region; the regions are disjoint.</summary>
    private static List<(ImmutableArray<HoseRole> Hoses, Region Region)> Together(Examination examination, string port)
    {
        var store = examination.Resolution.Store;
        List<(ImmutableArray<HoseRole> Hoses, Region Region)> parts = [([], examination.Hoses.Fitted(port))];
        foreach (var hose in examination.Hoses.HosesAt(port))
        {
            var joined = examination.Hoses.Joined(hose);
            parts =
            [
                .. parts.Select(part => (part.Hoses, Region: store.Minus(part.Region, joined)))
                    .Concat(parts.Select(part => (Hoses: part.Hoses.Add(hose), Region: store.And(part.Region, joined))))
                    .Where(part => !part.Region.IsNone),
            ];
        }

        return parts;
    }

    private static Region Teed(Examination examination, PortRole port, ImmutableArray<HoseRole> hoses)
    {
        var store = examination.Resolution.Store;
        var fitted = examination.Hoses;
        return store.OrAll(
            from hose in hoses
            from answer in fitted.Answers(hose)
            let tees = fitted.Assembly.Hose(hose, answer.Answer).Tees
            where !tees.IsEmpty
            from piece in fitted.Pieces(port.Id)
            let end = Fitting.HoseAssembly.Port(port, piece.Origin, piece.Entry, isClosed: false)
            where tees.Any(tee => HoseWorksheet.Serves(tee, end, hoses.Length, fitted.Assembly.Limits))
            select store.And(answer.Region, piece.Region));
    }
}
