using System.Collections.Immutable;

namespace Swapwright.Tests.Architecture;

/// <summary>The stages of the generator with what each may use. A stage uses the ones before it and nothing after it.</summary>
internal static class Stages
{
    public static readonly ImmutableSortedDictionary<string, ImmutableArray<string>> Uses = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal)
    {
        ["Diagnostics"] = [],
        ["Source"] = ["Diagnostics"],
        ["Knowledge"] = ["Diagnostics", "Source"],
        ["Space"] = [],
        ["Rules"] = ["Diagnostics", "Source", "Knowledge", "Space"],
        ["Worksheets"] = [],
        ["Fitting"] = ["Knowledge", "Worksheets"],
        ["Findings"] = ["Diagnostics", "Source", "Knowledge", "Space", "Rules", "Worksheets", "Fitting"],
        ["Sheets"] = ["Diagnostics", "Source", "Knowledge", "Space", "Rules", "Worksheets", "Fitting"],
        ["Impact"] = ["Diagnostics", "Source", "Knowledge", "Space", "Rules", "Worksheets", "Fitting", "Findings", "Sheets"],
        ["Reports"] = ["Diagnostics", "Source", "Knowledge", "Space", "Rules", "Worksheets", "Fitting", "Findings", "Sheets", "Impact"],
        ["Site"] = ["Diagnostics", "Source", "Knowledge", "Space", "Rules", "Worksheets", "Fitting", "Findings", "Sheets", "Reports"],
        ["Drafting"] = ["Diagnostics", "Source", "Knowledge", "Findings"],
        ["Preview"] = ["Diagnostics", "Source", "Knowledge", "Space", "Findings", "Reports", "Site"],
        ["Commands"] = ["Diagnostics", "Source", "Knowledge", "Space", "Rules", "Worksheets", "Fitting", "Findings", "Sheets", "Impact", "Reports", "Site", "Drafting", "Preview"],
    }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>Whether code of one stage may speak of another.</summary>
    public static bool May(string stage, string other) => stage == other || Uses[stage].Contains(other);
}
