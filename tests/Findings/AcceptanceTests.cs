using Swapwright.Diagnostics;
using Swapwright.Findings;

namespace Swapwright.Tests.Findings;

public sealed class AcceptanceTests
{
    private const string Pump = "rules/charging/water-pump.yaml";
    private const string Own = "rules/charging/alternator-own.yaml";
    private const string AcceptUnsourced = "accept: [{finding: unsourced, because: The log book is being looked for.}]\n";

    [Fact]
    public void Prove_AcceptedWarning_IsCountedAndNotFound()
    {
        var proof = ChangedBase.Prove("workshop", (Pump, "sources: [bench]\n", AcceptUnsourced));

        Assert.Empty(proof.Findings);
        Assert.Equal(FindingKinds.Unsourced, Assert.Single(proof.Accepted).Kind);
        Assert.Equal(Pump, proof.Accepted[0].Place.File);
    }

    [Fact]
    public void Prove_WarningOfAnotherFile_StandsAndTheAcceptanceIsIdle()
    {
        var proof = ChangedBase.Prove("workshop", (Pump, "sources: [bench]\n", ""), (Own, "", AcceptUnsourced));

        Assert.Equal([FindingKinds.IdleAccept, FindingKinds.Unsourced], proof.Findings.Select(finding => finding.Kind));
        Assert.Equal([Own, Pump], proof.Findings.Select(finding => finding.Place.File));
        Assert.Empty(proof.Accepted);
    }

    [Fact]
    public void Prove_AcceptedError_StandsAndIsPointedAt()
    {
        var proof = ChangedBase.Prove("workshop", ("connectors/two-way.yaml", "rows: [[1, 2]]", "rows: [[1, 2], [2]]"), ("connectors/two-way.yaml", "", "accept: [{finding: pin-clash, because: It is so.}]\n"));

        Assert.True(proof.HasErrors);
        var idle = Assert.Single(proof.Findings, finding => finding.Kind == FindingKinds.IdleAccept);
        Assert.Equal("`pin-clash` is an error and cannot be accepted", idle.Message);
        Assert.Equal("connectors/two-way.yaml", Assert.Single(idle.Related).Place.File);
    }

    /// <summary>What was not looked for may well be there: an acceptance of it is not called idle.</summary>
    [Theory]
    [InlineData("part-use")]
    [InlineData("task-order")]
    public void Prove_CheckThatWaitsForTheWhole_LeavesItsAcceptanceAlone(string finding)
    {
        (string, string, string) accept = (Own, "", $"accept: [{{finding: {finding}, because: A rule for it comes later.}}]\n");

        Assert.Equal([$"there is no `{finding}` in this file to accept"], ChangedBase.Prove("workshop", accept).Messages(FindingKinds.IdleAccept));
        Assert.Empty(ChangedBase.Prove("workshop", accept, (Pump, "treatment: refresh", "treatment: polish")).Messages(FindingKinds.IdleAccept));
    }

    /// <summary>What is accepted for one variant is not accepted for those that are like it.</summary>
    [Fact]
    public void Prove_EntityLikeAnother_DoesNotTakeOverItsAcceptance()
    {
        var proof = ChangedBase.Prove(
            "workshop",
            ("parts/strap.yaml", "", "title: Strap\nprice: 3\nfrom: parts-shop\naccept: [{finding: part-use, because: A rule for it comes later.}]\n"),
            ("parts/strap-long.yaml", "", "title: Strap, long\nlike: strap\n"));

        Assert.Equal(["nothing uses `strap-long`"], proof.Messages(FindingKinds.PartUse));
        Assert.Equal(["there is no `part-use` in this file to accept"], proof.Messages(FindingKinds.IdleAccept));
    }
}
