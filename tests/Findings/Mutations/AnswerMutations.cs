using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Answers and stated numbers that are others, and overrides that are missing, idle or in a loop.</summary>
internal static class AnswerMutations
{
    private const string Kinds = RuleMutations.SpaceKinds + " part-use schema";

    private static readonly ImmutableArray<string> s_sources = ["chassis", "donor", "new", "made", "none"];
    private static readonly ImmutableArray<string> s_treatments = ["as-is", "refresh", "modify", "move"];

    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("change an answer's source", Duty.WhereItBreaks, Kinds, (shipped, random) => Other(shipped, random, "source", s_sources)),
        MutationClass.Of("change an answer's treatment", Duty.WhereItBreaks, Kinds, (shipped, random) => Other(shipped, random, "treatment", s_treatments)),
        MutationClass.Of("name another part", Duty.WhereItBreaks, Kinds, (shipped, random) => Other(shipped, random, "part", [.. shipped.Proof.Base.Parts.Ids])),
        MutationClass.Of("state another number", Duty.Always, "stated-value", (shipped, random) => Stated(shipped, random)),
        MutationClass.Of("delete an override", Duty.WhereItBreaks, Kinds, (shipped, _) => Overrides(shipped).Select(spot => spot.Mistake($"no longer over `{spot.Word}`", spot.Removed(), spot.Word!))),
        MutationClass.Of("override the wrong rule", Duty.Always, "idle-override contradiction override-cycle", WrongOverride),
        MutationClass.Of("override in a loop", Duty.Always, "override-cycle", Looped),
    ];

    private static IEnumerable<Mutation> Other(ShippedBase shipped, Random random, string what, ImmutableArray<string> values) =>
        from spot in Spot.In(shipped, "rule", $"then/answers/*/{what}")
        let others = values.Remove(spot.Word!)
        let other = others[random.Next(others.Length)]
        select spot.Mistake($"`{spot.Word}` became `{other}`", spot.Replaced(other), ConditionMutations.Names(shipped, spot.File));

    // By more than what a stated number may be off.
    private static IEnumerable<Mutation> Stated(ShippedBase shipped, Random random) =>
        from spot in Spot.In(shipped, "rule", "then/values/*/value")
        let number = decimal.Parse(spot.Word!, CultureInfo.InvariantCulture)
        let other = (number > 100 ? decimal.Round(number * (random.Next(2) == 0 ? 0.9m : 1.1m)) : number + Math.Max(1, decimal.Round(number / 10))).ToString(CultureInfo.InvariantCulture)
        select spot.Mistake($"{spot.Word} became {other}", spot.Replaced(other));

    private static IEnumerable<Spot> Overrides(ShippedBase shipped) => Spot.In(shipped, "rule", "overrides").Where(spot => spot.Parent is SequenceNode);

    private static IEnumerable<Mutation> WrongOverride(ShippedBase shipped, Random random)
    {
        var rules = shipped.Proof.Base.Rules;
        return
            from spot in Overrides(shipped)
            let rule = rules[spot.File.Id]
            let strangers = rules.All.Where(other => !other.Answers.IsEmpty && other.Answers.All(answer => rule.AnswerAt(answer.Position) is null)).ToList()
            let stranger = strangers[random.Next(strangers.Count)].Id
            select spot.Mistake($"over `{stranger}` in place of `{spot.Word}`", spot.Replaced(stranger), stranger);
    }

    private static IEnumerable<Mutation> Looped(ShippedBase shipped, Random random) =>
        from spot in Overrides(shipped)
        let other = shipped.Rule(spot.Word!)
        let text = other.Root!["overrides"] is SequenceNode { Items: [var first, ..] } ? TextEdit.Replace(other, first.Place, $"{spot.File.Id}, {TextEdit.Text(other, first.Place)}") : TextEdit.Insert(other, other.Root, $"overrides: [{spot.File.Id}]")
        select Mutation.Of($"over `{spot.File.Id}`, which overrides it", other.Path, text, spot.File.Id);
}
