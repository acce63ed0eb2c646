using Swapwright.Diagnostics;
using Swapwright.Findings;
using Swapwright.Rules;
using Swapwright.Sheets;

namespace Swapwright.Tests.Findings;

/// <summary>Fasteners that are tightened in part of the space.</summary>
public sealed class TighteningWhereTests
{
    private const string Task = "tasks/fit-belt.yaml";
    private const string Own = "rules/charging/alternator-own.yaml";
    private const string Bolt = "fasteners:\n  pivot-bolt: {title: Pivot bolt, thread: M10x1.25, count: 1, stated: 45, when: {choice.alternator: keep}}\n";

    [Fact]
    public void Sheet_ConditionOfAFastener_DecidesWhereItIsTold()
    {
        var resolution = ChangedBase.Prove("workshop", (Task, "", Bolt)).Resolution!;

        Assert.Equal(45, Torque(resolution, "keep"));
        Assert.Null(Torque(resolution, "donor"));
    }

    [Theory]
    [InlineData("choice.alternator: keep", false)]
    [InlineData("choice.alternator: donor, chassis.family: quillet", false)]
    [InlineData("not: {chassis.family: quillet}", true)]
    [InlineData("answer.alternator: {source: new}", true)]
    public void Check_FastenerThatNoGuideSpeaksOf_IsFound(string when, bool found)
    {
        var proof = ChangedBase.Prove("workshop", (Task, "", Bolt.Replace("choice.alternator: keep", when, StringComparison.Ordinal)));

        Assert.Equal(found ? ["`pivot-bolt` of `fit-belt` is tightened in no guide: its `when` never holds where `fit-belt` appears"] : [], proof.Messages(FindingKinds.TaskOrder));
        Assert.DoesNotContain(proof.Findings, finding => finding.Kind != FindingKinds.TaskOrder);
    }

    [Theory]
    [InlineData("choice.alternatr: keep")]
    [InlineData("choice.alternator: kept")]
    [InlineData("chassis.colour: red")]
    public void Bind_ConditionWithANameThatNothingCarries_IsFound(string when)
    {
        var proof = ChangedBase.Prove("workshop", (Task, "", Bolt.Replace("choice.alternator: keep", when, StringComparison.Ordinal)));

        Assert.Contains(proof.Findings, finding => (finding.Kind == FindingKinds.Reference || finding.Kind == FindingKinds.Vocabulary) && finding.Place.File.EndsWith(Task, StringComparison.Ordinal));
    }

    /// <summary>A torque that a rule states is held against the fastener where that is tightened.</summary>
    [Theory]
    [InlineData("45", 0)]
    [InlineData("60", 1)]
    public void Stated_TorqueOfAConditionalFastener_IsHeldWhereItHolds(string stated, int findings)
    {
        var proof = ChangedBase.Prove("workshop", (Task, "", Bolt), (Own, "  tasks: [fit-belt]\n", "  tasks: [fit-belt]\n  values: {torques.bolt.pivot-bolt: {value: " + stated + "}}\n"));

        Assert.Equal(findings, proof.Messages(FindingKinds.StatedValue).Length);
        Assert.Equal(findings, proof.Findings.Length);
    }

    [Fact]
    public void Stated_TorqueWhereTheFastenerIsNotTightened_IsFound()
    {
        var proof = ChangedBase.Prove("workshop", (Task, "", Bolt), ("rules/charging/alternator-donor.yaml", "  tasks: [fit-belt]\n", "  tasks: [fit-belt]\n  values: {torques.bolt.pivot-bolt: {value: 45}}\n"));

        Assert.Single(proof.Messages(FindingKinds.StatedValue));
    }

    private static double? Torque(Resolution resolution, string alternator)
    {
        var values = resolution.Store.Witness(resolution.Store.And(resolution.Buildable, resolution.Space.WhereChoice("alternator", [alternator])));
        return new SheetBuilder(resolution).Build(values).Ledger("torques")?.Figure("bolt-pivot-bolt")?.Value;
    }
}
