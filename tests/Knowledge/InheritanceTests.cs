using Swapwright.Findings;
using Swapwright.Knowledge;
using Swapwright.Tests.Findings;
using Swapwright.Tests.Rules;

namespace Swapwright.Tests.Knowledge;

/// <summary>What the base <c>likes</c> takes over, says anew and removes.</summary>
public sealed class InheritanceTests
{
    private static readonly KnowledgeBase s_likes = Proof.Of(KnowledgeBaseCase.GoodFolder("likes")).Base;

    [Fact]
    public void Like_OneStep_MergesMappingsKeyByKey()
    {
        var export = s_likes.Chassis["quillet-export"];

        Assert.Equal(("Quillet, export", "Orrin", "quillet", "export", new YearSpan(1986, 1987)), (export.Title, export.Maker, export.Family, export.Trim, export.Years));
        Assert.Equal(("yes", 70m), (export.Fact("catalyst")?.Text, export.Fact("radiator-power")?.Number));
        Assert.Equal("Narrow radiator", export.AccessoryAt("radiator")?.Title);
    }

    [Fact]
    public void Like_Null_RemovesWhatWasTaken()
    {
        Assert.Equal("yes", s_likes.Chassis["quillet-base"].Fact("cruise-switch")?.Text);
        Assert.Null(s_likes.Chassis["quillet-export"].Fact("cruise-switch"));
        Assert.Null(s_likes.Donors["marn-16-late"].Fact("knock-sensor"));
    }

    [Fact]
    public void Like_TwoSteps_TakesWhatTheMiddleOneLeft()
    {
        var tropic = s_likes.Chassis["quillet-tropic"];

        Assert.Equal(("Orrin", "quillet", ""), (tropic.Maker, tropic.Family, tropic.Trim));
        Assert.Equal(("yes", 95m), (tropic.Fact("catalyst")?.Text, tropic.Fact("radiator-power")?.Number));
        Assert.Null(tropic.Fact("cruise-switch"));
        Assert.Empty(tropic.Accessories);
    }

    [Fact]
    public void Like_Gearbox_KeepsTheOrderOfGears()
    {
        var five = s_likes.Gearboxes["five"];

        Assert.Equal(["first", "second", "third", "fourth", "reverse", "final", "fifth"], five.Ratios.Select(ratio => ratio.Key));
        Assert.Equal([3.55m, 1.95m, 1.28m, 0.97m, 3.4m, 4.06m, 0.78m], five.Ratios.Select(ratio => ratio.Value));
        Assert.Equal((32m, "80W-90", 2.2m), (five.MassKg, five.OilGrade, five.OilLitres));
    }

    [Fact]
    public void Like_Part_MergesARange()
    {
        var shaft = s_likes.Parts["long-shaft"];

        Assert.Equal((new Range3(40, 55, 95), "drive", "breaker"), (shaft.Price, shaft.Category, shaft.From));
        Assert.Equal(6.80388555m, shaft.MassKg);
    }

    [Fact]
    public void Like_Loop_IsToldOnceAndBindingGoesOn()
    {
        var proof = KnowledgeBaseCase.Read("reference-like-loop").Prove();

        Assert.Contains("loop", Assert.Single(proof.Findings).Message, StringComparison.Ordinal);
        Assert.Equal(3, proof.Base.Chassis.Count);
    }

    /// <summary>Mistyped, it would leave in place what was to go.</summary>
    [Fact]
    public void Like_TakesOutWhatIsNotThere_IsTold()
    {
        var files = TinyBase.With(("engines/large-late.yaml", "title: Late\nlike: large\nyears: {from: 1996, to: 1996}\nfacts: {powwer: null}\n"));

        var finding = Assert.Single(Proof.Of(files.Tree()).Findings, one => one.Id == "reference");

        Assert.Equal(("no inherited entry `powwer`; did you mean `power`?", "engines/large-late.yaml", 4), (finding.Message, finding.Place.File, finding.Place.Line));
    }
}
