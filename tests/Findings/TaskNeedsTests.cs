using Swapwright.Diagnostics;

namespace Swapwright.Tests.Findings;

public sealed class TaskNeedsTests
{
    private const string Pump = "rules/charging/water-pump.yaml";
    private const string Task = "tasks/fit-belt.yaml";

    [Theory]
    [InlineData("source: donor, treatment: refresh", true)]
    [InlineData("source: chassis, treatment: as-is", true)]
    [InlineData("source: new, treatment: blank, part: belt", true)]
    [InlineData("source: chassis, treatment: blank", false)]
    [InlineData("source: none, treatment: as-is", false)]
    public void Check_OneAnswerEverywhere_YieldsWhatThereIsToFit(string answer, bool yields)
    {
        var proof = ChangedBase.Prove("workshop", (Pump, "source: donor, treatment: refresh", answer), (Task, "needs: [alternator]", "needs: [alternator, water-pump]"));

        Assert.Equal(yields, proof.Messages(FindingKinds.TaskOrder).Length == 0);
    }

    /// <summary>The task appears with the kept alternator only, and there the pump is left off.</summary>
    [Fact]
    public void Check_PositionThatYieldsElsewhere_IsFoundWhereTheTaskAppears()
    {
        var proof = ChangedBase.Prove(
            "workshop",
            (Pump, "then:", "when: {choice.alternator: donor}\nthen:"),
            ("rules/charging/pump-off.yaml", "", "title: No pump\nwhen: {choice.alternator: keep}\nthen: {answers: {water-pump: {source: none, treatment: as-is}}}\nsources: [bench]\nstanding: built\nchecked: 2025-06-01\n"),
            ("rules/charging/alternator-donor.yaml", "  tasks: [fit-belt]\n", ""),
            (Task, "needs: [alternator]", "needs: [alternator, water-pump]"));

        Assert.Equal(["`fit-belt` needs what `water-pump` yields, but it yields nothing wherever the task appears"], proof.Messages(FindingKinds.TaskOrder));
        Assert.Equal(proof.Findings.Length, proof.Messages(FindingKinds.TaskOrder).Length);
    }
}
