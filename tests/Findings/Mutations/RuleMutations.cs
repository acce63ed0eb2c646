using System.Collections.Immutable;
using Swapwright.Knowledge;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Rules that go, rules that are written twice.</summary>
internal static class RuleMutations
{
    private static readonly ImmutableArray<string> s_sources = ["chassis", "donor", "new", "made", "other"];

    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("delete a general rule", Duty.Always, "lost-id", (shipped, _) => Deleted(shipped, rule => !rule.Answers.IsEmpty && rule.Overrides.IsEmpty)),
        MutationClass.Of("delete an exception", Duty.Always, "lost-id", (shipped, _) => Deleted(shipped, rule => !rule.Overrides.IsEmpty)),
        MutationClass.Of("delete an exclusion", Duty.Always, "lost-id", (shipped, _) => Deleted(shipped, rule => rule.Excludes || rule.Requires is not null)),
        MutationClass.Of("delete a rule that only warns, advises or states", Duty.Always, "lost-id", (shipped, _) => Deleted(shipped, rule => rule.Answers.IsEmpty && !rule.Excludes && rule.Requires is null)),
        MutationClass.Of("retire a rule by the book", Duty.WhereItBreaks, SpaceKinds, Retired),
        MutationClass.Of("rename a rule", Duty.Always, "lost-id", Renamed),
        MutationClass.Of("write a rule again with another answer", Duty.Always, "contradiction", Disagreeing),
        MutationClass.Of("write a rule again with the same answer", Duty.Always, "redundant-rule contradiction", (shipped, _) => Twins(shipped).Select(pair => Twin(pair.Rule, pair.File, pair.File.Text))),
    ];

    /// <summary>What may rightly be found where a region has changed.</summary>
    public const string SpaceKinds =
        "contradiction gap dead-rule shadowed-rule redundant-rule idle-override override-cycle answer-cycle no-build dead-option forced-option default-clash stated-value belt-length belt-wrap belt-plane belt-face task-order vocabulary reference unit";

    private static IEnumerable<Mutation> Deleted(ShippedBase shipped, Func<Rule, bool> which) =>
        from rule in shipped.Proof.Base.Rules.All
        where which(rule)
        select new Mutation($"{rule.Place.File}: deleted", [new Change(rule.Place.File, null)], [rule.Id]);

    private static IEnumerable<Mutation> Retired(ShippedBase shipped, Random random)
    {
        var kb = shipped.Proof.Base;
        var register = shipped.File("register.yaml");
        var named = kb.Rules.All.SelectMany(rule => rule.Overrides).Select(one => one.Id).ToHashSet(StringComparer.Ordinal);
        return
            from rule in kb.Rules.All
            where !named.Contains(rule.Id)
            let list = register.Text.Contains("\nretired:\n", StringComparison.Ordinal) ? register.Text.TrimEnd() : $"{register.Text.TrimEnd()}\nretired:"
            let retired = $"{list}\n  - {{kind: rule, id: {rule.Id}, because: It turned out to be wrong.}}\n"
            select new Mutation($"{rule.Place.File}: retired", [new Change(rule.Place.File, null), new Change(register.Path, retired)], [rule.Id, .. rule.Answers.Select(answer => answer.Position)]);
    }

    private static IEnumerable<Mutation> Renamed(ShippedBase shipped, Random random) =>
        from rule in shipped.Proof.Base.Rules.All
        let file = shipped.File(rule.Place.File)
        select new Mutation($"{file.Path}: renamed", [new Change(file.Path, null), new Change(file.Path.Replace(".yaml", "-new.yaml", StringComparison.Ordinal), file.Text)], [rule.Id]);

    private static IEnumerable<Mutation> Disagreeing(ShippedBase shipped, Random random) =>
        from pair in Twins(shipped)
        where !pair.Rule.Answers.IsEmpty
        let spot = Spot.All(pair.File).First(spot => spot.Trail.StartsWith("then/answers/", StringComparison.Ordinal) && spot.Entry?.Key.Text == "source")
        let others = s_sources.Remove(spot.Word!)
        select Twin(pair.Rule, pair.File, spot.Replaced(others[random.Next(others.Length)]));

    /// <summary>Rules of which a second one would stand beside the first: no other overrides the whole of them by name.</summary>
    private static IEnumerable<(Rule Rule, SourceFile File)> Twins(ShippedBase shipped) =>
        shipped.Proof.Base.Rules.All.Where(rule => rule.Excludes || !rule.Answers.IsEmpty).Select(rule => (rule, shipped.File(rule.Place.File)));

    private static Mutation Twin(Rule rule, SourceFile file, string text) =>
        new($"{file.Path}: again", [new Change(file.Path.Replace(".yaml", "-again.yaml", StringComparison.Ordinal), text)], [rule.Id]);
}
