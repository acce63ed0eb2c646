using Swapwright.Diagnostics;
using Swapwright.Rules;
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
            var open = Open(resolution, position.Id);
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

    private static Region Open(Resolution resolution, string position)
    {
        // The rules that override none are the general ones: where they cover everything, the exceptions need not be looked at.
        var general = resolution.Store.OrAll(resolution.At(position).Where(one => one.Rule.Overrides.IsEmpty).Select(one => resolution.When(one.Rule)));
        var open = resolution.Store.Minus(resolution.Applies(position), general);
        return open.IsNone ? open : resolution.BuildableParts.Narrow(resolution.Store.Minus(open, resolution.Answered(position)));
    }
}
