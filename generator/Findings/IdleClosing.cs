using Swapwright.Diagnostics;
using Swapwright.Rules;

namespace Swapwright.Findings;

/// <summary>An answer that closes a port which, wherever the answer stands, is not there or has its hose.</summary>
public static class IdleClosing
{
    public static readonly SpaceCheck Check = new(FindingKinds.IdleClosing, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var store = examination.Resolution.Store;
        var buildable = examination.Resolution.BuildableParts;
        var hoses = examination.Hoses;

        // An answer that stands nowhere is told with its rule.
        foreach (var stands in examination.Base.Positions.Ids.SelectMany(position => examination.Resolution.At(position)).Where(stands => stands.Answer.Closes.Length > 0 && buildable.Intersects(stands.Region)))
        {
            foreach (var port in stands.Answer.Closes.Where(examination.Base.Vocabulary.Ports.Has))
            {
                var fitted = store.And(stands.Region, hoses.Fitted(port));
                if (!buildable.Intersects(fitted))
                {
                    yield return About(stands, $"closes `{port}`, but no combination that it stands in has this port", "Take the port out of `closes`, name the one that is left open here, or give the vehicle or part its port.");
                }
                else if (!buildable.Intersects(store.Minus(fitted, store.OrAll(hoses.HosesAt(port).Select(hoses.Joined)))))
                {
                    yield return About(stands, $"closes `{port}`, but a hose goes on it in every combination that it stands in", "Take the port out of `closes`, or let the answer at the hose's position leave the hose off.");
                }
            }
        }
    }

    private static Finding About(StandingAnswer stands, string what, string mend) =>
        new(FindingKinds.IdleClosing, $"`{stands.Rule.Id}` {what}", stands.Answer.Place) { Mend = mend };
}
