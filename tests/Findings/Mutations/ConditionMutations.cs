using System.Collections.Immutable;
using System.Globalization;
using Swapwright.Source;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Conditions that hold in more, in less or in other places than they should.</summary>
internal static class ConditionMutations
{
    private const string Conditions = "when|then/require|.*/(?:when|applies)|applies";

    // Terms that the shipped base's own rules use, so that each holds in a part of the space.
    private static readonly ImmutableArray<(string Fact, string Value)> s_terms =
    [
        ("donor.family", "marn-16"), ("donor.family", "orrel-18"), ("donor.origin", "manual"), ("chassis.clutch-actuation", "cable"),
        ("choice.alternator", "keep"), ("choice.ecu", "donor"), ("gearbox.kind", "manual"), ("donor.immobiliser", "false"),
    ];

    public static IEnumerable<MutationClass> Classes =>
    [
        MutationClass.Of("widen a condition: drop a term", Duty.WhereItBreaks, RuleMutations.SpaceKinds, Widened),
        MutationClass.Of("widen a condition: one more value", Duty.WhereItBreaks, RuleMutations.SpaceKinds, (shipped, _) => MoreValues(shipped)),
        MutationClass.Of("narrow a condition: add a term", Duty.WhereItBreaks, RuleMutations.SpaceKinds, Narrowed),
        MutationClass.Of("narrow a condition: one value less", Duty.WhereItBreaks, RuleMutations.SpaceKinds, (shipped, _) => FewerValues(shipped)),
        MutationClass.Of("move a bound in a condition", Duty.WhereItBreaks, RuleMutations.SpaceKinds, Moved),
        MutationClass.Of("let a position apply everywhere", Duty.WhereItBreaks, RuleMutations.SpaceKinds, (shipped, _) => Spot.In(shipped, "positions", "positions/*/applies").Select(spot => spot.Mistake("left out", spot.Removed(), Owner(spot)))),
        MutationClass.Of("split a variant's years by a condition", Duty.Always, "vocabulary", Split),
    ];

    private static IEnumerable<Mutation> Widened(ShippedBase shipped, Random random) =>
        from spot in Spot.In(shipped, "rule task choice positions", $"(?:{Conditions})/[^/]+")
        where spot.Parent is MappingNode
        select spot.Mistake("dropped", spot.Removed(), Names(shipped, spot));

    private static IEnumerable<Mutation> Narrowed(ShippedBase shipped, Random random)
    {
        foreach (var file in shipped.Of("rule"))
        {
            var (fact, value) = s_terms[random.Next(s_terms.Length)];
            if (file.Root?["when"] is MappingNode when)
            {
                if (!when.TryGet(fact, out _))
                {
                    yield return Mutation.Of($"when also {fact}: {value}", file.Path, TextEdit.Insert(file, when, $"{fact}: {value}"), Names(shipped, file));
                }
            }
            else
            {
                yield return Mutation.Of($"when {fact}: {value}", file.Path, TextEdit.Insert(file, file.Root!, $"when: {{{fact}: {value}}}"), Names(shipped, file));
            }
        }
    }

    private static IEnumerable<Mutation> FewerValues(ShippedBase shipped) =>
        from spot in Spot.In(shipped, "rule choice positions", $"(?:{Conditions})/.*")
        where spot.Parent is SequenceNode { Items.Length: > 1 } && spot.Node is ScalarNode
        select spot.Mistake($"without `{spot.Word}`", spot.Removed(), Names(shipped, spot));

    private static IEnumerable<Mutation> MoreValues(ShippedBase shipped) =>
        from spot in Spot.In(shipped, "rule choice positions", $"(?:{Conditions})/.*")
        where spot.Parent is MappingNode && spot.Node is ScalarNode { Kind: ScalarKind.Text }
        let name = spot.Entry!.Key.Text.Split('.')
        where name.Length == 2 && !spot.Trail.Contains("answer.", StringComparison.Ordinal)
        from other in Others(shipped, name[0], name[1], spot.Word!).Take(1)
        select spot.Mistake($"or `{other}`", spot.Replaced($"[{spot.Word}, {other}]"), Names(shipped, spot));

    private static IEnumerable<string> Others(ShippedBase shipped, string subject, string name, string but)
    {
        var kb = shipped.Proof.Base;
        var values = subject == "choice"
            ? kb.Choices.Find(name)?.Options.Select(option => option.Id)
            : kb.Vocabulary.Fact(subject, name)?.Options.Select(option => option.Id);
        return (values ?? []).Where(value => value != but);
    }

    private static IEnumerable<Mutation> Moved(ShippedBase shipped, Random random) =>
        from spot in Spot.In(shipped, "rule choice positions", $"(?:{Conditions})/.*/(?:from|to|above|below)")
        where !spot.Trail.Contains(".year", StringComparison.Ordinal) && spot.Node is ScalarNode { Kind: ScalarKind.Integer or ScalarKind.Number }
        let number = decimal.Parse(spot.Word!, CultureInfo.InvariantCulture)
        let moved = (number * (random.Next(2) == 0 ? 0.9m : 1.1m)).ToString(CultureInfo.InvariantCulture)
        select spot.Mistake($"{spot.Word} moved to {moved}", spot.Replaced(moved), Names(shipped, spot));

    private static IEnumerable<Mutation> Split(ShippedBase shipped, Random random)
    {
        var spans = shipped.Proof.Base.Donors.All.Select(donor => donor.Years).Where(years => years.To > years.From).ToList();
        foreach (var file in shipped.Of("rule").Where(file => file.Root?["when"] is MappingNode { Entries.IsEmpty: false } when && !when.TryGet("donor.year", out _)))
        {
            var cut = spans[random.Next(spans.Count)].To;
            yield return Mutation.Of(FormattableString.Invariant($"donors from {cut}"), file.Path, TextEdit.Insert(file, (MappingNode)file.Root!["when"]!, FormattableString.Invariant($"donor.year: {{from: {cut}}}")));
        }
    }

    /// <summary>The position or option whose condition it is.</summary>
    private static string Owner(Spot spot) => spot.Trail.Split('/')[1];

    private static string[] Names(ShippedBase shipped, Spot spot) => spot.File.Kind == "positions" ? [Owner(spot)] : Names(shipped, spot.File);

    /// <summary>The entity, and what it answers and overrides: a finding may stand there.</summary>
    internal static string[] Names(ShippedBase shipped, SourceFile file)
    {
        var rule = file.Kind == "rule" ? shipped.Proof.Base.Rules.Find(file.Id) : null;
        return rule is null ? [file.Id] : [file.Id, .. rule.Answers.Select(answer => answer.Position), .. rule.Overrides.Select(one => one.Id)];
    }
}
