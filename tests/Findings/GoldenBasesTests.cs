using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

public sealed class GoldenBasesTests
{
    public static TheoryData<string> Good => [.. KnowledgeBaseCase.Good];

    public static TheoryData<string> Broken => [.. KnowledgeBaseCase.Broken];

    [Theory]
    [MemberData(nameof(Good))]
    public void Prove_GoodBase_FindsNothing(string name)
    {
        var proof = Proof.Of(KnowledgeBaseCase.GoodFolder(name));

        Assert.Empty(proof.Findings);
        Assert.NotNull(proof.Resolution);
    }

    [Theory]
    [MemberData(nameof(Broken))]
    public void Prove_BrokenBase_FindsExactlyWhatItsCaseSays(string name)
    {
        var expected = KnowledgeBaseCase.Read(name);

        var found = expected.Prove().Findings;

        Assert.Equal(string.Join('\n', expected.Expected), string.Join('\n', found.Select(KnowledgeBaseCase.Line)));
        Assert.NotEmpty(found);
    }

    /// <summary>The folder of a case begins with the finding that it is about.</summary>
    [Theory]
    [MemberData(nameof(Broken))]
    public void Name_BrokenBase_BeginsWithAFindingThatItGives(string name) =>
        Assert.Contains(KnowledgeBaseCase.Read(name).Expected, line => name.StartsWith(line[..line.IndexOf(' ', StringComparison.Ordinal)] + "-", StringComparison.Ordinal));
}
