using Swapwright.Diagnostics;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>A position that has to be settled and is not, in some buildable combination.</summary>
public static class Gap
{
    public static readonly SpaceCheck Check = new(FindingKinds.Gap, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var position in examination.Base.PositionOrder)
        {
            var settled = resolution.Store.OrAll(resolution.At(position.Id).Select(answer => answer.Region));
            var open = resolution.BuildableParts.Narrow(resolution.Store.Minus(resolution.Applies(position.Id), settled));
            if (open.IsNone)
            {
                continue;
            }

            var rules = resolution.At(position.Id);
            yield return examination.About(
                FindingKinds.Gap,
                rules.IsEmpty ? $"no rule answers `{position.Id}`" : $"`{position.Id}` has no answer in some buildable combinations",
                position.Place,
                open) with
            {
                Related = [.. rules.Take(3).Select(rule => new RelatedPlace($"`{rule.Rule.Id}` answers elsewhere", rule.Answer.Place))],
                Mend = Closing(examination, open),
            };
        }
    }

    private static string Closing(Examination examination, Region open)
    {
        var yaml = examination.Yaml.Write(open, examination.Resolution.BuildableParts.Near(open));
        return yaml switch
        {
            null => "Add a rule for these combinations, widen one that nearly reaches them, or narrow where the position `applies`.",
            "{}" => "Add a rule without a `when`, or narrow where the position `applies`.",
            _ => $"Add a rule with `when: {yaml}`, widen one that nearly reaches these combinations, or narrow where the position `applies`.",
        };
    }
}
