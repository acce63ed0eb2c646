using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Space;
using Swapwright.Worksheets.Hoses;

namespace Swapwright.Findings;

/// <summary>
/// A hose whose ends differ without a reducer, or for which a rule names hose of another bore or, for fuel, of a class below
/// the pressure; in some buildable combination.
/// </summary>
public static class HoseSize
{
    public static readonly SpaceCheck Check = new(FindingKinds.HoseSize, Run);

    private static IEnumerable<Finding> Run(Examination examination) => examination.Hoses.Hoses.SelectMany(hose => Of(examination, hose));

    private static IEnumerable<Finding> Of(Examination examination, HoseRole hose)
    {
        // What is wrong in the same way with several ports or answers is said once.
        var found = new Dictionary<(HoseProblem Problem, Place Place), (PortPiece From, PortPiece To, Region Region)>();
        foreach (var (answer, from, to, region) in Cases(examination, hose))
        {
            var assembly = examination.Hoses.Assembly;
            HoseInput input = new([HoseAssembly.Port(from.Role, from.Origin, from.Entry, isClosed: false), HoseAssembly.Port(to.Role, to.Origin, to.Entry, isClosed: false)], [assembly.Hose(hose, answer)], [], assembly.Limits);
            foreach (var problem in HoseWorksheet.Compute(input).Problems.Where(problem => problem is SizesDiffer or StockDoesNotFit or ClassTooLow))
            {
                // Sizes are the ports' affair; which hose is cut is the answer's.
                var key = (problem, problem is SizesDiffer ? default : answer!.Place);
                found[key] = found.TryGetValue(key, out var known) ? known with { Region = examination.Resolution.Store.Or(known.Region, region) } : (from, to, region);
            }
        }

        return found.Select(one => Told(examination, hose, one.Key.Problem, one.Key.Problem is SizesDiffer ? one.Value.From.Entry.Place : one.Key.Place, one.Value.From, one.Value.To, one.Value.Region));
    }

    /// <summary>Every way in which the hose is there: what is answered about it, and the ports at its ends.</summary>
    private static IEnumerable<(Answer? Answer, PortPiece From, PortPiece To, Region Region)> Cases(Examination examination, HoseRole hose)
    {
        var store = examination.Resolution.Store;
        return from answer in examination.Hoses.Answers(hose)
               from fromPiece in examination.Hoses.Pieces(hose.From)
               let near = store.And(answer.Region, fromPiece.Region)
               where !near.IsNone
               from toPiece in examination.Hoses.Pieces(hose.To)
               let region = examination.Resolution.BuildableParts.Narrow(store.And(near, toPiece.Region))
               where !region.IsNone
               select (answer.Answer, fromPiece, toPiece, region);
    }

    private static Finding Told(Examination examination, HoseRole hose, HoseProblem problem, Place place, PortPiece from, PortPiece to, Region region)
    {
        if (problem is SizesDiffer differ)
        {
            return examination.About(FindingKinds.HoseSize, $"`{hose.Id}` would join {Number(differ.FromMm)} mm at `{hose.From}` to {Number(differ.ToMm)} mm at `{hose.To}` without a reducer", place, region) with
            {
                Related = [new RelatedPlace($"`{hose.To}` is {Number(differ.ToMm)} mm here", to.Entry.Place)],
                Mend = hose.Position is { } position ? $"Put a part with this `reducer` among the parts of the answer at `{position}`, or correct a size." : "Give the hose a `position`, and its answer a part with this `reducer`; or correct a size.",
            };
        }

        if (problem is StockDoesNotFit stock)
        {
            return examination.About(FindingKinds.HoseSize, $"`{stock.Part}` has a bore of {Number(stock.BoreMm)} mm, and `{hose.Id}` goes over {Number((double)from.Entry.SizeMm)} mm and {Number((double)to.Entry.SizeMm)} mm", place, region) with
            {
                Related = [new RelatedPlace($"`{stock.Part}` is written here", examination.Base.Parts[stock.Part].Place)],
                Mend = "Name hose of the ports' size, or correct a size.",
            };
        }

        var low = (ClassTooLow)problem;
        var message = low.Class is { } known ? $"`{low.Part}` is of class {known}, too low for `{hose.Id}`{At(low.PressureBar)}" : $"`{low.Part}` does not say its class, and `{hose.Id}` carries fuel{At(low.PressureBar)}";
        return examination.About(FindingKinds.HoseSize, message, place, region) with
        {
            Related = [new RelatedPlace($"`{low.Part}` is written here", examination.Base.Parts[low.Part].Place)],
            Mend = string.Create(CultureInfo.InvariantCulture, $"Name hose of class {FuelHoseClasses.Least(low.PressureBar, examination.Hoses.Assembly.Limits.InjectionBar)} or better."),
        };
    }

    private static string At(double? pressure) => pressure is { } bar ? $" at {Number(bar)} bar" : "";

    private static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
