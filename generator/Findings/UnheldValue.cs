using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Fitting;

namespace Swapwright.Findings;

/// <summary>A stated number whose combinations differ in so many ways that it is not computed for all of them.</summary>
public static class UnheldValue
{
    public static readonly SpaceCheck Check = new(FindingKinds.UnheldValue, Run);

    private static IEnumerable<Finding> Run(Examination examination) => examination.Resolution.Values
        .Where(stated => FittedNumbers.BeltName(stated.Value.Name) is null && examination.Resolution.BuildableParts.Intersects(stated.Region)
            && (FittedNumbers.IsWiring(stated.Value.Name) ? examination.Wirings.In(stated.Region) is null : examination.Ledgers.In(stated.Region, stated.Value.Name) is null))
        .Select(stated => new Finding(
            FindingKinds.UnheldValue,
            string.Create(CultureInfo.InvariantCulture, $"`{stated.Value.Name}` of `{stated.Rule.Id}` is not held against the computed number: its combinations differ in more than {FittedWirings.MostCases} ways"),
            stated.Value.Place)
        {
            Mend = "Narrow the `when` to the combinations that were measured.",
        });
}
