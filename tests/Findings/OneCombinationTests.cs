using System.Numerics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

/// <summary>The regions of the generator against a walk through every combination.</summary>
public sealed class OneCombinationTests
{
    public static TheoryData<string> Good => [.. KnowledgeBaseCase.Good];

    public static TheoryData<string> Broken => [.. KnowledgeBaseCase.Broken];

    [Theory]
    [MemberData(nameof(Good))]
    public void Resolve_GoodBase_CountsWhatAWalkCounts(string name) => HoldAgainstAWalk(Proof.Of(KnowledgeBaseCase.GoodFolder(name)));

    [Theory]
    [MemberData(nameof(Broken))]
    public void Resolve_BrokenBase_CountsWhatAWalkCounts(string name)
    {
        var proof = KnowledgeBaseCase.Read(name).Prove();

        // A loop has no meaning that a walk could find.
        if (proof.Resolution is { Findings.IsEmpty: true })
        {
            HoldAgainstAWalk(proof);
        }
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void Walk_GoodBase_GivesEveryPositionOneAnswer(string name)
    {
        var kb = Proof.Of(KnowledgeBaseCase.GoodFolder(name)).Base;
        foreach (var combination in OneCombination.Every(kb).Where(one => one.IsBuildable))
        {
            Assert.All(kb.Positions.All, position => Assert.Equal(combination.Applies(position) ? 1 : 0, combination.AnswersAt(position.Id).Count));
        }
    }

    private static void HoldAgainstAWalk(Proof proof)
    {
        // Of all ways to take options or none most make no sense where there are many choices.
        var every = OneCombination.Every(proof.Base).Where(one => one.IsSensible).ToList();
        var resolution = proof.Resolution!;

        Assert.Equal(every.Count, resolution.Store.Count(resolution.Domain));
        Assert.Equal(Count(every, one => one.IsBuildable), resolution.Store.Count(resolution.Buildable));
        foreach (var rule in proof.Base.Rules.All)
        {
            Assert.Equal(Count(every, one => one.Holds(rule.When)), resolution.Store.Count(resolution.Store.And(resolution.When(rule), resolution.Domain)));
        }

        foreach (var standing in proof.Base.Positions.Ids.SelectMany(position => resolution.At(position)))
        {
            Assert.Equal(
                Count(every, one => one.AnswersAt(standing.Answer.Position).Contains(standing.Answer)),
                resolution.Store.Count(resolution.Store.And(standing.Region, resolution.Domain)));
        }
    }

    private static BigInteger Count(List<OneCombination> every, Func<OneCombination, bool> holds) => every.Count(holds);
}
