using System.Globalization;
using System.Text.RegularExpressions;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Pulleys, adjusters and belts that are not as measured.</summary>
internal static class BeltMutations
{
    private const string Kinds = "belt-length belt-wrap belt-plane belt-face stated-value gap schema reference";
    private const string Stations = "belt-drives/*/stations";

    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("shift a pulley out of plane", Duty.Always, "belt-plane", (shipped, _) => Numbers(shipped, Stations + "/plane", plane => plane + 14)),
        MutationClass.Of("shift a pulley", Duty.WhereItBreaks, Kinds, (shipped, random) => Numbers(shipped, Stations + "/(?:x|y)", at => at + random.Next(20, 90))),
        MutationClass.Of("slip a digit in a pulley's diameter", Duty.WhereItBreaks, Kinds, (shipped, _) => Numbers(shipped, Stations + "/diameter|accessories/*/pulley/diameter|pulley/diameter", diameter => diameter * 2)),
        MutationClass.Of("lead the belt round the other side", Duty.WhereItBreaks, Kinds, (shipped, _) => Spot.In(shipped, "engine", Stations + "/side").Select(spot => spot.Mistake("other side", spot.Replaced(spot.Word == "back" ? "grooved" : "back")))),
        MutationClass.Of("leave a pulley out", Duty.WhereItBreaks, Kinds, (shipped, _) => Spot.In(shipped, "engine", Stations).Where(spot => spot.Parent is SequenceNode && spot.Node is MappingNode).Select(spot => spot.Mistake("left out", spot.Removed()))),
        MutationClass.Of("take the adjuster's travel away", Duty.WhereItBreaks, Kinds, (shipped, _) => Spot.In(shipped, "engine", "belt-drives/*/adjuster/to").Select(spot => spot.Mistake("no travel", spot.Replaced(((ScalarNode)((MappingNode)spot.Parent)["from"]!).Text)))),
        MutationClass.Of("take lengths out of the stock", Duty.WhereItBreaks, Kinds, (shipped, _) => Enumerable.Range(7, 15).Select(hundred => WithoutLengths(shipped.File("parts/belt-pk.yaml"), hundred))),
        MutationClass.Of("take a rib count out of the stock", Duty.WhereItBreaks, Kinds, (shipped, _) => Spot.In(shipped, "part", "belt/ribs").Where(spot => spot.Parent is SequenceNode).Select(spot => spot.Mistake($"without {spot.Word} ribs", spot.Removed(), s_loops))),
    ];

    private static IEnumerable<Mutation> Numbers(ShippedBase shipped, string pattern, Func<decimal, decimal> change) =>
        from spot in Spot.In(shipped, "engine chassis part", pattern)
        let other = change(decimal.Parse(spot.Word!, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture)
        select spot.Mistake($"{spot.Word} became {other}", spot.Replaced(other));

    private static Mutation WithoutLengths(SourceFile stock, int hundred) =>
        Mutation.Of(FormattableString.Invariant($"no belts of {hundred}00 to {hundred}95 mm"), stock.Path, Regex.Replace(stock.Text, FormattableString.Invariant($@"\b{hundred}\d\d, "), "", RegexOptions.NonBacktracking), s_loops);

    // The belts of the shipped engines: what is missing from the stock is told at the engine that wants it.
    private static readonly string[] s_loops = ["accessory", "alternator", "steering", "compressor"];
}
