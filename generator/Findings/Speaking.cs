using Swapwright.Diagnostics;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>Findings that speak of a part of the space: with a count, the smallest witness and a description.</summary>
internal static class Speaking
{
    /// <param name="region">Its buildable combinations are what the finding speaks of; there has to be one.</param>
    public static Finding About(this Examination examination, FindingKind kind, string message, Place place, Region region)
    {
        var resolution = examination.Resolution;
        return new Finding(kind, message, place)
        {
            Witness = resolution.Space.Witness(resolution.BuildableParts.Witness(region)),
            Touches = resolution.BuildableParts.Count(region),
            Region = examination.Words.Describe(region),
        };
    }
}
