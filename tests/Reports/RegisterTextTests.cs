using Swapwright.Reports;

namespace Swapwright.Tests.Reports;

public sealed class RegisterTextTests
{
    [Fact]
    public void With_NoRegisterYet_ListsEveryIdOnceInOrder()
    {
        var (text, added) = RegisterText.With(null, SmallBase.Proof.Base);

        Assert.Equal(SmallBase.Proof.Base.Rules.Ids, Ids(text, "rule"));
        Assert.Equal(SmallBase.Proof.Base.Chassis.Ids, Ids(text, "chassis"));
        Assert.Contains($"rule {SmallBase.Proof.Base.Rules.Ids.First()}", added);
        Assert.EndsWith("\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void With_HandWrittenRest_KeepsEveryLineOfIt()
    {
        const string before = "# ours\npublished:\n  rule:\n    - aaa\n    - zzz # seen\n\n# why\nretired: []\n";

        var (text, _) = RegisterText.With(before, SmallBase.Proof.Base);

        Assert.All(before.Split('\n'), line => Assert.Contains(line, text, StringComparison.Ordinal));
        Assert.True(text.IndexOf("  chassis:", StringComparison.Ordinal) < text.IndexOf("retired:", StringComparison.Ordinal), "kinds are added before what is retired");
    }

    private static IEnumerable<string> Ids(string text, string kind) => text.Split('\n').SkipWhile(line => line != $"  {kind}:").Skip(1)
        .TakeWhile(line => line.StartsWith("    - ", StringComparison.Ordinal)).Select(line => line[6..]);
}
