using Swapwright.Knowledge;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Tasks out of order, and choices that offer or advise what cannot be had.</summary>
internal static class WorkMutations
{
    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("put tasks into a loop", Duty.Always, "task-cycle", (shipped, _) => Looped(shipped)),
        MutationClass.Of("let a task wait for one of a later phase", Duty.Always, "task-order task-cycle", (shipped, _) => After(shipped).Where(spot => shipped.Proof.Base.Tasks[spot.File.Id].Phase != "paper").Select(spot => spot.Mistake("after the papers", spot.Replaced("pass-inspection")))),
        MutationClass.Of("leave out what a task waits for", Duty.WhereItBreaks, "task-order", (shipped, _) => After(shipped).Select(spot => spot.Mistake($"no longer after `{spot.Word}`", spot.Removed()))),
        MutationClass.Of("leave a task in no guide", Duty.Always, "task-order", (shipped, _) => Forgotten(shipped)),
        MutationClass.Of("let recommendations overlap", Duty.Always, "default-clash", (shipped, _) => Spot.In(shipped, "choice", "recommend/when").Where(spot => shipped.Proof.Base.Choices[spot.File.Id].Recommendations.Select(one => one.Option).Distinct().Count() > 1).Select(spot => spot.Mistake("recommended everywhere", spot.Replaced("{}")))),
        MutationClass.Of("recommend another option", Duty.WhereItBreaks, RuleMutations.SpaceKinds, (shipped, random) => OtherOption(shipped, random)),
        MutationClass.Of("add an option that nothing allows", Duty.Always, "dead-option", (shipped, _) => shipped.Of("choice").Select(Dead)),
        MutationClass.Of("exclude an option everywhere", Duty.Always, "dead-option forced-option no-build", (shipped, _) => shipped.Proof.Base.Choices.All.SelectMany(choice => choice.Options.Select(option => Excluding(choice.Id, option.Id)))),
        MutationClass.Of("take an option out", Duty.Always, "vocabulary reference schema", (shipped, _) => Spot.In(shipped, "choice", "options/*").Select(spot => spot.Mistake("taken out", spot.Removed(), spot.File.Id))),
    ];

    private static IEnumerable<Spot> After(ShippedBase shipped) => Spot.In(shipped, "task", "after").Where(spot => spot.Parent is SequenceNode);

    private static IEnumerable<Mutation> Looped(ShippedBase shipped) =>
        from spot in After(shipped)
        let earlier = shipped.Files.Single(file => file.Kind == "task" && file.Id == spot.Word)
        let text = earlier.Root!["after"] is SequenceNode { Items: [var first, ..] } ? TextEdit.Replace(earlier, first.Place, $"{spot.File.Id}, {TextEdit.Text(earlier, first.Place)}") : TextEdit.Insert(earlier, earlier.Root, $"after: [{spot.File.Id}]")
        select Mutation.Of($"after `{spot.File.Id}`", earlier.Path, text, spot.File.Id);

    private static IEnumerable<Mutation> Forgotten(ShippedBase shipped)
    {
        var kb = shipped.Proof.Base;
        var naming = kb.Rules.All.SelectMany(rule => rule.Tasks).GroupBy(task => task, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.Count(), StringComparer.Ordinal);
        return Spot.In(shipped, "task", "when").Where(spot => !naming.ContainsKey(spot.File.Id)).Select(spot => spot.Mistake("left out", spot.Removed()))
            .Concat(Spot.In(shipped, "rule", "then/tasks").Where(spot => spot.Parent is SequenceNode && kb.Tasks[spot.Word!].When is null && naming[spot.Word!] == 1)
                .Select(spot => spot.Mistake($"no longer asks for `{spot.Word}`", spot.Removed(), spot.Word!)));
    }

    private static IEnumerable<Mutation> OtherOption(ShippedBase shipped, Random random) =>
        from spot in Spot.In(shipped, "choice", "recommend/option")
        let others = shipped.Proof.Base.Choices[spot.File.Id].Options.Where(option => option.Id != spot.Word).ToList()
        let other = others[random.Next(others.Count)].Id
        select spot.Mistake($"`{other}` in place of `{spot.Word}`", spot.Replaced(other), spot.File.Id);

    private static Mutation Dead(SourceFile choice) => new(
        $"{choice.Path}: an option that a rule excludes",
        [new Change(choice.Path, TextEdit.Insert(choice, (MappingNode)choice.Root!["options"]!, "unheard-of: {title: Something unheard of, about: Nobody has it.}")), Exclusion(choice.Id, "unheard-of")],
        [choice.Id]);

    private static Mutation Excluding(string choice, string option) => new($"{choice}: {option} excluded", [Exclusion(choice, option)], [choice]);

    private static Change Exclusion(string choice, string option) => new(
        $"rules/legal-and-paper/no-{option}-{choice}.yaml",
        $"title: Not this one\nwhen: {{choice.{choice}: {option}}}\nthen: {{exclude: true}}\nbecause: It cannot be had.\nsources: [workshop-practice]\nstanding: built\nchecked: 2025-06-10\n");
}
