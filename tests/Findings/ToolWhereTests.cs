using System.Collections.Immutable;
using Swapwright.Diagnostics;
using Swapwright.Impact;
using Swapwright.Knowledge;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Tests.Findings;

/// <summary>Tools that a task asks for in part of the space.</summary>
public sealed class ToolWhereTests
{
    private const string Task = "tasks/fit-belt.yaml";
    private const string Plain = "tools: [Spanner 13]\n";
    private const string Own = "tools: [Spanner 13, {title: Belt gauge, when: {choice.alternator: keep}}]\n";

    [Fact]
    public void Sheet_ConditionOfATool_DecidesWhereItIsAskedFor()
    {
        var resolution = ChangedBase.Prove("workshop", (Task, Plain, Own)).Resolution!;

        Assert.Contains("Belt gauge", Tools(resolution, "keep"));
        Assert.DoesNotContain("Belt gauge", Tools(resolution, "donor"));
        Assert.Contains("Spanner 13", Tools(resolution, "donor"));
    }

    [Theory]
    [InlineData("choice.alternator: keep", false)]
    [InlineData("not: {chassis.family: quillet}", true)]
    [InlineData("answer.alternator: {source: new}", true)]
    public void Check_ToolThatNoGuideAsksFor_IsFound(string when, bool found)
    {
        var proof = ChangedBase.Prove("workshop", (Task, Plain, Own.Replace("choice.alternator: keep", when, StringComparison.Ordinal)));

        Assert.Equal(found ? ["no guide asks for the tool `Belt gauge` of `fit-belt`: its `when` never holds where `fit-belt` appears"] : [], proof.Messages(FindingKinds.TaskOrder));
        Assert.DoesNotContain(proof.Findings, finding => finding.Kind != FindingKinds.TaskOrder);
    }

    [Theory]
    [InlineData("{choice.alternatr: keep}")]
    [InlineData("{choice.alternator: kept}")]
    public void Bind_ConditionWithANameThatNothingCarries_IsFound(string when)
    {
        var proof = ChangedBase.Prove("workshop", (Task, Plain, Own.Replace("{choice.alternator: keep}", when, StringComparison.Ordinal)));

        Assert.Contains(proof.Findings, finding => (finding.Kind == FindingKinds.Reference || finding.Kind == FindingKinds.Vocabulary) && finding.Place.File.EndsWith(Task, StringComparison.Ordinal));
    }

    /// <summary>A tool that is always asked for is written as its name alone: a mapping says when.</summary>
    [Theory]
    [InlineData("{title: Belt gauge}")]
    [InlineData("{when: {choice.alternator: keep}}")]
    [InlineData("{title: Belt gauge, when: {}, of: steel}")]
    public void Schema_ToolOfAnotherForm_IsRefused(string tool) =>
        Assert.NotEmpty(ChangedBase.Prove("workshop", (Task, Plain, $"tools: [{tool}]\n")).Messages(FindingKinds.Schema));

    /// <summary>Of two bases whose tool is asked for elsewhere one says something else.</summary>
    [Fact]
    public void Content_ToolAskedForElsewhere_Differs()
    {
        TaskTool Asked(string option) => new("Belt gauge", new ChoiceTest("alternator", [option], default), default);

        Assert.True(Content.Same(Asked("keep"), Asked("keep")));
        Assert.False(Content.Same(Asked("keep"), Asked("donor")));
    }

    private static ImmutableArray<string> Tools(Resolution resolution, string alternator)
    {
        var values = resolution.Store.Witness(resolution.Store.And(resolution.Buildable, resolution.Space.WhereChoice("alternator", [alternator])));
        return [.. new SheetBuilder(resolution).Build(values).ToolNames];
    }
}
