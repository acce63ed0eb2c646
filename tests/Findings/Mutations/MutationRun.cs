using System.Collections.Immutable;

namespace Swapwright.Tests.Findings.Mutations;

/// <summary>Draws mutations of every class by a seed and judges them.</summary>
internal static class MutationRun
{
    public static readonly ImmutableArray<MutationClass> Classes =
    [
        .. RuleMutations.Classes, .. ConditionMutations.Classes, .. AnswerMutations.Classes, .. ReferenceMutations.Classes, .. FormMutations.Classes, .. PlugMutations.Classes,
        .. BeltMutations.Classes, .. WorkMutations.Classes, .. WordMutations.Classes, .. EntityMutations.Classes, .. HarmlessMutations.Classes,
    ];

    /// <param name="each">How many of a class.</param>
    /// <param name="open">How many of a class of which some break something and some do not.</param>
    /// <param name="step">From every how-manieth class; what is drawn of one class depends on no other.</param>
    public static ImmutableArray<(MutationClass Class, Mutation Mutation)> Draw(ShippedBase shipped, int seed, int each, int open, int step = 1) =>
    [
        .. Classes.Index().Where(one => one.Index % step == 0).SelectMany(one =>
        {
            var (at, kind) = one;
            var random = new Random((seed * 1000) + at);
            var all = kind.Candidates(shipped, random).DistinctBy(mutation => mutation.What).ToArray();
            random.Shuffle(all);
            return all.Take(kind.Duty == Duty.WhereItBreaks ? open : each).Select(mutation => (kind, mutation));
        }),
    ];

    /// <summary>In the order in which they were drawn, whatever the threads do.</summary>
    public static ImmutableArray<Verdict> Judge(ShippedBase shipped, ImmutableArray<(MutationClass Class, Mutation Mutation)> drawn) =>
        [.. drawn.AsParallel().AsOrdered().WithDegreeOfParallelism(2).Select(one => Verdict.On(shipped, one.Class, one.Mutation))];
}
