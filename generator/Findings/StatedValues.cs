using System.Globalization;
using Swapwright.Diagnostics;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Space;

namespace Swapwright.Findings;

/// <summary>
/// A number that a rule states and that some buildable combination does not bear out: another one is computed, or there is
/// no such number. They are held over the whole space.
/// </summary>
public static class StatedValues
{
    public static readonly SpaceCheck Check = new(FindingKinds.StatedValue, Run);

    private static IEnumerable<Finding> Run(Examination examination)
    {
        var resolution = examination.Resolution;
        foreach (var stated in resolution.Values)
        {
            // A name that nothing computes is told where it is read.
            if (ComputedValues.Find(stated.Value.Name) is null || !resolution.BuildableParts.Intersects(stated.Region) || Computed(examination, stated) is not { } computed)
            {
                continue;
            }

            var wrong = computed.Where(one => one.Number is not { } number || Math.Abs(number - stated.Value.Value) > stated.Value.Tolerance).ToList();
            if (wrong.Count > 0)
            {
                yield return Differs(examination, stated, wrong);
            }
        }
    }

    /// <summary>The numbers that hold in the region of a stated value, with where each does; null for a name that is not computed here, or in too many cases.</summary>
    internal static List<(decimal? Number, Region Region)>? Computed(Examination examination, StandingValue stated)
    {
        var name = stated.Value.Name;
        var resolution = examination.Resolution;
        if (FittedNumbers.BeltName(name) is var (loop, what))
        {
            var found = new List<(decimal? Number, Region Region)>();
            var left = stated.Region;
            foreach (var fitted in examination.Loops.All.Where(one => one.Drive.Id == loop && one.Belt is not null))
            {
                var here = resolution.Store.And(stated.Region, fitted.Region);
                left = resolution.Store.Minus(left, here);
                found.Add((FittedNumbers.Belt(fitted.Belt!, what), here));
            }

            found.Add((null, left));
            return [.. found.Where(one => resolution.BuildableParts.Intersects(one.Region))];
        }

        if (FittedNumbers.IsWiring(name))
        {
            return examination.Wirings.In(stated.Region) is { } wirings ? [.. wirings.Select(wiring => (FittedNumbers.Wiring(wiring.Sheet, name), wiring.Region))] : null;
        }

        return examination.Ledgers.In(stated.Region, name) is { } ledgers ? [.. ledgers.Select(one => (FittedNumbers.Ledger(one.Ledgers, name), one.Region))] : null;
    }

    private static Finding Differs(Examination examination, StandingValue stated, List<(decimal? Number, Region Region)> wrong)
    {
        var unit = ComputedValues.UnitOf(stated.Value.Name);
        var numbers = wrong.Select(one => one.Number).OfType<decimal>().Distinct().Order().ToList();
        var computed = numbers.Count switch
        {
            0 => "no such number is there",
            1 => $"{Number(numbers[0])} is computed",
            _ => $"{Number(numbers[0])} to {Number(numbers[^1])} are computed",
        };
        var also = numbers.Count > 0 && wrong.Any(one => one.Number is null) ? ", and elsewhere there is no such number" : "";
        return examination.About(
            FindingKinds.StatedValue,
            $"`{stated.Rule.Id}` states {Number(stated.Value.Value)} for `{stated.Value.Name}`, but {computed}{also}",
            stated.Value.Place,
            examination.Resolution.Store.OrAll(wrong.Select(one => one.Region))) with
        {
            Mend = numbers.Count == 0
                ? "Narrow the `when` to combinations that have this number, or take the value out."
                : "Measure again: correct the number, the pulleys and plugs that it is computed from, or the `when`; widen the tolerance only for a measurement that is no better.",
        };

        string Number(decimal value) => new Quantity(decimal.Round(value, 1), unit).ToString();
    }
}
