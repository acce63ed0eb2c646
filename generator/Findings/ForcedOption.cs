using Swapwright.Diagnostics;

namespace Swapwright.Findings;

/// <summary>A choice that leaves nothing to choose: wherever it applies, one and the same option is left.</summary>
public static class ForcedOption
{
    public static readonly SpaceCheck Check = new(FindingKinds.ForcedOption, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        foreach (var choice in examination.Base.Choices.All)
        {
            if (DeadOption.Taken(examination.Resolution, choice).ToList() is [var only])
            {
                yield return examination.About(
                    FindingKinds.ForcedOption,
                    $"wherever `{choice.Id}` is asked, `{only}` is the one option left",
                    choice.Place,
                    examination.Resolution.Space.WhereChoice(choice.Id, [only])) with
                {
                    Mend = "Add the options that are missing, or settle by rules what is no choice.",
                };
            }
        }
    }
}
