using Swapwright.Diagnostics;
using Swapwright.Rules;

namespace Swapwright.Tests.Rules;

/// <summary>Loops among overrides and among answers: told once, and nothing hangs.</summary>
public class RuleLoopsTests
{
    [Fact]
    public void Resolve_OverridesInALoop_TellsTheLoopOnce()
    {
        var resolution = Resolver.Resolve(TinyBase.With(
            ("rules/all/one.yaml", Rule("a", overrides: "two")),
            ("rules/all/two.yaml", Rule("a", overrides: "three")),
            ("rules/all/three.yaml", Rule("a", overrides: "one")),
            ("rules/all/beside.yaml", Rule("a", overrides: "one"))).Bind());
        var finding = Assert.Single(resolution.Findings);
        Assert.Equal(FindingKinds.OverrideCycle, finding.Kind);
        Assert.Contains("`one` → `two` → `three` → `one`", finding.Message, StringComparison.Ordinal);
        Assert.Equal("rules/all/three.yaml", finding.Place.File);
        Assert.Equal(["rules/all/one.yaml", "rules/all/two.yaml"], finding.Related.Select(related => related.Place.File));
    }

    [Fact]
    public void Resolve_RuleOverridesItself_TellsIt() => Assert.Equal(
        "overrides go in a loop: `one` → `one`",
        Assert.Single(Resolver.Resolve(TinyBase.With(("rules/all/one.yaml", Rule("a", overrides: "one"))).Bind()).Findings).Message);

    [Fact]
    public void Resolve_AnswersInALoop_TellsTheLoopOnce()
    {
        var resolution = Resolver.Resolve(TinyBase.With(
            ("rules/all/one.yaml", Rule("a", asks: "b")),
            ("rules/all/two.yaml", Rule("b", asks: "c")),
            ("rules/all/three.yaml", Rule("c", asks: "a"))).Bind());
        var finding = Assert.Single(resolution.Findings);
        Assert.Equal(FindingKinds.AnswerCycle, finding.Kind);
        Assert.Contains("`a` → `b` → `c` → `a`", finding.Message, StringComparison.Ordinal);
        Assert.Equal("rules/all/one.yaml", finding.Place.File);
        Assert.Equal(["rules/all/two.yaml", "rules/all/three.yaml"], finding.Related.Select(related => related.Place.File));
    }

    [Fact]
    public void Resolve_PositionAppliesByItsOwnAnswer_TellsIt()
    {
        var files = TinyBase.With(("rules/all/one.yaml", Rule("a")));
        files["positions.yaml"] = "systems: {all: {title: All}}\npositions: {a: {system: all, title: A, applies: {answer.a: {source: donor}}}}\n";
        Assert.Equal(FindingKinds.AnswerCycle, Assert.Single(Resolver.Resolve(files.Bind()).Findings).Kind);
    }

    [Fact]
    public void Resolve_TwoLoops_TellsBoth() => Assert.Equal(2, Resolver.Resolve(TinyBase.With(
        ("rules/all/one.yaml", Rule("a", overrides: "two")),
        ("rules/all/two.yaml", Rule("a", overrides: "one")),
        ("rules/all/three.yaml", Rule("b", overrides: "four")),
        ("rules/all/four.yaml", Rule("b", overrides: "three"))).Bind()).Findings.Length);

    [Fact]
    public void Resolve_LongChainOfAnswers_IsNoLoop() => Assert.Empty(Resolver.Resolve(TinyBase.With(
        ("rules/all/one.yaml", Rule("a", asks: "b")),
        ("rules/all/two.yaml", Rule("b", asks: "c")),
        ("rules/all/three.yaml", Rule("c"))).Bind()).Findings);

    private static string Rule(string position, string? asks = null, string? overrides = null) =>
        $"title: Rule\n{(asks is null ? "" : $"when: {{answer.{asks}: {{source: donor}}}}\n")}then: {{answers: {{{position}: {{source: donor, treatment: as-is}}}}}}\noverrides: [{overrides}]\n";
}
