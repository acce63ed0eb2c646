using Swapwright.Diagnostics;
using Swapwright.Knowledge;
using Swapwright.Rules;

namespace Swapwright.Findings;

/// <summary>An option that no buildable combination takes.</summary>
public static class DeadOption
{
    public static readonly SpaceCheck Check = new(FindingKinds.DeadOption, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        if (resolution.BuildableParts.Possible.IsNone)
        {
            // Every option is dead then, and every pair is told to be without a build.
            yield break;
        }

        foreach (var choice in examination.Base.Choices.All)
        {
            var taken = Taken(resolution, choice);
            if (taken.Count == 0)
            {
                yield return new Finding(FindingKinds.DeadOption, $"no buildable combination asks for a choice of `{choice.Id}`", choice.Place) { Mend = "Take the choice out, or correct where it `applies`." };
                continue;
            }

            foreach (var option in choice.Options.Where(option => !taken.Contains(option.Id)))
            {
                var region = resolution.Space.WhereChoice(choice.Id, [option.Id]);
                var excluders = resolution.Exclusions.Where(exclusion => resolution.DomainParts.Intersects(resolution.Store.And(exclusion.Region, region))).ToList();
                yield return new Finding(FindingKinds.DeadOption, $"no buildable combination takes `{option.Id}` for `{choice.Id}`", option.Place)
                {
                    Related = [.. excluders.Take(4).Select(exclusion => new RelatedPlace($"`{exclusion.Rule.Id}` excludes combinations that take it", exclusion.Rule.Place))],
                    Mend = "Take the option out, or correct the rules that exclude it.",
                };
            }
        }
    }

    /// <summary>The options of a choice that some buildable combination takes.</summary>
    internal static HashSet<string> Taken(Resolution resolution, Choice choice) =>
        [.. choice.Options.Select(option => option.Id).Where(option => resolution.BuildableParts.Intersects(resolution.Space.WhereChoice(choice.Id, [option])))];
}
